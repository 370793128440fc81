import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shoes, wearKept, type WearExposure, type WearPlace } from '#engine/wear/wear-kept.ts';
import { wearSettings } from '#engine/wear/wear-settings.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { grasses, soils } from '#shared/vocabulary/turf.ts';

const settings = wearSettings(defaultValues);
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const exposures: fc.Arbitrary<WearExposure> = fc.record({
  footfalls: number(0, 8000),
  shoe: fc.constantFrom(...shoes),
  games: number(0, 30),
  wearThrough: number(0, 1),
  wheels: fc.option(fc.record({ passes: number(0, 500), rut: number(0, 0.2), touched: number(0, 1) })),
  legs: fc.option(fc.record({ load: number(0, 3), pressed: number(0, 1) })),
});
const places: fc.Arbitrary<WearPlace> = fc.record({
  sward: fc.constantFrom(...grasses).map((grass) => [{ grass, share: 1 }]),
  soil: fc.constantFrom(...soils),
  water: number(0.02, 0.45),
});
const neverBetter = (worse: { leaf: number; crowns: number }, base: { leaf: number; crowns: number }): void => {
  expect(worse.leaf).toBeLessThanOrEqual(base.leaf + 1e-12);
  expect(worse.crowns).toBeLessThanOrEqual(base.crowns + 1e-12);
};

describe('wear', () => {
  it('keeps between nothing and all, crowns no fewer than leaf', () => {
    fc.assert(
      fc.property(exposures, places, (exposure, place) => {
        const { leaf, crowns } = wearKept(exposure, place, settings);
        expect(leaf).toBeGreaterThanOrEqual(0);
        expect(crowns).toBeLessThanOrEqual(1);
        expect(crowns).toBeGreaterThanOrEqual(leaf - 1e-12);
      }),
    );
  });
  it('more of anything is never better', () => {
    fc.assert(
      fc.property(exposures, places, number(0, 2000), number(0, 10), number(0, 0.3), (exposure, place, feet, games, through) => {
        const base = wearKept(exposure, place, settings);
        neverBetter(wearKept({ ...exposure, footfalls: exposure.footfalls + feet }, place, settings), base);
        neverBetter(wearKept({ ...exposure, games: exposure.games + games }, place, settings), base);
        neverBetter(wearKept({ ...exposure, wearThrough: Math.min(1, exposure.wearThrough + through) }, place, settings), base);
        if (exposure.wheels) {
          const { passes, rut, touched } = exposure.wheels;
          neverBetter(
            wearKept({ ...exposure, wheels: { passes: passes + games, rut: rut + through / 5, touched } }, place, settings),
            base,
          );
        }
      }),
    );
  });
  it('wetter loam is never better', () => {
    fc.assert(
      fc.property(exposures, places, number(0, 0.2), (exposure, place, wetter) =>
        neverBetter(wearKept(exposure, { ...place, water: place.water + wetter }, settings), wearKept(exposure, place, settings)),
      ),
    );
  });
  it('loss per step or game never accelerates', () => {
    fc.assert(
      fc.property(places, number(1, 500), number(0.05, 2), (place, feet, games) => {
        const after = (times: number) =>
          wearKept(
            { footfalls: times * feet, games: times * games, shoe: 'ordinary', wearThrough: 1, wheels: null, legs: null },
            place,
            settings,
          ).leaf;
        let before = Infinity;
        for (let times = 1; times <= 12; times++) {
          const loss = after(times - 1) - after(times);
          expect(loss).toBeLessThanOrEqual(before + 1e-12);
          before = loss;
        }
      }),
    );
  });
  it('adjoining halves of one exposure multiply to the whole', () => {
    fc.assert(
      fc.property(places, number(0, 5000), number(0, 20), (place, footfalls, games) => {
        const after = (part: number) =>
          wearKept(
            { footfalls: footfalls * part, games: games * part, shoe: 'soft', wearThrough: 0.5, wheels: null, legs: null },
            place,
            settings,
          ).leaf;
        expect(after(0.5) ** 2).toBeCloseTo(after(1), 9);
      }),
    );
  });
});
