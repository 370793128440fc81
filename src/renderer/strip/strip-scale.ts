import { addDays, dateOf, daysBetween, hoursBetween, midnight } from '#shared/calendar/local-time.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';
import { spanOf } from '../desk/booking-shapes.ts';

export interface DaySpan {
  readonly first: LocalDate;
  readonly count: number;
}

/** Days around one booking and its home date; from today on where there is neither. */
export const bookingDays = (booking: Booking | null, home: LocalTime | null, today: LocalDate): DaySpan => {
  const span = booking && spanOf(booking);
  const ends = [...(span ? [span.first, span.last] : []), ...(home ? [home] : [])].map(dateOf).toSorted();
  if (ends.length === 0) return { first: today, count: 30 };
  const first = addDays(ends[0]!, span ? -4 : -21);
  return { first, count: Math.max(16, daysBetween(first, ends.at(-1)!) + 3) };
};

/** How much of the calendar the strip shows: the booking with its home date, or some months around it. */
export const stripRanges = ['booking', 2, 6, 12, 18] as const;
export type StripRange = (typeof stripRanges)[number];

/** Whole months, from a little before a moment. */
export const monthsFrom = (around: LocalDate, months: number): DaySpan => {
  const first = `${addDays(around, -Math.round(months * 6)).slice(0, 8)}01`;
  const [year, month] = [Number(first.slice(0, 4)), Number(first.slice(5, 7)) + months];
  const end = `${year + Math.floor((month - 1) / 12)}-${String(((month - 1) % 12) + 1).padStart(2, '0')}-01`;
  return { first, count: daysBetween(first, end) };
};

/** Bookings that lie on the turf in those days. */
export const bookingsWithin = <Line extends { readonly firstOn: string | null; readonly lastOff: string | null }>(
  lines: readonly Line[],
  { first, count }: DaySpan,
): readonly Line[] => {
  const end = addDays(first, count);
  return lines.filter((line) => line.firstOn !== null && line.lastOff !== null && line.lastOff >= first && line.firstOn < end);
};

/** Where moments stand on the strip, in pixels from the left edge of the first day. */
export interface StripScale {
  readonly first: LocalDate;
  readonly count: number;
  readonly width: number;
  readonly dayWidth: number;
  x(time: LocalTime): number;
  /** Hours from the beginning of the first day. */
  hourAt(pixels: number): number;
  holds(date: LocalDate): boolean;
}

export const stripScale = ({ first, count }: DaySpan, width: number, timeZone: string): StripScale => {
  const start = midnight(first);
  const end = addDays(first, count);
  const hours = hoursBetween(start, midnight(end), timeZone);
  return {
    first,
    count,
    width,
    dayWidth: width / count,
    x: (time) => (hoursBetween(start, time, timeZone) / hours) * width,
    hourAt: (pixels) => (pixels / width) * hours,
    holds: (date) => date >= first && date < end,
  };
};
