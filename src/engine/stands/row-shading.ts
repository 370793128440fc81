import { cosOf, sinOf, toDegrees, toRadians } from '#engine/sun/degrees.ts';

/**
 * Rows of tilted slats, panels or rakes one behind the other hide the low sky from each other. With ground cover g (slant
 * length over spacing), tilt t, and x the share of the slant length from the lower edge up:
 *
 *   tan(mask) = g (1 − x) sin t/(1 − g (1 − x) cos t)
 *
 * The mean over the slant is taken by Simpson's rule; the diffuse loss is 1 − cos²(mean/2). For 0 ≤ g ≤ 1, 0 ≤ t ≤ 180 with
 * g cos t below 1.
 * @source passias-kallback-1984
 */

/** Elevation of the mask at x, °. */
export const rowMask = (cover: number, tilt: number, x: number): number => {
  const reach = cover * (1 - x);
  return toDegrees(Math.atan2(reach * sinOf(tilt), 1 - reach * cosOf(tilt)));
};

/** Mean elevation of the mask over the slant, °. */
export const meanRowMask = (cover: number, tilt: number): number => {
  const parts = 2000;
  let sum = rowMask(cover, tilt, 0) + rowMask(cover, tilt, 1);
  for (let i = 1; i < parts; i++) sum += (i % 2 === 1 ? 4 : 2) * rowMask(cover, tilt, i / parts);
  return sum / (3 * parts);
};

/** Share of diffuse light lost to a mask of one elevation in front of a slope, °. */
export const rowDiffuseLoss = (mask: number): number => 1 - Math.cos(toRadians(mask) / 2) ** 2;
