import { bounds, centroid, contains, cutToStrip, polygonArea } from '#shared/geometry/polygon.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';

/**
 * The field cut into squares. The lines of the grid pass through the origin (the middle of the field), so that a field that
 * is its own mirror image gets cells that are, and the cells of 4, 2 and 1 m nest.
 */
export type Cells = {
  /** Side of a whole square, m. */
  readonly size: number;
  readonly count: number;
  /** Middle of the part of the square that is turf, m: the square's own middle where it lies wholly inside. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Turf in the square, m²; the areas add up to the area of the field. */
  readonly area: Float64Array;
  /** The square spans x from column·size to (column+1)·size, and y likewise with its row. */
  readonly column: Int32Array;
  readonly row: Int32Array;
};

const mostCells = 250_000;

/**
 * Cuts a field into squares, row by row from the bottom and from the left. Squares that the outline crosses keep the part inside.
 * @param outline edge of the turf, m; @param size side of a square, m
 * @throws RangeError where the side is not above 0 or would make more than 250,000 squares
 */
export const layCells = (outline: Polygon, size: number): Cells => {
  const box = bounds(outline);
  const across = (box.right - box.left) / size;
  const along = (box.top - box.bottom) / size;
  if (!(size > 0) || !(across * along <= mostCells)) throw new RangeError(`cell size: ${size} m does not fit this field`);
  const found: { x: number; y: number; area: number; column: number; row: number }[] = [];
  const whole = size * size;
  for (let row = Math.floor(box.bottom / size); row * size < box.top; row++) {
    const strip = cutToStrip(outline, 1, row * size, (row + 1) * size);
    if (strip.length < 3) continue;
    const reach = bounds(strip);
    for (let column = Math.floor(reach.left / size); column * size < reach.right; column++) {
      const part = cutToStrip(strip, 0, column * size, (column + 1) * size);
      const area = part.length < 3 ? 0 : polygonArea(part);
      if (area < 1e-9 * whole) continue;
      if (area > whole * (1 - 1e-12)) found.push({ x: (column + 0.5) * size, y: (row + 0.5) * size, area: whole, column, row });
      else {
        const [x, y] = centroid(part);
        found.push({ x, y, area, column, row });
      }
    }
  }
  return {
    size,
    count: found.length,
    x: Float64Array.from(found, (cell) => cell.x),
    y: Float64Array.from(found, (cell) => cell.y),
    area: Float64Array.from(found, (cell) => cell.area),
    column: Int32Array.from(found, (cell) => cell.column),
    row: Int32Array.from(found, (cell) => cell.row),
  };
};

/** For each cell the index of the first polygon that contains its middle; −1 where none does. */
export const assignZones = (cells: Cells, polygons: readonly Polygon[]): Int16Array => {
  const zoneOf = new Int16Array(cells.count).fill(-1);
  polygons.forEach((polygon, zone) => {
    const box = bounds(polygon);
    for (let i = 0; i < cells.count; i++) {
      const x = cells.x[i]!;
      const y = cells.y[i]!;
      if (zoneOf[i] !== -1 || x < box.left || x > box.right || y < box.bottom || y > box.top) continue;
      if (contains(polygon, x, y)) zoneOf[i] = zone;
    }
  });
  return zoneOf;
};

/** The cells whose middle lies inside a polygon. */
export const cellsInside = (cells: Cells, polygon: Polygon): Int32Array => {
  const zoneOf = assignZones(cells, [polygon]);
  return Int32Array.from(zoneOf.keys()).filter((cell) => zoneOf[cell] === 0);
};

/**
 * Mean of a value by zone, weighted by the turf in each cell.
 * @param values one per cell; @param zoneOf from `assignZones`; @param zones how many there are
 * @returns one per zone; NaN where a zone holds no cell
 */
export const zoneMeans = (cells: Cells, values: ArrayLike<number>, zoneOf: Int16Array, zones: number): Float64Array => {
  const sum = new Float64Array(zones);
  const area = zoneAreas(cells, zoneOf, zones);
  for (let i = 0; i < cells.count; i++) if (zoneOf[i]! >= 0) sum[zoneOf[i]!]! += values[i]! * cells.area[i]!;
  return sum.map((total, zone) => total / area[zone]!);
};

/** Turf in each zone, m². */
export const zoneAreas = (cells: Cells, zoneOf: Int16Array, zones: number): Float64Array => {
  const area = new Float64Array(zones);
  for (let i = 0; i < cells.count; i++) if (zoneOf[i]! >= 0) area[zoneOf[i]!]! += cells.area[i]!;
  return area;
};

/** Mean of a value over the whole field, weighted by the turf in each cell. */
export const fieldMean = (cells: Cells, values: ArrayLike<number>): number => {
  let sum = 0;
  let area = 0;
  for (let i = 0; i < cells.count; i++) {
    sum += values[i]! * cells.area[i]!;
    area += cells.area[i]!;
  }
  return sum / area;
};
