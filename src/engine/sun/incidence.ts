import { cosOf, sinOf, toDegrees, unit } from '#engine/sun/degrees.ts';
import { sinAltitude } from '#engine/sun/solar-angles.ts';

/**
 * The angle at which the sun meets a tilted surface, such as a raked stand or a wall.
 *
 *   cos θ = sin δ sin φ cos β − sin δ cos φ sin β cos γ + cos δ cos φ cos β cos ω
 *         + cos δ sin φ sin β cos γ cos ω + cos δ sin β sin γ sin ω
 *
 * φ latitude, δ declination, ω hour angle, β slope from level, γ azimuth of the surface from south, west positive; all °.
 * @source duffie-beckman-2013
 */
export type Surface = {
  /** β, 0 level to 90 upright, °. */ readonly slope: number;
  /** γ, from south, west positive, °. */ readonly azimuthFromSouth: number;
};

/** The five terms in the order above; their sum is cos θ. */
export const incidenceTerms = (
  latitude: number,
  declination: number,
  angle: number,
  surface: Surface,
): readonly [number, number, number, number, number] => {
  const { slope: b, azimuthFromSouth: g } = surface;
  return [
    sinOf(declination) * sinOf(latitude) * cosOf(b),
    -sinOf(declination) * cosOf(latitude) * sinOf(b) * cosOf(g),
    cosOf(declination) * cosOf(latitude) * cosOf(b) * cosOf(angle),
    cosOf(declination) * sinOf(latitude) * sinOf(b) * cosOf(g) * cosOf(angle),
    cosOf(declination) * sinOf(b) * sinOf(g) * sinOf(angle),
  ];
};

/** cos θ; negative where the sun stands behind the surface. */
export const cosIncidence = (latitude: number, declination: number, angle: number, surface: Surface): number =>
  unit(incidenceTerms(latitude, declination, angle, surface).reduce((sum, term) => sum + term, 0));

/** θ, °. */
export const incidence = (latitude: number, declination: number, angle: number, surface: Surface): number =>
  toDegrees(Math.acos(cosIncidence(latitude, declination, angle, surface)));

/** The same from an observed position: zenith angle and azimuth from south of the sun, °. */
export const incidenceFromPosition = (zenith: number, sunAzimuthFromSouth: number, surface: Surface): number =>
  toDegrees(
    Math.acos(
      unit(
        cosOf(zenith) * cosOf(surface.slope) +
          sinOf(zenith) * sinOf(surface.slope) * cosOf(sunAzimuthFromSouth - surface.azimuthFromSouth),
      ),
    ),
  );

/**
 * Rb, beam on the surface over beam on level ground: cos θ/cos θz. 0 with the sun behind the surface or not above the horizon.
 */
export const beamRatio = (latitude: number, declination: number, angle: number, surface: Surface): number => {
  const level = sinAltitude(latitude, declination, angle);
  return level <= 0 ? 0 : Math.max(0, cosIncidence(latitude, declination, angle, surface)) / level;
};
