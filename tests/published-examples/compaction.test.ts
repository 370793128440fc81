import { describe, expect, it } from 'vitest';
import {
  densityAfterStress,
  linesForYield,
  sandyLoamLines,
  structuredSoilLines,
  yieldStress,
} from '#engine/soil/critical-state-density.ts';
import { multipassFactor } from '#engine/soil/repeated-passes.ts';

const close = (actual: number, expected: number, tolerance: number): void =>
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);

// O'Sullivan & Robertson 1996, as printed in the vignette of soilphysics 5.1.
const lines = { virgin: 1.9392, lambda: 0.06037, kappa: 0.00608, recompression: 0.01916, separation: 1.3 };

describe("density after a load, O'Sullivan & Robertson 1996", () => {
  it('printed output: 300 kPa on 1.55 Mg/m³', () => {
    const after = densityAfterStress(300, 1.55, 2.67, lines);
    close(after, 1.6385, 1e-4);
    close(2.67 / 1.55, 1.7226, 1e-4);
    close(2.67 / after, 1.6295, 1e-4);
    close((after / 1.55 - 1) * 100, 5.71, 0.01);
  });
  it.each([
    [20, 1.5553, 0.34], [50, 1.5663, 1.05], [100, 1.5806, 1.98], [150, 1.6015, 3.32], [200, 1.6167, 4.3], [400, 1.6544, 6.73],
  ])('%i kPa', (stress, density, percent) => {
    close(densityAfterStress(stress, 1.55, 2.67, lines), density, 1e-4);
    close((densityAfterStress(stress, 1.55, 2.67, lines) / 1.55 - 1) * 100, percent, 0.01);
  }); // prettier-ignore
  it('yields at 12.7 kPa; below it nothing changes at all', () => {
    close(yieldStress(1.55, 2.67, lines), 12.7, 0.05);
    for (const stress of [0, 0.5, 5, 12.7]) expect(densityAfterStress(stress, 1.55, 2.67, lines)).toBe(1.55);
  });
  it('never loosens as the load rises', () => {
    for (const density of [1.2, 1.35, 1.55, 1.7]) {
      let before = density;
      for (let stress = 0; stress < 800; stress += 5) {
        const after = densityAfterStress(stress, density, 2.67, lines);
        expect(after).toBeGreaterThanOrEqual(before);
        before = after;
      }
    }
  });
  it('can be placed by a known yield stress', () => {
    close(yieldStress(1.5, 2.65, linesForYield(120, 1.5, 2.65, lines)), 120, 1e-9);
  });
  it("sandy loam of 15 % water, O'Sullivan, Henshall & Dickson 1999", () => {
    const loam = sandyLoamLines(15);
    close(loam.virgin, 2.3506, 1e-4);
    close(loam.lambda, 0.0458, 1e-4);
    close(loam.kappa, 0.00214, 1e-5);
  });
  it('structured topsoil, Keller & Arvidsson 2007', () => {
    const soil = structuredSoilLines(2.65 / 1.5);
    close(soil.virgin, 2.106, 1e-3);
    close(soil.lambda, 0.1925, 1e-4);
    expect(soil.kappa).toBe(0.042);
  });
});

describe('repeated passes', () => {
  it('a = 3: ten passes make 2.15 times the first', () => close(multipassFactor(10, 3), 2.15, 0.005));
  it('the first pass adds more than any later one', () => {
    for (const exponent of [2, 3, 5]) {
      let before = multipassFactor(1, exponent);
      for (let pass = 2; pass < 200; pass++) {
        const added = multipassFactor(pass, exponent) - multipassFactor(pass - 1, exponent);
        expect(added).toBeLessThanOrEqual(before + 1e-12);
        expect(added).toBeGreaterThan(0);
        before = added;
      }
    }
  });
});
