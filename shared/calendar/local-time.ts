import { Temporal } from 'temporal-polyfill';
import type { LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';

const hourMs = 3_600_000;

/** Instants found already, by time zone and wall-clock time; the same few are asked for again at every step of a drag. */
const found = new Map<string, number>();
const mostFound = 20_000;

/**
 * The instant of a wall-clock time at the venue, epoch ms. In the hour that a clock change repeats, the first of the two is
 * meant; a time that a clock change skips means the same number of minutes later.
 */
export const toEpoch = (time: LocalTime, timeZone: string): number => {
  const key = `${timeZone} ${time}`;
  const known = found.get(key);
  if (known !== undefined) return known;
  const instant = Temporal.PlainDateTime.from(time).toZonedDateTime(timeZone, {
    disambiguation: 'compatible',
  }).epochMilliseconds;
  if (found.size >= mostFound) found.clear();
  found.set(key, instant);
  return instant;
};

/** The wall-clock minute at the venue of an instant in epoch ms. */
export const fromEpoch = (epochMs: number, timeZone: string): LocalTime =>
  Temporal.Instant.fromEpochMilliseconds(Math.floor(epochMs / 60_000) * 60_000)
    .toZonedDateTimeISO(timeZone)
    .toPlainDateTime()
    .toString({ smallestUnit: 'minute' });

/** The wall-clock time a number of real hours later, right across a clock change. */
export const addHours = (time: LocalTime, hours: number, timeZone: string): LocalTime =>
  fromEpoch(toEpoch(time, timeZone) + hours * hourMs, timeZone);

/** Real hours from one wall-clock time to another; negative when `to` is earlier. */
export const hoursBetween = (from: LocalTime, to: LocalTime, timeZone: string): number =>
  (toEpoch(to, timeZone) - toEpoch(from, timeZone)) / hourMs;

export const dateOf = (time: LocalTime): LocalDate => time.slice(0, 10);
export const clockOf = (time: LocalTime): string => time.slice(11, 16);
export const atClock = (date: LocalDate, clock: string): LocalTime => `${date}T${clock}`;
export const midnight = (date: LocalDate): LocalTime => `${date}T00:00`;

export const addDays = (date: LocalDate, days: number): LocalDate => Temporal.PlainDate.from(date).add({ days }).toString();

/** Whole calendar days from one date to another. */
export const daysBetween = (from: LocalDate, to: LocalDate): number =>
  Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'days' }).days;

/** 1 on 1 January. */
export const dayOfYear = (date: LocalDate): number => Temporal.PlainDate.from(date).dayOfYear;

/** 0 for January. */
export const monthOf = (date: LocalDate): number => Number(date.slice(5, 7)) - 1;

/** 1 Monday … 7 Sunday. */
export const weekdayOf = (date: LocalDate): number => Temporal.PlainDate.from(date).dayOfWeek;

/** The same wall-clock time some calendar days later. */
export const shiftDays = (time: LocalTime, days: number): LocalTime => `${addDays(dateOf(time), days)}T${clockOf(time)}`;

/** Midnights at the venue from the first day to the day after the last, epoch ms: a day is 23, 24 or 25 h long. */
export const midnightsOf = (from: LocalDate, days: number, timeZone: string): Float64Array =>
  Float64Array.from({ length: days + 1 }, (_, day) => toEpoch(midnight(addDays(from, day)), timeZone));
