import { toCentimetre } from '#shared/geometry/moving.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';

/** How far a mitred corner may reach, in half widths; sharper bends are cut off square. */
const longestMitre = 3;

/**
 * The ground that a route takes: a strip of one width along a line of at least two different points, its ends cut square and its bends
 * mitred, so that the width is true on every straight. Null where the line has no length.
 * @param line m; @param width m
 */
export const routeAlong = (line: readonly Point[], width: number): Polygon | null => {
  const points = line.filter(([x, y], at) => at === 0 || Math.hypot(x - line[at - 1]![0], y - line[at - 1]![1]) > 1e-6);
  if (points.length < 2 || !(width > 0)) return null;
  const half = width / 2;
  /** Unit normals to the left of each straight. */
  const normals = points.slice(1).map(([x, y], at): Point => {
    const [dx, dy] = [x - points[at]![0], y - points[at]![1]];
    const length = Math.hypot(dx, dy);
    return [-dy / length, dx / length];
  });
  const left: Point[] = [];
  const right: Point[] = [];
  points.forEach(([x, y], at) => {
    for (const [nx, ny] of offsets(normals[at - 1], normals[at])) {
      left.push([toCentimetre(x + nx * half), toCentimetre(y + ny * half)]);
      right.push([toCentimetre(x - nx * half), toCentimetre(y - ny * half)]);
    }
  });
  return [...left, ...right.toReversed()];
};

/** Offsets of the two edges at a point between two straights, in half widths: one for an end or a mitre, two where it is cut off. */
const offsets = (before: Point | undefined, after: Point | undefined): readonly Point[] => {
  if (!before || !after) return [before ?? after!];
  const [sx, sy] = [before[0] + after[0], before[1] + after[1]];
  const square = sx * sx + sy * sy;
  // The mitre of two unit normals is their sum over half its square: 2/|sum| long.
  if (square < (2 / longestMitre) ** 2) return [before, after];
  return [[(2 * sx) / square, (2 * sy) / square]];
};
