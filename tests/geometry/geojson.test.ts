import { describe, expect, test } from 'vitest';
import { fromGeoJson, toGeoJson, type DrawnShape } from '#shared/geometry/geojson.ts';
import { rectangleOf } from '#shared/geometry/moving.ts';
import { polygonArea, signedArea } from '#shared/geometry/polygon.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';

const frame = { place: { latitude: 41.6, longitude: -86.9 }, bearing: 14 };
const stage: DrawnShape = {
  part: 'footprint',
  letter: 'A',
  name: 'Stage',
  use: 'stage',
  outline: rectangleOf([-12, 40], [12, 56]),
};
const clockwise: DrawnShape = { ...stage, letter: 'B', name: 'Wing', use: 'wings', outline: stage.outline.toReversed() };

interface Written {
  readonly features: readonly {
    readonly geometry: { readonly type: string; readonly coordinates: readonly (readonly Point[])[] };
  }[];
}
const write = (shapes: readonly DrawnShape[], coordinates: 'earth' | 'field'): Written & { readonly coordinates?: string } =>
  toGeoJson(shapes, frame, coordinates) as Written;
const read = (file: unknown, coordinates: 'earth' | 'field' | null = null) =>
  fromGeoJson(JSON.stringify(file), frame, coordinates);

describe('GeoJSON out', () => {
  test('rings are closed and anticlockwise, longitude before latitude (RFC 7946, 3.1.1 and 3.1.6)', () => {
    for (const { geometry } of write([stage, clockwise], 'earth').features) {
      const [ring] = geometry.coordinates;
      expect(geometry.type).toBe('Polygon');
      expect(ring![0]).toEqual(ring!.at(-1));
      expect(ring).toHaveLength(5);
      expect(signedArea(ring!.slice(0, -1))).toBeGreaterThan(0);
      for (const [longitude, latitude] of ring!) {
        expect(Math.abs(longitude + 86.9)).toBeLessThan(0.001);
        expect(Math.abs(latitude - 41.6)).toBeLessThan(0.001);
      }
    }
  });

  test('metres of the field say so in the file', () => {
    const file = write([stage], 'field');
    expect(file.coordinates).toMatch(/metres of the field/);
    expect(file.features[0]!.geometry.coordinates[0]![0]).toEqual([-12, 40]);
  });
});

describe('GeoJSON in', () => {
  test.each(['earth', 'field'] as const)(
    'what was written as %s comes back to the centimetre with letter, name and use',
    (coordinates) => {
      const back = read(write([stage], coordinates));
      expect(back).toEqual({ shapes: [stage], coordinates, problems: [] });
    },
  );

  test('a line is a route of the width it names', () => {
    const line = {
      type: 'Feature',
      properties: { name: 'Haul', width: 5 },
      geometry: {
        type: 'LineString',
        coordinates: [
          [0, -50],
          [0, 0],
          [30, 0],
        ],
      },
    };
    const { shapes, coordinates } = read(line);
    expect(coordinates).toBe('field');
    expect(shapes[0]!.use).toBe('haul-route');
    expect(polygonArea(shapes[0]!.outline)).toBeCloseTo(400, 6);
  });

  test('several polygons are several shapes; holes, points and bad features are named and left out', () => {
    const square = (at: number) => [
      [at, 0],
      [at + 10, 0],
      [at + 10, 10],
      [at, 10],
      [at, 0],
    ];
    const { shapes, problems } = read({
      type: 'FeatureCollection',
      features: [
        {
          type: 'Feature',
          properties: null,
          geometry: { type: 'MultiPolygon', coordinates: [[square(0), square(2)], [square(20)]] },
        },
        { type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: [0, 0] } },
        { type: 'Feature', properties: {}, geometry: null },
        {
          type: 'Feature',
          properties: {},
          geometry: {
            type: 'Polygon',
            coordinates: [
              [
                [0, 0],
                [1, 1],
                [0, 0],
              ],
            ],
          },
        },
        { type: 'Feature', properties: {}, geometry: { type: 'Polygon', coordinates: 'x' } },
      ],
    });
    expect(shapes.map(({ outline }) => polygonArea(outline))).toEqual([100, 100]);
    const expected = [
      /Holes of feature 1/,
      /Feature 2 is Point/,
      /Feature 3 is without a shape/,
      /Feature 5 is not as RFC 7946/,
      /Feature 4 has fewer than three corners/,
    ];
    expect(problems).toHaveLength(expected.length);
    expected.forEach((one, at) => expect(problems[at]).toMatch(one));
  });

  test('another place on earth is refused with what to look at', () => {
    const far = write([stage], 'earth');
    const { shapes, problems } = fromGeoJson(JSON.stringify(far), { ...frame, place: { latitude: 50, longitude: 8 } }, 'earth');
    expect(shapes).toEqual([]);
    expect(problems[0]).toMatch(/more than 1000 m from the field.*place/);
  });

  test.each(['', '[1, 2', '{"type":"Topology"}', 'null'])('%j is refused in words', (text) => {
    const { shapes, problems } = fromGeoJson(text, frame, null);
    expect(shapes).toEqual([]);
    expect(problems).toHaveLength(1);
  });
});
