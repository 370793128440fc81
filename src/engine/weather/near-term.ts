import type { WeatherValues } from '#shared/parameters/weather.ts';
import { normal, streamFor } from '#engine/chance/stream.ts';
import { dayNumberOf } from '#engine/weather/calendar-day.ts';
import type { DailySite } from '#engine/weather/daily-radiation.ts';
import { meanSaturationVapourPressure } from '#engine/weather/humidity.ts';
import { completedDay, type PartialDay } from '#engine/weather/missing-weather.ts';
import { copyOf, setDay, type DatedWeatherDay, type WeatherDay, type WeatherSeries } from '#engine/weather/weather-day.ts';

/**
 * What is known better than the climate: a forecast for the next days, and readings of the days that are past. A forecast day
 * replaces that day of every member, with a spread between members that grows with the lead; a reading replaces everything up to
 * the last day that was read.
 */
export interface ForecastDay extends PartialDay {
  readonly date: string;
  /** Chance that the day's rain falls at all, 0–1; null or left out: it falls in every member. */
  readonly rainChance?: number | null;
}

/** How members differ within a forecast. */
export interface ForecastSpread {
  /** Standard deviation of the temperatures on the first day, K; grows with the root of the lead. */
  readonly temperature: number;
  /** The same for rain, as the deviation of its logarithm; held at 1. */
  readonly rain: number;
}

export const forecastSpread = (values: WeatherValues): ForecastSpread => ({
  temperature: values['weather.forecast.temperatureSpread'],
  rain: values['weather.forecast.rainSpread'],
});

/** One member's departure from the forecast, day by day of the lead. */
const varied = (day: WeatherDay, shift: number, factor: number, falls: boolean): WeatherDay => {
  const maximum = day.maximum + shift;
  const minimum = day.minimum + shift;
  // Relative humidity is kept, so that a warmer member is not a drier one by accident.
  const wetter = meanSaturationVapourPressure(maximum, minimum) / meanSaturationVapourPressure(day.maximum, day.minimum);
  return { ...day, maximum, minimum, rain: falls ? day.rain * factor : 0, vapourPressure: day.vapourPressure * wetter };
};

/**
 * A member with the forecast in place. Days outside the series are ignored; a gap in the forecast leaves the member's own day.
 * @param spread null for a forecast taken as it stands (chances of rain below one half then bring none)
 */
export const withForecast = (
  series: WeatherSeries,
  forecast: readonly ForecastDay[],
  site: DailySite,
  values: WeatherValues,
  spread: ForecastSpread | null,
  seed: number,
  member: number,
): WeatherSeries => {
  const copy = copyOf(series);
  const first = dayNumberOf(series.start);
  const warmth = streamFor(seed, 'weather: forecast temperature', member);
  const wetness = streamFor(seed, 'weather: forecast rain', member);
  const chance = streamFor(seed, 'weather: forecast chance of rain', member);
  let shift = 0;
  let lead = 0;
  for (const known of [...forecast].sort((a, b) => dayNumberOf(a.date) - dayNumberOf(b.date))) {
    lead++;
    const step = normal(warmth);
    const rainStep = normal(wetness);
    const draw = chance();
    if (spread !== null) shift += spread.temperature * step;
    const index = dayNumberOf(known.date) - first;
    if (index < 0 || index >= copy.days) continue;
    const { day } = completedDay(known, site, copy.dayOfYear[index]!, values);
    const deviation = spread === null ? 0 : Math.min(1, spread.rain * Math.sqrt(lead));
    const factor = Math.exp(deviation * rainStep - (deviation * deviation) / 2);
    const likely = known.rainChance ?? 1;
    const falls = spread === null ? likely >= 0.5 : draw < likely;
    setDay(copy, index, varied(day, shift, factor, falls));
  }
  return copy;
};

/**
 * A member with the readings in place: every day up to the last reading is a reading. A day in between that was not read is
 * drawn straight between its neighbours; one before the first reading keeps the member's own weather.
 */
export const withActuals = (series: WeatherSeries, actuals: readonly DatedWeatherDay[]): WeatherSeries => {
  const copy = copyOf(series);
  const first = dayNumberOf(series.start);
  const read = actuals.map((day) => ({ index: dayNumberOf(day.date) - first, day })).sort((a, b) => a.index - b.index);
  read.forEach(({ index, day }, position) => {
    if (index >= 0 && index < copy.days) setDay(copy, index, day);
    const next = read[position + 1];
    if (next === undefined) return;
    for (let gap = index + 1; gap < next.index; gap++) {
      if (gap >= 0 && gap < copy.days) setDay(copy, gap, between(day, next.day, (gap - index) / (next.index - index)));
    }
  });
  return copy;
};

/** A day drawn straight between two, `share` of the way from the first. */
export const between = (from: WeatherDay, to: WeatherDay, share: number): WeatherDay => ({
  maximum: from.maximum + share * (to.maximum - from.maximum),
  minimum: from.minimum + share * (to.minimum - from.minimum),
  rain: from.rain + share * (to.rain - from.rain),
  radiation: from.radiation + share * (to.radiation - from.radiation),
  vapourPressure: from.vapourPressure + share * (to.vapourPressure - from.vapourPressure),
  wind: from.wind + share * (to.wind - from.wind),
});
