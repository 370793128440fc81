import type { WeatherValues } from '#shared/parameters/weather.ts';
import type { DayBetween, HourlyShape } from '#engine/weather/hours-of-day.ts';
import type { WeatherSeries } from '#engine/weather/weather-day.ts';

/** The catalogue's shape of a day. */
export const hourlyShape = (values: WeatherValues): HourlyShape => ({
  maximumLag: values['weather.hours.maximumLag'],
  minimumLag: values['weather.hours.minimumLag'],
  nightDecay: values['weather.hours.nightDecay'],
  windRatio: values['weather.wind.dayOverNight'],
  rainIntensity: values['weather.rain.intensity'],
  rainCentre: values['weather.rain.centre'],
});

/** One day of a series with what its nights need from its neighbours. */
export const dayBetween = (series: WeatherSeries, index: number): DayBetween => ({
  maximum: series.maximum[index]!,
  minimum: series.minimum[index]!,
  rain: series.rain[index]!,
  vapourPressure: series.vapourPressure[index]!,
  wind: series.wind[index]!,
  maximumBefore: series.maximum[index > 0 ? index - 1 : index]!,
  minimumBefore: series.minimum[index > 0 ? index - 1 : index]!,
  minimumAfter: series.minimum[index + 1 < series.days ? index + 1 : index]!,
});
