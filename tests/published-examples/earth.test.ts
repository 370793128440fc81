import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degreeLengths, onEarth } from '#shared/geometry/earth.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

describe('degrees and metres on WGS 84', () => {
  /** National Geospatial-Intelligence Agency, length of a degree: series with these coefficients, m, on WGS 84. */
  const north = (latitude: number): number =>
    111_132.92 -
    559.82 * Math.cos(radians(2 * latitude)) +
    1.175 * Math.cos(radians(4 * latitude)) -
    0.0023 * Math.cos(radians(6 * latitude));
  const east = (latitude: number): number =>
    111_412.84 * Math.cos(radians(latitude)) - 93.5 * Math.cos(radians(3 * latitude)) + 0.118 * Math.cos(radians(5 * latitude));

  test.each([0, 15, 30, 41.6, 45, 60, -33])('at %d° as the published series has them, to 10 cm', (latitude) => {
    expect(Math.abs(degreeLengths(latitude).north - north(latitude))).toBeLessThan(0.1);
    expect(Math.abs(degreeLengths(latitude).east - east(latitude))).toBeLessThan(0.1);
  });

  test('the axis of the field points along its bearing', () => {
    const { positionOf } = onEarth({ latitude: 41.6, longitude: -86.9 }, 90);
    const [longitude, latitude] = positionOf([0, 100]);
    expect(latitude).toBeCloseTo(41.6, 9);
    expect((longitude + 86.9) * degreeLengths(41.6).east).toBeCloseTo(100, 6);
  });

  test('there and back is the same point, also across the date line', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -66, max: 66, noNaN: true }),
        fc.constantFrom(-86.9, 0, 179.9999, -179.9999),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 })),
        (latitude, longitude, bearing, point) => {
          const { positionOf, pointOf } = onEarth({ latitude, longitude }, bearing);
          const [x, y] = pointOf(positionOf(point));
          expect(Math.hypot(x - point[0], y - point[1])).toBeLessThan(1e-4);
        },
      ),
    );
  });
});
