import { isCalendarDay } from '#engine/weather/calendar-day.ts';
import { saturationVapourPressure } from '#engine/weather/humidity.ts';
import { refuse, type Findings } from '#platform/weather-files/import-report.ts';

/**
 * The lines of an EPW file: eight of header, then one an hour with 35 cells. Hours are standard time of the place, hour 1 ends at
 * one o'clock. Radiation is Wh/m² of the hour, wind m/s at 10 m, rain mm.
 * @source energyplus-auxiliary-programs
 */
export interface EpwHour {
  readonly line: number;
  readonly year: number;
  readonly month: number;
  readonly day: number;
  /** 1–24 */
  readonly hour: number;
  /** °C; null is missing, and so below. */
  readonly dryBulb: number | null;
  readonly dewPoint: number | null;
  /** 0–1 */
  readonly humidity: number | null;
  /** Wh/m² */
  readonly radiation: number | null;
  /** m/s at 10 m */
  readonly wind: number | null;
  /** mm */
  readonly rain: number | null;
}

export interface EpwHeader {
  readonly place: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation: number;
  readonly recordsPerHour: number;
  /** Month and day of the first and last day, null where the header does not say. */
  readonly from: readonly [number, number] | null;
  readonly until: readonly [number, number] | null;
}

const keywords = [
  'LOCATION',
  'DESIGN CONDITIONS',
  'TYPICAL/EXTREME PERIODS',
  'GROUND TEMPERATURES',
  'HOLIDAYS/DAYLIGHT SAVINGS',
  'COMMENTS 1',
  'COMMENTS 2',
  'DATA PERIODS',
];

/** Cells of an hour that are read: place in the line, limits, the value from which on it counts as missing. */
const cells = {
  dryBulb: { place: 6, name: 'dry bulb temperature', low: -70, high: 58, missing: 99.9, unit: '°C' },
  dewPoint: { place: 7, name: 'dew point temperature', low: -80, high: 45, missing: 99.9, unit: '°C' },
  humidity: { place: 8, name: 'relative humidity', low: 0, high: 110, missing: 999, unit: '%' },
  radiation: { place: 13, name: 'global horizontal radiation', low: 0, high: 1500, missing: 9999, unit: 'Wh/m²' },
  wind: { place: 21, name: 'wind speed', low: 0, high: 75, missing: 999, unit: 'm/s' },
  rain: { place: 33, name: 'liquid precipitation depth', low: 0, high: 400, missing: 999, unit: 'mm' },
} as const;
type Cell = keyof typeof cells;

/** Reads and checks the eight lines of header; null when they are not those of an EPW file. */
export const epwHeader = (lines: readonly string[], findings: Findings): EpwHeader | null => {
  for (let i = 0; i < keywords.length; i++) {
    const keyword = keywords[i]!;
    const head = (lines[i] ?? '').split(',')[0]!.trim().toUpperCase();
    if (head === keyword) continue;
    const found = lines[i] === undefined ? 'the file ends before it' : `it begins with "${head.slice(0, 40)}"`;
    refuse(findings, i + 1, null, `this line of an EPW file begins with ${keyword}; ${found}`);
    return null;
  }
  const location = lines[0]!.split(',').map((cell) => cell.trim());
  const [latitude, longitude, elevation] = [Number(location[6]), Number(location[7]), Number(location[9])];
  if (!(
    location.length >= 10 &&
    Math.abs(latitude) <= 90 &&
    Math.abs(longitude) <= 180 &&
    elevation >= -500 &&
    elevation <= 9000
  )) {
    refuse(findings, 1, 'LOCATION', 'latitude, longitude and elevation of the place cannot be read');
    return null;
  }
  const periods = lines[7]!.split(',').map((cell) => cell.trim());
  const recordsPerHour = Number(periods[2]);
  if (!(Number(periods[1]) >= 1) || !(Number.isInteger(recordsPerHour) && recordsPerHour >= 1 && recordsPerHour <= 60)) {
    refuse(findings, 8, 'DATA PERIODS', 'the number of periods and of records per hour cannot be read');
    return null;
  }
  if (Number(periods[1]) > 1) {
    refuse(findings, 8, 'DATA PERIODS', 'the file holds several periods; import one period a file');
    return null;
  }
  return {
    place: location[1] ?? '',
    latitude,
    longitude,
    elevation,
    recordsPerHour,
    from: monthAndDay(periods[5]),
    until: monthAndDay(periods[6]),
  };
};

const monthAndDay = (cell: string | undefined): readonly [number, number] | null => {
  const parts = /^\s*(\d{1,2})\s*\/\s*(\d{1,2})/.exec(cell ?? '');
  return parts === null ? null : [Number(parts[1]), Number(parts[2])];
};

const readCell = (values: readonly string[], cell: Cell, line: number, findings: Findings): number | null => {
  const { place, name, low, high, missing, unit } = cells[cell];
  const text = (values[place] ?? '').trim();
  if (text === '') return null;
  const value = Number(text);
  if (!Number.isFinite(value)) {
    refuse(findings, line, name, `"${text}" is not a figure`);
    return null;
  }
  // 99.9 is the code of a missing temperature, 99 and 99.99 of careless writers; 9999 stands for anything.
  const code = missing === 99.9 ? value === 99.9 || value === 99 || value === 99.99 || value === 999 : value === missing;
  if (code || value === 9999 || value === 999999) return null;
  if (value < low || value > high) {
    refuse(findings, line, name, `${value} ${unit} lies outside ${low} to ${high} ${unit}: are the columns shifted or swapped?`);
    return null;
  }
  return value;
};

/** What does not fit together within an hour shows columns that are swapped. */
const checkTogether = (hour: EpwHour, findings: Findings): void => {
  const { dryBulb, dewPoint, humidity, line } = hour;
  if (dryBulb === null || dewPoint === null) return;
  if (dewPoint > dryBulb + 2) {
    const reason = `the dew point of ${dewPoint} °C is above the dry bulb of ${dryBulb} °C: are the columns swapped?`;
    refuse(findings, line, cells.dewPoint.name, reason);
    return;
  }
  // In hard frost files differ on whether humidity is over water or ice.
  if (humidity === null || dryBulb < -10) return;
  const implied = Math.min(1, saturationVapourPressure(dewPoint) / saturationVapourPressure(dryBulb));
  if (Math.abs(implied - humidity) > 0.25) {
    const reason = `${Math.round(humidity * 100)} % does not go with ${dryBulb} °C and a dew point of ${dewPoint} °C, which make ${Math.round(implied * 100)} %`;
    refuse(findings, line, cells.humidity.name, reason);
  }
};

/** Reads one line of data; null when it was refused as a whole. */
export const epwHour = (text: string, line: number, findings: Findings): EpwHour | null => {
  const values = text.split(',');
  if (values.length < 32) {
    refuse(findings, line, null, `the line has ${values.length} cells where 35 belong: the file is cut off or not EPW`);
    return null;
  }
  const [year, month, day, hour] = values.slice(0, 4).map((cell) => Number(cell.trim() || NaN)) as [
    number,
    number,
    number,
    number,
  ];
  // Typical years are put together from months of several years, so a leap day is judged without the year printed beside it.
  if (!isCalendarDay(2000, month, day) || !Number.isInteger(year)) {
    refuse(findings, line, 'date', `${values.slice(0, 3).join('-')} is not a day of the calendar`);
    return null;
  }
  if (!(Number.isInteger(hour) && hour >= 1 && hour <= 24)) {
    refuse(findings, line, 'hour', `"${values[3]}" is not an hour from 1 to 24`);
    return null;
  }
  const humidity = readCell(values, 'humidity', line, findings);
  const read: EpwHour = {
    line,
    year,
    month,
    day,
    hour,
    dryBulb: readCell(values, 'dryBulb', line, findings),
    dewPoint: readCell(values, 'dewPoint', line, findings),
    humidity: humidity === null ? null : Math.min(1, humidity / 100),
    radiation: readCell(values, 'radiation', line, findings),
    wind: readCell(values, 'wind', line, findings),
    rain: readCell(values, 'rain', line, findings),
  };
  checkTogether(read, findings);
  return read;
};
