import { clockOf, dateOf, weekdayOf } from '#shared/calendar/local-time.ts';
import type { LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';

/** Short names of days and months, as they stand on a wall calendar. */
export const weekdayNames = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
export const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** "Sat 31 Jul" */
export const dayWords = (date: LocalDate): string =>
  `${weekdayNames[weekdayOf(date) - 1]!} ${Number(date.slice(8, 10))} ${monthNames[Number(date.slice(5, 7)) - 1]!}`;

/** Which clock hours are told by. */
export const clocks = ['24', '12'] as const;
export type Clock = (typeof clocks)[number];

/** "15:00", or by the twelve-hour clock "3:00 PM". */
export const clockWords = (time: LocalTime, clock: Clock): string => {
  const told = clockOf(time);
  if (clock === '24') return told;
  const hour = Number(told.slice(0, 2));
  return `${hour % 12 === 0 ? 12 : hour % 12}${told.slice(2)} ${hour < 12 ? 'AM' : 'PM'}`;
};

/** "Sat 31 Jul 15:00" */
export const momentWords = (time: LocalTime, clock: Clock = '24'): string =>
  `${dayWords(dateOf(time))} ${clockWords(time, clock)}`;

/** "Sat 31 Jul 2027 15:00" */
export const fullMoment = (time: LocalTime, clock: Clock = '24'): string =>
  `${dayWords(dateOf(time))} ${time.slice(0, 4)} ${clockWords(time, clock)}`;

/** "7.4 days", "1 day"; below two days in hours: "18 h". */
export const spanWords = (hours: number): string => {
  if (hours < 48) return `${Math.round(hours)} h`;
  const days = Math.round(hours / 2.4) / 10;
  return `${days} ${days === 1 ? 'day' : 'days'}`;
};
