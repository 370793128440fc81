import { describe, expect, test } from 'vitest';
import { freezingRoot, freezingTemperature, frontDepth, stefanDepth, stefanRoot } from '#engine/heat/freezing-front.ts';
import { groundOf } from '#engine/heat/ground.ts';
import { frozenDepth, runHeldSurface, temperatureAt } from '#engine/heat/held-surface-column.ts';

// Jumikis 1966 with the solution in Lunardini 1981, as in Bonan 2019, Supplemental Program 5.3.
const frozenK = 2.324;
const thawedK = 1.86;
const frozenC = 1.966e6;
const thawedC = 2.862e6;
const latent = 0.187 * 1770 * 0.3337e6;
const day = 86400;
const squareCmPerHour = 1e-4 / 3600;
// The source's own rounded diffusivities, and its front X = 3.6 cm √hours.
const printed = {
  initial: 2,
  surface: -10,
  freezing: 0,
  frozenDiffusivity: 42.55 * squareCmPerHour,
  thawedDiffusivity: 23.39 * squareCmPerHour,
  root: 3.6 / (2 * Math.sqrt(42.55)),
};
const table = [
  { days: 10, front: 0.5577, at: [-5.427, -0.131, 0.589, 1.072] },
  { days: 60, front: 1.3661, at: [-8.125, -5.888, -3.682, -1.52] },
];
const depths = [0.25, 0.55, 0.85, 1.15];

describe.each(table)('freezing benchmark after $days days', ({ days, front, at }) => {
  test('closed form: front within 0.01 cm, temperature within 0.001 K', () => {
    expect(Math.abs(frontDepth(printed.root, printed.frozenDiffusivity, days * day) - front)).toBeLessThan(1e-4);
    depths.forEach((depth, i) => expect(Math.abs(freezingTemperature(printed, depth, days * day) - at[i]!)).toBeLessThan(0.001));
  });

  // The source's own set-up first (60 cells of 0.10 m, 1 h, latent heat over ±0.5 K), then finer ones.
  test.each([
    ['60 cells of 0.10 m', 60, 0.1],
    ['120 cells of 0.05 m', 120, 0.05],
    ['300 cells of 0.02 m', 300, 0.02],
  ])('numerical column, %s: front within 3 %%, temperature within 0.3 K', (_, cells, size) => {
    const ground = groundOf({
      layers: [
        {
          thickness: 6,
          thawedConductivity: thawedK,
          frozenConductivity: frozenK,
          thawedHeatCapacity: thawedC,
          frozenHeatCapacity: frozenC,
          latentHeat: latent,
        },
      ],
      cells: new Float64Array(cells).fill(size),
      freezing: 0,
      interval: 1,
      deepTemperature: null,
      deepDistance: 0,
    });
    const result = runHeldSurface({
      ground,
      start: new Float64Array(cells).fill(2),
      surface: () => -10,
      step: 3600,
      steps: days * 24,
    });
    expect(Math.abs(frozenDepth(ground, result.temperature) / front - 1)).toBeLessThan(0.03);
    depths.forEach((depth, i) =>
      expect(Math.abs(temperatureAt(ground, result.temperature, -10, depth) - at[i]!)).toBeLessThan(0.3),
    );
    expect(Math.abs(result.stored - result.received)).toBeLessThan(1e-6 * result.moved);
  });
});

test('the root from the unrounded properties, and Stefan without sensible heat', () => {
  const root = freezingRoot({
    initial: 2,
    surface: -10,
    freezing: 0,
    frozenConductivity: frozenK,
    thawedConductivity: thawedK,
    frozenHeatCapacity: frozenC,
    thawedHeatCapacity: thawedC,
    latentHeat: latent,
  });
  expect(root).toBeCloseTo(0.27551, 5);
  expect(frontDepth(root, frozenK / frozenC, 60 * day)).toBeCloseTo(1.364, 3);
  const stefan = stefanDepth(frozenK, 10, 60 * day, latent);
  expect(stefan).toBeCloseTo(1.477, 3);
  expect(stefan / 1.364 - 1).toBeCloseTo(0.08, 2);
});

test('the profile has no break at the front', () => {
  const root = freezingRoot({
    initial: 6,
    surface: -4,
    freezing: 0,
    frozenConductivity: 1.8,
    thawedConductivity: 1.2,
    frozenHeatCapacity: 1.9e6,
    thawedHeatCapacity: 2.6e6,
    latentHeat: 6e7,
  });
  const profile = { initial: 6, surface: -4, freezing: 0, frozenDiffusivity: 1.8 / 1.9e6, thawedDiffusivity: 1.2 / 2.6e6, root };
  const front = frontDepth(root, profile.frozenDiffusivity, 20 * day);
  expect(freezingTemperature(profile, front * (1 - 1e-9), 20 * day)).toBeCloseTo(0, 6);
  expect(freezingTemperature(profile, front * (1 + 1e-9), 20 * day)).toBeCloseTo(0, 6);
  // Heat balance at the front: k1 T1' − k2 T2' = L dX/dt, from the profile itself.
  const slope = (side: number): number =>
    (freezingTemperature(profile, front + side * 2e-5, 20 * day) - freezingTemperature(profile, front + side * 1e-5, 20 * day)) /
    (side * 1e-5);
  expect((1.8 * slope(-1) - 1.2 * slope(1)) / ((6e7 * front) / (2 * 20 * day))).toBeCloseTo(1, 3);
});

test('ground that starts at its freezing point is Stefan’s one-phase problem', () => {
  const root = freezingRoot({
    initial: 0,
    surface: -10,
    freezing: 0,
    frozenConductivity: 2,
    thawedConductivity: 1,
    frozenHeatCapacity: 2e6,
    thawedHeatCapacity: 3e6,
    latentHeat: 1e8,
  });
  expect(root).toBeCloseTo(stefanRoot(0.2), 9);
});

test('cases without a front are refused', () => {
  const base = {
    frozenConductivity: 2,
    thawedConductivity: 2,
    frozenHeatCapacity: 2e6,
    thawedHeatCapacity: 2e6,
    latentHeat: 1e8,
  };
  expect(() => freezingRoot({ ...base, initial: 2, surface: 0, freezing: 0 })).toThrow(RangeError);
  expect(() => freezingRoot({ ...base, initial: -2, surface: -5, freezing: 0 })).toThrow(RangeError);
  expect(() => stefanRoot(-1)).toThrow(RangeError);
  expect(stefanRoot(0)).toBe(0);
});

// Carslaw & Jaeger 1959, section 11.2; derived, 1e-5.
test.each([
  [0.01, 0.07059],
  [0.05, 0.15682],
  [0.1, 0.22002],
  [0.2, 0.30642],
  [0.5, 0.46479],
  [1, 0.62006],
])('Stefan root at St %d', (stefan, root) => expect(Math.abs(stefanRoot(stefan) - root)).toBeLessThan(1e-5));

// Open phase-change test case: k 1.5, c 2500, density 870, L 179 000, 10 K; printed liquid fraction about 81 % of 0.10 m.
test('melting of a slab after ten hours', () => {
  const stefan = (2500 * 10) / 179000;
  expect(stefan).toBeCloseTo(0.13966, 5);
  const root = stefanRoot(stefan);
  expect(root).toBeCloseTo(0.25842, 5);
  const front = frontDepth(root, 1.5 / (2500 * 870), 36000);
  expect(front).toBeCloseTo(0.0814, 4);
  expect(front / 0.1).toBeCloseTo(0.81, 2);
});
