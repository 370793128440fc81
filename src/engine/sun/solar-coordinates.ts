import { cosOf, sinOf, toDegrees, unit, wrapTo360 } from '#engine/sun/degrees.ts';
import { julianCentury } from '#engine/sun/julian-day.ts';

/**
 * Where the sun stands among the stars, to 0.01°: enough for shade on turf and cheap enough for every step of a year.
 * With T centuries of dynamical time since J2000:
 *
 *   L0 = 280.46646 + 36000.76983 T + 0.0003032 T²      mean longitude, °
 *   M  = 357.52911 + 35999.05029 T − 0.0001537 T²      mean anomaly, °
 *   e  = 0.016708634 − 0.000042037 T − 0.0000001267 T²
 *   C  = (1.914602 − 0.004817 T − 0.000014 T²) sin M + (0.019993 − 0.000101 T) sin 2M + 0.000289 sin 3M
 *   R  = 1.000001018 (1 − e²)/(1 + e cos(M + C))       distance, AU
 *   Ω  = 125.04 − 1934.136 T
 *   λ  = L0 + C − 0.00569 − 0.00478 sin Ω              apparent longitude, °
 *   ε  = 23°26'21.448" − 46.8150" T − 0.00059" T² + 0.001813" T³ + 0.00256° cos Ω
 *   tan α = cos ε sin λ / cos λ,   sin δ = sin ε sin λ
 *
 * Good for some centuries around 2000.
 * @source meeus-1998
 */
export type SolarCoordinates = {
  /** T, Julian centuries. */
  readonly century: number;
  /** L0, ° (not reduced). */
  readonly meanLongitude: number;
  /** M, ° (not reduced). */
  readonly meanAnomaly: number;
  /** e */
  readonly eccentricity: number;
  /** L0 + C, 0–360°. */
  readonly trueLongitude: number;
  /** λ, 0–360°. */
  readonly apparentLongitude: number;
  /** R, astronomical units. */
  readonly distance: number;
  /** Mean obliquity without the term in Ω, °. */
  readonly meanObliquity: number;
  /** α, 0–360°. */
  readonly rightAscension: number;
  /** δ, °. */
  readonly declination: number;
};

/** @param day Julian day in dynamical time; a day in universal time makes a difference of 0.001° at most this century. */
export const solarCoordinates = (day: number): SolarCoordinates => {
  const t = julianCentury(day);
  const meanLongitude = 280.46646 + t * (36000.76983 + t * 0.0003032);
  const meanAnomaly = 357.52911 + t * (35999.05029 - t * 0.0001537);
  const eccentricity = 0.016708634 - t * (0.000042037 + t * 0.0000001267);
  const centre =
    (1.914602 - t * (0.004817 + t * 0.000014)) * sinOf(meanAnomaly) +
    (0.019993 - t * 0.000101) * sinOf(2 * meanAnomaly) +
    0.000289 * sinOf(3 * meanAnomaly);
  const node = 125.04 - 1934.136 * t;
  const longitude = meanLongitude + centre - 0.00569 - 0.00478 * sinOf(node);
  const meanObliquity = 23 + 26 / 60 + (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 3600;
  const obliquity = meanObliquity + 0.00256 * cosOf(node);
  return {
    century: t,
    meanLongitude,
    meanAnomaly,
    eccentricity,
    trueLongitude: wrapTo360(meanLongitude + centre),
    apparentLongitude: wrapTo360(longitude),
    distance: (1.000001018 * (1 - eccentricity ** 2)) / (1 + eccentricity * cosOf(meanAnomaly + centre)),
    meanObliquity,
    rightAscension: wrapTo360(toDegrees(Math.atan2(cosOf(obliquity) * sinOf(longitude), cosOf(longitude)))),
    declination: toDegrees(Math.asin(unit(sinOf(obliquity) * sinOf(longitude)))),
  };
};

/**
 * Mean sidereal time at Greenwich, 0–360°:  θ = 280.46061837 + 360.98564736629 (JD − 2451545) + 0.000387933 T² − T³/38710000.
 * @param day Julian day in universal time
 * @source meeus-1998
 */
export const siderealTime = (day: number): number => {
  const t = julianCentury(day);
  return wrapTo360(280.46061837 + 360.98564736629 * (day - 2451545) + t * t * (0.000387933 - t / 38710000));
};
