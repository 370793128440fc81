import { toCentimetre } from '#shared/geometry/moving.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';

/** What a drawn point can be drawn to. Corners and marks win over edges, edges over the grid. */
export type SnappedTo = 'corner' | 'mark' | 'edge' | 'grid';

export interface SnapTargets {
  /** Rings whose corners and sides draw a point. */
  readonly rings: readonly Polygon[];
  /** Lines painted on the field. */
  readonly marks: readonly (readonly Point[])[];
  /** m between the lines of the grid; null for none. */
  readonly grid: number | null;
}

export interface Snapped {
  readonly point: Point;
  readonly to: SnappedTo | null;
}

const distance = ([ax, ay]: Point, [bx, by]: Point): number => Math.hypot(ax - bx, ay - by);

/** The point of a side nearest to a point, to the centimetre. */
export const nearestOnSide = ([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): Point => {
  const square = (bx - ax) ** 2 + (by - ay) ** 2;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / square));
  return [toCentimetre(ax + along * (bx - ax)), toCentimetre(ay + along * (by - ay))];
};

const nearest = (point: Point, candidates: readonly Point[], reach: number): Point | null =>
  candidates.reduce<Point | null>(
    (best, one) =>
      distance(one, point) <= reach && (best === null || distance(one, point) < distance(best, point)) ? one : best,
    null,
  );

/** Points where lines of the field end, bend or cross the middle: the ends of every painted straight. */
const endsOf = (marks: SnapTargets['marks']): readonly Point[] => marks.flat();

const onLines = (point: Point, lines: readonly (readonly Point[])[]): readonly Point[] =>
  lines.flatMap((line) => line.slice(1).map((end, at) => nearestOnSide(point, line[at]!, end)));

const closed = (ring: Polygon): readonly Point[] => [...ring, ring[0]!];

/** To the grid, whatever the reach: where a grid is on, no point lies between its lines unless something nearer draws it. */
export const toGrid = ([x, y]: Point, grid: number): Point => [
  toCentimetre(Math.round(x / grid) * grid),
  toCentimetre(Math.round(y / grid) * grid),
];

/** Draws a point to what lies within reach. @param reach m */
export const snapped = (point: Point, targets: SnapTargets, reach: number): Snapped => {
  const corner = nearest(point, targets.rings.flat(), reach);
  if (corner) return { point: corner, to: 'corner' };
  const mark = nearest(point, endsOf(targets.marks), reach);
  if (mark) return { point: mark, to: 'mark' };
  const edge = nearest(point, onLines(point, targets.rings.map(closed)), reach);
  if (edge) return { point: edge, to: 'edge' };
  const line = nearest(point, onLines(point, targets.marks), reach);
  if (line) return { point: line, to: 'mark' };
  if (targets.grid === null) return { point: [toCentimetre(point[0]), toCentimetre(point[1])], to: null };
  return { point: toGrid(point, targets.grid), to: 'grid' };
};

/**
 * Draws a moved ring: the corner that is nearest to something takes the whole ring with it; with a grid and nothing else near, its
 * first corner goes to the grid.
 * @returns how far to move it further, m, and what drew it
 */
export const snappedShift = (
  ring: Polygon,
  targets: SnapTargets,
  reach: number,
): { readonly right: number; readonly up: number; readonly to: SnappedTo | null } => {
  const found = ring
    .map((corner) => ({ corner, ...snapped(corner, { ...targets, grid: null }, reach) }))
    .filter(({ to }) => to !== null)
    .toSorted((a, b) => distance(a.corner, a.point) - distance(b.corner, b.point))[0];
  const first = ring[0]!;
  const { corner, point, to } = found ?? { corner: first, ...snapped(first, { ...targets, rings: [], marks: [] }, reach) };
  return { right: point[0] - corner[0], up: point[1] - corner[1], to };
};
