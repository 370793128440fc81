import { Temporal } from 'temporal-polyfill';

/**
 * Between the venue's own calendar and instants. An instant is UTC epoch milliseconds. A date is a day of the venue's calendar,
 * `2027-07-17`; it is placed by its local noon, never by its midnight, because a midnight in UTC may belong to the day before.
 */

/** From the first to the last instant of a local day (half open); 23 or 25 h where the clock changes. */
export const localDayBounds = (date: string, timeZone: string): { start: number; end: number } => {
  const day = Temporal.PlainDate.from(date);
  const start = day.toZonedDateTime(timeZone).epochMilliseconds;
  const end = day.add({ days: 1 }).toZonedDateTime(timeZone).epochMilliseconds;
  return { start, end };
};

/** The instant at which the venue's clock shows a time of a day, hours after midnight (0 ≤ hour < 24). */
export const instantOf = (date: string, hour: number, timeZone: string): number => {
  const second = Math.round(hour * 3600);
  const time = Temporal.PlainTime.from({
    hour: Math.floor(second / 3600),
    minute: Math.floor((second % 3600) / 60),
    second: second % 60,
  });
  return Temporal.PlainDate.from(date).toZonedDateTime({ timeZone, plainTime: time }).epochMilliseconds;
};

/** What the venue's clock is ahead of UTC at noon of a day, h. */
export const clockAheadAtNoon = (date: string, timeZone: string): number => {
  const noon = Temporal.PlainDate.from(date).toZonedDateTime({ timeZone, plainTime: '12:00' });
  return noon.offsetNanoseconds / 3.6e12;
};

/** Day and hours after midnight that the venue's clock shows at an instant. */
export const localClock = (instant: number, timeZone: string): { date: string; hour: number } => {
  const local = Temporal.Instant.fromEpochMilliseconds(Math.round(instant)).toZonedDateTimeISO(timeZone);
  const hour = local.hour + local.minute / 60 + (local.second + local.millisecond / 1000) / 3600;
  return { date: local.toPlainDate().toString(), hour };
};

/** Day of the year: 1 on 1 January, 366 on 31 December of a leap year. */
export const dayOfYear = (date: string): number => Temporal.PlainDate.from(date).dayOfYear;

/** UTC midnight of the calendar date taken as if it were UTC, epoch milliseconds. */
export const utcMidnight = (date: string): number => {
  const day = Temporal.PlainDate.from(date);
  return Date.UTC(day.year, day.month - 1, day.day);
};
