import { describe, expect, it } from 'vitest';
import { assignZones, cellsInside, fieldMean, layCells, zoneAreas, zoneMeans } from '#engine/ground/cells.ts';
import { bounds, centroid, contains, cutToStrip, polygonArea, signedArea } from '#shared/geometry/polygon.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';

const rectangle = (left: number, bottom: number, right: number, top: number): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
/** An L: 10 × 10 less its upper right quarter of 6 × 6. */
const hook: Point[] = [
  [0, 0],
  [10, 0],
  [10, 4],
  [4, 4],
  [4, 10],
  [0, 10],
];
const sum = (values: Float64Array) => values.reduce((a, b) => a + b, 0);

describe('rings', () => {
  it('have an area, signed by their turn', () => {
    expect(signedArea(hook)).toBe(64);
    expect(signedArea([...hook].reverse())).toBe(-64);
    expect(polygonArea([...hook].reverse())).toBe(64);
  });
  it('have a middle of mass', () => {
    expect(centroid(rectangle(2, 4, 6, 10))).toEqual([4, 7]);
    expect(
      centroid([
        [0, 0],
        [2, 0],
        [4, 0],
      ]),
    ).toEqual([2, 0]);
    const [x, y] = centroid(hook);
    expect(x).toBeCloseTo((40 * 5 + 24 * 2) / 64, 12);
    expect(y).toBeCloseTo((40 * 2 + 24 * 7) / 64, 12);
  });
  it('contain what lies inside, and each point of a shared edge belongs to one side only', () => {
    expect(contains(hook, 2, 9)).toBe(true);
    expect(contains(hook, 7, 7)).toBe(false);
    const [left, right] = [rectangle(0, 0, 5, 5), rectangle(5, 0, 10, 5)];
    for (const y of [0, 1, 2.5]) expect(Number(contains(left, 5, y)) + Number(contains(right, 5, y))).toBe(1);
  });
  it('are cut to a strip, hollow ones too', () => {
    expect(polygonArea(cutToStrip(hook, 1, 3, 5))).toBeCloseTo(10 + 4, 12);
    expect(polygonArea(cutToStrip(hook, 0, 3, 5))).toBeCloseTo(10 + 4, 12);
    expect(cutToStrip(hook, 0, 20, 30)).toEqual([]);
    expect(bounds(hook)).toEqual({ left: 0, right: 10, bottom: 0, top: 10 });
  });
});

describe('cells of a field', () => {
  it.each([1, 2, 4])('of %i m add to the field', (size) => {
    for (const outline of [
      hook,
      rectangle(-33.7, -52.1, 33.7, 52.1),
      [
        [-30, -50],
        [31, -49],
        [34, 50],
        [-29, 55],
      ] as Point[],
    ]) {
      expect(sum(layCells(outline, size).area)).toBeCloseTo(polygonArea(outline), 8);
    }
  });
  it('are whole inside and cut at the edge', () => {
    const cells = layCells(rectangle(-3, -2, 3, 2), 2);
    expect(cells.count).toBe(8);
    expect([...cells.area].sort()).toEqual([2, 2, 2, 2, 4, 4, 4, 4]);
    expect(cells.x[0]).toBeCloseTo(-2.5, 12);
    expect(cells.x[1]).toBe(-1);
    expect([cells.column[0], cells.row[0]]).toEqual([-2, -1]);
  });
  it('mirror with the field', () => {
    const cells = layCells(rectangle(-33.7, -52, 33.7, 52), 2);
    const seen = new Set(Array.from(cells.x, (x, i) => `${x.toFixed(9)} ${cells.y[i]!.toFixed(9)}`));
    cells.x.forEach((x, i) => expect(seen.has(`${(-x).toFixed(9)} ${cells.y[i]!.toFixed(9)}`)).toBe(true));
  });
  it('refuse a size that does not fit', () => {
    expect(() => layCells(hook, 0)).toThrow(RangeError);
    expect(() => layCells(hook, Number.NaN)).toThrow(RangeError);
    expect(() => layCells(rectangle(-1000, -1000, 1000, 1000), 1)).toThrow(/cell size/);
  });
});

describe('zones', () => {
  const cells = layCells(rectangle(-10, -10, 10, 10), 2);
  const zones = [rectangle(-10, 0, 10, 10), rectangle(-10, -10, 0, 10)];
  const zoneOf = assignZones(cells, zones);
  it('go to the first that contains the middle of the cell', () => {
    expect([...zoneAreas(cells, zoneOf, 2)]).toEqual([200, 100]);
    expect(zoneOf.filter((zone) => zone === -1)).toHaveLength(25);
    expect(cellsInside(cells, zones[1]!)).toHaveLength(50);
  });
  it('have means weighted by turf', () => {
    const means = zoneMeans(cells, cells.y, zoneOf, 3);
    expect(means[0]).toBeCloseTo(5, 12);
    expect(means[1]).toBeCloseTo(-5, 12);
    expect(means[2]).toBeNaN();
    expect(fieldMean(cells, cells.x)).toBeCloseTo(0, 12);
  });
});
