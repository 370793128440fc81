import { cosOf, sinOf, toDegrees } from '#engine/sun/degrees.ts';

/** What a cloudless sky gives, as a ceiling for measured radiation and for a day without weather. */

/** Turbidity of one month: optical depths of beam and diffuse. */
export type Turbidity = { readonly beam: number; readonly diffuse: number };

/**
 * Relative air mass, β the altitude in °: m = 1/(sin β + 0.50572 (6.07995 + β)^−1.6364). Below the horizon it is taken at 0°.
 * @source ashrae-2009
 */
export const airMass = (sunAltitude: number): number => {
  const b = Math.max(0, sunAltitude);
  return 1 / (sinOf(b) + 0.50572 * (6.07995 + b) ** -1.6364);
};

/**
 * The clear-sky model of the 2009 handbook:
 *
 *   E0 = Gsc (1 + 0.033 cos(360 (n − 3)/365))
 *   beam normal = E0 exp(−τb m^ab),   ab = 1.219 − 0.043 τb − 0.151 τd − 0.204 τb τd
 *   diffuse level = E0 exp(−τd m^ad), ad = 0.202 + 0.852 τb − 0.007 τd − 0.357 τb τd
 *
 * Nothing below the horizon.
 * @param n day of the year; @param sunAltitude °, geometric; @param solarConstant W/m²
 * @returns W/m²
 * @source ashrae-2009
 */
export const clearSkyByTurbidity = (
  n: number,
  sunAltitude: number,
  turbidity: Turbidity,
  solarConstant: number,
): { beamNormal: number; diffuse: number; global: number } => {
  if (sunAltitude <= 0) return { beamNormal: 0, diffuse: 0, global: 0 };
  const { beam: tb, diffuse: td } = turbidity;
  const e0 = solarConstant * (1 + 0.033 * cosOf((360 * (n - 3)) / 365));
  const m = airMass(sunAltitude);
  const beamNormal = e0 * Math.exp(-tb * m ** (1.219 - 0.043 * tb - 0.151 * td - 0.204 * tb * td));
  const diffuse = e0 * Math.exp(-td * m ** (0.202 + 0.852 * tb - 0.007 * td - 0.357 * tb * td));
  return { beamNormal, diffuse, global: beamNormal * sinOf(sunAltitude) + diffuse };
};

/** The two extinction constants in print for Haurwitz's formula; they differ by 0.2 % overhead and 2 % at 5°. */
export const haurwitzConstants = { original: 0.059, variant: 0.057 } as const;

/**
 * Global clear-sky radiation from the altitude β alone: 1098 sin β exp(−c/sin β), nothing below the horizon.
 * @param sunAltitude °; @param extinction c, 0.059 unless another print is wanted; @returns W/m²
 * @source haurwitz-1945
 */
export const clearSkyByAltitude = (sunAltitude: number, extinction: number = haurwitzConstants.original): number => {
  const s = sinOf(sunAltitude);
  return s <= 0 ? 0 : 1098 * s * Math.exp(-extinction / s);
};

/** Altitude of the sun at solar noon, °. */
export const noonAltitude = (latitude: number, declination: number): number =>
  toDegrees(Math.asin(Math.min(1, cosOf(latitude - declination))));
