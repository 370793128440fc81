import { describe, expect, test } from 'vitest';
import { addDays, addHours } from '#shared/calendar/local-time.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { asking, homeDate, july } from '#tests/engine/forecast/sample-question.ts';

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

/** Live cover of an untrodden zone of the sample venue on the evening its covering comes off. */
const coverAfter = (covering: string, on: string, days: number): number => {
  const off = addHours(on, 24 * days, 'America/Chicago');
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
    layers: [{ zone: 'A', covering, on, off, loading: 'open', cleanliness: 0.9, legs: null, iceTemperature: null, care: [] }],
    crowds: [],
    traffic: [],
  };
  const home = `${addDays(off.slice(0, 10), 2)}T15:00`;
  const forecast = foresee(asking(booking, { homeDate: { ...homeDate('2027-07-31'), start: home, end: home } }));
  return forecast.zones.find((zone) => zone.letter === 'A')!.coverAfter.p50;
};

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
});
