import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';

/** Cutting rings along the axes of the field, m; area, middle and the rest of plane geometry are the same for every side. */
export { bounds, centroid, contains, polygonArea, signedArea } from '#shared/geometry/polygon.ts';

/** The part of a ring on one side of a line across an axis: `axis` 0 for x, 1 for y; `keep` 1 above the limit, −1 below. */
const cut = (ring: Polygon, axis: 0 | 1, limit: number, keep: 1 | -1): Point[] => {
  const kept: Point[] = [];
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const from = ring[j]!;
    const to = ring[i]!;
    const before = (from[axis] - limit) * keep;
    const after = (to[axis] - limit) * keep;
    if (before >= 0 !== after >= 0) {
      const t = before / (before - after);
      const other = from[1 - axis]! + t * (to[1 - axis]! - from[1 - axis]!);
      kept.push(axis === 0 ? [limit, other] : [other, limit]);
    }
    if (after >= 0) kept.push(to);
  }
  return kept;
};

/**
 * The part of a ring between two limits of one axis, by half-plane cuts (Sutherland and Hodgman's way). A hollow ring that falls
 * apart stays joined by edges of no width, so that its area is still right.
 */
export const cutToStrip = (ring: Polygon, axis: 0 | 1, low: number, high: number): readonly Point[] =>
  cut(cut(ring, axis, low, 1), axis, high, -1);
