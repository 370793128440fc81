/**
 * Water a well-watered short grass gives to the air: the demand that every root-zone balance starts from.
 *
 * ET0 = [0.408 Δ (Rn − G) + γ Cn/(T + 273) u2 (es − ea)] / [Δ + γ (1 + Cd u2)]                     mm/d or mm/h (eq. 6, 53)
 * Rns = (1 − α) Rs                                                     α 0.23                       (eq. 38)
 * Rnl = σ ½(TmaxK⁴ + TminK⁴) (0.34 − 0.14 √ea) (1.35 Rs/Rso − 0.35)    MJ/m²                        (eq. 39), TK = T + 273.16
 * Rn = Rns − Rnl                                                                                    (eq. 40)
 * Hargreaves: ET0 = 0.0023 (Tmean + 17.8) √(Tmax − Tmin) · 0.408 Ra    Ra in MJ/m²/d                (eq. 52)
 *
 * Cn, Cd: 900, 0.34 a day; 37, 0.34 an hour. T °C, u2 m/s, pressures kPa, radiation MJ/m². Daily G is 0 unless given; hourly
 * G is 0.1 Rn by day and 0.5 Rn at night. Rs/Rso is capped at 1; where no clear-sky sun exists (polar night, night hours) the
 * caller's `clearnessInDark` stands for it, so nothing is divided by 0. A negative result is 0.
 * The ASCE-EWRI form has σ 4.901·10⁻⁹, holds Rs/Rso in 0.3–1 and its factor at 0.05 or more, offers a tall crop
 * (1600, 0.38 a day) and hourly Cd by day and night; daytime there means Rn > 0.
 * `capVapourPressure` (on by default) holds ea at or below es; station files do contain ea above es.
 * @source allen-1998
 * @source asce-ewri-2005
 */
import {
  clearSkyRadiation,
  extraterrestrialRadiation,
  hourlyExtraterrestrialRadiation,
  type DailySite,
  type HourlySite,
} from '#engine/weather/daily-radiation.ts';
import {
  atmosphericPressure,
  meanSaturationVapourPressure,
  psychrometricConstant,
  saturationSlope,
  saturationVapourPressure,
} from '#engine/weather/humidity.ts';
import type { WeatherDay, WeatherSeries } from '#engine/weather/weather-day.ts';

/** What may be chosen; every field has the standard's own default. */
export interface EvapotranspirationChoices {
  readonly method?: 'fao-56' | 'asce-ewri-2005';
  /** The tall crop exists in the ASCE-EWRI form only. */
  readonly surface?: 'short' | 'tall';
  /** 0.23 */
  readonly albedo?: number;
  /** MJ/m²/d into the ground; 0 a day, by the rule above an hour. */
  readonly soilHeatFlux?: number;
  /** Rso, where a service uses its own clear sky, MJ/m². */
  readonly clearSky?: number;
  /** Mean temperature, °C, where it is not the middle of the extremes. */
  readonly mean?: number;
  readonly capVapourPressure?: boolean;
  /** Rs/Rso where there is no sun to measure it, 0–1; 0.8 for a dry clear night, 0.4–0.6 in humid air. */
  readonly clearnessInDark?: number;
}

/** Every step of one value, as a worked example prints them. */
export interface EvapotranspirationTerms {
  readonly slope: number;
  readonly psychrometric: number;
  readonly saturation: number;
  readonly vapourPressure: number;
  readonly extraterrestrial: number;
  readonly clearSky: number;
  readonly netShortwave: number;
  readonly netLongwave: number;
  readonly netRadiation: number;
  readonly soilHeatFlux: number;
  /** mm/d or mm/h */
  readonly evapotranspiration: number;
}

const kelvin = 273.16;

/** Share of the longwave loss that the clouds leave, from Rs and Rso. */
const cloudFactor = (radiation: number, clearSky: number, dark: number, standardised: boolean): number => {
  const measured = clearSky > 1e-9 ? radiation / clearSky : dark;
  if (!standardised) return 1.35 * Math.min(1, measured) - 0.35;
  return Math.max(0.05, 1.35 * Math.max(0.3, Math.min(1, measured)) - 0.35);
};

/**
 * Net outgoing longwave radiation, MJ/m², from the temperatures °C that stand for the period (twice the same for an hour).
 * @param stefanBoltzmann MJ/m²/K⁴ for the period; @param cloud the factor 1.35 Rs/Rso − 0.35
 */
export const netLongwaveRadiation = (
  maximum: number,
  minimum: number,
  vapourPressure: number,
  cloud: number,
  stefanBoltzmann = 4.903e-9,
): number => {
  const emission = (stefanBoltzmann * ((maximum + kelvin) ** 4 + (minimum + kelvin) ** 4)) / 2;
  return emission * (0.34 - 0.14 * Math.sqrt(Math.max(0, vapourPressure))) * cloud;
};

/**
 * The combination equation itself; everything given.
 * @returns mm in the period of Rn and Cn, never below 0
 */
export const combinationEquation = (
  slope: number,
  psychrometric: number,
  netMinusSoil: number,
  temperature: number,
  wind: number,
  deficit: number,
  numerator = 900,
  denominator = 0.34,
): number =>
  Math.max(
    0,
    (0.408 * slope * netMinusSoil + ((psychrometric * numerator) / (temperature + 273)) * wind * deficit) /
      (slope + psychrometric * (1 + denominator * wind)),
  );

/** One day with every step. @param dayOfYear 1–366 */
export const evapotranspirationTerms = (
  day: Omit<WeatherDay, 'rain'>,
  site: DailySite,
  dayOfYear: number,
  choices: EvapotranspirationChoices = {},
): EvapotranspirationTerms => {
  const standardised = choices.method === 'asce-ewri-2005';
  const tall = standardised && choices.surface === 'tall';
  const mean = choices.mean ?? (day.maximum + day.minimum) / 2;
  const slope = saturationSlope(mean);
  const psychrometric = psychrometricConstant(atmosphericPressure(site.elevation));
  const saturation = meanSaturationVapourPressure(day.maximum, day.minimum);
  const vapourPressure = choices.capVapourPressure === false ? day.vapourPressure : Math.min(day.vapourPressure, saturation);
  const extraterrestrial = extraterrestrialRadiation(site.latitude, dayOfYear);
  const clearSky = choices.clearSky ?? clearSkyRadiation(extraterrestrial, site.elevation);
  const netShortwave = (1 - (choices.albedo ?? 0.23)) * day.radiation;
  const cloud = cloudFactor(day.radiation, clearSky, choices.clearnessInDark ?? 0.8, standardised);
  const sigma = standardised ? 4.901e-9 : 4.903e-9;
  const netLongwave = netLongwaveRadiation(day.maximum, day.minimum, vapourPressure, cloud, sigma);
  const netRadiation = netShortwave - netLongwave;
  const soilHeatFlux = choices.soilHeatFlux ?? 0;
  const available = netRadiation - soilHeatFlux;
  const deficit = saturation - vapourPressure;
  const numerator = tall ? 1600 : 900;
  const denominator = tall ? 0.38 : 0.34;
  return {
    slope,
    psychrometric,
    saturation,
    vapourPressure,
    extraterrestrial,
    clearSky,
    netShortwave,
    netLongwave,
    netRadiation,
    soilHeatFlux,
    evapotranspiration: combinationEquation(slope, psychrometric, available, mean, day.wind, deficit, numerator, denominator),
  };
};

/** Reference evapotranspiration of one day, mm. */
export const referenceEvapotranspiration = (
  day: Omit<WeatherDay, 'rain'>,
  site: DailySite,
  dayOfYear: number,
  choices: EvapotranspirationChoices = {},
): number => evapotranspirationTerms(day, site, dayOfYear, choices).evapotranspiration;

/** The weather of one hour. */
export interface WeatherHour {
  /** °C */
  readonly temperature: number;
  /** kPa */
  readonly vapourPressure: number;
  /** MJ/m² in the hour */
  readonly radiation: number;
  /** m/s at 2 m */
  readonly wind: number;
}

const hourlyCoefficients = (standardised: boolean, tall: boolean, byDay: boolean) => {
  if (!standardised) return { numerator: 37, denominator: 0.34, ground: byDay ? 0.1 : 0.5 };
  if (tall) return { numerator: 66, denominator: byDay ? 0.25 : 1.7, ground: byDay ? 0.04 : 0.2 };
  return { numerator: 37, denominator: byDay ? 0.24 : 0.96, ground: byDay ? 0.1 : 0.5 };
};

/** One hour with every step. @param middle standard clock time of the middle of the hour, h */
export const hourlyEvapotranspirationTerms = (
  hour: WeatherHour,
  site: HourlySite,
  dayOfYear: number,
  middle: number,
  choices: EvapotranspirationChoices = {},
): EvapotranspirationTerms => {
  const standardised = choices.method === 'asce-ewri-2005';
  const slope = saturationSlope(hour.temperature);
  const psychrometric = psychrometricConstant(atmosphericPressure(site.elevation));
  const saturation = saturationVapourPressure(hour.temperature);
  const vapourPressure = choices.capVapourPressure === false ? hour.vapourPressure : Math.min(hour.vapourPressure, saturation);
  const extraterrestrial = hourlyExtraterrestrialRadiation(site, dayOfYear, middle);
  const clearSky = choices.clearSky ?? clearSkyRadiation(extraterrestrial, site.elevation);
  const netShortwave = (1 - (choices.albedo ?? 0.23)) * hour.radiation;
  const cloud = cloudFactor(hour.radiation, clearSky, choices.clearnessInDark ?? 0.8, standardised);
  const sigma = standardised ? 2.042e-10 : 2.043e-10;
  const netLongwave = netLongwaveRadiation(hour.temperature, hour.temperature, vapourPressure, cloud, sigma);
  const netRadiation = netShortwave - netLongwave;
  const byDay = standardised ? netRadiation > 0 : extraterrestrial > 0;
  const { numerator, denominator, ground } = hourlyCoefficients(standardised, choices.surface === 'tall', byDay);
  const soilHeatFlux = choices.soilHeatFlux ?? ground * netRadiation;
  const available = netRadiation - soilHeatFlux;
  const deficit = saturation - vapourPressure;
  return {
    slope,
    psychrometric,
    saturation,
    vapourPressure,
    extraterrestrial,
    clearSky,
    netShortwave,
    netLongwave,
    netRadiation,
    soilHeatFlux,
    evapotranspiration: combinationEquation(
      slope,
      psychrometric,
      available,
      hour.temperature,
      hour.wind,
      deficit,
      numerator,
      denominator,
    ),
  };
};

/** Reference evapotranspiration of one hour, mm. */
export const hourlyReferenceEvapotranspiration = (
  hour: WeatherHour,
  site: HourlySite,
  dayOfYear: number,
  middle: number,
  choices: EvapotranspirationChoices = {},
): number => hourlyEvapotranspirationTerms(hour, site, dayOfYear, middle, choices).evapotranspiration;

/** mm/d by Hargreaves: a cross-check where only temperatures are known. @param extraterrestrial MJ/m²/d (not mm) */
export const hargreavesEvapotranspiration = (
  maximum: number,
  minimum: number,
  extraterrestrial: number,
  mean = (maximum + minimum) / 2,
): number => Math.max(0, 0.0023 * (mean + 17.8) * Math.sqrt(Math.max(0, maximum - minimum)) * 0.408 * extraterrestrial);

/** Soil heat flux of a month from the mean temperatures °C of the months before and after, MJ/m²/d (eq. 43). */
export const monthlySoilHeatFlux = (before: number, after: number): number => 0.07 * (after - before);

/** The same where the month after is not known yet (eq. 44). */
export const monthlySoilHeatFluxSoFar = (before: number, now: number): number => 0.14 * (now - before);

/** Depth of water that an energy evaporates, mm from MJ/m² (latent heat 2.45 MJ/kg, eq. 20). */
export const evaporationEquivalent = (energy: number): number => 0.408 * energy;

/** Reference evapotranspiration of every day of a series into `out`, mm/d; by the standard's defaults. */
export const fillReferenceEvapotranspiration = (
  series: WeatherSeries,
  site: DailySite,
  out: Float64Array = new Float64Array(series.days),
): Float64Array => {
  const psychrometric = psychrometricConstant(atmosphericPressure(site.elevation));
  const clearShare = clearSkyRadiation(1, site.elevation);
  for (let i = 0; i < series.days; i++) {
    const maximum = series.maximum[i]!;
    const minimum = series.minimum[i]!;
    const radiation = series.radiation[i]!;
    const mean = (maximum + minimum) / 2;
    const saturation = meanSaturationVapourPressure(maximum, minimum);
    const vapourPressure = Math.min(series.vapourPressure[i]!, saturation);
    const clearSky = clearShare * extraterrestrialRadiation(site.latitude, series.dayOfYear[i]!);
    const cloud = cloudFactor(radiation, clearSky, 0.8, false);
    const net = 0.77 * radiation - netLongwaveRadiation(maximum, minimum, vapourPressure, cloud);
    const deficit = saturation - vapourPressure;
    out[i] = combinationEquation(saturationSlope(mean), psychrometric, net, mean, series.wind[i]!, deficit);
  }
  return out;
};
