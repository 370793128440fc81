import { z } from 'zod';
import { onEarth } from '#shared/geometry/earth.ts';
import { toCentimetre } from '#shared/geometry/moving.ts';
import { signedArea } from '#shared/geometry/polygon.ts';
import { routeAlong } from '#shared/geometry/route.ts';
import { zoneUses, type ZoneUse } from '#shared/vocabulary/booking.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';
import type { Place } from '#shared/vocabulary/venue.ts';

/** What a drawn shape is on the plan. */
export const groundParts = ['footprint', 'standing-zone', 'stand', 'field'] as const;
export type GroundPart = (typeof groundParts)[number];

/** A shape as it travels in a file. */
export interface DrawnShape {
  readonly part: GroundPart;
  readonly letter: string | null;
  readonly name: string;
  readonly use: ZoneUse | null;
  readonly outline: Polygon;
}

/**
 * What the numbers of a file are. `earth`: longitude and latitude on WGS 84, as RFC 7946 has it. `field`: metres across and along from
 * the middle of the field, for drawing programs that know no earth; RFC 7946 section 4 allows it where both sides have agreed, so the
 * file says so in a member of its own.
 */
export type Coordinates = 'earth' | 'field';

export interface FieldFrame {
  readonly place: Pick<Place, 'latitude' | 'longitude'>;
  /** ° clockwise from north of the field's +y axis. */
  readonly bearing: number;
}

const fieldNote = 'metres of the field: across and along from its middle; not longitude and latitude';

/** Nine decimals of a degree are a tenth of a millimetre. */
const degree = (value: number): number => Math.round(value * 1e9) / 1e9;

/** A collection of polygons: rings closed and anticlockwise outside, as RFC 7946 section 3.1.6 asks. */
export const toGeoJson = (shapes: readonly DrawnShape[], frame: FieldFrame, coordinates: Coordinates): object => {
  const earth = onEarth(frame.place, frame.bearing);
  const positionOf = (point: Point): readonly number[] =>
    coordinates === 'field' ? [toCentimetre(point[0]), toCentimetre(point[1])] : earth.positionOf(point).map(degree);
  return {
    type: 'FeatureCollection',
    ...(coordinates === 'field' ? { coordinates: fieldNote, bearing: frame.bearing } : {}),
    features: shapes.map(({ outline, part, letter, name, use }) => {
      const ring = (signedArea(outline) < 0 ? outline.toReversed() : outline).map(positionOf);
      return {
        type: 'Feature',
        properties: { part, letter, name, use },
        geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]!]] },
      };
    }),
  };
};

const Position = z.array(z.number()).min(2, 'must have two numbers');
const Ring = z.array(Position);
const Geometry = z.discriminatedUnion('type', [
  z.looseObject({ type: z.literal('Polygon'), coordinates: z.array(Ring) }),
  z.looseObject({ type: z.literal('MultiPolygon'), coordinates: z.array(z.array(Ring)) }),
  z.looseObject({ type: z.literal('LineString'), coordinates: Ring }),
  z.looseObject({ type: z.enum(['Point', 'MultiPoint', 'MultiLineString', 'GeometryCollection']) }),
]);
const Feature = z.looseObject({
  type: z.literal('Feature'),
  properties: z.record(z.string(), z.unknown()).nullish(),
  geometry: Geometry.nullable(),
});
const GeoJson = z.union([z.looseObject({ type: z.literal('FeatureCollection'), features: z.array(z.unknown()) }), Feature]);

export interface ReadShapes {
  readonly shapes: readonly DrawnShape[];
  /** What the file's numbers were taken for. */
  readonly coordinates: Coordinates;
  /** What could not be taken, in words. */
  readonly problems: readonly string[];
}

/** m: further from the middle of the field than this is another place. */
const farthest = 1000;
/** m wide is a route whose file says no width. */
const usualRoute = 4;

/**
 * Reads polygons, and lines as routes. Other members and holes are named and left out.
 * @param coordinates what the numbers are; null: as the file says, else longitude and latitude where they lie about the venue
 */
export const fromGeoJson = (text: string, frame: FieldFrame, coordinates: Coordinates | null): ReadShapes => {
  const nothing = (problem: string): ReadShapes => ({ shapes: [], coordinates: coordinates ?? 'earth', problems: [problem] });
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return nothing('The file is not JSON; choose a GeoJSON file.');
  }
  const read = GeoJson.safeParse(json);
  if (!read.success) return nothing('The file holds no GeoJSON features; write it out as a FeatureCollection.');
  const file = read.data;
  const features = file.type === 'FeatureCollection' ? file.features : [file];
  const problems: string[] = [];
  const parts = features.flatMap((feature, index) => {
    const one = Feature.safeParse(feature);
    if (one.success) return partsOf(one.data, index + 1, problems);
    problems.push(`Feature ${index + 1} is not as RFC 7946 has it and is left out.`);
    return [];
  });
  const taken = coordinates ?? guessed(parts, file, frame);
  const { pointOf } = onEarth(frame.place, frame.bearing);
  const toPoint = ([a, b]: readonly number[]): Point => {
    const [x, y] = taken === 'field' ? [a!, b!] : pointOf([a!, b!]);
    return [toCentimetre(x), toCentimetre(y)];
  };
  const shapes = parts.flatMap(({ line, width, positions, number, ...properties }) => {
    const points = positions.map(toPoint);
    const outline = line ? (routeAlong(points, width) ?? []) : points;
    const problem = problemOf(outline, number);
    if (problem === null) return [{ ...properties, outline }];
    problems.push(problem);
    return [];
  });
  return { shapes, coordinates: taken, problems };
};

const problemOf = (outline: Polygon, number: number): string | null => {
  if (outline.length < 3) return `Feature ${number} has fewer than three corners and is left out.`;
  if (outline.length > 400) return `Feature ${number} has more than 400 corners and is left out; simplify it first.`;
  if (outline.some(([x, y]) => Math.hypot(x, y) > farthest))
    return `Feature ${number} lies more than ${farthest} m from the field and is left out; check the coordinates and the venue’s place.`;
  return null;
};

interface Part extends Omit<DrawnShape, 'outline'> {
  readonly number: number;
  readonly line: boolean;
  readonly width: number;
  readonly positions: readonly (readonly number[])[];
}

const partsOf = ({ properties, geometry }: z.infer<typeof Feature>, number: number, problems: string[]): readonly Part[] => {
  const own = properties ?? {};
  const text = (key: string): string | null => (typeof own[key] === 'string' && own[key].trim() !== '' ? own[key].trim() : null);
  const known = <Value extends string>(key: string, values: readonly Value[]): Value | null =>
    values.find((value) => value === own[key]) ?? null;
  const line = geometry?.type === 'LineString';
  const about = {
    part: known('part', groundParts) ?? 'footprint',
    letter: text('letter'),
    name: (text('name') ?? `Shape ${number}`).slice(0, 120),
    use: known('use', zoneUses) ?? (line ? 'haul-route' : null),
    number,
    line,
    width: typeof own['width'] === 'number' && own['width'] > 0 ? own['width'] : usualRoute,
  };
  switch (geometry?.type) {
    case 'LineString':
      return [{ ...about, positions: geometry.coordinates }];
    case 'Polygon':
    case 'MultiPolygon': {
      const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
      if (polygons.some((rings) => rings.length > 1)) problems.push(`Holes of feature ${number} are left out.`);
      return polygons.map((rings) => ({ ...about, positions: opened(rings[0] ?? []) }));
    }
    default:
      problems.push(
        `Feature ${number} is ${geometry?.type ?? 'without a shape'} and is left out; only areas and lines are taken.`,
      );
      return [];
  }
};

/** Without the closing position, which repeats the first. */
const opened = (ring: readonly (readonly number[])[]): readonly (readonly number[])[] => {
  const [first, last] = [ring[0], ring.at(-1)];
  return ring.length > 1 && first![0] === last![0] && first![1] === last![1] ? ring.slice(0, -1) : ring;
};

/** The file's own word, else longitude and latitude where every position lies about the venue, else metres. */
const guessed = (parts: readonly Part[], file: object, frame: FieldFrame): Coordinates => {
  if ('coordinates' in file && file.coordinates === fieldNote) return 'field';
  const { pointOf } = onEarth(frame.place, frame.bearing);
  const near = parts
    .flatMap((part) => part.positions)
    .every(([a, b]) => {
      const [x, y] = pointOf([a!, b!]);
      return Math.hypot(x, y) <= 5 * farthest;
    });
  return near ? 'earth' : 'field';
};
