import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';
import { contains } from '#shared/geometry/polygon.ts';

/** Plain geometry of simple rings of corners in metres. The last corner joins the first. */

/** The sides of a ring, each from one corner to the next. */
const sidesOf = (ring: Polygon): readonly (readonly [Point, Point])[] =>
  ring.map((corner, at) => [corner, ring[(at + 1) % ring.length]!] as const);

const distanceToSide = ([x, y]: Point, [[x1, y1], [x2, y2]]: readonly [Point, Point]): number => {
  const length = (x2 - x1) ** 2 + (y2 - y1) ** 2;
  const along = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length));
  return Math.hypot(x - x1 - along * (x2 - x1), y - y1 - along * (y2 - y1));
};

/** Which way three points turn: positive to the left, negative to the right, 0 in line. */
const turn = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number => (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

const onSide = (point: Point, [a, b]: readonly [Point, Point]): boolean =>
  turn(a, b, point) === 0 &&
  Math.min(a[0], b[0]) <= point[0] &&
  point[0] <= Math.max(a[0], b[0]) &&
  Math.min(a[1], b[1]) <= point[1] &&
  point[1] <= Math.max(a[1], b[1]);

/** Whether two sides have a point in common. */
const sidesMeet = (one: readonly [Point, Point], other: readonly [Point, Point]): boolean => {
  const [a, b] = one;
  const [c, d] = other;
  const crosses = turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
  return crosses || onSide(c, one) || onSide(d, one) || onSide(a, other) || onSide(b, other);
};

/** Whether sides of two rings cross in their middles (touching does not count). */
const sidesCross = ([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

/** The first two sides of a ring that meet although they are not neighbours, numbered from 0; null for a simple ring. */
export const selfCrossing = (ring: Polygon): readonly [number, number] | null => {
  const sides = sidesOf(ring);
  for (let one = 0; one < sides.length; one++) {
    for (let other = one + 1; other < sides.length; other++) {
      const neighbours = other === one + 1 || (one === 0 && other === sides.length - 1);
      if (neighbours ? foldsBack(sides[one]!, sides[other]!) : sidesMeet(sides[one]!, sides[other]!)) return [one, other];
    }
  }
  return null;
};

/** Whether two neighbouring sides share more than their one corner. */
const foldsBack = (one: readonly [Point, Point], other: readonly [Point, Point]): boolean => {
  const shared = same(one[1], other[0]) ? ([one[0], other[1]] as const) : ([one[1], other[0]] as const);
  return onSide(shared[0], other) || onSide(shared[1], one);
};

const same = (one: Point, other: Point): boolean => one[0] === other[0] && one[1] === other[1];

/** Whether two simple rings have ground in common, more than an edge. */
export const overlaps = (one: Polygon, other: Polygon): boolean =>
  sidesOf(one).some((side) => sidesOf(other).some((opposite) => sidesCross(side, opposite))) ||
  middlesOf(one).some((point) => strictlyInside(other, point)) ||
  middlesOf(other).some((point) => strictlyInside(one, point));

/** The corners of a ring, the middles of its sides and one point inside it: enough to see one ring in another. */
const middlesOf = (ring: Polygon): readonly Point[] => [
  ...ring,
  ...sidesOf(ring).map(([[x1, y1], [x2, y2]]): Point => [(x1 + x2) / 2, (y1 + y2) / 2]),
  insideOf(ring),
];

/** A point inside a simple ring: the middle of the widest stretch on a level line that meets no corner. */
const insideOf = (ring: Polygon): Point => {
  const levels = [...new Set(ring.map(([, y]) => y))].toSorted((a, b) => a - b);
  const y = (levels[0]! + (levels[1] ?? levels[0]!)) / 2;
  const crossings = sidesOf(ring)
    .filter(([[, y1], [, y2]]) => y1 > y !== y2 > y)
    .map(([[x1, y1], [x2, y2]]) => x1 + ((y - y1) / (y2 - y1)) * (x2 - x1))
    .toSorted((a, b) => a - b);
  return crossings.length < 2 ? ring[0]! : [(crossings[0]! + crossings[1]!) / 2, y];
};

const strictlyInside = (ring: Polygon, point: Point): boolean =>
  contains(ring, point[0], point[1]) && sidesOf(ring).every((side) => distanceToSide(point, side) > 1e-9);

/**
 * The farthest point of a ring's edge from another ring, its distance in m, and the corner it is at or follows. Sides are looked at
 * every metre, so that a side that bridges a bay of a hollow outline is found.
 */
export const farthestFrom = (outline: Polygon, ring: Polygon): { readonly corner: number; readonly distance: number } => {
  let farthest = { corner: 0, distance: 0 };
  const edge = sidesOf(outline);
  sidesOf(ring).forEach(([[x1, y1], [x2, y2]], corner) => {
    const steps = Math.max(1, Math.ceil(Math.hypot(x2 - x1, y2 - y1)));
    for (let step = 0; step < steps; step++) {
      const point: Point = [x1 + ((x2 - x1) * step) / steps, y1 + ((y2 - y1) * step) / steps];
      if (contains(outline, point[0], point[1])) continue;
      const distance = edge.reduce((least, side) => Math.min(least, distanceToSide(point, side)), Infinity);
      if (distance > farthest.distance + 1e-9) farthest = { corner, distance };
    }
  });
  return farthest;
};
