import { dayNumber, isCalendarDay } from '#engine/weather/calendar-day.ts';

/** Figures and dates as CSV files write them. */

/** How the figures of a file are written. */
export interface FigureStyle {
  /** The comma parts the cells, so that it can stand in a figure only inside quotes. */
  readonly commaParts: boolean;
}

export type Figure =
  { readonly value: number; readonly decimalComma: boolean } | { readonly missing: true } | { readonly reason: string };

const missingWords = new Set(['', '-', '--', '---', 'na', 'n/a', 'nan', 'null', 'none', 'm', 'missing', '.', '...', '*']);

/** One cell as a figure, a missing value or a reason to refuse. */
export const figureFrom = (cell: string, style: FigureStyle): Figure => {
  const text = cell.trim().replace(/^\u2212/, '-');
  if (missingWords.has(text.toLowerCase())) return { missing: true };
  if (/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(text)) return { value: Number(text), decimalComma: false };
  if (/^[+-]?\d*,\d+$/.test(text)) {
    if (style.commaParts && /,\d{3}$/.test(text)) {
      return { reason: `"${text}" can be a decimal comma or a thousands comma; write it with a point` };
    }
    return { value: Number(text.replace(',', '.')), decimalComma: true };
  }
  if (/^[+-]?\d{1,3}(?:[.,' ]\d{3})*[.,]\d+$/.test(text)) return { reason: `"${text}" has a thousands mark; write it without` };
  return { reason: `"${text}" is not a figure` };
};

const wideCodes = new Set([999, 999.9, 9999, 9999.9, 99999]);

/**
 * Codes that weather services write for a missing value. A code is only one where it cannot be a reading.
 * @param factor of the column's unit: 99 and 99.9 are codes in °C and m/s but readings in °F or km/h
 */
export const isMissingCode = (quantity: string, value: number, factor = 1): boolean => {
  if (wideCodes.has(Math.abs(value)) || value === -99 || value === -99.9) return true;
  if (quantity === 'rain') return Math.abs(value) === 99.99;
  if (quantity === 'humidity' || factor !== 1) return false;
  return value === 99.9 || value === 99;
};

/** How a date is written, or what is wrong with it. */
export type DatePattern =
  | { readonly kind: 'known'; readonly number: number }
  /** Two small numbers and a year, whose order the file as a whole must tell. */
  | { readonly kind: 'slashed'; readonly first: number; readonly second: number; readonly year: number }
  | { readonly kind: 'wrong'; readonly reason: string };

const wrong = (reason: string): DatePattern => ({ kind: 'wrong', reason });

/** Day number of a year, month and day, or why there is none. */
export const dayFrom = (year: number, month: number, day: number): DatePattern => {
  if (!Number.isInteger(year) || year < 1800 || year > 2200) return wrong(`${year} is not a year with four digits`);
  if (!(month >= 1 && month <= 12)) return wrong(`${month} is not a month`);
  if (!isCalendarDay(year, month, day)) return wrong(`${day}.${month}.${year} is not a day of the calendar`);
  return { kind: 'known', number: dayNumber(year, month, day) };
};

/** Reads `2027-07-17`, `2027/7/17`, `20270717`, `17.7.2027`, `7/17/2027`; a time of midnight may follow. */
export const dateFrom = (cell: string): DatePattern => {
  const text = cell.trim().replace(/[T ]0{1,2}:00(?::00(?:\.0+)?)?(?:Z|[+-]\d\d:?\d\d)?$/, '');
  if (/[T ]\d{1,2}:\d\d/.test(text)) return wrong(`"${text}" has a time of day: the file must have one line a day`);
  const ordered = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/.exec(text) ?? /^(\d{4})()(\d\d)(\d\d)$/.exec(text);
  if (ordered !== null) return dayFrom(Number(ordered[1]), Number(ordered[3]), Number(ordered[4]));
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text);
  if (dotted !== null) return dayFrom(Number(dotted[3]), Number(dotted[2]), Number(dotted[1]));
  const slashed = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/.exec(text);
  if (slashed !== null) {
    return { kind: 'slashed', first: Number(slashed[1]), second: Number(slashed[2]), year: Number(slashed[3]) };
  }
  return wrong(`"${text}" is not a date; write it as YYYY-MM-DD`);
};

/** Which of the two small numbers is the month, from all slashed dates of a file: 1, 2, or null when they do not tell. */
export const monthPlace = (dates: readonly { readonly first: number; readonly second: number }[]): 1 | 2 | null => {
  const firstIsDay = dates.some((date) => date.first > 12);
  const secondIsDay = dates.some((date) => date.second > 12);
  if (firstIsDay === secondIsDay) return null;
  return firstIsDay ? 2 : 1;
};
