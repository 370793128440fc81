/**
 * Radiation of a day or an hour by the formulas of the evapotranspiration standard, as it prints them. The light side of the
 * engine has its own, finer sun; these serve water, missing data and sanity limits.
 *
 * dr = 1 + 0.033 cos(2πJ/365)                       inverse relative distance to the sun                 (eq. 23)
 * δ = 0.409 sin(2πJ/365 − 1.39)                     declination, rad                                     (eq. 24)
 * ωs = acos(−tan φ tan δ)                           sunset hour angle, rad; argument clamped to [−1, 1]  (eq. 25)
 * Ra = (1440/π) 0.0820 dr (ωs sin φ sin δ + cos φ cos δ sin ωs)    MJ/m²/d                                (eq. 21)
 * N = 24 ωs/π                                       longest possible sunshine, h                         (eq. 34)
 * Rs = (a + b n/N) Ra                               global radiation from n hours of sunshine            (eq. 35)
 * Rs = k √(Tmax − Tmin) Ra                          global radiation from the range of temperature       (eq. 50)
 * Rso = (0.75 + 2·10⁻⁵ z) Ra                        clear-sky radiation                                  (eq. 37)
 *
 * J day of the year, φ latitude. Range: any latitude; the clamp gives 0 in polar night and 24 h in polar day.
 * @source allen-1998
 */

/** MJ/m²/min. */
const solarConstant = 0.082;

export const inverseRelativeDistance = (day: number): number => 1 + 0.033 * Math.cos((2 * Math.PI * day) / 365);

/** rad */
export const solarDeclination = (day: number): number => 0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39);

/** rad, 0 to π. @param latitude rad, @param declination rad */
export const sunsetHourAngle = (latitude: number, declination: number): number =>
  Math.acos(Math.max(-1, Math.min(1, -Math.tan(latitude) * Math.tan(declination))));

/** MJ/m²/d. @param latitude degrees, north positive; @param day of the year */
export const extraterrestrialRadiation = (latitude: number, day: number): number => {
  const phi = (latitude * Math.PI) / 180;
  const delta = solarDeclination(day);
  const sunset = sunsetHourAngle(phi, delta);
  const path = sunset * Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.sin(sunset);
  return Math.max(0, (1440 / Math.PI) * solarConstant * inverseRelativeDistance(day) * path);
};

/** h */
export const daylightHours = (latitude: number, day: number): number =>
  (24 / Math.PI) * sunsetHourAngle((latitude * Math.PI) / 180, solarDeclination(day));

/** Seasonal correction of solar time, h (eq. 32, 33). */
export const seasonalCorrection = (day: number): number => {
  const b = (2 * Math.PI * (day - 81)) / 364;
  return 0.1645 * Math.sin(2 * b) - 0.1255 * Math.cos(b) - 0.025 * Math.sin(b);
};

/** Where a daily value stands. */
export interface DailySite {
  /** Degrees, north positive. */
  readonly latitude: number;
  /** m */
  readonly elevation: number;
}

/** Where and when an hourly value stands. */
export interface HourlySite {
  /** Degrees, north positive. */
  readonly latitude: number;
  /** Degrees, east positive. */
  readonly longitude: number;
  /** Longitude of the meridian of the clock, degrees, east positive: 15 times the offset from UTC in hours. */
  readonly meridian: number;
  /** m */
  readonly elevation: number;
}

/** Hour angle of the sun at the middle of a period, rad (eq. 31). @param middle standard clock time, h */
export const hourAngle = (site: HourlySite, day: number, middle: number): number =>
  (Math.PI / 12) * (middle + (site.longitude - site.meridian) / 15 + seasonalCorrection(day) - 12);

/**
 * Extraterrestrial radiation of a period of `length` h centred on `middle`, MJ/m² (eq. 28). Only the part of the period with the
 * sun above the horizon counts.
 */
export const hourlyExtraterrestrialRadiation = (site: HourlySite, day: number, middle: number, length = 1): number => {
  const phi = (site.latitude * Math.PI) / 180;
  const delta = solarDeclination(day);
  const sunset = sunsetHourAngle(phi, delta);
  let angle = hourAngle(site, day, middle);
  while (angle > Math.PI) angle -= 2 * Math.PI;
  while (angle < -Math.PI) angle += 2 * Math.PI;
  const from = Math.max(-sunset, Math.min(sunset, angle - (Math.PI * length) / 24));
  const to = Math.max(-sunset, Math.min(sunset, angle + (Math.PI * length) / 24));
  const path = (to - from) * Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * (Math.sin(to) - Math.sin(from));
  return Math.max(0, (720 / Math.PI) * solarConstant * inverseRelativeDistance(day) * path);
};

/** Global radiation, MJ/m²/d, from the sunny share of the daylight (0–1, clamped) and the two Ångström coefficients. */
export const radiationFromSunshine = (sunnyShare: number, extraterrestrial: number, a: number, b: number): number =>
  (a + b * Math.max(0, Math.min(1, sunnyShare))) * extraterrestrial;

/**
 * Global radiation, MJ/m²/d, from the day's extremes of temperature, °C, and the coefficient k (0.16 inland, 0.19 coast), never
 * above the clear sky. A negative range counts as none.
 */
export const radiationFromTemperatureRange = (
  maximum: number,
  minimum: number,
  extraterrestrial: number,
  coefficient: number,
  clearSky = Infinity,
): number => Math.min(clearSky, coefficient * Math.sqrt(Math.max(0, maximum - minimum)) * extraterrestrial);

/** MJ/m²/d or per hour, like `extraterrestrial`. @param elevation m */
export const clearSkyRadiation = (extraterrestrial: number, elevation: number): number =>
  (0.75 + 2e-5 * elevation) * extraterrestrial;
