import { addDays, atClock, daysBetween, fromEpoch, toEpoch } from '#shared/calendar/local-time.ts';
import type { Shift } from '#shared/vocabulary/plan.ts';
import type { LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';

/** What is known of the weather of a shift. */
export type ShiftWeather = Pick<Shift, 'rainChance' | 'frozen' | 'windy' | 'saturated' | 'hot'>;

export const dryShift: ShiftWeather = { rainChance: 0, frozen: false, windy: false, saturated: false, hot: false };

/**
 * Two shifts a day from the first day to the last: 06:00–18:00 and 18:00–06:00 on the venue's wall clock. A night in which the
 * clocks change is 11 or 13 h long; what that means in hours is left to `hourClock`.
 */
export const shiftsBetween = (
  first: LocalDate,
  last: LocalDate,
  weather: (day: LocalDate, night: boolean) => ShiftWeather = () => dryShift,
): readonly Shift[] =>
  Array.from({ length: daysBetween(first, last) + 1 }, (_, index) => addDays(first, index)).flatMap((day) => [
    { start: atClock(day, '06:00'), end: atClock(day, '18:00'), night: false, ...weather(day, false) },
    { start: atClock(day, '18:00'), end: atClock(addDays(day, 1), '06:00'), night: true, ...weather(day, true) },
  ]);

/** Real hours since a moment, from and to the venue's wall clock. */
export interface HourClock {
  /** h since the origin; may be negative. */
  hourOf(time: LocalTime): number;
  /** The wall-clock minute of an hour since the origin. */
  timeAt(hour: number): LocalTime;
}

/** A clock in real hours, right across clock changes. Answers are remembered, since the calendar library is slow. */
export const hourClock = (origin: LocalTime, timeZone: string): HourClock => {
  const zero = toEpoch(origin, timeZone);
  const hours = new Map<LocalTime, number>();
  return {
    hourOf(time) {
      const known = hours.get(time);
      if (known !== undefined) return known;
      const hour = (toEpoch(time, timeZone) - zero) / 3_600_000;
      hours.set(time, hour);
      return hour;
    },
    timeAt: (hour) => fromEpoch(zero + Math.round(hour * 60) * 60_000, timeZone),
  };
};
