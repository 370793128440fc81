import { bounds } from '#shared/geometry/polygon.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';

/** Moving and reshaping rings of corners in the field's own axes, m. Corners are numbered from 0; the last joins the first. */

/** cm are as fine as ground is set out; figures typed, moved and turned stay short. */
export const toCentimetre = (value: number): number => Math.round(value * 100) / 100 + 0;

const tidy = ([x, y]: Point): Point => [toCentimetre(x), toCentimetre(y)];

/** A map of the plane that keeps lengths. */
export type Move = (point: Point) => Point;

export const shift =
  (right: number, up: number): Move =>
  ([x, y]) =>
    tidy([x + right, y + up]);

/** A turn about a point. @param degrees anticlockwise as the field is drawn with +y up */
export const turn = (degrees: number, [cx, cy]: Point): Move => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return ([x, y]) => tidy([cx + (x - cx) * cos - (y - cy) * sin, cy + (x - cx) * sin + (y - cy) * cos]);
};

export const moveRing = (ring: Polygon, move: Move): Polygon => ring.map(move);

/** The middle of the upright rectangle around a ring: what a shape is turned about. */
export const middleOf = (ring: Polygon): Point => {
  const { left, right, bottom, top } = bounds(ring);
  return [(left + right) / 2, (bottom + top) / 2];
};

/** The upright rectangle between two opposite corners. */
export const rectangleOf = ([x1, y1]: Point, [x2, y2]: Point): Polygon => [
  [Math.min(x1, x2), Math.min(y1, y2)],
  [Math.max(x1, x2), Math.min(y1, y2)],
  [Math.max(x1, x2), Math.max(y1, y2)],
  [Math.min(x1, x2), Math.max(y1, y2)],
];

export const withCorner = (ring: Polygon, at: number, corner: Point): Polygon =>
  ring.map((old, index) => (index === at ? tidy(corner) : old));

/** A further corner in the middle of the side that begins at a corner. */
export const withCornerAfter = (ring: Polygon, at: number): Polygon => {
  const [[x1, y1], [x2, y2]] = [ring[at]!, ring[(at + 1) % ring.length]!];
  return [...ring.slice(0, at + 1), tidy([(x1 + x2) / 2, (y1 + y2) / 2]), ...ring.slice(at + 1)];
};

/** Without one corner; a triangle keeps all three. */
export const withoutCorner = (ring: Polygon, at: number): Polygon =>
  ring.length <= 3 ? ring : ring.filter((_, index) => index !== at);

/**
 * A ring with one side set to a length: its far corner moves along the side. In a rectangle, upright or turned, the opposite corner
 * goes with it, so that it stays one.
 */
export const withSide = (ring: Polygon, at: number, length: number): Polygon => {
  const next = (at + 1) % ring.length;
  const [[x1, y1], [x2, y2]] = [ring[at]!, ring[next]!];
  const old = Math.hypot(x2 - x1, y2 - y1);
  if (old === 0 || !(length > 0)) return ring;
  const [dx, dy] = [((x2 - x1) * (length - old)) / old, ((y2 - y1) * (length - old)) / old];
  const moving = isRectangle(ring) ? [next, (at + 2) % 4] : [next];
  return ring.map(([x, y], index) => (moving.includes(index) ? tidy([x + dx, y + dy]) : [x, y]));
};

/** Four corners at right angles, to a centimetre over the side. */
export const isRectangle = (ring: Polygon): boolean =>
  ring.length === 4 &&
  ring.every(([x, y], at) => {
    const [[ax, ay], [bx, by]] = [ring[(at + 3) % 4]!, ring[(at + 1) % 4]!];
    const across = Math.hypot(ax - x, ay - y) * Math.hypot(bx - x, by - y);
    return Math.abs((ax - x) * (bx - x) + (ay - y) * (by - y)) <= 0.01 * Math.sqrt(across);
  });

/** m, one for each side, from its corner to the next. */
export const sideLengths = (ring: Polygon): readonly number[] =>
  ring.map(([x, y], at) => Math.hypot(ring[(at + 1) % ring.length]![0] - x, ring[(at + 1) % ring.length]![1] - y));
