import { describe, expect, it } from 'vitest';
import { beamLambda, beamLengthClass, finiteBeam, infiniteBeam } from '#engine/loads/panel/beam-on-springs.ts';
import { perKcf, perPci, springsForWidth, springsFromAllowable } from '#engine/loads/panel/ground-springs.ts';
import { kei } from '#engine/loads/panel/kelvin.ts';
import { plateOnSolid } from '#engine/loads/panel/plate-on-solid.ts';
import {
  cornerIoannides,
  cornerWestergaard,
  edgeSettlement,
  edgeStress,
  interiorCircleSettlement,
  interiorSettlement,
  interiorStress,
  loadWithin,
  plateStiffness,
  relativeRadius,
  resistingRadius,
} from '#engine/loads/panel/plate-on-springs.ts';
import { plateShare } from '#engine/loads/panel/pressure-under.ts';

const close = (actual: number, expected: number, tolerance: number, what = ''): void =>
  expect(Math.abs(actual - expected), `${what} ${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
const share = (actual: number, expected: number, part: number, what = ''): void =>
  close(actual, expected, Math.abs(expected) * part, what);

describe('beam on springs, Hetényi 1946', () => {
  // Boresi & Schmidt, Advanced Mechanics of Materials, Example 10.1(a): a rail under one wheel. N, mm.
  const rail = { springs: 14, stiffness: 200e3 * 36.9e6 };
  it('rail under one wheel of 170 kN', () => {
    const { settlement, moment } = infiniteBeam(rail, [{ at: 0, load: 170e3 }], 0);
    share(beamLambda(rail), 0.00082986, 0.001);
    share(settlement, 5.04, 0.001);
    share(moment, 51.21e6, 0.001);
    share((moment * 99.1) / 36.9e6, 137.5, 0.001);
  });
  const pair = [
    { at: 0, load: 170e3 },
    { at: 2400, load: 170e3 },
  ];
  it('the same rail under two wheels 2.4 m apart', () => {
    share(infiniteBeam(rail, pair, 0).settlement, 5.385, 0.001);
    share(infiniteBeam(rail, pair, 0).moment, 41.98e6, 0.001);
    share(infiniteBeam(rail, pair, 1200).settlement, 5.148, 0.001);
    share(infiniteBeam(rail, pair, 1200).moment, -11.18e6, 0.001);
  });
  it('superposes linearly and symmetrically', () => {
    for (const x of [-700, 300, 1200, 1900]) {
      const both = infiniteBeam(rail, pair, x).settlement;
      close(both, infiniteBeam(rail, [pair[0]!], x).settlement + infiniteBeam(rail, [pair[1]!], x).settlement, 1e-12);
      close(both, infiniteBeam(rail, pair, 2400 - x).settlement, 1e-12);
    }
  });
  it('zeros: settlement at 3π/4, moment at π/4; C(π/2) = −0.2079', () => {
    const unit = { springs: 4, stiffness: 1 };
    close(infiniteBeam(unit, [{ at: 0, load: 1 }], (3 * Math.PI) / 4).settlement, 0, 1e-12);
    close(infiniteBeam(unit, [{ at: 0, load: 1 }], Math.PI / 4).moment, 0, 1e-12);
    close(infiniteBeam(unit, [{ at: 0, load: 4 }], Math.PI / 2).moment, -0.2079, 1e-4);
  });
  // Finite-length chapter; checked there against a 400-element solution (derived).
  const table: readonly (readonly [number, number, number, number])[] = [
    [0.25, 8.0004, 7.9994, 0.125], [Math.PI / 4, 2.5586, 2.5284, 0.3919], [1, 2.0248, 1.9628, 0.4972],
    [2, 1.1785, 0.7352, 0.9211], [3, 1.0904, 0.0655, 1.0885], [Math.PI, 1.0903, 0, 1.0903], [5, 1.0444, -0.2683, 1.0093],
  ]; // prettier-ignore
  it.each(table)('finite beam of λL = %f', (length, middle, end, moment) => {
    const unit = { springs: 4, stiffness: 1 };
    const result = finiteBeam(unit, 1, length);
    close(result.middle * 8, middle, 1e-4);
    close(result.end * 8, end, 1e-4);
    close(result.moment * 4, moment, 1e-4);
  });
  it('a very short beam presses evenly, a long one as the infinite', () => {
    const unit = { springs: 4, stiffness: 1 };
    share(finiteBeam(unit, 1, 0.01).middle * 4, 1 / 0.01, 0.001);
    share(finiteBeam(unit, 1, 0.01).end * 4, 1 / 0.01, 0.001);
    for (const length of [6, 8, 20, 40])
      share(finiteBeam(unit, 1, length).middle, infiniteBeam(unit, [{ at: 0, load: 1 }], 0).settlement, 0.02);
    expect([0.5, 2, 4].map((length) => beamLengthClass(unit, length))).toEqual(['rigid', 'finite', 'infinite']);
  });
});

describe('plate on springs, Westergaard 1926', () => {
  // Huang, Pavement Analysis and Design, 2nd ed., ch. 4: in, lb, psi.
  const huang = { modulus: 4e6, thickness: 10, poisson: 0.15, springs: 100 };
  it('slab of Huang ch. 4', () => {
    share(relativeRadius(huang), 42.97, 0.005);
    share(resistingRadius(6, 10), 5.804, 0.005);
    share(interiorStress(huang, 10000, 6), 143.7, 0.005);
    share(interiorCircleSettlement(huang, 10000, 6), 0.006699, 0.005);
  });
  it('second slab', () => {
    const slab = { modulus: 4e6, thickness: 8, poisson: 0.15, springs: 200 };
    share(relativeRadius(slab), 30.567, 0.001);
    share(resistingRadius(5, 8), 4.798, 0.001);
    share(interiorStress(slab, 9000, 5), 190.4, 0.001);
    share(interiorCircleSettlement(slab, 9000, 5), 0.005939, 0.001);
    share(edgeStress(slab, 9000, 5), 363.6, 0.001);
    share(edgeSettlement(slab, 9000, 5), 0.01797, 0.001);
    share(cornerWestergaard(slab, 9000, 5).stress, 246.6, 0.001);
    share(cornerWestergaard(slab, 9000, 5).settlement, 0.04317, 0.001);
    share(cornerIoannides(slab, 9000, 5).stress, 248.9, 0.001);
    share(cornerIoannides(slab, 9000, 5).settlement, 0.0484, 0.001);
  });
  // Yoder & Witczak, Principles of Pavement Design, ch. 3 (derived).
  it.each([
    [6, [34.84, 29.3, 24.63, 22.26, 19.59]],
    [8, [43.23, 36.35, 30.57, 27.62, 24.31]],
    [10, [51.1, 42.97, 36.14, 32.65, 28.74]],
    [12, [58.59, 49.27, 41.43, 37.44, 32.95]],
  ] as const)('relative radius of %i in', (thickness, row) => {
    [50, 100, 200, 300, 500].forEach((springs, i) =>
      share(relativeRadius({ modulus: 4e6, thickness, poisson: 0.15, springs }), row[i]!, 0.001),
    );
  });
  // Abramowitz & Stegun 1964, Table 9.12 (closed form).
  it.each([
    [0, -Math.PI / 4], [0.5, -0.671582], [1, -0.494995], [1.5, -0.331396], [2, -0.2024], [3, -0.051122], [4, 0.002198],
    [5, 0.011188],
  ] as const)('kei(%f)', (x, value) => close(kei(x), value, 1e-6)); // prettier-ignore
  it('kei joins its two series', () => {
    // K₀ solves kei″ + kei′/x = ker, and both branches must meet.
    close(kei(9), kei(9 + 1e-9), 1e-10);
    close(kei(40), 0, 1e-12);
  });
  const unit = { modulus: 12 * (1 - 0.09), thickness: 1, poisson: 0.3, springs: 1 };
  it.each([
    [0.5, 0.8551], [1, 0.6302], [1.5, 0.4219], [2, 0.2577], [3, 0.0651], [3.915, 0],
  ] as const)('settlement at r/l = %f', (r, value) => {
    close(interiorSettlement(unit, 1, r) / interiorSettlement(unit, 1, 0), value, 1e-4);
  }); // prettier-ignore
  it.each([
    [1, 0.305], [1.5, 0.559], [2, 0.787], [3, 1.064],
  ] as const)('load within r/l = %f', (r, value) => close(loadWithin(r), value, 0.001)); // prettier-ignore
  it('the exact circle agrees with the series of Westergaard', () => {
    for (const a of [0.05, 0.1, 0.2, 0.3]) share(loadWithin(a) / (Math.PI * a * a), interiorCircleSettlement(unit, 1, a), 0.001);
  });
  it('edge and corner settle more than the interior', () => {
    for (const a of [0.02, 0.1, 0.3, 0.5, 0.8, 1.2]) {
      const shares = (['interior', 'edge', 'corner'] as const).map((position) => plateShare(a, position, 0.3));
      expect(shares[1]!).toBeGreaterThan(shares[0]!);
      expect(shares[2]!).toBeGreaterThanOrEqual(shares[1]!);
    }
    expect(edgeSettlement(unit, 1, 0.1)).toBeGreaterThan(3 * interiorCircleSettlement(unit, 1, 0.1));
    expect(cornerIoannides(unit, 1, 0.1).settlement).toBeGreaterThan(edgeSettlement(unit, 1, 0.1));
    expect(plateShare(0.1, 'edge', 0.3)).toBeCloseTo(edgeSettlement(unit, 1, 0.1) * Math.PI * 0.01, 12);
    expect(plateShare(0.1, 'corner', 0.3)).toBeCloseTo(cornerIoannides(unit, 1, 0.1).settlement * Math.PI * 0.01, 12);
  });
  it('the ground carries exactly the load', () => {
    const step = 0.002;
    let sum = 0;
    for (let r = step / 2; r < 20; r += step) sum += interiorSettlement(unit, 1, r) * 2 * Math.PI * r * step;
    share(sum, 1, 0.001);
    share(loadWithin(30), 1, 1e-6);
  });
  // Illustration from the formulas: P 10 kN, k 10 and 50 MN/m³.
  it.each([
    ['18 mm plywood', 8e6, 0.018, 0.3, 0.144, 0.096, 60, 135],
    ['25 mm plywood', 8e6, 0.025, 0.3, 0.184, 0.123, 37, 83],
    ['38 mm solid HDPE', 1e6, 0.038, 0.42, 0.154, 0.103, 53, 119],
  ] as const)('%s spreads 10 kN', (_, modulus, thickness, poisson, soft, hard, softPressure, hardPressure) => {
    for (const [springs, l, pressure] of [
      [10e3, soft, softPressure],
      [50e3, hard, hardPressure],
    ] as const) {
      const plate = { modulus, thickness, poisson, springs };
      close(relativeRadius(plate), l, 0.0006);
      share(springs * interiorSettlement(plate, 10, 0), pressure, 0.015);
    }
  });
  it('plate on an elastic solid: w₀ = 0.1925 P l²/D (Hogg 1938)', () => {
    const stiffness = plateStiffness({ modulus: 8e6, thickness: 0.018, poisson: 0.3, springs: 1 });
    const { elasticLength, settlement } = plateOnSolid(stiffness, 10, 20e3, 0.3);
    share(settlement, (0.1925 * 10 * elasticLength ** 2) / stiffness, 0.0005);
    close(elasticLength ** 3 * 20e3, 2 * stiffness * 0.91, 1e-9);
  });
});

describe('springs of the ground', () => {
  it('100 pci is 27.14 MN/m³ and 1 kcf 157.1 kN/m³', () => {
    share(100 * perPci, 27140, 0.001);
    share(perKcf, 157.1, 0.001);
  });
  it('k = 40 SF qa (Bowles, 5th ed., Eq. 9-9)', () => {
    expect(springsFromAllowable(120, 3)).toBe(14400);
    expect(springsFromAllowable(300, 2.5)).toBe(30000);
  });
  it('a wider plate on sand meets softer springs; a 0.3 m plate is the reference', () => {
    close(springsForWidth(1000, 0.3), 1000, 1e-9);
    expect(springsForWidth(1000, 1)).toBeLessThan(springsForWidth(1000, 0.5));
  });
});
