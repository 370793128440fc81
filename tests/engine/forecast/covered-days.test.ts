import { describe, expect, test } from 'vitest';
import { addDays, addHours } from '#shared/calendar/local-time.ts';
import type { Booking, Layer } from '#shared/vocabulary/booking.ts';
import { seasonOf, type Grass, grasses } from '#shared/vocabulary/turf.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { asking, homeDate, july, sampleVenue } from '#tests/engine/forecast/sample-question.ts';

/*
 * How many days a covering may lie with little lasting loss, as the trade tells it: from–to days, cool weather and hot weather.
 * Standing: common practice, no source. A band to land in for the start values, no published truth.
 */
const told: readonly { covering: string; cool: readonly [number, number]; hot: readonly [number, number] }[] = [
  { covering: 'translucent-tile', cool: [5, 7], hot: [2, 4] },
  { covering: 'opaque-tile', cool: [3, 5], hot: [1, 3] },
  { covering: 'solid-panel', cool: [3, 5], hot: [1, 3] },
  { covering: 'aluminium-panel', cool: [2, 4], hot: [1, 2] },
  { covering: 'plywood-geotextile', cool: [2, 4], hot: [1, 2] },
  { covering: 'raised-deck', cool: [4, 8], hot: [3, 5] },
];
const begin = { cool: '2027-05-03T08:00', hot: '2027-07-10T08:00' } as const;
/** Live cover at uncovering that counts as little loss. */
const little = 0.9;

interface Lain {
  readonly covering: string;
  readonly on: string;
  readonly days: number;
  readonly loading?: Layer['loading'];
  readonly venue?: Venue;
}

/** An untrodden zone of a venue on the evening its covering comes off: live cover and crowns of the usual season. */
const after = ({ covering, on, days, loading = 'open', venue = sampleVenue }: Lain): { cover: number; crowns: number } => {
  const off = addHours(on, 24 * days, venue.place.timeZone);
  const booking: Booking = {
    ...july,
    zones: [
      {
        letter: 'A',
        name: 'Floor',
        use: 'seating',
        outline: [
          [-20, -40],
          [20, -40],
          [20, 20],
          [-20, 20],
        ],
      },
    ],
    layers: [{ zone: 'A', covering, on, off, loading, cleanliness: 0.9, legs: null, iceTemperature: null, care: [] }],
    crowds: [],
    traffic: [],
  };
  const home = `${addDays(off.slice(0, 10), 2)}T15:00`;
  const forecast = foresee(asking(booking, { venue, homeDate: { ...homeDate('2027-07-31'), start: home, end: home } }));
  const zone = forecast.zones.find(({ letter }) => letter === 'A')!;
  return { cover: zone.coverAfter.p50, crowns: zone.crowns.p50[forecast.days.indexOf(off.slice(0, 10))]! };
};
const coverAfter = (covering: string, on: string, days: number): number => after({ covering, on, days }).cover;

/** The sample venue with one grass; warm-season grass under a warmer sky of our own invention. */
const venueOf = (grass: Grass): Venue => ({
  ...sampleVenue,
  field: { ...sampleVenue.field, sward: [{ grass, share: 1 }] },
  climate:
    seasonOf(grass) === 'cool'
      ? sampleVenue.climate
      : {
          ...sampleVenue.climate,
          maximum: [11, 13, 18, 23, 27, 30, 32, 31, 28, 23, 18, 12],
          minimum: [1, 2, 6, 10, 15, 20, 22, 21, 18, 12, 6, 2],
        },
});

describe('days a covering may lie (common practice)', () => {
  test.each(told.flatMap((row) => (['cool', 'hot'] as const).map((season) => ({ ...row, season }))))(
    '$covering in $season weather',
    ({ covering, season, ...row }) => {
      const [least, most] = row[season];
      expect(coverAfter(covering, begin[season], least), `after ${least} d`).toBeGreaterThanOrEqual(little);
      expect(coverAfter(covering, begin[season], 2 * most), `after ${2 * most} d`).toBeLessThan(little);
    },
  );

  test('an open mesh may lie a week and more', () => {
    for (const on of Object.values(begin)) expect(coverAfter('walk-mesh', on, 7)).toBeGreaterThanOrEqual(little);
  });

  test.each(grasses)('in hot weather every class lands in its band on %s', (grass) => {
    const venue = venueOf(grass);
    for (const { covering, hot } of told) {
      const on = begin.hot;
      expect(after({ covering, on, days: hot[0], venue }).cover, `${covering}, ${hot[0]} d`).toBeGreaterThanOrEqual(little);
      expect(after({ covering, on, days: 2 * hot[1], venue }).cover, `${covering}, ${2 * hot[1]} d`).toBeLessThan(little);
    }
  });

  test('a tarpaulin: 4 days below 16 °C, 36 hours around 16 °C, a few hours above 24 °C in sun', () => {
    for (const covering of ['sheet-clear', 'sheet-white']) {
      expect(coverAfter(covering, '2027-04-12T08:00', 4)).toBeGreaterThanOrEqual(little);
      expect(coverAfter(covering, begin.cool, 1.5)).toBeGreaterThanOrEqual(little);
    }
    expect(coverAfter('sheet-clear', begin.hot, 2 / 24)).toBeGreaterThanOrEqual(little);
    expect(coverAfter('sheet-clear', begin.hot, 8 / 24)).toBeLessThan(little);
  });

  test('cold and dormant: weeks', () => {
    for (const { covering } of told) expect(coverAfter(covering, '2027-01-05T08:00', 14)).toBeGreaterThanOrEqual(little);
  });

  test('fill of a dirt show and the ground under a stage are lost past 3–5 warm days, not sooner', () => {
    for (const lain of [
      { covering: 'fill-on-sheet', loading: 'fill' },
      { covering: 'aluminium-panel', loading: 'stage' },
      { covering: 'plywood-geotextile', loading: 'stage' },
    ] as const) {
      expect(after({ ...lain, on: begin.hot, days: 3 }).crowns, `${lain.covering}, 3 d`).toBeGreaterThanOrEqual(0.8);
      expect(after({ ...lain, on: begin.hot, days: 8 }).crowns, `${lain.covering}, 8 d`).toBeLessThan(0.5);
      expect(after({ ...lain, on: begin.hot, days: 8 }).cover, `${lain.covering}, 8 d`).toBeLessThan(0.1);
    }
  });
});
