import type { UnitSystem } from '#shared/units/quantity.ts';
import { middleOf } from '#shared/geometry/moving.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';
import { areaWords, lengthWords } from './measure-words.ts';

/** px: a side shorter than this on the screen has no room for its length. */
const room = 34;
/** px: in a narrower ring the area stands lower than the lengths of its upright sides, which it would run into. */
const areaRoom = 130;
/** A ring of more sides is an arc: its lengths say nothing. */
const mostSides = 16;

/** Lengths along the sides of a line or a ring, and the area of a ring in its middle. They keep their size on the screen. */
export const Dimensions = ({
  points,
  closed,
  scale,
  units,
}: {
  points: readonly Point[];
  closed: boolean;
  /** m to a pixel */
  scale: number;
  units: UnitSystem;
}) => {
  const sides = points.flatMap((from, at) => {
    const to = points[at + 1] ?? (closed ? points[0] : undefined);
    return to ? [{ from, to, length: Math.hypot(to[0] - from[0], to[1] - from[1]) }] : [];
  });
  const size = 11 * scale;
  const ring: Polygon | null = closed && points.length >= 3 ? points : null;
  const [mx, my] = points.length > 0 ? middleOf(points) : [0, 0];
  const across = points.map(([x]) => x);
  const narrow = (Math.max(...across) - Math.min(...across)) / scale < areaRoom;
  return (
    <g className="dimensions" fontSize={size} strokeWidth={3 * scale}>
      {points.length <= mostSides &&
        sides
          .filter(({ length }) => length / scale >= room)
          .map(({ from, to, length }, at) => {
            // Written outside the ring, away from its middle.
            const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
            const away = Math.hypot(x - mx, y - my) || 1;
            const out = ring ? 11 * scale : -9 * scale;
            return (
              <text key={at} x={x + ((x - mx) / away) * out} y={-(y + ((y - my) / away) * out) + size * 0.35} textAnchor="middle">
                {lengthWords(length, units)}
              </text>
            );
          })}
      {ring && (
        <text x={mx} y={-my + (narrow ? 2.2 : 0.35) * size} textAnchor="middle" className="area">
          {areaWords(polygonArea(ring))}
        </text>
      )}
    </g>
  );
};
