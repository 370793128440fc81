import { describe, expect, it } from 'vitest';
import { pressuresUnder, pressureUnder, type SpreadingCovering } from '#engine/loads/panel/pressure-under.ts';
import { standingModulus } from '#engine/loads/panel/standing-modulus.ts';

const creep = { plastic: 0.14, wood: 0.03, metal: 0 };
const ground = { springs: 25e3, poisson: 0.3, creep, standingHours: 0 };
const panel: SpreadingCovering = { spread: 'plate', thickness: 0.036, modulus: 8000, panelWidth: 1.2 };
const bare: SpreadingCovering = { spread: 'none', thickness: 0, modulus: 0, panelWidth: 0 };

describe('pressure under a covering', () => {
  it('a sheet or nothing passes the contact pressure', () => {
    expect(pressureUnder(10, 0.04, bare, ground, 'interior').peak).toBeCloseTo(250, 9);
    expect(pressureUnder(10, 0.04, { ...panel, thickness: 0 }, ground, 'edge').peak).toBeCloseTo(250, 9);
  });
  it('the radius returned carries the load at the peak', () => {
    for (const position of ['interior', 'edge', 'corner'] as const) {
      const { peak, radius } = pressureUnder(10, 0.02, panel, ground, position);
      expect(Math.PI * radius ** 2 * peak).toBeCloseTo(10, 9);
    }
  });
  it('a free edge is several times worse than the middle of a panel, a corner worse still', () => {
    const [inside, edge, corner] = (['interior', 'edge', 'corner'] as const).map(
      (position) => pressureUnder(10, 0.004, panel, ground, position).peak,
    );
    expect(edge! / inside!).toBeGreaterThan(2.5);
    expect(corner!).toBeGreaterThan(edge!);
  });
  it('a rigid pad spreads over its own area, tilting at edge and corner', () => {
    const pad: SpreadingCovering = { spread: 'rigid-pad', thickness: 0.2, modulus: 0, panelWidth: 2 };
    expect(pressureUnder(400, 0.36, pad, ground, 'interior').peak).toBeCloseTo(100, 9);
    expect(pressureUnder(400, 0.36, pad, ground, 'edge').peak).toBeCloseTo(400, 9);
    expect(pressureUnder(400, 0.36, pad, ground, 'corner').peak).toBeCloseTo(700, 9);
  });
  it('no panel spreads a load wider than itself', () => {
    const stiff = { ...panel, modulus: 200000, thickness: 0.2 };
    expect(pressureUnder(12, 0.02, stiff, ground, 'interior').peak).toBeCloseTo(12 / 1.44, 9);
  });
  it('a plank: its free end is four times worse than its middle under a small patch', () => {
    const plank: SpreadingCovering = { spread: 'beam', thickness: 0.05, modulus: 10000, panelWidth: 0.3 };
    const middle = pressureUnder(5, 1e-8, plank, ground, 'interior').peak;
    expect(pressureUnder(5, 1e-8, plank, ground, 'edge').peak / middle).toBeCloseTo(4, 2);
    // Hetényi: p = P λ/(2 b), λ = (3 k_s/(E h³))^(1/4).
    const lambda = ((3 * 25e3) / (10e6 * 0.05 ** 3)) ** 0.25;
    expect(middle).toBeCloseTo((5 * lambda) / 0.6, 1);
  });
  it('plastic creeps under a load that stands; metal does not', () => {
    const plastic = { ...panel, modulus: 900 };
    const standing = { ...ground, standingHours: 120 };
    expect(pressureUnder(10, 0.02, plastic, standing, 'interior').peak).toBeGreaterThan(
      1.2 * pressureUnder(10, 0.02, plastic, ground, 'interior').peak,
    );
    expect(standingModulus(70000, 120, creep)).toBe(70000);
    expect(standingModulus(8000, 120, creep)).toBeLessThan(8000);
    // Short-term and 50-year moduli of HDPE, recalled: 0.93 and 0.152 GPa.
    expect(standingModulus(930, 50 * 8766, creep)).toBeCloseTo(152, -1);
  });
  it('neighbours add, equally on both sides, and never beyond the contact pressure', () => {
    const at = (x: number) => ({ load: 10, area: 0.02, x, y: 0 });
    const alone = pressureUnder(10, 0.02, panel, ground, 'interior').peak;
    const [left, right] = pressuresUnder([at(0), at(0.33)], panel, ground, 'interior');
    expect(left!.peak).toBeGreaterThan(alone);
    expect(left!.peak).toBeCloseTo(right!.peak, 12);
    const close = pressuresUnder([at(0), at(0.01), at(0.02), at(0.03)], { ...panel, thickness: 0.01 }, ground, 'corner');
    for (const spot of close) expect(spot.peak).toBeLessThanOrEqual(500 + 1e-9);
    const far = pressuresUnder([at(0), at(30)], panel, ground, 'interior');
    expect(far[0]!.peak).toBeCloseTo(alone, 9);
    expect(pressuresUnder([at(0), at(0.2)], bare, ground, 'interior')[0]!.peak).toBe(500);
  });
  it('refuses what has no meaning', () => {
    expect(() => pressureUnder(1, 0, panel, ground, 'interior')).toThrow(RangeError);
    expect(() => pressureUnder(-1, 1, panel, ground, 'interior')).toThrow(RangeError);
    expect(() => pressureUnder(1, 1, panel, { ...ground, springs: 0 }, 'interior')).toThrow(RangeError);
  });
});
