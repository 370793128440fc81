import { dayNumber, dayOfYear, monthLength } from '#engine/weather/calendar-day.ts';
import { saturationVapourPressure, windAtTwoMetres } from '#engine/weather/humidity.ts';
import type { ImportPlace } from '#platform/weather-files/csv-days.ts';
import { dayProblems, nothingRead, type ReadDay } from '#platform/weather-files/day-limits.ts';
import { epwHeader, epwHour, type EpwHeader, type EpwHour } from '#platform/weather-files/epw-lines.ts';
import { filledDays, type ReadRow } from '#platform/weather-files/filled-days.ts';
import { noFindings, refuse, reportOf, type Findings, type WeatherImport } from '#platform/weather-files/import-report.ts';
import { textProblem } from '#platform/weather-files/weather-text.ts';

/** All hours of one day. */
interface HourGroup {
  readonly first: EpwHour;
  readonly hours: EpwHour[];
}

/** Longest run of hours without temperature that is drawn straight, h. */
const longestHourGap = 6;

/** Puts the hours into days; every day must have each hour once, in order. */
const daysOfHours = (hours: readonly EpwHour[], header: EpwHeader, findings: Findings): HourGroup[] => {
  const groups: HourGroup[] = [];
  for (const hour of hours) {
    const last = groups.at(-1);
    if (last !== undefined && last.first.month === hour.month && last.first.day === hour.day) last.hours.push(hour);
    else groups.push({ first: hour, hours: [hour] });
  }
  const full = 24 * header.recordsPerHour;
  groups.forEach((group, index) => {
    const { first, hours: own } = group;
    const name = `${first.day}.${first.month}.`;
    const misplaced = own.findIndex((hour, i) => hour.hour !== Math.floor(i / header.recordsPerHour) + 1);
    const end = own.at(-1)!.line;
    if (own.length < full && index === groups.length - 1) {
      refuse(findings, end, null, `the file ends after hour ${own.at(-1)!.hour} of ${name}: it is cut off`);
    } else if (own.length !== full || misplaced >= 0) {
      const at = misplaced >= 0 ? own[misplaced]!.line : end;
      refuse(
        findings,
        at,
        'hour',
        `${name} has ${own.length} records that do not run from hour 1 to 24; ${full} in order belong`,
      );
    }
  });
  return groups;
};

/** The days must follow one another and reach from the first to the last day that the header names. */
const checkRun = (groups: readonly HourGroup[], header: EpwHeader, year: number, findings: Findings): number[] => {
  const numbers: number[] = [];
  let running = year;
  groups.forEach(({ first }, i) => {
    const before = groups[i - 1]?.first;
    if (before !== undefined && (first.month < before.month || (first.month === before.month && first.day < before.day)))
      running++;
    const number = dayNumber(running, first.month, Math.min(first.day, monthLength(running, first.month)));
    const expected = numbers.length === 0 ? number : numbers.at(-1)! + 1;
    const leapLeftOut = first.month === 3 && first.day === 1 && number === expected + 1;
    if (number !== expected && !leapLeftOut) {
      refuse(findings, first.line, 'date', `${first.day}.${first.month}. does not follow the day before it`);
    }
    numbers.push(number);
  });
  const [first, last] = [groups[0]!.first, groups.at(-1)!.first];
  if (header.from !== null && (first.month !== header.from[0] || first.day !== header.from[1])) {
    refuse(findings, first.line, 'date', `the header lets the data begin on ${header.from[1]}.${header.from[0]}.`);
  }
  if (header.until !== null && (last.month !== header.until[0] || last.day !== header.until[1])) {
    const said = `${header.until[1]}.${header.until[0]}.`;
    refuse(findings, last.line, 'date', `the file ends on ${last.day}.${last.month}.; its header says ${said}: it is cut off`);
  }
  return numbers;
};

const known = (values: readonly (number | null)[]): number[] => values.filter((value) => value !== null);
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Temperatures of all hours with short gaps drawn straight; long gaps are refused. */
const temperatures = (hours: readonly EpwHour[], note: (hour: EpwHour) => void, findings: Findings): (number | null)[] => {
  const result = hours.map((hour) => hour.dryBulb);
  for (let i = 0; i < result.length; i++) {
    if (hours[i]!.dryBulb !== null || result[i] !== null) continue;
    let end = i;
    while (end < hours.length && hours[end]!.dryBulb === null) end++;
    const [from, to] = [i > 0 ? result[i - 1]! : null, end < hours.length ? hours[end]!.dryBulb : null];
    if (from === null || to === null || end - i > longestHourGap) {
      const why = `${end - i} hours in a row without temperature; at most ${longestHourGap} between readings are filled`;
      refuse(findings, hours[i]!.line, 'dry bulb temperature', why);
      i = end;
      continue;
    }
    for (let k = i; k < end; k++) {
      result[k] = from + ((to - from) * (k - i + 1)) / (end - i + 1);
      note(hours[k]!);
    }
  }
  return result;
};

const vapourPressureOf = (hour: EpwHour, temperature: number | null): number | null => {
  if (hour.dewPoint !== null) return saturationVapourPressure(hour.dewPoint);
  return hour.humidity === null || temperature === null ? null : hour.humidity * saturationVapourPressure(temperature);
};

/** One day from its hours. Radiation needs every hour; wind and humidity at least half of them; missing rain counts as none. */
const dayOf = (hours: readonly EpwHour[], air: readonly (number | null)[], recordsPerHour: number): ReadDay => {
  const day = nothingRead();
  const read = known(air);
  if (read.length === hours.length) {
    day.maximum = Math.max(...read);
    day.minimum = Math.min(...read);
  }
  const sun = known(hours.map((hour) => hour.radiation));
  // Several records an hour: each states the energy of an hour at its rate.
  if (sun.length === hours.length) day.radiation = (0.0036 * sun.reduce((sum, value) => sum + value, 0)) / recordsPerHour;
  const moisture = known(hours.map((hour, i) => vapourPressureOf(hour, air[i]!)));
  if (moisture.length * 2 >= hours.length) day.vapourPressure = mean(moisture);
  const wind = known(hours.map((hour) => hour.wind));
  if (wind.length * 2 >= hours.length) day.wind = windAtTwoMetres(mean(wind), 10);
  day.rain = known(hours.map((hour) => hour.rain)).reduce((sum, value) => sum + value, 0);
  return day;
};

/** Year the days are filed under: the one printed where the whole file shares it, else a nominal one. */
const filedYear = (hours: readonly EpwHour[], findings: Findings): number => {
  const years = [...new Set(hours.map((hour) => hour.year))];
  const leap = hours.some((hour) => hour.month === 2 && hour.day === 29);
  const only = years.length === 1 ? years[0]! : null;
  if (only !== null && only >= 1990 && only <= 2099 && (!leap || monthLength(only, 2) === 29)) return only;
  const nominal = leap ? 2000 : 2001;
  const what = only === null ? `months of ${years.length} years` : `the year ${only}`;
  findings.cautions.push(`the file holds ${what}; its days are filed under ${nominal} and stand for any year`);
  return nominal;
};

const cautionsOf = (header: EpwHeader, hours: readonly EpwHour[], place: ImportPlace, findings: Findings): void => {
  const rain = hours.map((hour) => hour.rain);
  if (rain.every((value) => value === null)) {
    findings.cautions.push('the file carries no rain: every day is taken as dry, so use the monthly normals for rain');
  } else if (known(rain).every((value) => value === 0)) {
    findings.cautions.push(
      'the file has 0 mm of rain in every hour; many such files leave rain out: compare with the monthly normals',
    );
  }
  const apart = Math.abs(header.latitude - place.site.latitude);
  if (apart > 1) {
    findings.cautions.push(`the file is for latitude ${header.latitude}°, ${apart.toFixed(1)}° away from the venue`);
  }
};

const rowsOf = (groups: readonly HourGroup[], numbers: readonly number[], header: EpwHeader, findings: Findings): ReadRow[] => {
  const hours = groups.flatMap((group) => group.hours);
  const numberOf = new Map(groups.flatMap((group, i) => group.hours.map((hour) => [hour, numbers[i]!] as const)));
  const air = temperatures(
    hours,
    (hour) => {
      const how = 'hours drawn straight between the readings around them';
      findings.filledDays.push({ line: hour.line, number: numberOf.get(hour)!, quantity: 'temperature', how });
    },
    findings,
  );
  const anyRain = hours.some((hour) => hour.rain !== null);
  const seen = new Set<number>();
  let start = 0;
  return groups.map(({ first, hours: own }, i) => {
    const day = dayOf(own, air.slice(start, start + own.length), header.recordsPerHour);
    start += own.length;
    const number = numbers[i]!;
    if (own.some((hour) => hour.rain === null)) {
      const how = anyRain ? 'hours without a reading taken as dry' : 'taken as dry: the file carries no rain';
      findings.filledDays.push({ line: first.line, number, quantity: 'rain', how });
    }
    if (seen.has(number)) refuse(findings, first.line, 'date', 'the day stands in the file twice');
    seen.add(number);
    for (const { quantity, reason } of dayProblems(
      day,
      header.latitude,
      dayOfYear(2001, first.month, Math.min(first.day, monthLength(2001, first.month))),
    )) {
      refuse(findings, first.line, quantity, reason);
    }
    return { line: first.line, number, day };
  });
};

/**
 * Days from the text of an EPW file: highest and lowest hour of temperature, sums of radiation and rain, means of vapour pressure and
 * wind (brought from 10 m to 2 m). A file that is cut off, has a day twice, a column out of its limits or columns that do not go
 * together is refused by line, and then no day is given.
 */
export const epwDays = (text: string, place: ImportPlace): WeatherImport => {
  const findings = noFindings();
  const problem = textProblem(text, place.byteLength ?? text.length);
  if (problem !== null) {
    refuse(findings, 0, null, problem);
    return reportOf(findings, []);
  }
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  while (lines.at(-1)?.trim() === '') lines.pop();
  const header = epwHeader(lines, findings);
  if (header === null) return reportOf(findings, []);
  const hours: EpwHour[] = [];
  for (let i = 8; i < lines.length; i++) {
    const hour = epwHour(lines[i]!, i + 1, findings);
    if (hour !== null) hours.push(hour);
  }
  findings.read = lines.length - 8;
  if (hours.length === 0 && findings.refused.length === 0)
    refuse(findings, lines.length, null, 'no hours follow the header: the file is cut off');
  if (findings.refused.length > 0) return reportOf(findings, []);
  const groups = daysOfHours(hours, header, findings);
  const numbers = checkRun(groups, header, filedYear(hours, findings), findings);
  if (findings.refused.length > 0) return reportOf(findings, []);
  cautionsOf(header, hours, place, findings);
  for (const [quantity, unit] of [
    ['dry bulb temperature', '°C'],
    ['dew point temperature', '°C'],
    ['global horizontal radiation', 'Wh/m²'],
    ['wind speed', 'm/s at 10 m'],
    ['liquid precipitation depth', 'mm'],
  ] as const) {
    findings.columns.push({ column: quantity, quantity, unit });
  }
  const rows = rowsOf(groups, numbers, header, findings);
  if (findings.refused.length > 0) return reportOf(findings, []);
  const site = { latitude: header.latitude, elevation: header.elevation };
  return reportOf(
    findings,
    filledDays(rows, site, place.values, findings, () => null),
  );
};
