import { streamFor } from '#engine/chance/stream.ts';
import { gammaQuantile } from '#engine/weather/gamma-distribution.ts';
import { emptySeries, type WeatherSeries } from '#engine/weather/weather-day.ts';
import { modelVapourPressure, type WeatherModel } from '#engine/weather/weather-model.ts';
import { nextResiduals, startResiduals } from '#engine/weather/weather-residuals.ts';

/**
 * Days that could have been: a two-state chain of wet and dry days, gamma amounts, and departures of temperature and radiation
 * that persist from day to day. The same seed and member give the same bytes. One stream a purpose, one draw a day from each, so
 * that a change of one quantity's climate leaves the draws of the others where they were.
 *
 * After the draw: where the minimum comes out above the maximum both take their mean; 0 ≤ radiation ≤ the ceiling; a wet day has
 * at least 0.01 mm; vapour pressure never above saturation.
 * @source richardson-wright-1984
 */
export const generatedWeather = (model: WeatherModel, start: string, days: number, seed: number, member = 0): WeatherSeries => {
  const series = emptySeries(start, days);
  const occurrence = streamFor(seed, 'weather: wet or dry', member);
  const amount = streamFor(seed, 'weather: amount of rain', member);
  const departure = streamFor(seed, 'weather: temperature and radiation', member);
  const residual = new Float64Array(3);
  let wet = false;
  for (let i = 0; i < days; i++) {
    const month = series.month[i]! - 1;
    wet = nextWet(model, month, i === 0 ? null : wet, occurrence());
    series.rain[i] = rainOf(model, month, wet, amount());
    if (i === 0) startResiduals(residual, departure);
    else nextResiduals(residual, departure);
    writeDay(model, series, i, series.tableDay[i]!, wet, residual);
  }
  return series;
};

const nextWet = (model: WeatherModel, month: number, before: boolean | null, draw: number): boolean => {
  if (before === null) return draw < model.wetShare[month]!;
  return draw < (before ? model.wetAfterWet[month]! : model.wetAfterDry[month]!);
};

const rainOf = (model: WeatherModel, month: number, wet: boolean, draw: number): number => {
  if (!wet || model.scale[month]! <= 0) return 0;
  return Math.max(0.01, model.scale[month]! * gammaQuantile(model.shape[month]!, draw, model.logGammaOfShape[month]!));
};

const writeDay = (
  model: WeatherModel,
  series: WeatherSeries,
  index: number,
  place: number,
  wet: boolean,
  residual: Float64Array,
): void => {
  const deviation = model.temperatureDeviation[place]!;
  let maximum = (wet ? model.maximumWet : model.maximumDry)[place]! + deviation * residual[0]!;
  let minimum = model.minimum[place]! + deviation * residual[1]!;
  if (minimum > maximum) maximum = minimum = (maximum + minimum) / 2;
  const centre = (wet ? model.radiationWet : model.radiationDry)[place]!;
  const spread = (wet ? model.radiationWetDeviation : model.radiationDryDeviation)[place]!;
  series.maximum[index] = maximum;
  series.minimum[index] = minimum;
  series.radiation[index] = Math.max(0, Math.min(model.radiationCeiling[place]!, centre + spread * residual[2]!));
  series.vapourPressure[index] = modelVapourPressure(model, place, maximum, minimum);
  series.wind[index] = model.wind[place]!;
};
