import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { lightFromFlux } from '#engine/light/photons.ts';
import { usefulLight } from '#engine/light/useful-light.ts';
import { dailyLightOfHalfSine, lightBelow, lightNeedAt, lightNeedFlag, transmissionNeeded } from '#engine/recovery/light-need.ts';
import { grasses } from '#shared/vocabulary/turf.ts';

// Definition of the daily light integral: DLI = PPFD · h · 0.0036, mol/m²/d.
describe('daily light', () => {
  it.each([
    [100, 24, 8.64],
    [200, 12, 8.64],
    [300, 16, 17.28],
    [400, 12, 17.28],
    [500, 18, 32.4],
    [600, 12, 25.92],
    [1000, 10, 36.0],
  ])('of %s µmol for %s h', (flux, hours, light) =>
    expect(Math.abs(lightFromFlux(flux, hours) - light)).toBeLessThanOrEqual(0.005),
  );
  it('of a half-sine day of 14 h with a peak of 2000 µmol is 64.17', () =>
    expect(Math.abs(dailyLightOfHalfSine(2000, 14) - 64.17)).toBeLessThanOrEqual(0.005));
  it('is capped: 12 h at 1500 µmol with a cap of 700 count 30.24, not 64.8', () => {
    const hourly = Array.from({ length: 12 }, () => lightFromFlux(1500, 1));
    expect(Math.abs(usefulLight(hourly, 1, 700) - 30.24)).toBeLessThanOrEqual(0.005);
    expect(usefulLight(hourly, 1, 1500)).toBeCloseTo(64.8, 9);
  });
  it('is linear under a covering, and the transmission needed gives exactly the light needed', () => {
    expect(lightBelow(40, 0.3)).toBeCloseTo(2 * lightBelow(20, 0.3), 12);
    expect(lightBelow(40, transmissionNeeded(26, 40))).toBeCloseTo(26, 12);
    expect(transmissionNeeded(26, 0)).toBe(Infinity);
  });
});

describe('light needs of the grasses', () => {
  // Richardson et al. 2019, Crop Science 59; Russell et al. c. 2020 (middle of 15.0 and 21.1); Gelernter & Stowell 2008 (C3 > 10, C4 > 20).
  it('stand as published', () => {
    expect(defaultValues['lightNeed.bermudagrass-hybrid']).toBe(26);
    expect(Math.abs(defaultValues['lightNeed.zoysiagrass'] - (15 + 21.1) / 2)).toBeLessThanOrEqual(0.051);
    expect(defaultValues['lightNeed.kentucky-bluegrass']).toBe(10);
    expect(defaultValues['lightNeed.tall-fescue']).toBe(10);
    expect(defaultValues['lightNeed.seashore-paspalum']).toBe(20);
  });
  // Glenn et al. 2014: a lower cut adds 6.5 ± 3.0 mol.
  it('rise by 6.5 mol for a low cut', () => expect(lightNeedAt(26, defaultValues['lightNeed.lowCut'], true)).toBe(32.5));
  it('carry a flag where the species has no source of its own', () => {
    expect(grasses.filter((grass) => lightNeedFlag(grass) !== null)).toEqual([
      'kentucky-bluegrass',
      'tall-fescue',
      'seashore-paspalum',
    ]);
  });
});
