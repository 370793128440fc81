import type { Bowl } from '#engine/stands/bowl.ts';
import { binOf } from '#engine/stands/horizon.ts';
import type { LitDay } from '#engine/stands/light-map.ts';
import { spreadOverSteps } from '#engine/sky/day-shape.ts';
import { cosOf } from '#engine/sun/degrees.ts';

/**
 * What the stands throw back on the turf: its own term, to be added or left out, never a correction of the sky view. A wall seen
 * at azimuth φ faces back along φ + 180°; it takes beam as the sun stands in front of it, half of the sky's and half of the
 * ground's light, and sends the share ρw of it evenly. A cell gets it weighted by sin² of the horizon.
 *
 *   reflected(cell) = (ρw/n) Σ_k sin² h_k [D/2 + ρg G/2 + Σ_steps beam/tan(altitude) · max(0, −cos(φ_k − φ_sun))]
 *
 * Walls are taken as unshaded by each other, so this is an upper estimate.
 * @param albedo ρw; @param groundAlbedo ρg
 * @returns MJ/m²/d by cell
 */
export const wallLight = (bowl: Bowl, day: LitDay, albedo: number, groundAlbedo: number): Float64Array => {
  const { bins, count, tangent } = bowl.horizons;
  const { sun } = day.shape;
  const beam = new Float64Array(sun.steps);
  const diffuse = spreadOverSteps(day.shape, day.global, day.diffuse, beam);
  const onWall = new Float64Array(bins).fill(diffuse / 2 + (groundAlbedo * day.global) / 2);
  for (let i = 0; i < sun.steps; i++) {
    if (!(sun.tanAltitude[i]! > 0)) continue;
    const facing = binOf(sun.azimuth[i]! - bowl.bearing, bins);
    for (let k = 0; k < bins; k++)
      onWall[k]! += (beam[i]! / sun.tanAltitude[i]!) * Math.max(0, -cosOf(((k - facing) * 360) / bins));
  }
  const reflected = new Float64Array(count);
  for (let cell = 0; cell < count; cell++) {
    let sum = 0;
    for (let k = 0; k < bins; k++) {
      const t = tangent[cell * bins + k]!;
      sum += onWall[k]! * (t === Infinity ? 1 : (t * t) / (1 + t * t));
    }
    reflected[cell] = (albedo * sum) / bins;
  }
  return reflected;
};
