import { describe, expect, test } from 'vitest';
import { unitSystems } from '#shared/units/quantity.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { Warning, warnings } from '#shared/vocabulary/forecast.ts';
import { warningText } from '#shared/wording/warnings.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { asking, homeDate, july } from '#tests/engine/forecast/sample-question.ts';

/** One floor on one zone in mid field, with whoever else is there. */
const floored = (covering: string, on: string, off: string, others: Partial<Booking> = {}): Booking => ({
  ...july,
  zones: [{ letter: 'A', name: 'Floor', use: 'seating', outline: [[-10, -10], [10, -10], [10, 10], [-10, 10]] }], // prettier-ignore
  layers: [{ ...july.layers[0]!, zone: 'A', covering, on, off, loading: 'open', legs: null, cleanliness: 1 }],
  crowds: [],
  traffic: [],
  ...others,
});
const warned = (booking: Booking, home = '2027-07-31') => foresee(asking(booking, { homeDate: homeDate(home) })).warnings;

describe('how long a floor lies (common practice, no source)', () => {
  const kinds = (covering: string, on: string, off: string, home?: string) =>
    warned(floored(covering, on, off), home).map(({ kind, subject, limit }) => [kind, subject, limit]);
  test('plywood for three hot days is a day longer than the trade leaves it; in cool weather it is not', () => {
    const [[kind, subject, limit] = []] = kinds('plywood-geotextile', '2027-07-12T00:00', '2027-07-15T00:00');
    expect([kind, subject]).toEqual(['covered-longer-than-usual', 'Plywood, two layers, on geotextile']);
    expect(limit).toBeLessThan(3);
    expect(kinds('plywood-geotextile', '2027-04-12T00:00', '2027-04-15T00:00', '2027-05-01')).toEqual([]);
  });
  test('dormant turf and roped turf carry no such limit', () => {
    expect(kinds('plywood-geotextile', '2026-12-10T00:00', '2026-12-30T00:00', '2027-04-10')).toEqual([]);
    expect(kinds('none', '2027-07-12T00:00', '2027-07-25T00:00')).toEqual([]);
  });
});

describe('rules of a published park guide (US National Park Service, Turf Management and Event Operations Guide)', () => {
  test('roll-out aluminium: four hours before ten pass; five hours and noon do not', () => {
    const kinds = (from: string, until: string) =>
      warned(floored('aluminium-roll-out', `2027-07-12T${from}`, `2027-07-12T${until}`)).map(({ kind, value }) => [kind, value]);
    expect(kinds('06:00', '10:00')).toEqual([]);
    expect(kinds('05:00', '10:00')).toEqual([['aluminium-too-long', 5]]);
    expect(kinds('11:00', '13:00')).toEqual([['aluminium-at-midday', 2]]);
  });
  test('the turf is closed for 48 h after its floor came off, to feet and to machines', () => {
    const at = (hour: string) =>
      warned(
        floored('opaque-tile', '2027-07-12T08:00', '2027-07-13T08:00', {
          traffic: [{ zone: 'A', vehicle: 'mower', at: hour, passes: 1, turning: false }],
        }),
      ).filter(({ kind }) => kind === 'used-too-soon');
    expect(at('2027-07-14T08:00')).toMatchObject([{ subject: 'Ride-on mower, turf tyres', value: 24, limit: 48 }]);
    expect(at('2027-07-15T08:00')).toEqual([]);
    expect(at('2027-07-12T12:00')).toEqual([]);
  });
});

describe('a warning', () => {
  const about = { zone: 'A', subject: 'A machine', value: 50, limit: 48.26 };
  test('reads in the reader’s units, and gives no verdict that anything is harmless', () => {
    expect(warningText({ kind: 'park-rule', ...about }, 'si')).toContain('50 kPa');
    expect(warningText({ kind: 'park-rule', ...about }, 'us')).toContain(
      '7.3 psi straight on turf; a published park guide stops at 7.0 psi',
    );
    for (const kind of warnings)
      for (const units of unitSystems) expect(warningText({ kind, ...about }, units)).not.toMatch(/\bsafe|undefined|NaN/i);
  });
  test('of a run kept as a sentence keeps its subject', () => {
    const kept = { kind: 'wheel-load', zone: 'C', detail: 'A crane: one wheel carries 210 kN', value: 210, limit: 30 };
    expect(Warning.parse(kept)).toEqual({ kind: 'wheel-load', zone: 'C', subject: 'A crane', value: 210, limit: 30 });
  });
});
