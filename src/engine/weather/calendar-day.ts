/**
 * Calendar arithmetic on plain numbers, so that the engine needs no clock and no time zone: a day here is a date on the
 * venue's own calendar. Proleptic Gregorian calendar; whole days only.
 */

/** Days of each month of a common year, January first. */
export const monthLengths: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Days of a common year before each month, January first, and 365 at the end. */
export const daysBeforeMonth: readonly number[] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

export const isLeapYear = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** Length of a month. @param month 1–12 */
export const monthLength = (year: number, month: number): number =>
  month === 2 && isLeapYear(year) ? 29 : monthLengths[month - 1]!;

/** Whether year, month and day name a day of the calendar. */
export const isCalendarDay = (year: number, month: number, day: number): boolean =>
  Number.isInteger(year) &&
  Number.isInteger(month) &&
  Number.isInteger(day) &&
  month >= 1 &&
  month <= 12 &&
  day >= 1 &&
  day <= monthLength(year, month);

/** Days since 1 January 2000. Counts leap days before the date by year. */
export const dayNumber = (year: number, month: number, day: number): number => {
  const past = year - 1;
  const leapDays = Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400) - 484;
  return (year - 2000) * 365 + leapDays + dayOfYear(year, month, day) - 1;
};

/** 1 on 1 January, 365 or 366 on 31 December. */
export const dayOfYear = (year: number, month: number, day: number): number =>
  daysBeforeMonth[month - 1]! + day + (month > 2 && isLeapYear(year) ? 1 : 0);

/** Year, month (1–12) and day of a day number. */
export const calendarDay = (number: number): { readonly year: number; readonly month: number; readonly day: number } => {
  let year = 2000 + Math.floor(number / 365.2425);
  while (dayNumber(year + 1, 1, 1) <= number) year++;
  while (dayNumber(year, 1, 1) > number) year--;
  let rest = number - dayNumber(year, 1, 1);
  let month = 1;
  while (rest >= monthLength(year, month)) rest -= monthLength(year, month++);
  return { year, month, day: rest + 1 };
};

/** Day number of a date written `YYYY-MM-DD`. @throws RangeError when it is not a day of the calendar */
export const dayNumberOf = (date: string): number => {
  const parts = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date);
  const [year, month, day] = parts === null ? [0, 0, 0] : [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (!isCalendarDay(year, month, day)) throw new RangeError(`date: ${date} is not a day of the calendar`);
  return dayNumber(year, month, day);
};

/** The date of a day number, written `YYYY-MM-DD`. */
export const dateOf = (number: number): string => {
  const { year, month, day } = calendarDay(number);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
};

/**
 * Place of a date in a table of 365 days, 0 on 1 January; 29 February reads the entry of 28 February.
 * @param month 1–12
 */
export const tableDay = (month: number, day: number): number =>
  daysBeforeMonth[month - 1]! + (month === 2 && day === 29 ? 28 : day) - 1;

/** Day of the year in the middle of each month, as radiation tables use it. */
export const middleOfMonth: readonly number[] = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];
