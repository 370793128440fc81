import { describe, expect, it } from 'vitest';
import { capacitySettings, drainages, seasonCapacity, weeklyCapacity } from '#engine/wear/carrying-capacity.ts';
import {
  bandNames,
  bandOf,
  compareReadings,
  footballLimits,
  hardnessBands,
  hardnessClass,
  impactValueToG,
  tractionBands,
  withinLimits,
} from '#engine/wear/hardness.ts';
import { hardnessEstimate, hardnessEstimateSettings } from '#engine/wear/hardness-estimate.ts';
import { rankOf, speciesRank } from '#engine/wear/species-rank.ts';
import { brinkmanPasses, coverAfterGames, gamesOfBrinkmanPasses, gamesOfCadyPasses } from '#engine/wear/studded-play.ts';
import { coverAfterWalking, footfallsPerPass } from '#engine/wear/walking.ts';
import { wearKept, type WearExposure } from '#engine/wear/wear-kept.ts';
import { wearSettings } from '#engine/wear/wear-settings.ts';
import { wetFactor } from '#engine/wear/wet-wear.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { type Grass, grasses, type Soil } from '#shared/vocabulary/turf.ts';

const settings = wearSettings(defaultValues);
const share = (actual: number, expected: number, part: number): void =>
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(part);

const nothing: WearExposure = { footfalls: 0, shoe: 'ordinary', games: 0, wearThrough: 1, wheels: null, legs: null };
const leafAfter = (exposure: Partial<WearExposure>, grass: Grass, soil: Soil, water: number): number =>
  wearKept({ ...nothing, ...exposure }, { sward: [{ grass, share: 1 }], soil, water }, settings).leaf;

/** Amount at which a falling curve reaches one half, by bisection. */
const halfOf = (curve: (amount: number) => number): number => {
  let [low, high] = [0, 1e6];
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (curve(middle) > 0.5) low = middle;
    else high = middle;
  }
  return low;
};

describe('studded play on hybrid bermudagrass', () => {
  // Thoms, Brosnan & Sorochan 2016, Procedia Engineering 147 (abstract): half cover after about 10 games on silt loam, 18 on sand.
  it.each([
    ['silt-loam', 10],
    ['sand', 18],
  ] as const)('%s is at half cover after %i games', (soil, events) => {
    share(
      halfOf((games) => leafAfter({ games }, 'bermudagrass-hybrid', soil, 0.15)),
      events,
      0.2,
    );
    expect(leafAfter({ games: events }, 'bermudagrass-hybrid', soil, 0.15)).toBeCloseTo(0.5, 1);
  });
  // Dickson et al. 2018, Crop Science 58 (abstract): silt loam in its wettest class loses cover four times faster; sand has no jump.
  const rate = (soil: Soil, water: number): number => -Math.log(leafAfter({ games: 3 }, 'bermudagrass-hybrid', soil, water));
  it('silt loam: wettest class (0.30–0.37) against low and medium (0.06–0.21)', () => {
    for (const wet of [0.3, 0.335, 0.37])
      for (const dry of [0.06, 0.13, 0.14, 0.21]) share(rate('silt-loam', wet) / rate('silt-loam', dry), 4, 0.25);
  });
  // SportsTurf, August 2018, p. 19, on the same trial: three times faster than at 0.22–0.29.
  it('silt loam: wettest class against the class below it (0.22–0.29), and that against 0.06–0.21', () => {
    const steps = Array.from({ length: 8 }, (_, step) => rate('silt-loam', 0.22 + step / 100));
    const below = steps.reduce((sum, one) => sum + one, 0) / steps.length;
    share(rate('silt-loam', 0.33) / below, 3, 0.25);
    share(rate('silt-loam', 0.33) / rate('silt-loam', 0.25), 3, 0.25);
    expect(rate('silt-loam', 0.25)).toBeGreaterThan(rate('silt-loam', 0.15));
  });
  it('sand: wettest class (0.20–0.27) against medium (0.12–0.19)', () => {
    for (const wet of [0.2, 0.27]) for (const medium of [0.12, 0.19]) share(rate('sand', wet) / rate('sand', medium), 1, 0.25);
  });
  it('the wet factor rises steadily between the classes', () => {
    let before = 1;
    for (let water = 0.05; water < 0.45; water += 0.005) {
      const factor = wetFactor(water, 4, settings.wet);
      expect(factor).toBeGreaterThanOrEqual(before);
      before = factor;
    }
    expect(before).toBe(4);
  });
  // Vanini et al. 2007, Crop Science 47 (abstract): 2 Cady passes a week equal 10 Brinkman passes a week.
  it('one Cady pass equals five Brinkman passes', () => {
    const equal = defaultValues['wear.cts.perBts'];
    share(brinkmanPasses(2, equal), 10, 0.1);
    const perGame = defaultValues['wear.cts.passesPerEvent'];
    share(gamesOfBrinkmanPasses(10, equal, perGame), gamesOfCadyPasses(2, perGame), 1e-12);
  });
  it('tolerance divides, water multiplies the games', () => {
    expect(coverAfterGames(10, 10, 1, 2)).toBeCloseTo(Math.SQRT1_2, 12);
    expect(coverAfterGames(5, 10, 2, 1)).toBeCloseTo(0.5, 12);
  });
});

describe('walking', () => {
  // Hill & Pickering 2009 (abstract): passes to half cover.
  it.each([
    ['lawn', 860],
    ['tussock', 360],
    ['fern', 210],
  ] as const)('%s is at half cover after %i passes', (vegetation, passes) => {
    share(
      halfOf((n) => coverAfterWalking(n, vegetation, settings.walking)),
      passes,
      0.1,
    );
  });
  it('loss per pass never accelerates from 0 to 500 passes (Cole 1995)', () => {
    for (const vegetation of ['lawn', 'tussock', 'fern'] as const)
      for (const shape of [0.6, 0.8, 1]) {
        let before = Infinity;
        for (let n = 1; n <= 500; n++) {
          const walking = { ...settings.walking, shape };
          const loss = coverAfterWalking(n - 1, vegetation, walking) - coverAfterWalking(n, vegetation, walking);
          expect(loss).toBeLessThanOrEqual(before + 1e-15);
          before = loss;
        }
      }
  });
  it('one pass makes 2.7–2.9 footfalls per m²; 860 passes 2,300–2,450', () => {
    const per = footfallsPerPass(settings.walking);
    expect(per).toBeGreaterThan(2.66);
    expect(per).toBeLessThan(2.9);
    expect(860 * footfallsPerPass({ step: 0.75, lane: 0.5 })).toBeCloseTo(2293, 0);
    expect(860 * footfallsPerPass({ step: 0.7, lane: 0.5 })).toBeCloseTo(2457, 0);
    share(
      halfOf((footfalls) => leafAfter({ footfalls }, 'perennial-ryegrass', 'sand', 0.15)),
      860 * per,
      0.1,
    );
  });
  it('boots wear more than soft shoes (Cole 1995b)', () => {
    const after = (shoe: WearExposure['shoe']): number => leafAfter({ footfalls: 1000, shoe }, 'tall-fescue', 'sand', 0.15);
    expect(after('boots')).toBeLessThan(after('ordinary'));
    expect(after('ordinary')).toBeLessThan(after('soft'));
  });
});

describe('order of grasses, Shearman & Beard 1975 (abstract)', () => {
  it('as printed', () => {
    expect(speciesRank.wheel.flat()[0]).toBe('perennial-ryegrass');
    expect(rankOf('tall-fescue', 'wheel')).toBe(rankOf('kentucky-bluegrass', 'wheel'));
    expect(rankOf('chewings-fescue', 'wheel')).toBe(rankOf('rough-bluegrass', 'wheel'));
    expect(speciesRank.foot.slice(0, 3).flat()).toEqual(['kentucky-bluegrass', 'perennial-ryegrass', 'tall-fescue']);
    expect(rankOf('zoysiagrass', 'foot')).toBeNull();
  });
  it.each(['wheel', 'foot'] as const)('%s: what is kept follows the order', (traffic) => {
    const exposure = traffic === 'foot' ? { footfalls: 2000 } : { wheels: { passes: 100, rut: 0, touched: 1 } };
    const ranked = grasses.filter((grass) => rankOf(grass, traffic) !== null);
    expect(ranked).toHaveLength(3);
    for (const one of ranked)
      for (const other of ranked) {
        const [kept, otherKept] = [one, other].map((grass) => leafAfter(exposure, grass, 'sand', 0.15));
        const difference = rankOf(one, traffic)! - rankOf(other, traffic)!;
        if (difference < 0) expect(kept!).toBeGreaterThan(otherKept!);
        if (difference === 0) expect(kept!).toBeCloseTo(otherKept!, 12);
      }
  });
});

describe('carrying capacity, Sport England', () => {
  const capacity = capacitySettings(defaultValues);
  it('hours a week by drainage', () => {
    expect(drainages.map((drainage) => weeklyCapacity(drainage, false, capacity))).toEqual([
      { least: 0, most: 2 },
      { least: 2, most: 3 },
      { least: 2, most: 4 },
      { least: 3, most: 6 },
    ]);
  });
  it('rises with drainage; the young play half as long again', () => {
    for (let i = 1; i < drainages.length; i++) {
      const [worse, better] = [drainages[i - 1]!, drainages[i]!].map((drainage) => weeklyCapacity(drainage, false, capacity));
      expect(better!.least).toBeGreaterThanOrEqual(worse!.least);
      expect(better!.most).toBeGreaterThan(worse!.most);
    }
    for (const drainage of drainages) {
      const adult = weeklyCapacity(drainage, false, capacity);
      expect(weeklyCapacity(drainage, true, capacity)).toEqual({ least: 1.5 * adult.least, most: 1.5 * adult.most });
    }
  });
  it('over 36–40 weeks about 70–240 h a season', () => {
    expect(seasonCapacity(weeklyCapacity('pipe', false, capacity), 36).least).toBe(72);
    expect(seasonCapacity(weeklyCapacity('pipe-sand', false, capacity), 40).most).toBe(240);
  });
});

describe('playing surface', () => {
  const bands = hardnessBands(defaultValues);
  const reading = { value: 95, hammerMass: 2.25, dropHeight: 0.455, dropNumber: 1 };
  it('readings carry their hammer; different hammers are never compared', () => {
    const light = { ...reading, hammerMass: 0.5, dropHeight: 0.3 };
    expect(compareReadings(reading, light)).toEqual({ comparable: false, reason: 'hammer mass differs' });
    expect(compareReadings(reading, { ...reading, dropHeight: 0.3 })).toMatchObject({ comparable: false });
    expect(compareReadings(reading, { ...reading, dropNumber: 3 })).toMatchObject({ comparable: false });
    expect(compareReadings(reading, { ...reading, value: 80 })).toEqual({ comparable: true, difference: -15 });
    expect(hardnessClass(light, bands)).toEqual({ band: null, reason: 'hammer mass differs' });
    for (const field of ['hammerMass', 'dropHeight', 'dropNumber'] as const)
      expect(() => compareReadings(reading, { ...reading, [field]: Number.NaN })).toThrow(RangeError);
  });
  it('8 CIV is 80 g', () => expect(impactValueToG(8)).toBe(80));
  it('hardness falls as water rises and as density falls (Dickson et al. 2018)', () => {
    const estimate = hardnessEstimateSettings(defaultValues);
    let before = Infinity;
    for (let saturation = 0; saturation <= 1; saturation += 0.05) {
      const g = hardnessEstimate(1.55, 1.55, saturation, 1, estimate);
      expect(g).toBeLessThan(before);
      expect(hardnessEstimate(1.6, 1.55, saturation, 1, estimate)).toBeGreaterThan(g);
      before = g;
    }
  });
  it('every value lies in one band, with no gap and no overlap', () => {
    for (const edges of [bands, tractionBands(defaultValues)]) {
      let place = 0;
      const seen = new Set<string>();
      for (let value = 0; value <= 200; value += 0.25) {
        const now = bandNames.indexOf(bandOf(value, edges));
        expect(now - place === 0 || now - place === 1).toBe(true);
        place = now;
        seen.add(bandNames[now]!);
      }
      expect(seen.size).toBe(5);
      expect(place).toBe(4);
    }
    expect([29.9, 30, 69.9, 70, 89.9, 90, 120, 120.1].map((value) => bandOf(value, bands))).toEqual([
      'unacceptably-low',
      'low',
      'low',
      'preferred',
      'preferred',
      'high',
      'high',
      'unacceptably-high',
    ]);
    expect(() => bandOf(50, { low: 10, preferred: 10, high: 20, tooHigh: 30 })).toThrow(RangeError);
  });
  it('warns from 100 g and marks what lies above 200 g', () => {
    expect(hardnessClass({ ...reading, value: 99 }, bands)).toMatchObject({ band: 'high', warns: false });
    expect(hardnessClass({ ...reading, value: 100 }, bands)).toMatchObject({ warns: true, aboveHeadInjury: false });
    expect(hardnessClass({ ...reading, value: 201 }, bands)).toMatchObject({ band: 'unacceptably-high', aboveHeadInjury: true });
  });
  it('football limits: preferred inside acceptable', () => {
    const limits = footballLimits(defaultValues);
    expect([9, 15, 50, 90, 101].map((g) => withinLimits(g, limits.hardness))).toEqual([
      'outside',
      'acceptable',
      'preferred',
      'acceptable',
      'outside',
    ]);
    expect([19, 22, 60].map((torque) => withinLimits(torque, limits.traction))).toEqual(['outside', 'acceptable', 'preferred']);
    expect([7, 9, 12].map((mm) => withinLimits(mm, limits.evenness))).toEqual(['preferred', 'acceptable', 'outside']);
  });
});
