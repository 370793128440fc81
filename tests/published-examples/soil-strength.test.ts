import { describe, expect, it } from 'vitest';
import { inclinedFactors, prandtlReissner, weightFactor } from '#engine/soil/bearing-factors.ts';
import { bekkerSinkage } from '#engine/soil/bekker-sinkage.ts';
import { hornFleigeClay, lebertHornSand, saffihHdadiCoarse, schjonningLamande } from '#engine/soil/precompression-stress.ts';
import { localShear, terzaghiCapacity, terzaghiFactors } from '#engine/soil/terzaghi-capacity.ts';

const close = (actual: number, expected: number, tolerance: number, what = ''): void =>
  expect(Math.abs(actual - expected), `${what} ${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);

describe('bearing factors, Prandtl–Reissner (Vesić 1973, Meyerhof 1963)', () => {
  // Closed forms (derived); 0.1 % or half a printed unit.
  const table: readonly (readonly [number, number, number, number, number, number])[] = [
    [0, 5.14, 1, 0, 0, 0], [10, 8.34, 2.47, 1.22, 0.37, 0.39], [20, 14.83, 6.4, 5.39, 2.87, 2.95],
    [25, 20.72, 10.66, 10.88, 6.77, 6.76], [30, 30.14, 18.4, 22.4, 15.67, 15.07], [34, 42.16, 29.44, 41.06, 31.15, 28.77],
    [40, 75.31, 64.2, 109.41, 93.69, 79.54],
  ]; // prettier-ignore
  it.each(table)('φ %f', (phi, nc, nq, vesic, meyerhof, hansen) => {
    const factors = prandtlReissner(phi);
    const within = (actual: number, expected: number): void => close(actual, expected, Math.max(0.001 * expected, 0.0051));
    within(factors.nc, nc);
    within(factors.nq, nq);
    within(weightFactor(phi, 'vesic'), vesic);
    within(weightFactor(phi, 'meyerhof'), meyerhof);
    within(weightFactor(phi, 'hansen'), hansen);
  });
  // SP 22.13330.2016, vertical load.
  it.each([
    [10, 2.47, 8.34], [20, 6.4, 14.84], [25, 10.66, 20.72], [30, 18.4, 30.14], [40, 64.19, 75.31],
  ] as const)('code table at φ %i', (phi, nq, nc) => {
    close(prandtlReissner(phi).nq, nq, Math.max(0.001 * nq, 0.0051));
    close(prandtlReissner(phi).nc, nc, Math.max(0.001 * nc, 0.0051));
  }); // prettier-ignore
  it('code table at φ 30 with the load inclined by 10°', () => {
    close(inclinedFactors(30, 10).nq, 12.94, 0.0051);
    close(inclinedFactors(30, 10).nc, 20.68, 0.0051);
    close(inclinedFactors(30, 1e-9).nq, prandtlReissner(30).nq, 1e-6);
  });
});

describe('Terzaghi 1943', () => {
  // Nc and Nq by formula, rounded as printed; Nγ as tabled (Bowles, Table 4-2; the 25° column is printed in the source read).
  const table: readonly (readonly [number, number, number, number])[] = [
    [0, 5.7, 1, 0], [10, 9.6, 2.7, 1.2], [20, 17.7, 7.4, 5], [25, 25.1, 12.7, 9.7], [30, 37.2, 22.5, 19.7], [34, 52.6, 36.5, 36],
    [35, 57.8, 41.4, 42.4], [40, 95.7, 81.3, 100.4], [45, 172.3, 173.3, 297.5],
  ]; // prettier-ignore
  it.each(table)('φ %f', (phi, nc, nq, ngamma) => {
    const factors = terzaghiFactors(phi);
    close(factors.nc, nc, 0.051);
    close(factors.nq, nq, 0.051);
    close(factors.ngamma, ngamma, 1e-9);
  });
  it('rises with the friction angle between the tabled values', () => {
    let before = -1;
    for (let phi = 0; phi <= 45; phi += 0.5) {
      const { ngamma } = terzaghiFactors(phi);
      expect(ngamma).toBeGreaterThan(before);
      before = ngamma;
    }
  });
  const at = (nc: number, nq: number, ngamma: number) => ({ nc, nq, ngamma });
  it('B1: examination question, local shear, 2 m square', () => {
    const loose = localShear(24, 25);
    close(loose.cohesion, 16, 1e-12);
    close(terzaghiCapacity(loose.cohesion, 18, { shape: 'square', width: 2, depth: 0 }, at(14.8, 0, 3.2)), 353.92, 0.35);
    // The reduced angle leads to N′c 14.8 in the question's table.
    close(terzaghiFactors(loose.phi).nc, 14.8, 0.1);
  });
  it('B2: homework sheet, φ 0', () => {
    close(terzaghiCapacity(60, 19, { shape: 'square', width: 1, depth: 1.5 }, at(5.7, 1, 0)), 473.1, 0.47);
  });
  it('B3: Bowles, Example 4-1', () => {
    const capacity = (width: number): number =>
      terzaghiCapacity(20, 17.3, { shape: 'square', width, depth: 1.2 }, at(17.7, 7.4, 5));
    close(capacity(0), 613.8, 0.61);
    close(capacity(1) - capacity(0), 34.6, 0.035);
    close(capacity(0) / 3, 205, 0.5);
    close((capacity(1) - capacity(0)) / 3, 11.5, 0.05);
  });
  it('B4: φ 25 without cohesion', () => {
    const capacity = (width: number): number =>
      terzaghiCapacity(0, 17.3, { shape: 'square', width, depth: 1.2 }, at(25.1, 12.7, 9.7));
    close(capacity(0), 263.7, 0.26);
    close(capacity(1) - capacity(0), 67.12, 0.067);
  });
  it.each([
    [34, 52],
    [30, 28],
  ])('B5: a 0.3 m circle on dry sand, φ %i, carries %i kPa', (phi, capacity) => {
    close(terzaghiCapacity(0, 16, { shape: 'circle', width: 0.3, depth: 0 }, terzaghiFactors(phi)), capacity, 1);
  });
  it('1 kPa of cohesion at φ 34 adds 68 kPa', () => {
    const patch = { shape: 'circle', width: 0.3, depth: 0 } as const;
    const factors = terzaghiFactors(34);
    close(terzaghiCapacity(1, 16, patch, factors) - terzaghiCapacity(0, 16, patch, factors), 68, 0.5);
  });
});

describe('sinkage, Bekker (Wong, Table 2.3)', () => {
  it('dry sand 83 mm, sandy loam 20 mm under 100 kPa on 0.1 m', () => {
    close(bekkerSinkage(100, 0.1, { kc: 0.99, kphi: 1528.4, n: 1.1 }), 0.083, 0.001);
    close(bekkerSinkage(100, 0.1, { kc: 5.27, kphi: 1515, n: 0.7 }), 0.02, 0.001);
  });
});

describe('precompression stress', () => {
  const sand = (bulkDensity: number) => ({ bulkDensity, frictionAngle: 36, wiltingPoint: 3, availableWater: 8 });
  it.each([
    [1.4, 94, 125],
    [1.5, 138, 166],
    [1.6, 182, 207],
    [1.7, 225, 248],
  ])('Lebert & Horn 1991, sand of %f Mg/m³', (density, wet, dry) => {
    close(lebertHornSand(sand(density), 1.8), wet, 1);
    close(lebertHornSand(sand(density), 2.5), dry, 1);
  });
  it('Horn & Fleige 2003, Table 7, clay', () => {
    const clay = {
      bulkDensity: 1.55,
      availableWater: 15,
      wiltingPoint: 26,
      conductivity: 0.29,
      organicMatter: 1.5,
      cohesion: 30,
      frictionAngle: 36,
    };
    close(hornFleigeClay(clay), 110, 1);
  });
  it('Saffih-Hdadi et al. 2009, coarse', () => close(saffihHdadiCoarse(1.5, 10), 94.2, 0.1));
  it('Schjønning & Lamandé 2018', () => close(schjonningLamande(1.46, 0.3, 2), 117.9, 0.1));
});
