import { addDays, dateOf, daysBetween, dayOfYear, midnightsOf, toEpoch } from '#shared/calendar/local-time.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { incidentsOf } from '#engine/forecast/entered-incidents.ts';
import type { LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';

/** The days a forecast runs over, and their hours: hour 0 begins at the first midnight and hours are real hours, also across a clock change. */
export interface Period {
  readonly days: readonly LocalDate[];
  /** 1–366 for each day. */
  readonly dayOfYear: Int32Array;
  /** Epoch ms of every midnight, one more than there are days. */
  readonly midnights: Float64Array;
  /** First hour of every day, one more than there are days. */
  readonly firstHour: Int32Array;
  /** Real hours from the first midnight to a wall-clock time. */
  readonly hourOf: (time: LocalTime) => number;
  /** Day index of a wall-clock time; may lie outside the period. */
  readonly dayOf: (time: LocalTime) => number;
}

/** Days of undisturbed turf simulated before the first covering, so that the stand has settled to its season. */
const leadDays = 14;
/** Days simulated where nothing is booked. */
const quietDays = 42;
/** Longest period; a season with its winter. */
const longestPeriod = 330;

export const firstOn = (booking: Booking): LocalTime | null =>
  earliest([
    ...booking.layers.map((layer) => layer.on),
    ...booking.crowds.map((crowd) => crowd.from),
    ...booking.traffic.map((pass) => pass.at),
    ...incidentsOf(booking).map((incident) => incident.at),
  ]);
export const lastOff = (booking: Booking): LocalTime | null =>
  latest([
    ...booking.layers.map((layer) => layer.off),
    ...booking.crowds.map((crowd) => crowd.until),
    ...booking.traffic.map((pass) => pass.at),
    ...incidentsOf(booking).map((incident) => incident.until ?? incident.at),
  ]);
const earliest = (times: readonly LocalTime[]): LocalTime | null =>
  times.reduce<LocalTime | null>((least, time) => (least === null || time < least ? time : least), null);
const latest = (times: readonly LocalTime[]): LocalTime | null =>
  times.reduce<LocalTime | null>((most, time) => (most === null || time > most ? time : most), null);

/**
 * The period of a forecast: from two weeks before the first covering (or six weeks before the home date where nothing is booked) to
 * the home date.
 * @param from the earliest thing that happens, or null @param home start of the home date
 * @throws RangeError when the home date lies before the first covering or the period is too long
 */
export const periodOf = (from: LocalTime | null, home: LocalTime, timeZone: string): Period => {
  const lastDay = dateOf(home);
  const firstDay = addDays(from === null ? lastDay : dateOf(from), from === null ? -quietDays : -leadDays);
  const count = daysBetween(firstDay, lastDay) + 1;
  if (from !== null && from >= home)
    throw new RangeError('fixtureId: the home date lies before the booking begins; choose a later one');
  if (count > longestPeriod)
    throw new RangeError(
      `fixtureId: the home date is ${count - leadDays} days after the booking begins; the longest forecast is ${longestPeriod - leadDays} days`,
    );
  const days = Array.from({ length: count }, (_, day) => addDays(firstDay, day));
  const midnights = midnightsOf(firstDay, count, timeZone);
  const start = midnights[0]!;
  return {
    days,
    dayOfYear: Int32Array.from(days, dayOfYear),
    midnights,
    firstHour: Int32Array.from(midnights, (midnight) => Math.round((midnight - start) / 3_600_000)),
    hourOf: (time) => (toEpoch(time, timeZone) - start) / 3_600_000,
    dayOf: (time) => daysBetween(firstDay, dateOf(time)),
  };
};
