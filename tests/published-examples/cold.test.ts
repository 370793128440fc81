import { describe, expect, test } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { icePressure } from '#engine/heat/ice-growth.ts';
import {
  frostOdds,
  frostOddsOver,
  frostTolerance,
  halfKillTemperature,
  hardeningAt,
  keptAfterFrost,
} from '#engine/injury/frost.ts';
import { iceCase, iceHalfKillDays, keptUnderIce } from '#engine/injury/ice-encasement.ts';
import type { IcedGrass } from '#engine/injury/ice-encasement.ts';
import type { Grass } from '#shared/vocabulary/turf.ts';

const tolerance = frostTolerance(defaultValues);
const tender = halfKillTemperature('bermudagrass-hybrid', 0, defaultValues);
const alive = (temperature: number, hours: number, halfKill = tender): number =>
  keptAfterFrost(frostOdds(0, temperature, hours, halfKill, tolerance));

// Anderson, Taliaferro & Martin 2003, Crop Sci. 43:973-977: a tender bermudagrass at −5.4 °C, survival, 10 points.
describe('duration of frost', () => {
  test.each([
    [0, 0.89],
    [2, 0.67],
    [24, 0.3],
    [72, 0.11],
  ])('%d h at −5.4 °C', (hours, survival) => expect(Math.abs(alive(-5.4, hours) - survival)).toBeLessThan(0.1));

  // Fit of the same series, S = 78.1 − 15.5 ln(t, h) %, 2 to 72 h; derived.
  test.each([2, 4, 8, 16, 36, 72])('the fitted line at %d h', (hours) =>
    expect(Math.abs(alive(-5.4, hours) - (0.781 - 0.155 * Math.log(hours)))).toBeLessThan(0.1),
  );

  test('hour by hour gives the same as in one piece', () => {
    const series = new Float64Array(72).fill(-5.4);
    expect(keptAfterFrost(frostOddsOver(series, 0, 72, tender, tolerance))).toBeCloseTo(alive(-5.4, 72), 9);
  });

  test('the lowest temperature alone does not decide', () => {
    const short = new Float64Array(30).fill(2);
    short[0] = -5.4;
    const long = new Float64Array(30).fill(-5.4);
    const kept = (series: Float64Array): number => keptAfterFrost(frostOddsOver(series, 0, 30, tender, tolerance));
    expect(kept(short) - kept(long)).toBeGreaterThan(0.3);
  });

  test('colder and longer are never better', () => {
    for (let temperature = -1; temperature > -20; temperature--)
      for (let hours = 1; hours < 100; hours *= 2) {
        expect(alive(temperature - 1, hours)).toBeLessThanOrEqual(alive(temperature, hours));
        expect(alive(temperature, 2 * hours)).toBeLessThanOrEqual(alive(temperature, hours));
      }
  });
});

describe('hardiness', () => {
  const hardened = (grass: Grass): number => halfKillTemperature(grass, 1, defaultValues);

  // Beard 1973; Fry & Huang 2004: Kentucky bluegrass good, tall fescue medium, perennial ryegrass poor; warm-season grasses below.
  test('order of the ranks', () => {
    expect(hardened('kentucky-bluegrass')).toBeLessThan(hardened('tall-fescue'));
    expect(hardened('tall-fescue')).toBeLessThan(hardened('perennial-ryegrass'));
    for (const warm of ['bermudagrass-common', 'bermudagrass-hybrid', 'zoysiagrass', 'seashore-paspalum'] as const)
      expect(hardened('perennial-ryegrass')).toBeLessThan(hardened(warm));
  });

  // Dalmannsdottir et al. 2017, Physiol. Plant. 160:266-281, Table 2, southern ryegrass in mid autumn: −14.6 hardened at 6 °C,
  // −10.3 at 12 °C; warm hardening costs 4 to 6 K.
  test('ryegrass hardened at 6 and at 12 °C', () => {
    const at = (soil: number): number =>
      halfKillTemperature('perennial-ryegrass', hardeningAt(soil, defaultValues), defaultValues);
    expect(at(6)).toBeCloseTo(-14.6, 9);
    expect(at(12)).toBeCloseTo(-10.3, 1);
    expect(at(12) - at(6)).toBeGreaterThan(4);
    expect(at(12) - at(6)).toBeLessThan(6);
  });

  // Anderson et al. 2002, Crop Sci. 42:975: fairway −5.9 to −8.4, seeded −5.6 to −7.6. Advisory: bluegrass −20 to −30, paspalum −7.
  test.each([
    ['bermudagrass-hybrid', -8.4, -5.9],
    ['bermudagrass-common', -7.6, -5.6],
    ['kentucky-bluegrass', -30, -20],
    ['seashore-paspalum', -7, -7],
  ] as const)('%s lies in its printed range', (grass, low, high) => {
    expect(hardened(grass)).toBeGreaterThanOrEqual(low);
    expect(hardened(grass)).toBeLessThanOrEqual(high);
  });
});

describe('days under ice', () => {
  const kept = (grass: IcedGrass, days: number): number =>
    keptUnderIce(days, iceHalfKillDays(grass, defaultValues), defaultValues['ice.steepness']);

  // Höglind et al. 2010, Grass Forage Sci. 65:431-445: half of perennial ryegrass dead at most after 20 d.
  test('ryegrass loses half within 20 days', () => expect(kept('perennial-ryegrass', 20)).toBeLessThanOrEqual(0.5));

  // Beard 1964-65 by Frank 2014: creeping bentgrass 120 d without significant injury; annual bluegrass killed between 75 and
  // 90 d. 10 %.
  test('creeping bentgrass outlives 120 days', () => expect(kept('creeping-bentgrass', 120)).toBeGreaterThanOrEqual(0.9));
  test('annual bluegrass is unharmed at 30 days and dead at 90', () => {
    expect(kept('annual-bluegrass', 30)).toBeGreaterThanOrEqual(0.9);
    expect(kept('annual-bluegrass', 90)).toBeLessThanOrEqual(0.1);
  });
});

describe('a rink', () => {
  // Derived: 50 mm of ice, 917 kg/m³, 0.45 kPa; 2 %.
  test('its ice weighs little', () => expect(Math.abs(icePressure(0.05) / 0.45 - 1)).toBeLessThan(0.02));
  test('is cover and cold, unless melt water has frozen on the turf', () => {
    expect(iceCase(true, false)).toBe('cover-and-cold');
    expect(iceCase(true, true)).toBe('encasement');
  });
});
