import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { anchorage, playableDay } from '#engine/recovery/sod-anchoring.ts';
import { sodTraitsOf } from '#engine/recovery/turf-traits.ts';
import { cutsDown, shareRemoved } from '#engine/recovery/mowing.ts';

const cool = sodTraitsOf(defaultValues, 'kentucky-bluegrass');
const warm = sodTraitsOf(defaultValues, 'bermudagrass-hybrid');

// SportsTurf March 2013, pp. 17–18: 1.5–2 in at once or within days; regular sod 3–4 weeks in season, two on bermudagrass on sand.
describe('when sod is played on', () => {
  it('thick sod within days, whatever the weather', () => {
    for (const thickness of [0.0381, 0.0445, 0.0508]) {
      for (const temperature of [4, 12, 22]) expect(playableDay(temperature, thickness, cool)).toBeLessThanOrEqual(3);
    }
  });
  it('regular sod after three to four weeks in season, two to three on hot bermudagrass', () => {
    for (const thickness of [0.00635, 0.0127]) {
      for (const temperature of [16, 18, 20]) {
        expect(playableDay(temperature, thickness, cool)).toBeGreaterThanOrEqual(20);
        expect(playableDay(temperature, thickness, cool)).toBeLessThanOrEqual(28);
      }
      for (const temperature of [26, 28, 30]) {
        expect(playableDay(temperature, thickness, warm)).toBeGreaterThanOrEqual(14);
        expect(playableDay(temperature, thickness, warm)).toBeLessThanOrEqual(21);
      }
    }
  });
  it('thin sod laid in the cold does not hold', () => expect(playableDay(4, 0.0127, cool)).toBeNull());
  it('holds more the older, the warmer; thick roots more slowly', () => {
    for (let day = 0; day < 40; day++) {
      expect(anchorage(day + 1, (day + 1) * 12, 0.0127, cool)).toBeGreaterThanOrEqual(anchorage(day, day * 12, 0.0127, cool));
      expect(anchorage(day, day * 15, 0.0127, cool)).toBeGreaterThanOrEqual(anchorage(day, day * 12, 0.0127, cool));
    }
    expect(anchorage(0, 200, 0.05, cool)).toBeLessThan(anchorage(0, 200, 0.0127, cool));
  });
});

describe('mowing down', () => {
  it('never takes more than a third and ends at the height', () => {
    const cuts = cutsDown(0.1, 0.03, 1 / 3);
    expect(cuts.at(-1)).toBe(0.03);
    let before = 0.1;
    for (const cut of cuts) {
      expect(shareRemoved(before, cut)).toBeLessThanOrEqual(1 / 3 + 1e-12);
      before = cut;
    }
    expect(cutsDown(0.02, 0.03, 1 / 3)).toEqual([]);
    expect(() => cutsDown(0.1, 0, 1 / 3)).toThrow(/height/);
  });
});
