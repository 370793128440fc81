/**
 * One running count of days, so that the formulas of the almanac need no calendar.
 *
 *   JD = floor(365.25 (Y + 4716)) + floor(30.6001 (M + 1)) + D + B − 1524.5,   B = 2 − A + floor(A/4), A = floor(Y/100)
 *
 * with January and February counted as months 13 and 14 of the year before; B = 0 before 15 October 1582 (Julian calendar).
 * Valid for years from −4712.
 * @source meeus-1998
 */

/** Julian day of a calendar date; `day` may carry the fraction of the day. */
export const julianDay = (year: number, month: number, day: number): number => {
  const gregorian = year > 1582 || (year === 1582 && (month > 10 || (month === 10 && day >= 15)));
  const y = month <= 2 ? year - 1 : year;
  const m = month <= 2 ? month + 12 : month;
  const a = Math.floor(y / 100);
  const b = gregorian ? 2 - a + Math.floor(a / 4) : 0;
  return Math.floor(365.25 * (y + 4716)) + Math.floor(30.6001 * (m + 1)) + day + b - 1524.5;
};

/** Julian day of an instant, UTC epoch milliseconds. */
export const julianDayOf = (instant: number): number => instant / 86_400_000 + 2440587.5;

/** Instant of a Julian day, UTC epoch milliseconds. */
export const instantOfJulianDay = (day: number): number => (day - 2440587.5) * 86_400_000;

/** Centuries of 36525 d since 1 January 2000, 12 h. */
export const julianCentury = (day: number): number => (day - 2451545) / 36525;
