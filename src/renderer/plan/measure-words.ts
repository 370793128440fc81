import { show as inUnits, type UnitSystem } from '#shared/units/quantity.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { sideLengths } from '#shared/geometry/moving.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';

/** "24.0 ft" */
export const lengthWords = (metres: number, units: UnitSystem): string =>
  inUnits(metres, 'length', units, units === 'us' ? 1 : 2);

/** Both, for whoever sits at the table: "4,704 ft² (437 m²)". */
export const areaWords = (area: number): string => `${inUnits(area, 'area', 'us')} (${inUnits(area, 'area', 'si')})`;

/** Where a point lies: "12.0 ft right, 30.5 ft up". The middle of the field is the origin. */
export const pointWords = ([x, y]: Point, units: UnitSystem): string =>
  `${lengthWords(Math.abs(x), units)} ${x < 0 ? 'left' : 'right'}, ${lengthWords(Math.abs(y), units)} ${y < 0 ? 'down' : 'up'}`;

/** Sides and area of a ring in words. */
export const ringWords = (ring: Polygon, units: UnitSystem): string => {
  const sides = sideLengths(ring);
  const shown = sides.length > 6 ? `${sides.length} sides` : sides.map((side) => lengthWords(side, units)).join(', ');
  return `${shown}; ${areaWords(polygonArea(ring))}`;
};
