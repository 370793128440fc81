import type { WeatherValues } from '#shared/parameters/weather.ts';
import type { Climate } from '#shared/vocabulary/venue.ts';
import { daysBeforeMonth } from '#engine/weather/calendar-day.ts';
import type { DailySite } from '#engine/weather/daily-radiation.ts';
import { emptySeries, type WeatherSeries } from '#engine/weather/weather-day.ts';
import { modelVapourPressure, weatherModel, type WeatherModel } from '#engine/weather/weather-model.ts';

/**
 * The season as the calendar has it, without chance: what a one-member forecast and a dragged stage run on.
 *
 * Temperatures, radiation, humidity and wind follow the smooth courses. Wet days come at the normal frequency, evenly spaced, on
 * the same dates every year; each brings the rain that the calendar has gathered since the wet day before, so the year's rain is
 * exact. 29 February repeats 28 February without its rain.
 */
export const normalSeason = (
  climate: Climate,
  site: DailySite,
  values: WeatherValues,
  start: string,
  days: number,
): WeatherSeries => normalSeasonOf(weatherModel(climate, site, values), start, days);

/** The same from a model that exists already. */
export const normalSeasonOf = (model: WeatherModel, start: string, days: number): WeatherSeries => {
  const series = emptySeries(start, days);
  const rain = regularRain(model);
  for (let i = 0; i < days; i++) {
    const place = series.tableDay[i]!;
    // The second of two days that read the same entry is 29 February.
    const repeated = series.month[i] === 2 && series.dayOfYear[i] === 60;
    const maximum = Math.max(model.maximum[place]!, model.minimum[place]!);
    series.maximum[i] = maximum;
    series.minimum[i] = model.minimum[place]!;
    series.rain[i] = repeated ? 0 : rain[place]!;
    series.radiation[i] = model.radiation[place]!;
    series.vapourPressure[i] = modelVapourPressure(model, place, maximum, model.minimum[place]!);
    series.wind[i] = model.wind[place]!;
  }
  return series;
};

/** Rain of each day of a common year on evenly spaced wet days, mm. */
export const regularRain = (model: WeatherModel): Float64Array => {
  const rain = new Float64Array(365);
  let expected = 0;
  for (let month = 0; month < 12; month++) {
    expected += model.wetShare[month]! * (daysBeforeMonth[month + 1]! - daysBeforeMonth[month]!);
  }
  if (expected <= 0) return rain;
  // A whole number of wet days a year, so that the dates repeat.
  const stretch = Math.max(1, Math.round(expected)) / expected;
  let due = 0.5;
  let gathered = 0;
  // The second pass starts with what the first left over at the end of December.
  for (let pass = 0; pass < 2; pass++) {
    let month = 0;
    for (let day = 0; day < 365; day++) {
      while (day >= daysBeforeMonth[month + 1]!) month++;
      due += model.wetShare[month]! * stretch;
      gathered += model.rain[day]!;
      if (due >= 1 - 1e-9) {
        rain[day] = gathered;
        gathered = 0;
        due -= 1;
      } else rain[day] = 0;
    }
  }
  return rain;
};
