import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';

/**
 * Plane geometry of simple rings in the field's own axes, m. A ring may run either way round; its last corner joins the
 * first. Every function reads plain corners, so coordinates beyond the limits of stored venues work as well.
 */

/** Area with its sign, m²: positive where the corners run anticlockwise. */
export const signedArea = (ring: Polygon): number => {
  let twice = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) twice += ring[j]![0] * ring[i]![1] - ring[i]![0] * ring[j]![1];
  return twice / 2;
};

/** Area, m². */
export const polygonArea = (ring: Polygon): number => Math.abs(signedArea(ring));

/** Middle of mass; the mean of the corners where the ring has no area. */
export const centroid = (ring: Polygon): Point => {
  const area = signedArea(ring);
  let x = 0;
  let y = 0;
  if (Math.abs(area) < 1e-12) {
    for (const corner of ring) {
      x += corner[0] / ring.length;
      y += corner[1] / ring.length;
    }
    return [x, y];
  }
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const cross = ring[j]![0] * ring[i]![1] - ring[i]![0] * ring[j]![1];
    x += (ring[j]![0] + ring[i]![0]) * cross;
    y += (ring[j]![1] + ring[i]![1]) * cross;
  }
  return [x / (6 * area), y / (6 * area)];
};

/** Whether a point lies inside (even-odd rule). Left and bottom edges belong to the ring, right and top edges do not. */
export const contains = (ring: Polygon, x: number, y: number): boolean => {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [xi, yi] = ring[i]!;
    const [xj, yj] = ring[j]!;
    if (yi > y !== yj > y && x < xi + ((y - yi) / (yj - yi)) * (xj - xi)) inside = !inside;
  }
  return inside;
};

/** The smallest upright rectangle around a ring. */
export const bounds = (ring: Polygon): { left: number; right: number; bottom: number; top: number } => {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of ring) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, right, bottom, top };
};

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
