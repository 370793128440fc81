import { describe, expect, it } from 'vitest';
import { holesPerArea, judgeYear, passesFor, sandToFill, surfaceShare } from '#engine/works/aeration.ts';
import { cubicFoot, inch, poundPerCubicFoot, pound, squareFoot } from '#engine/works/customary-units.ts';

const grid = (diameter: number, along: number, across: number) => ({
  diameter: diameter * inch,
  along: along * inch,
  across: across * inch,
});
const spacings: readonly (readonly [number, number])[] = [
  [1.25, 1.25],
  [1.5, 1.5],
  [1.5, 2],
  [2, 2],
  [2.5, 2.5],
  [3, 3],
  [4, 4],
];

// Arithmetic of A% = 100 · (π d²/4)/(s1 · s2).
describe('surface taken by one pass', () => {
  it.each([
    [0.25, [3.14, 2.18, 1.64, 1.23, 0.79, 0.55, 0.31]],
    [0.375, [7.07, 4.91, 3.68, 2.76, 1.77, 1.23, 0.69]],
    [0.5, [12.57, 8.73, 6.54, 4.91, 3.14, 2.18, 1.23]],
    [0.75, [28.27, 19.63, 14.73, 11.04, 7.07, 4.91, 2.76]],
    [1, [50.27, 34.91, 26.18, 19.63, 12.57, 8.73, 4.91]],
  ])('%s in tines', (diameter, row) => {
    row.forEach((percent, column) => {
      const found = 100 * surfaceShare(grid(diameter, ...spacings[column]!));
      expect(Math.abs(found - percent)).toBeLessThanOrEqual(0.005);
    });
  });
  it('holes per square foot', () => {
    const holes = [92.16, 64, 48, 36, 23.04, 16, 9];
    spacings.forEach((spacing, column) =>
      expect(holesPerArea(grid(0.5, ...spacing)) * squareFoot).toBeCloseTo(holes[column]!, 9),
    );
  });
  // Golf-course aeration reports, 2012: 2.76 % and 3.93 %.
  it('agrees with the printed reports', () => {
    const side = Math.sqrt(144 / 81);
    expect(Math.abs(100 * surfaceShare(grid(0.25, side, side)) - 2.76)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(100 * surfaceShare(grid(0.5, 2, 2.5)) - 3.93)).toBeLessThanOrEqual(0.01);
    expect(100 * surfaceShare(grid(0.5, 1.6, 1.87))).toBeCloseTo(6.562, 3);
  });
  it('quarters when the spacing doubles and quadruples when the diameter does', () => {
    expect(surfaceShare(grid(0.5, 4, 4))).toBeCloseTo(surfaceShare(grid(0.5, 2, 2)) / 4, 12);
    expect(surfaceShare(grid(1, 2, 2))).toBeCloseTo(surfaceShare(grid(0.5, 2, 2)) * 4, 12);
  });
  it('is refused for a length that is not above 0', () => {
    expect(() => surfaceShare(grid(0.5, 0, 2))).toThrow(/along/);
    expect(() => surfaceShare(grid(NaN, 2, 2))).toThrow(/diameter/);
  });
});

// Woods 2009, after Hartwiger & O'Brien: 15–20 % a year, 10 % at the least.
describe('passes', () => {
  it('are whole: 4 and 5 for 15 and 20 % with 1/2 in at 2 by 2', () => {
    expect(0.15 / surfaceShare(grid(0.5, 2, 2))).toBeCloseTo(3.06, 2);
    expect(0.2 / surfaceShare(grid(0.5, 2, 2))).toBeCloseTo(4.07, 2);
    expect(passesFor(0.15, grid(0.5, 2, 2))).toBe(4);
    expect(passesFor(0.2, grid(0.5, 2, 2))).toBe(5);
    expect(passesFor(surfaceShare(grid(0.5, 2, 2)) * 3, grid(0.5, 2, 2))).toBe(3);
    expect(passesFor(0, grid(0.5, 2, 2))).toBe(0);
  });
  it('stand against the goals of a year', () => {
    const goals = { least: 0.1, low: 0.15, high: 0.2 };
    expect([0.09, 0.1, 0.15, 0.2, 0.21].map((removed) => judgeYear(removed, goals))).toEqual([
      'below the least',
      'below the goal',
      'within the goal',
      'within the goal',
      'above the goal',
    ]);
  });
});

describe('sand to fill 1000 ft²', () => {
  it.each([
    [0.5, 2, 3, 12.27],
    [0.5, 2, 4, 16.36],
    [0.75, 2.5, 4, 23.56],
  ])('%s in tines at %s in, %s in deep', (diameter, spacing, depth, wanted) => {
    const volume = sandToFill(1000 * squareFoot, grid(diameter, spacing, spacing), depth * inch);
    expect(Math.abs(volume / cubicFoot - wanted)).toBeLessThanOrEqual(0.005);
  });
  it('weighs 1,227 lb at 100 lb/ft³', () => {
    const mass = sandToFill(1000 * squareFoot, grid(0.5, 2, 2), 3 * inch) * 100 * poundPerCubicFoot;
    expect(Math.round(mass / pound)).toBe(1227);
  });
});
