import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import type { Climate } from '#shared/vocabulary/venue.ts';
import { lastFew } from '#shared/last-few.ts';
import { daysBeforeMonth, monthLengths } from '#engine/weather/calendar-day.ts';
import { centreForMean } from '#engine/weather/clamped-normal.ts';
import { extraterrestrialRadiation, type DailySite } from '#engine/weather/daily-radiation.ts';
import { logGamma } from '#engine/weather/gamma-distribution.ts';
import { meanSaturationVapourPressure, saturationVapourPressure } from '#engine/weather/humidity.ts';
import { rainAmount, wetDayChain, type RainRules } from '#engine/weather/rain-model.ts';
import { seasonCurve } from '#engine/weather/season-curve.ts';

/**
 * A venue's climate made ready for drawing days: twelve rain chains and 365-day courses of everything else.
 *
 * A climate table gives one mean a month, not one for wet and one for dry days. With f the share of wet days, D the cooling of a
 * wet day and r the radiation of a wet day relative to a dry one:
 *   dry maximum = mean + f D, wet maximum = mean − (1 − f) D;   dry radiation = mean/(1 − f + f r), wet = r · dry
 * so that the two together keep the month's mean. D, r and the deviations are the catalogue's own assumptions.
 * Humidity: the month's relative humidity times the saturation of the day; where unknown the dew point is the night minimum less
 * a set depression. Wind: the month's mean, at least the floor; where unknown the default. Wind does not vary from day to day.
 * @source richardson-wright-1984
 * @source geng-1986
 * @source allen-1998
 */
export interface WeatherModel {
  /** By month, January first. */
  readonly wetShare: Float64Array;
  readonly wetAfterDry: Float64Array;
  readonly wetAfterWet: Float64Array;
  readonly shape: Float64Array;
  /** mm */
  readonly scale: Float64Array;
  readonly logGammaOfShape: Float64Array;
  /** By day of a common year: season's means. */
  readonly maximum: Float64Array;
  readonly minimum: Float64Array;
  readonly radiation: Float64Array;
  /** Mean rain per day, mm, a step at each month. */
  readonly rain: Float64Array;
  readonly maximumDry: Float64Array;
  readonly maximumWet: Float64Array;
  /** K */
  readonly temperatureDeviation: Float64Array;
  /** Centre and deviation of the normal draw, and its upper limit, MJ/m²/d. */
  readonly radiationDry: Float64Array;
  readonly radiationWet: Float64Array;
  readonly radiationDryDeviation: Float64Array;
  readonly radiationWetDeviation: Float64Array;
  readonly radiationCeiling: Float64Array;
  /** Relative humidity 0–1, or null where the dew point follows the minimum. */
  readonly humidity: Float64Array | null;
  /** K */
  readonly dewPointBelowMinimum: number;
  /** m/s */
  readonly wind: Float64Array;
}

const rulesOf = (values: WeatherValues): RainRules => ({
  wetAfterDry: values['weather.chain.wetAfterDry'],
  persistence: values['weather.chain.persistence'],
  scaleOffset: values['weather.rain.scaleOffset'],
  scaleSlope: values['weather.rain.scaleSlope'],
  smallMean: values['weather.rain.smallMean'],
  smallScale: values['weather.rain.smallScale'],
});

/** A month with rain has at least one wet day, so that its rain can fall. */
const wetShares = (climate: Climate): Float64Array =>
  Float64Array.from(climate.wetDays, (days, month) => {
    if (climate.rain[month]! <= 0) return 0;
    return Math.min(1, Math.max(days, 1) / monthLengths[month]!);
  });

const monthOfDay = Uint8Array.from({ length: 365 }, (_, day) => daysBeforeMonth.findIndex((before) => before > day) - 1);

const byDay = (value: (day: number, month: number) => number): Float64Array =>
  Float64Array.from({ length: 365 }, (_, day) => value(day, monthOfDay[day]!));

/** Radiation of the season where no month is given: by the range of temperature. */
const radiationCourse = (climate: Climate, site: DailySite, values: WeatherValues, range: (day: number) => number) => {
  const known = climate.radiation === null ? null : seasonCurve(climate.radiation);
  const ceiling = values['weather.radiation.ceiling'];
  return byDay((day) => {
    const outside = extraterrestrialRadiation(site.latitude, day + 1);
    const estimate = values['weather.radiation.fromRange'] * Math.sqrt(Math.max(0, range(day))) * outside;
    return Math.max(0, Math.min(0.97 * ceiling * outside, known === null ? estimate : known[day]!));
  });
};

/** The model of a climate at a place. @throws RangeError for a climate without twelve months */
export const weatherModel = (climate: Climate, site: DailySite, values: WeatherValues): WeatherModel => {
  const rules = rulesOf(values);
  const wetShare = wetShares(climate);
  const chains = Array.from(wetShare, (share) => wetDayChain(share, rules));
  const amounts = Array.from(wetShare, (share, month) =>
    rainAmount(share > 0 ? climate.rain[month]! / (share * monthLengths[month]!) : 0, rules),
  );
  const warmest = Math.max(...climate.maximum.map((high, month) => (high + climate.minimum[month]!) / 2));
  const deviations = climate.maximum.map((high, month) => {
    const below = warmest - (high + climate.minimum[month]!) / 2;
    return values['weather.deviation.warmest'] + values['weather.deviation.growth'] * below;
  });
  const maximum = seasonCurve(climate.maximum);
  const minimum = seasonCurve(climate.minimum);
  const radiation = radiationCourse(climate, site, values, (day) => maximum[day]! - minimum[day]!);
  const radiationCeiling = byDay(
    (day) => values['weather.radiation.ceiling'] * extraterrestrialRadiation(site.latitude, day + 1),
  );
  const cooling = values['weather.wetDay.cooling'];
  const ratio = values['weather.wetDay.radiation'];
  // A dry mean above what the sky can give would be lost in the clamp: it is held, and wet days carry the rest.
  const dryMean = byDay((day, month) => {
    const share = wetShare[month]!;
    return Math.min(0.97 * radiationCeiling[day]!, radiation[day]! / (1 - share + share * ratio));
  });
  const wetMean = byDay((day, month) => {
    const share = wetShare[month]!;
    return share > 0 ? (radiation[day]! - (1 - share) * dryMean[day]!) / share : ratio * dryMean[day]!;
  });
  const dryDeviation = dryMean.map((mean) => mean * values['weather.deviation.radiationDry']);
  const wetDeviation = wetMean.map((mean) => mean * values['weather.deviation.radiationWet']);
  const wind = climate.wind === null ? null : seasonCurve(climate.wind);
  return {
    wetShare,
    wetAfterDry: Float64Array.from(chains, (chain) => chain.wetAfterDry),
    wetAfterWet: Float64Array.from(chains, (chain) => chain.wetAfterWet),
    shape: Float64Array.from(amounts, (amount) => amount.shape),
    scale: Float64Array.from(amounts, (amount) => amount.scale),
    logGammaOfShape: Float64Array.from(amounts, (amount) => logGamma(amount.shape)),
    maximum,
    minimum,
    radiation,
    rain: byDay((_, month) => climate.rain[month]! / monthLengths[month]!),
    maximumDry: byDay((day, month) => maximum[day]! + wetShare[month]! * cooling),
    maximumWet: byDay((day, month) => maximum[day]! - (1 - wetShare[month]!) * cooling),
    temperatureDeviation: seasonCurve(deviations).map((deviation) => Math.max(0, deviation)),
    radiationDry: byDay((day) => centreForMean(dryMean[day]!, dryDeviation[day]!, radiationCeiling[day]!)),
    radiationWet: byDay((day) => centreForMean(wetMean[day]!, wetDeviation[day]!, radiationCeiling[day]!)),
    radiationDryDeviation: dryDeviation,
    radiationWetDeviation: wetDeviation,
    radiationCeiling,
    humidity: climate.humidity === null ? null : seasonCurve(climate.humidity).map((share) => Math.max(0.02, Math.min(1, share))),
    dewPointBelowMinimum: values['weather.dewPoint.belowMinimum'],
    wind: byDay((day) => (wind === null ? values['weather.wind.default'] : Math.max(values['weather.wind.floor'], wind[day]!))),
  };
};

/**
 * A way to ask for models that keeps the last few: to centre the draws of a year costs more than the rest of a forecast of one member.
 * @param keep how many to hold
 */
export const modelKeeper = (keep = 4): typeof weatherModel => {
  const held = lastFew<WeatherModel>(keep);
  return (climate, site, values) => {
    const settings = Object.keys(weatherParameters).map((name) => values[name as keyof WeatherValues]);
    return held(JSON.stringify([climate, site, settings]), () => weatherModel(climate, site, values));
  };
};

/** Vapour pressure of a day by the model's humidity, kPa. @param day 0–364 */
export const modelVapourPressure = (model: WeatherModel, day: number, maximum: number, minimum: number): number =>
  model.humidity === null
    ? saturationVapourPressure(minimum - model.dewPointBelowMinimum)
    : model.humidity[day]! * meanSaturationVapourPressure(maximum, minimum);
