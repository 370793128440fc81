import { describe, expect, test } from 'vitest';
import {
  berggrenDepth,
  berggrenDepthSi,
  berggrenLambda,
  berggrenLambdaShort,
  fusionParameter,
  manualHeatCapacity,
  manualLatentHeat,
  surfaceFactors,
  surfaceIndex,
  thermalRatio,
} from '#engine/heat/berggren-depth.ts';

// Aldrich & Paynter 1953, equal thermal properties; derived from the two-phase solution, 0.001.
const alphas = [0, 0.25, 0.5, 1, 2, 3];
describe.each([
  [0.05, [0.992, 0.966, 0.942, 0.895, 0.81, 0.737]],
  [0.1, [0.984, 0.946, 0.911, 0.846, 0.735, 0.645]],
  [0.2, [0.969, 0.914, 0.864, 0.776, 0.639, 0.538]],
  [0.3, [0.955, 0.887, 0.826, 0.725, 0.576, 0.473]],
  [0.5, [0.93, 0.841, 0.767, 0.649, 0.492, 0.393]],
  [1, [0.877, 0.756, 0.664, 0.534, 0.382, 0.296]],
])('lambda at mu %d', (mu, row) => {
  test.each(alphas.map((alpha, i) => [alpha, row[i]!]))('alpha %d', (alpha, lambda) =>
    expect(Math.abs(berggrenLambda(alpha, mu) - lambda)).toBeLessThan(0.001),
  );
});

// UFC 3-130-06 (TM 5-852-6) section 3-3, the manual's example: sandy silt, 100 lb/ft³, 15 %, mean annual 37.2 °F,
// surface index 2500 °F d over 160 d, k 0.76.
test('the manual’s example', () => {
  const latent = manualLatentHeat(100, 15);
  const capacity = manualHeatCapacity(100, 15, 'average');
  const below = 2500 / 160;
  const alpha = thermalRatio(37.2 - 32, below);
  const mu = fusionParameter(below, capacity, latent);
  expect(latent).toBe(2160);
  expect(capacity).toBeCloseTo(28.25, 9);
  expect(below).toBeCloseTo(15.6, 1);
  expect(alpha).toBeCloseTo(0.333, 3);
  expect(mu).toBeCloseTo(0.204, 3);
  expect(berggrenDepth(1, 0.76, 2500, latent)).toBeCloseTo(6.498, 3);
  expect(berggrenLambda(alpha, mu)).toBeCloseTo(0.8956, 3);
  expect(Math.abs(berggrenDepth(berggrenLambda(alpha, mu), 0.76, 2500, latent) - 5.82)).toBeLessThan(0.02);
  expect(berggrenLambdaShort(alpha, mu)).toBeCloseTo(0.924, 3);
  expect(berggrenDepth(berggrenLambdaShort(alpha, mu), 0.76, 2500, latent)).toBeCloseTo(6.01, 2);
});

test('heat capacity of frozen and thawed soil, and the SI form of the depth', () => {
  expect(manualHeatCapacity(100, 15, 'thawed')).toBeCloseTo(32, 9);
  expect(manualHeatCapacity(100, 15, 'frozen')).toBeCloseTo(24.5, 9);
  // 1 Btu/(h ft °F) = 1.730735 W/(m K); 1 Btu/ft³ = 37 258.95 J/m³; 1 °F d = 1/1.8 °C d.
  const metres = berggrenDepthSi(0.8956, 0.76 * 1.730735, 2500 / 1.8, 2160 * 37258.95);
  expect(metres / 0.3048).toBeCloseTo(5.82, 2);
});

test('lambda at the limits', () => {
  expect(berggrenLambda(1, 0)).toBe(1);
  expect(berggrenLambda(0.4, 1e-6)).toBeCloseTo(1, 2);
  expect(() => berggrenLambda(-1, 0.1)).toThrow(RangeError);
  expect(() => berggrenLambda(1, -0.1)).toThrow(RangeError);
});

// TM 5-852-4, Table 4-1.
test('n-factors', () => {
  expect(surfaceFactors.turf).toEqual({ freezing: 0.5, thawing: 0.8 });
  expect(surfaceFactors.snow.freezing).toBe(1);
  expect(surfaceFactors.concrete).toEqual({ freezing: 0.75, thawing: 1.5 });
  expect(surfaceFactors.bituminous.freezing).toBe(0.7);
  expect(surfaceFactors['bare soil'].freezing).toBe(0.7);
  expect(surfaceFactors.shaded).toEqual({ freezing: 0.9, thawing: 1 });
  expect(surfaceFactors.trees).toEqual({ freezing: 0.3, thawing: 0.4 });
  expect(surfaceIndex(surfaceFactors.turf.freezing, 500)).toBe(250);
});
