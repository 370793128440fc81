import { describe, expect, test } from 'vitest';
import { fieldLayouts, paintedLines, turfAround } from '#shared/geometry/field-layouts.ts';
import { sideLengths } from '#shared/geometry/moving.ts';
import { bounds, polygonArea } from '#shared/geometry/polygon.ts';
import { selfCrossing } from '#shared/geometry/rings.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import { fieldCodes, type FieldCode } from '#shared/vocabulary/venue.ts';

const foot = 0.3048;
const usual = (code: FieldCode) => ({ code, length: fieldLayouts[code].length.usual, width: fieldLayouts[code].width.usual });
const lengthOf = (line: readonly Point[]): number =>
  line.slice(1).reduce((sum, [x, y], at) => sum + Math.hypot(x - line[at]![0], y - line[at]![1]), 0);

describe('fields of the games', () => {
  test('American football: 360 by 160 ft (rule 1) enclose 57,600 ft², and goal lines lie 100 yd apart', () => {
    const lines = paintedLines(usual('american-football'));
    expect(polygonArea(lines[0]!.slice(0, -1)) / foot ** 2).toBeCloseTo(57_600, 0);
    const heights = lines.slice(1).map((line) => line[0]![1]);
    expect((Math.max(...heights) - Math.min(...heights)) / 0.9144).toBeCloseTo(100, 2);
  });

  test('association football: centre circle of 9.15 m, areas of 16.5 m and 5.5 m about a goal of 7.32 m (Law 1)', () => {
    const [, , circle, penalty, , goal] = paintedLines(usual('association-football'));
    expect(bounds(circle!)).toEqual({ left: -9.15, right: 9.15, bottom: -9.15, top: 9.15 });
    expect(bounds(penalty!)).toEqual({ left: -20.16, right: 20.16, bottom: 36, top: 52.5 });
    expect(2 * 20.16).toBeCloseTo(7.32 + 2 * 16.5, 9);
    expect(2 * bounds(goal!).right).toBeCloseTo(7.32 + 2 * 5.5, 9);
    expect(bounds(goal!).top - bounds(goal!).bottom).toBeCloseTo(5.5, 9);
  });

  test('baseball: bases 90 ft apart, home to second 127 ft 3⅜ in, fence 325 ft and 400 ft from home (rule 2.01)', () => {
    const [foul, fence, bases] = paintedLines(usual('baseball'));
    for (const side of sideLengths(bases!.slice(0, -1))) expect(side / foot).toBeCloseTo(90, 1);
    const [home, , second] = bases!;
    expect((second![1] - home![1]) / foot).toBeCloseTo(127 + 3.375 / 12, 1);
    expect(lengthOf(foul!) / 2 / foot).toBeCloseTo(325, 1);
    expect((Math.max(...fence!.map(([, y]) => y)) - home![1]) / foot).toBeCloseTo(400, 1);
  });

  test('baseball: the turf ends 60 ft behind home plate (rule 2.01)', () => {
    const lines = usual('baseball');
    const home = paintedLines(lines)[2]![0]!;
    expect((home[1] - bounds(turfAround(lines, 60 * foot)).bottom) / foot).toBeCloseTo(60, 1);
  });

  test('Australian football: a centre square of 50 m, and 50 m from goal along the axis (Law 3)', () => {
    const lines = usual('australian-football');
    const [, square, , , arc] = paintedLines(lines);
    expect(sideLengths(square!.slice(0, -1))).toEqual([50, 50, 50, 50]);
    expect(lines.length / 2 - Math.min(...arc!.map(([, y]) => y))).toBeCloseTo(50, 1);
  });

  test('rugby union: dead-ball lines 10 m behind goal lines, and lines at 22 m and 10 m (Law 1)', () => {
    const lines = paintedLines(usual('rugby-union'));
    expect(bounds(lines[0]!)).toEqual({ left: -35, right: 35, bottom: -60, top: 60 });
    expect(lines.slice(2).map((line) => line[0]![1])).toEqual([50, -50, 28, -28, 10, -10]);
  });

  test.each(fieldCodes)(
    '%s: the turf is one simple ring about the middle that holds every line, in at most 400 corners',
    (code) => {
      const lines = usual(code);
      const turf = turfAround(lines, fieldLayouts[code].beyond);
      expect(selfCrossing(turf)).toBeNull();
      expect(turf.length).toBeLessThanOrEqual(400);
      const around = bounds(turf);
      expect(around.left + around.right).toBeCloseTo(0, 1);
      expect(around.bottom + around.top).toBeCloseTo(0, 1);
      for (const line of paintedLines(lines)) {
        const held = bounds(line);
        expect(held.left).toBeGreaterThanOrEqual(around.left - 0.02);
        expect(held.right).toBeLessThanOrEqual(around.right + 0.02);
        expect(held.bottom).toBeGreaterThanOrEqual(around.bottom - 0.02);
        expect(held.top).toBeLessThanOrEqual(around.top + 0.02);
      }
    },
  );

  test.each(fieldCodes)('%s: the usual size is one that its rules allow', (code) => {
    for (const { usual: size, low, high } of [fieldLayouts[code].length, fieldLayouts[code].width]) {
      expect(size).toBeGreaterThanOrEqual(low);
      expect(size).toBeLessThanOrEqual(high);
    }
  });
});
