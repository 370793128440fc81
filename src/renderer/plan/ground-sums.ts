import { difference, intersection, union, type Geom } from 'polyclip-ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';

/** What a footprint takes, m². */
export interface GroundSum {
  readonly letter: string;
  readonly name: string;
  /** As it is drawn. */
  readonly drawn: number;
  /** Turf that is its own: what shapes listed before it take is theirs. */
  readonly turf: number;
  /** Its own ground beside the turf: track, apron. */
  readonly beside: number;
}

const asGeometry = (ring: Polygon): Geom => [[...ring.map(([x, y]): [number, number] => [x, y])]];

const areaOf = (pieces: ReturnType<typeof union>): number =>
  pieces.reduce(
    (sum, [outer, ...holes]) => sum + polygonArea(outer ?? []) - holes.reduce((taken, hole) => taken + polygonArea(hole), 0),
    0,
  );

/** Shares the ground out as the forecast does, first come first served, but to the line instead of by cells. */
export const groundSums = (
  zones: readonly { readonly letter: string; readonly name: string; readonly outline: Polygon }[],
  turf: Polygon,
): readonly GroundSum[] => {
  const field = asGeometry(turf);
  let taken: ReturnType<typeof union> = [];
  return zones.map(({ letter, name, outline }) => {
    const ring = asGeometry(outline);
    const own = taken.length === 0 ? union(ring) : difference(ring, taken);
    taken = taken.length === 0 ? union(ring) : union(taken, ring);
    const onTurf = own.length === 0 ? 0 : areaOf(intersection(own, field));
    return { letter, name, drawn: polygonArea(outline), turf: onTurf, beside: areaOf(own) - onTurf };
  });
};
