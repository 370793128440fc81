import { cosOf, sinOf, tanOf, toDegrees, unit, wrapTo360 } from '#engine/sun/degrees.ts';

/**
 * The low-order geometry of solar engineering. Degrees throughout. The hour angle is 0 at solar noon and positive after it.
 *
 *   δ = 23.45 sin(360 (284 + n)/365)                                   declination by day of the year (Cooper)
 *   solar time − standard time = 4 (Lst − Lloc) + E   min              Lst, Lloc counted west; here both count east
 *   ω = 15 (solar hour − 12)
 *   cos θz = sin φ sin δ + cos φ cos δ cos ω
 *   cos γs = (cos θz sin φ − sin δ)/(sin θz cos φ)                     azimuth from south, sign of ω
 *   cos ωs = −tan φ tan δ, kept inside −1 to 1                         0 in polar night, 180 in polar day
 *
 * @source duffie-beckman-2013
 */

/** δ for the day of the year n, to about 0.5°. @source cooper-1969 */
export const declinationByDay = (n: number): number => 23.45 * sinOf((360 * (284 + n)) / 365);

/**
 * Hours on the sundial.
 * @param standardHour hours on the zone's standard clock; @param longitude east positive; @param clockMeridian meridian of the
 *   zone, east positive (15° an hour); @param equation equation of time, min
 */
export const solarHour = (standardHour: number, longitude: number, clockMeridian: number, equation: number): number =>
  standardHour + (4 * (longitude - clockMeridian) + equation) / 60;

/** ω */
export const hourAngle = (solar: number): number => 15 * (solar - 12);

/** Sine of the sun's altitude, the cosine of its zenith angle. */
export const sinAltitude = (latitude: number, declination: number, angle: number): number =>
  unit(sinOf(latitude) * sinOf(declination) + cosOf(latitude) * cosOf(declination) * cosOf(angle));

/** ° above the horizon, geometric. */
export const altitude = (latitude: number, declination: number, angle: number): number =>
  toDegrees(Math.asin(sinAltitude(latitude, declination, angle)));

/** Azimuth clockwise from north, 0 ≤ azimuth < 360. At the zenith, where it has no meaning, 180. */
export const azimuth = (latitude: number, declination: number, angle: number): number => {
  const east = -cosOf(declination) * sinOf(angle);
  const north = sinOf(declination) * cosOf(latitude) - cosOf(declination) * sinOf(latitude) * cosOf(angle);
  if (Math.abs(east) < 1e-15 && Math.abs(north) < 1e-15) return 180;
  return wrapTo360(toDegrees(Math.atan2(east, north)));
};

/** Azimuth as solar engineering counts it: 0 in the south, west positive, −180 to 180. */
export const azimuthFromSouth = (latitude: number, declination: number, angle: number): number =>
  azimuth(latitude, declination, angle) - 180;

/** ωs, 0–180. */
export const sunsetHourAngle = (latitude: number, declination: number): number => {
  // Closer than this to a pole the tangent says nothing; there the sun is up all day or not at all.
  if (Math.abs(latitude) > 89.9999) return latitude * declination > 0 ? 180 : 0;
  return toDegrees(Math.acos(unit(-tanOf(latitude) * tanOf(declination))));
};

/** Hours between geometric rise and set on a flat horizon. */
export const dayLength = (latitude: number, declination: number): number => (2 * sunsetHourAngle(latitude, declination)) / 15;
