import type { WeatherValues } from '#shared/parameters/weather.ts';
import { calendarDay, dateOf, dayOfYear } from '#engine/weather/calendar-day.ts';
import {
  daylightHours,
  extraterrestrialRadiation,
  radiationFromSunshine,
  type DailySite,
} from '#engine/weather/daily-radiation.ts';
import { meanSaturationVapourPressure, saturationVapourPressure } from '#engine/weather/humidity.ts';
import { completedDay } from '#engine/weather/missing-weather.ts';
import type { DatedWeatherDay } from '#engine/weather/weather-day.ts';
import { nothingRead, type ReadDay } from '#platform/weather-files/day-limits.ts';
import { refuse, type Findings } from '#platform/weather-files/import-report.ts';

/** A day of a file with where it stood. */
export interface ReadRow {
  readonly line: number;
  /** Day number. */
  readonly number: number;
  readonly day: ReadDay;
}

/** Longest gap that is drawn straight between its neighbours, d. */
export const longestGap = 3;

const quantityNames = {
  maximum: 'maximum',
  minimum: 'minimum',
  rain: 'rain',
  radiation: 'radiation',
  vapourPressure: 'vapour pressure',
  wind: 'wind',
} as const;
type Filling = keyof typeof quantityNames;

const sameDay = (a: ReadDay, b: ReadDay): boolean =>
  (Object.keys(a) as (keyof ReadDay)[]).every((quantity) => a[quantity] === b[quantity]);

/** The rows by date, each date once, short gaps opened for filling, long ones refused. */
const unbroken = (rows: readonly ReadRow[], findings: Findings): ReadRow[] => {
  const ordered = [...rows].sort((a, b) => a.number - b.number || a.line - b.line);
  if (rows.some((row, i) => i > 0 && row.number < rows[i - 1]!.number)) {
    findings.cautions.push('the days were not in order and have been sorted');
  }
  const result: ReadRow[] = [];
  for (const row of ordered) {
    const before = result.at(-1);
    if (before !== undefined && row.number === before.number) {
      if (sameDay(row.day, before.day)) findings.skipped.push({ line: row.line, reason: `repeats line ${before.line}` });
      else refuse(findings, row.line, null, `${dateOf(row.number)} stands on line ${before.line} already, with other values`);
      continue;
    }
    const gap = before === undefined ? 0 : row.number - before.number - 1;
    if (gap > longestGap) {
      refuse(findings, row.line, null, `${gap} days are missing before ${dateOf(row.number)}; at most ${longestGap} are filled`);
    } else {
      for (let missing = gap; missing > 0; missing--) {
        result.push({ line: row.line, number: row.number - missing, day: nothingRead() });
      }
    }
    result.push(row);
  }
  return result;
};

/** Vapour pressure from whatever the file has of humidity, kPa. */
const readVapourPressure = (day: ReadDay): number | null => {
  if (day.vapourPressure !== null) return day.vapourPressure;
  if (day.dewPoint !== null) return saturationVapourPressure(day.dewPoint);
  if (day.humidity === null || day.maximum === null || day.minimum === null) return null;
  return Math.min(1, day.humidity) * meanSaturationVapourPressure(day.maximum, day.minimum);
};

/** Radiation as read, or from hours of sunshine where those were read, MJ/m²/d. */
const readRadiation = (rows: readonly ReadRow[], site: DailySite, values: WeatherValues, findings: Findings): (number | null)[] =>
  rows.map(({ line, number, day }) => {
    if (day.radiation !== null || day.sunshine === null) return day.radiation;
    const { year, month, day: dayOfMonth } = calendarDay(number);
    const ofYear = dayOfYear(year, month, dayOfMonth);
    const longest = daylightHours(site.latitude, ofYear);
    const share = longest > 0 ? day.sunshine / longest : 0;
    findings.filledDays.push({ line, number, quantity: 'radiation', how: 'from hours of sunshine' });
    const outside = extraterrestrialRadiation(site.latitude, ofYear);
    return radiationFromSunshine(share, outside, values['weather.sunshine.a'], values['weather.sunshine.b']);
  });

/** Draws short runs of missing values straight; longer ones stay missing. */
const interpolated = (
  rows: readonly ReadRow[],
  values: readonly (number | null)[],
  quantity: Filling,
  findings: Findings,
): (number | null)[] => {
  const result = [...values];
  for (let i = 0; i < result.length; i++) {
    if (values[i] !== null || i === 0) continue;
    if (values[i - 1] === null) continue;
    let end = i;
    while (end < values.length && values[end] === null) end++;
    if (end === values.length || end - i > longestGap) continue;
    const [from, to] = [values[i - 1]!, values[end]!];
    for (let k = i; k < end; k++) {
      result[k] = from + ((to - from) * (k - i + 1)) / (end - i + 1);
      const row = rows[k]!;
      const how = 'drawn straight between the days around it';
      findings.filledDays.push({ line: row.line, number: row.number, quantity: quantityNames[quantity], how });
    }
  }
  return result;
};

/** Refuses every run that is still missing of a quantity without a substitute. */
const refuseMissing = (
  rows: readonly ReadRow[],
  values: readonly (number | null)[],
  quantity: Filling,
  column: string | null,
  findings: Findings,
): void => {
  for (let i = 0; i < values.length; i++) {
    if (values[i] !== null || (i > 0 && values[i - 1] === null)) continue;
    let end = i;
    while (end < values.length && values[end] === null) end++;
    const where = end - i > longestGap ? `at most ${longestGap} are filled` : 'there is no day on both sides to fill from';
    const days = end - i === 1 ? 'a day is' : `${end - i} days are`;
    refuse(
      findings,
      rows[i]!.line,
      column,
      `${days} without ${quantityNames[quantity]} from ${dateOf(rows[i]!.number)}; ${where}`,
    );
  }
};

/**
 * Whole days from the rows of a file: gaps of up to three days drawn straight, radiation, humidity and wind by the rules for missing
 * data, everything else refused.
 * @param columnFor name of the column of a quantity as the file has it
 */
export const filledDays = (
  rows: readonly ReadRow[],
  site: DailySite,
  values: WeatherValues,
  findings: Findings,
  columnFor: (quantity: keyof ReadDay) => string | null,
): DatedWeatherDay[] => {
  const all = unbroken(rows, findings);
  const column = (quantity: Filling, read: (day: ReadDay) => number | null) =>
    interpolated(
      all,
      all.map((row) => read(row.day)),
      quantity,
      findings,
    );
  const maximum = column('maximum', (day) => day.maximum);
  const minimum = column('minimum', (day) => day.minimum);
  const rain = column('rain', (day) => day.rain);
  const radiation = interpolated(all, readRadiation(all, site, values, findings), 'radiation', findings);
  const vapourPressure = column('vapourPressure', readVapourPressure);
  const wind = column('wind', (day) => day.wind);
  refuseMissing(all, maximum, 'maximum', columnFor('maximum'), findings);
  refuseMissing(all, minimum, 'minimum', columnFor('minimum'), findings);
  refuseMissing(all, rain, 'rain', columnFor('rain'), findings);
  if (findings.refused.length > 0) return [];
  return all.map((row, i) => {
    const { year, month, day: dayOfMonth } = calendarDay(row.number);
    const { day, filled } = completedDay(
      {
        // A drawn maximum can fall below a minimum that was read.
        maximum: Math.max(maximum[i]!, minimum[i]!),
        minimum: minimum[i]!,
        rain: rain[i]!,
        radiation: radiation[i]!,
        vapourPressure: vapourPressure[i]!,
        wind: wind[i]!,
      },
      site,
      dayOfYear(year, month, dayOfMonth),
      values,
    );
    for (const { quantity, how } of filled) {
      findings.filledDays.push({ line: row.line, number: row.number, quantity: quantityNames[quantity], how });
    }
    return { date: dateOf(row.number), ...day };
  });
};
