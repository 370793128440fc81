import { describe, expect, test } from 'vitest';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Sward } from '#shared/vocabulary/turf.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { recoveryOutlook } from '#engine/forecast/recovery-outlook.ts';
import { isOverseeded, sidesOf, together } from '#engine/recovery/overseeded.ts';
import { asking, homeDate, july, sampleVenue } from '#tests/engine/forecast/sample-question.ts';

const bermuda: Sward = [{ grass: 'bermudagrass-hybrid', share: 1 }];
const overseeded: Sward = [
  { grass: 'bermudagrass-hybrid', share: 0.25 },
  { grass: 'perennial-ryegrass', share: 0.75 },
];

/** The sample field with another grass and the whole of its leaf in it. */
const fieldOf = (sward: Sward, cover = 0.9) => ({
  ...sampleVenue,
  field: { ...sampleVenue.field, sward, usual: { cover, crowns: Math.max(cover, 0.95), reserve: 1 } },
});

/** One covering on one zone in mid field. */
const covered = (on: string, off: string, covering: string): Booking => ({
  ...july,
  zones: [{ letter: 'A', name: 'Floor', use: 'seating', outline: [[-10, -10], [10, -10], [10, 10], [-10, 10]] }], // prettier-ignore
  layers: [{ ...july.layers[0]!, zone: 'A', covering, on, off, loading: 'open', legs: null, cleanliness: 1 }],
  crowds: [],
  traffic: [],
});

const coverAt = (sward: Sward, booking: Booking, date: string, home: string, cover?: number): number => {
  const { zones, days } = foresee(asking(booking, { venue: fieldOf(sward, cover), homeDate: homeDate(home) }));
  return zones.find(({ letter }) => letter === 'A')!.cover.p50[days.indexOf(date)]!;
};

describe('two stands on one ground', () => {
  test('make up the green the venue measures, by the shares of the sward', () => {
    const { base, overseed } = sidesOf(overseeded, { cover: 0.9, crowns: 0.95, reserve: 0.8 });
    expect(together(base.usual.cover, overseed!.usual.cover)).toBeCloseTo(0.9, 12);
    expect(base.usual).toEqual({ cover: 0.9 * 0.25, crowns: 0.95, reserve: 0.8 });
    expect((1 - base.usual.cover) * overseed!.usual.cover).toBeCloseTo(0.9 * 0.75, 12);
    expect([base.sward, overseed!.sward]).toEqual([bermuda, [{ grass: 'perennial-ryegrass', share: 1 }]]);
  });

  test('are seen only where a cool-season grass is sown into warm-season turf', () => {
    expect(isOverseeded(overseeded)).toBe(true);
    expect(sidesOf(bermuda, sampleVenue.field.usual)).toEqual({
      base: { sward: bermuda, usual: sampleVenue.field.usual },
      overseed: null,
    });
    const mixture: Sward = [{ grass: 'kentucky-bluegrass', share: 0.7 }, { grass: 'perennial-ryegrass', share: 0.3 }]; // prettier-ignore
    expect(sidesOf(mixture, sampleVenue.field.usual).overseed).toBeNull();
  });
});

describe('overseeded warm-season turf', () => {
  const spring = covered('2027-04-12T08:00', '2027-04-14T20:00', 'translucent-tile');

  test('keeps its green in a cool spring, when the base alone has little', () => {
    expect(coverAt(overseeded, spring, '2027-04-17', '2027-05-01')).toBeGreaterThan(0.75);
    expect(coverAt(bermuda, spring, '2027-04-17', '2027-05-01', 0.225)).toBeLessThan(0.5);
  });

  test('loses far more to the heat of a clear sheet than the base alone', () => {
    const heat = covered('2027-07-12T06:00', '2027-07-16T06:00', 'sheet-clear');
    const byHeat = (sward: Sward): number =>
      foresee(asking(heat, { venue: fieldOf(sward) })).zones.find(({ letter }) => letter === 'A')!.causes.heat;
    expect(byHeat(bermuda)).toBeGreaterThan(0.1);
    expect(byHeat(overseeded)).toBeGreaterThan(3 * byHeat(bermuda));
  });

  test('the shares of loss by cause stay a closing sum, and the same question gives the same bytes', () => {
    const ask = () => foresee(asking(july, { venue: fieldOf(overseeded), members: 5 }));
    const first = ask();
    expect(JSON.stringify(ask())).toBe(JSON.stringify(first));
    for (const zone of first.zones) {
      for (const share of [...zone.cover.p10, ...zone.cover.p90, ...zone.crowns.p50]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
      for (const cause of Object.values(zone.causes)) expect(cause).toBeGreaterThanOrEqual(0);
    }
  });

  test('no share of overseed is the base alone', () => {
    const nearly: Sward = [{ grass: 'bermudagrass-hybrid', share: 1 - 1e-9 }, { grass: 'perennial-ryegrass', share: 1e-9 }]; // prettier-ignore
    expect(coverAt(nearly, spring, '2027-04-30', '2027-05-01')).toBeCloseTo(
      coverAt(bermuda, spring, '2027-04-30', '2027-05-01'),
      4,
    );
  });

  test('a way back is followed on both: ryegrass is sown again, and comes up in autumn before the base would', () => {
    const autumn = covered('2027-09-09T06:00', '2027-09-19T20:00', 'solid-panel');
    const ready = (programme: 'leave' | 'overseed') => {
      const question = asking(autumn, { venue: fieldOf(overseeded), homeDate: homeDate('2027-10-23') });
      const { outlooks } = recoveryOutlook({ question, programmes: [programme], cuts: { thin: 0.015, thick: 0.04 } });
      return outlooks.find(({ zone }) => zone === 'A')!;
    };
    const [left, sown] = [ready('leave'), ready('overseed')];
    expect(left.shortfall[0]).toBeGreaterThan(0);
    expect(sown.shortfall[0]!).toBeLessThan(left.shortfall[0]!);
  });

  test('is warned of while the overseed grows, though the base is dormant', () => {
    const spring = covered('2027-04-18T08:00', '2027-04-28T08:00', 'plywood-geotextile');
    const kinds = (sward: Sward): readonly string[] =>
      foresee(asking(spring, { venue: fieldOf(sward), homeDate: homeDate('2027-05-01') })).warnings.map(({ kind }) => kind);
    expect(kinds(overseeded)).toEqual(['covered-longer-than-usual']);
    expect(kinds(bermuda)).toEqual([]);
  });
});
