import { describe, expect, it } from 'vitest';
import { groundOf, strengthUnder } from '#engine/loads/ground.ts';
import { apparentCohesion, suctionAt } from '#engine/soil/root-zone-strength.ts';
import { rutDepth } from '#engine/soil/rut-depth.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { soils } from '#shared/vocabulary/turf.ts';

describe('strength of a root zone against water', () => {
  const strength = (soil: (typeof soils)[number], water: number, roots = 1): number =>
    strengthUnder(groundOf(soil, defaultValues), { water, bulkDensity: null, roots }, 0.2);
  it('moist sand is stronger than dry and than saturated sand (Crum; Henderson et al. 2005)', () => {
    const [dry, moist, full] = [0.045, 0.18, 0.43].map((water) => strength('sand', water));
    expect(moist!).toBeGreaterThan(dry!);
    expect(moist!).toBeGreaterThan(full!);
  });
  it('the suction of sand does nothing when dry or saturated', () => {
    const { mechanics } = groundOf('sand', defaultValues);
    expect(apparentCohesion(1, mechanics)).toBe(0);
    expect(apparentCohesion(0, mechanics)).toBeLessThan(0.05);
    const values = Array.from({ length: 99 }, (_, i) => apparentCohesion((i + 1) / 100, mechanics));
    const top = values.indexOf(Math.max(...values));
    expect(top).toBeGreaterThan(5);
    expect(top).toBeLessThan(90);
  });
  it('loams only lose strength as they wet', () => {
    for (const soil of ['sandy-loam', 'silt-loam', 'clay-loam'] as const) {
      let before = Infinity;
      for (let water = 0.1; water <= 0.46; water += 0.005) {
        const now = strength(soil, water);
        expect(now).toBeLessThanOrEqual(before + 1e-9);
        before = now;
      }
    }
  });
  it('roots hold every soil together', () => {
    for (const soil of soils) expect(strength(soil, 0.2, 1)).toBeGreaterThan(strength(soil, 0.2, 0));
  });
  it('suction falls as water rises', () => {
    const { mechanics } = groundOf('silt-loam', defaultValues);
    let before = Infinity;
    for (let s = 0.05; s < 0.99; s += 0.05) {
      expect(suctionAt(s, mechanics)).toBeLessThan(before);
      before = suctionAt(s, mechanics);
    }
    expect(suctionAt(1, mechanics)).toBe(0);
  });
});

describe('rut depth', () => {
  const soil = {
    strength: 600,
    measuredStrength: 60,
    moduli: { kc: 0.99, kphi: 1528.4, n: 1.1 },
    yieldShare: 0.33,
    passExponent: 3,
    deepest: 0.3,
  };
  it('springs back up to the yield share, then deepens with pressure and passes', () => {
    expect(rutDepth(197, 0.2, 50, soil)).toBe(0);
    expect(rutDepth(250, 0.2, 1, soil)).toBeGreaterThan(0);
    expect(rutDepth(400, 0.2, 1, soil)).toBeGreaterThan(rutDepth(250, 0.2, 1, soil));
    expect(rutDepth(400, 0.2, 27, soil) / rutDepth(400, 0.2, 1, soil)).toBeCloseTo(3, 9);
    expect(rutDepth(400, 0.2, 0, soil)).toBe(0);
    expect(rutDepth(5000, 0.2, 5000, soil)).toBe(0.3);
  });
  it('on the soil the moduli were measured on, without springing back, it is the sinkage itself', () => {
    const same = { ...soil, strength: 60, measuredStrength: 60, yieldShare: 0 };
    expect(rutDepth(100, 0.1, 1, same)).toBeCloseTo(0.083, 3);
  });
});
