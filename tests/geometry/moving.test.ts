import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  isRectangle,
  middleOf,
  moveRing,
  rectangleOf,
  shift,
  sideLengths,
  turn,
  withCornerAfter,
  withoutCorner,
  withSide,
} from '#shared/geometry/moving.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { routeAlong } from '#shared/geometry/route.ts';
import { selfCrossing } from '#shared/geometry/rings.ts';
import { snapped, snappedShift } from '#shared/geometry/snapping.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';

const stage = rectangleOf([-12, 40], [12, 56]);
const coordinate = fc.integer({ min: -9000, max: 9000 }).map((centimetres) => centimetres / 100);
const point = fc.tuple(coordinate, coordinate);

describe('moving and turning', () => {
  test('keep the area and every side, whatever the shape', () => {
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 3, maxLength: 12 }),
        point,
        fc.integer({ min: -360, max: 360 }),
        (ring, by, degrees) => {
          const moved = moveRing(moveRing(ring, shift(...by)), turn(degrees, middleOf(ring)));
          const sides = sideLengths(ring);
          sideLengths(moved).forEach((side, at) => expect(Math.abs(side - sides[at]!)).toBeLessThan(0.05));
          expect(Math.abs(polygonArea(moved) - polygonArea(ring))).toBeLessThan(
            0.02 * sides.reduce((sum, side) => sum + side, 1),
          );
        },
      ),
    );
  });

  test('a quarter turn about its middle swaps the sides of a rectangle, anticlockwise', () => {
    expect(moveRing(stage, turn(90, middleOf(stage)))).toEqual([
      [8, 36],
      [8, 60],
      [-8, 60],
      [-8, 36],
    ]);
  });
});

describe('reshaping', () => {
  test('a corner comes into the middle of a side and goes again; a triangle keeps its three', () => {
    const five = withCornerAfter(stage, 3);
    expect(five).toHaveLength(5);
    expect(five[4]).toEqual([-12, 48]);
    expect(polygonArea(five)).toBe(polygonArea(stage));
    expect(withoutCorner(five, 4)).toEqual(stage);
    const three = stage.slice(0, 3);
    expect(withoutCorner(three, 0)).toBe(three);
  });

  test('a typed side makes another rectangle of a rectangle, upright or turned, and moves one corner of anything else', () => {
    const turned = moveRing(stage, turn(30, [0, 0]));
    for (const ring of [stage, turned]) {
      const longer = withSide(ring, 0, 30);
      expect(isRectangle(longer)).toBe(true);
      expect(sideLengths(longer)[0]).toBeCloseTo(30, 1);
      expect(sideLengths(longer)[1]).toBeCloseTo(16, 1);
    }
    const hook: Point[] = [...stage, [-20, 50]];
    expect(withSide(hook, 0, 30).filter((corner, at) => corner[0] !== hook[at]![0])).toHaveLength(1);
  });
});

describe('a route along a line', () => {
  test('has its width on the straights: area is length by width, with what a mitred bend adds and takes', () => {
    const straight = routeAlong(
      [
        [0, 0],
        [0, 50],
      ],
      4,
    )!;
    expect(polygonArea(straight)).toBeCloseTo(200, 6);
    const bent = routeAlong(
      [
        [0, 0],
        [0, 50],
        [30, 50],
      ],
      4,
    )!;
    // A mitre adds outside what it takes inside.
    expect(polygonArea(bent)).toBeCloseTo(320, 6);
    expect(bent).toHaveLength(6);
  });

  test('is a simple ring where it turns back sharply, and nothing where the line has no length', () => {
    const sharp = routeAlong(
      [
        [0, 0],
        [0, 50],
        [8, 0],
      ],
      4,
    )!;
    expect(sharp).toHaveLength(8);
    expect(
      selfCrossing(
        routeAlong(
          [
            [0, 0],
            [0, 50],
            [30, 50],
            [30, 90],
          ],
          4,
        )!,
      ),
    ).toBeNull();
    expect(
      routeAlong(
        [
          [3, 3],
          [3, 3],
        ],
        4,
      ),
    ).toBeNull();
    expect(
      routeAlong(
        [
          [0, 0],
          [1, 0],
        ],
        0,
      ),
    ).toBeNull();
  });
});

describe('snapping', () => {
  const targets = {
    rings: [stage],
    marks: [
      [
        [-30, 0],
        [30, 0],
      ] as Point[],
    ],
    grid: 1,
  };

  test('corners win over edges, edges over the grid', () => {
    expect(snapped([12.4, 40.3], targets, 1)).toEqual({ point: [12, 40], to: 'corner' });
    expect(snapped([5.3, 40.3], targets, 1)).toEqual({ point: [5.3, 40], to: 'edge' });
    expect(snapped([5.3, 0.6], targets, 1)).toEqual({ point: [5.3, 0], to: 'mark' });
    expect(snapped([29.5, 0.6], targets, 1)).toEqual({ point: [30, 0], to: 'mark' });
    expect(snapped([5.3, 20.4], targets, 1)).toEqual({ point: [5, 20], to: 'grid' });
    expect(snapped([5.3, 20.4], { ...targets, grid: null }, 1)).toEqual({ point: [5.3, 20.4], to: null });
  });

  test('a moved ring follows the corner that is nearest to something', () => {
    const wing = rectangleOf([12.3, 41], [20, 50]);
    const found = snappedShift(wing, targets, 1);
    expect(found.to).toBe('edge');
    expect(found.right).toBeCloseTo(-0.3, 9);
    expect(found.up).toBeCloseTo(0, 9);
  });
});
