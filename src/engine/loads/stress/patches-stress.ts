import { circleShare } from '#engine/loads/stress/circle-stress.ts';

/** A circular patch of the surface that carries a uniform pressure. */
export interface LoadedPatch {
  /** m */
  readonly x: number;
  /** m */
  readonly y: number;
  /** m */
  readonly radius: number;
  /** kPa */
  readonly pressure: number;
}

/**
 * Vertical stress (kPa) at one point of the ground from several loaded patches: stresses add.
 * `x`, `y`, `z` in m; `concentration` is the factor ν of Fröhlich.
 *
 * @source froehlich-1934
 */
export const stressUnderPatches = (
  patches: readonly LoadedPatch[],
  x: number,
  y: number,
  z: number,
  concentration: number,
): number => {
  let sum = 0;
  for (const patch of patches) {
    if (!(patch.radius > 0)) throw new RangeError('radius: must be above 0');
    sum += patch.pressure * circleShare(Math.hypot(patch.x - x, patch.y - y) / patch.radius, z / patch.radius, concentration);
  }
  return sum;
};
