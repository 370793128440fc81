import { calendarDay, dateOf, dayNumberOf, dayOfYear, monthLength, tableDay } from '#engine/weather/calendar-day.ts';

/** The weather of one day at the venue. */
export interface WeatherDay {
  /** Highest air temperature, °C. */
  readonly maximum: number;
  /** Lowest air temperature, °C. */
  readonly minimum: number;
  /** Rain and melted snow, mm. */
  readonly rain: number;
  /** Global radiation on the level, MJ/m²/d. */
  readonly radiation: number;
  /** Actual vapour pressure, kPa. */
  readonly vapourPressure: number;
  /** Wind speed 2 m above the turf, m/s. */
  readonly wind: number;
}

/** A weather day with its date, `YYYY-MM-DD`. */
export interface DatedWeatherDay extends WeatherDay {
  readonly date: string;
}

/** A run of days, one typed array a quantity, for hot loops. Index 0 is the day `start`. */
export interface WeatherSeries {
  /** First day, `YYYY-MM-DD`. */
  readonly start: string;
  readonly days: number;
  /** 1–366. */
  readonly dayOfYear: Int16Array;
  /** 1–12. */
  readonly month: Uint8Array;
  /** Place in a table of 365 days, 0–364; 29 February reads the entry of 28 February. */
  readonly tableDay: Int16Array;
  readonly maximum: Float64Array;
  readonly minimum: Float64Array;
  readonly rain: Float64Array;
  readonly radiation: Float64Array;
  readonly vapourPressure: Float64Array;
  readonly wind: Float64Array;
}

export const quantities = ['maximum', 'minimum', 'rain', 'radiation', 'vapourPressure', 'wind'] as const;
export type Quantity = (typeof quantities)[number];

/** A series of `days` days of zeros with its calendar filled in. @throws RangeError for a bad date or number of days */
export const emptySeries = (start: string, days: number): WeatherSeries => {
  if (!Number.isInteger(days) || days < 0) throw new RangeError(`days: ${days} must be a whole number of days`);
  const series: WeatherSeries = {
    start,
    days,
    dayOfYear: new Int16Array(days),
    month: new Uint8Array(days),
    tableDay: new Int16Array(days),
    maximum: new Float64Array(days),
    minimum: new Float64Array(days),
    rain: new Float64Array(days),
    radiation: new Float64Array(days),
    vapourPressure: new Float64Array(days),
    wind: new Float64Array(days),
  };
  let { year, month, day } = calendarDay(dayNumberOf(start));
  for (let i = 0; i < days; i++) {
    series.dayOfYear[i] = dayOfYear(year, month, day);
    series.month[i] = month;
    series.tableDay[i] = tableDay(month, day);
    if (++day <= monthLength(year, month)) continue;
    day = 1;
    if (++month <= 12) continue;
    month = 1;
    year++;
  }
  return series;
};

/** Writes one day into a series. */
export const setDay = (series: WeatherSeries, index: number, day: WeatherDay): void => {
  for (const quantity of quantities) series[quantity][index] = day[quantity];
};

/** Reads one day of a series. @throws RangeError outside the series */
export const dayAt = (series: WeatherSeries, index: number): WeatherDay => {
  if (!(index >= 0 && index < series.days)) throw new RangeError(`index: ${index} is outside the ${series.days} days`);
  return {
    maximum: series.maximum[index]!,
    minimum: series.minimum[index]!,
    rain: series.rain[index]!,
    radiation: series.radiation[index]!,
    vapourPressure: series.vapourPressure[index]!,
    wind: series.wind[index]!,
  };
};

/** A series from days that follow one another. */
export const seriesFrom = (start: string, days: readonly WeatherDay[]): WeatherSeries => {
  const series = emptySeries(start, days.length);
  days.forEach((day, index) => setDay(series, index, day));
  return series;
};

/** The days of a series with their dates. */
export const datedDays = (series: WeatherSeries): DatedWeatherDay[] => {
  const first = dayNumberOf(series.start);
  return Array.from({ length: series.days }, (_, index) => ({ date: dateOf(first + index), ...dayAt(series, index) }));
};

/** An independent copy. */
export const copyOf = (series: WeatherSeries): WeatherSeries => {
  const copy = emptySeries(series.start, series.days);
  for (const quantity of quantities) copy[quantity].set(series[quantity]);
  return copy;
};
