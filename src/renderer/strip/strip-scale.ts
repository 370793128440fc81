import { addDays, dateOf, daysBetween, hoursBetween, midnight } from '#shared/calendar/local-time.ts';
import type { ReplyOf } from '#shared/contract/contract.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Fixture } from '#shared/vocabulary/venue.ts';
import { spanOf } from '../desk/booking-shapes.ts';

export interface DaySpan {
  readonly first: LocalDate;
  readonly count: number;
}

/** Days around one booking and its home date. */
export const bookingDays = (booking: Booking | null, home: LocalTime | null): DaySpan => {
  const span = booking && spanOf(booking);
  const ends = [...(span ? [span.first, span.last] : []), ...(home ? [home] : [])].map(dateOf).toSorted();
  if (ends.length === 0) return { first: '2027-01-01', count: 30 };
  const first = addDays(ends[0]!, span ? -4 : -21);
  return { first, count: Math.max(16, daysBetween(first, ends.at(-1)!) + 3) };
};

/** All bookings and fixtures of the venue, from the first of a month to the end of another; at most eighteen months. */
export const seasonDays = (fixtures: readonly Fixture[], bookings: ReplyOf<'booking/list'>): DaySpan => {
  const ends = [
    ...fixtures.map((fixture) => fixture.start),
    ...bookings.flatMap((line) => [line.firstOn, line.lastOff].filter((time) => time !== null)),
  ]
    .map(dateOf)
    .toSorted();
  if (ends.length === 0) return { first: '2027-01-01', count: 60 };
  const first = `${ends[0]!.slice(0, 8)}01`;
  return { first, count: Math.min(548, Math.max(60, daysBetween(first, ends.at(-1)!) + 14)) };
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
