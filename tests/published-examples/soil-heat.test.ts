import { expect, test } from 'vitest';
import { campbellConductivity } from '#engine/heat/campbell-conductivity.ts';
import { erf, erfc } from '#engine/heat/error-function.ts';
import { growingCells, groundOf } from '#engine/heat/ground.ts';
import {
  annualFrequency,
  dailyFrequency,
  dampingDepth,
  diffusivity,
  stepShare,
  waveAtDepth,
  waveTemperature,
} from '#engine/heat/ground-waves.ts';
import { runHeldSurface, temperatureAt } from '#engine/heat/held-surface-column.ts';
import { johansenConductivity, johansenDry, johansenSaturated } from '#engine/heat/johansen-conductivity.ts';
import { constituentHeatCapacity as c, volumetricHeatCapacity } from '#engine/heat/volumetric-heat-capacity.ts';

// Abramowitz & Stegun 1964, Handbook of Mathematical Functions, Table 7.1.
test.each([
  [0.1, 0.112462916],
  [0.5, 0.5204998778],
  [1, 0.8427007929],
  [1.5, 0.9661051465],
  [2, 0.995322265],
])('error function of %d', (x, printed) => {
  expect(erf(x)).toBeCloseTo(printed, 9);
  expect(erf(-x)).toBeCloseTo(-printed, 9);
  expect(erfc(x)).toBeCloseTo(1 - printed, 9);
});

test('the two branches of the error function meet and the tail keeps its relative accuracy', () => {
  expect(erfc(2.5 - 1e-12) / erfc(2.5 + 1e-12)).toBeCloseTo(1, 9);
  // Abramowitz & Stegun 1964, 7.1.23: erfc(x) → e^(−x²)/(x√π) (1 − 1/(2x²) + 3/(4x⁴) − …)
  const x = 8;
  const asymptotic = (Math.exp(-x * x) / (x * Math.sqrt(Math.PI))) * (1 - 1 / 128 + 3 / 16384 - 15 / 2097152);
  expect(erfc(x) / asymptotic).toBeCloseTo(1, 6);
  expect(erf(0)).toBe(0);
  expect(erfc(40)).toBe(0);
  expect(erfc(-40)).toBe(2);
});

// Moene & van Dam 2014, Table 2.2: heat capacity by mixing solids (2.13 quartz, 2.39 clay, 2.47 organic) and water (4.18), 1 %.
test.each([
  ['loose sand, dry', 0.6, c.quartz, 0, 1.28],
  ['loose sand, half wet', 0.6, c.quartz, 0.2, 2.12],
  ['loose sand, saturated', 0.6, c.quartz, 0.4, 2.96],
  ['tight sand, dry', 0.67, c.quartz, 0, 1.42],
  ['tight sand, moist', 0.67, c.quartz, 0.15, 2.05],
  ['tight sand, saturated', 0.67, c.quartz, 0.33, 2.81],
  ['clay, dry', 0.6, c.clayMineral, 0, 1.43],
  ['clay, half wet', 0.6, c.clayMineral, 0.2, 2.27],
  ['clay, saturated', 0.6, c.clayMineral, 0.4, 3.1],
  ['peat, dry', 0.1, c.organic, 0, 0.25],
  ['peat, half wet', 0.1, c.organic, 0.45, 2.13],
  ['peat, saturated', 0.1, c.organic, 0.9, 4.01],
])('heat capacity of %s', (_, solids, solid, water, printed) => {
  const mixed = volumetricHeatCapacity([
    { share: solids, heatCapacity: solid },
    { share: water, heatCapacity: c.water },
  ]);
  expect(Math.abs(mixed / printed - 1)).toBeLessThan(0.015);
  if (printed > 1) expect(Math.abs(mixed / printed - 1)).toBeLessThan(0.01);
});

test('parts that overfill a volume are refused', () => {
  expect(() => volumetricHeatCapacity([{ share: 1.1, heatCapacity: 1 }])).toThrow(RangeError);
  expect(() => volumetricHeatCapacity([{ share: -0.1, heatCapacity: 1 }])).toThrow(RangeError);
});

// Moene & van Dam 2014, Table 2.2: damping depths of the day (cm) and the year (m) from k and C.
test.each([
  [0.24, 1.28, 7.2, 1.37],
  [2.1, 2.12, 16.5, 3.15],
  [2.5, 2.96, 15.2, 2.91],
  [0.29, 1.42, 7.5, 1.43],
  [2.5, 2.05, 18.3, 3.5],
  [2.9, 2.81, 16.8, 3.22],
])('damping depth of ground with k %d and C %d', (k, capacity, day, year) => {
  const a = diffusivity(k, capacity * 1e6);
  expect(Math.abs(100 * dampingDepth(a, dailyFrequency) - day)).toBeLessThan(0.02 * day);
  expect(Math.abs(dampingDepth(a, annualFrequency) - year)).toBeLessThan(0.02 * year);
});

// Johansen 1975 as coded in Bonan 2019, Supplemental Program 5.3: sand, quartz 0.92, porosity 0.395; derived values, 0.002.
const sand = { porosity: 0.395, quartz: 0.92, texture: 'coarse' } as const;
test('Johansen: dry and saturated sand', () => {
  expect(Math.abs(johansenDry(0.395) - 0.247)).toBeLessThan(0.002);
  expect(Math.abs(johansenSaturated(sand, false) - 2.58)).toBeLessThan(0.002);
  expect(Math.abs(johansenSaturated(sand, true) - 4.468)).toBeLessThan(0.002);
});
test.each([
  [0.25, 1.597, 1.303],
  [0.5, 2.088, 2.358],
  [0.75, 2.376, 3.413],
])('Johansen: sand at saturation %d', (saturation, thawed, frozen) => {
  expect(Math.abs(johansenConductivity(sand, saturation, false) - thawed)).toBeLessThan(0.002);
  expect(Math.abs(johansenConductivity(sand, saturation, true) - frozen)).toBeLessThan(0.002);
});

// Campbell 1985, eq. 4.20: bulk density 1.6 Mg/m³, clay 0.05; derived values, 0.002.
test.each([
  [0, 0.286],
  [0.05, 0.467],
  [0.1, 1.056],
  [0.2, 1.277],
  [0.3, 1.447],
  [0.4, 1.616],
])('Campbell at water %d', (water, k) => expect(Math.abs(campbellConductivity(1.6, 0.05, water) - k)).toBeLessThan(0.002));
test('Campbell has no value without clay', () => expect(() => campbellConductivity(1.6, 0, 0.1)).toThrow(RangeError));

// Nellis & Klein 2009, Table 3-2, printed 295.4 K by an equation solver; recomputed 295.36 ± 0.05.
test('periodic wave', () => {
  const wave = { mean: 293, amplitude: 15, angularFrequency: 7.272, diffusivity: 1.1e-4 };
  expect(Math.abs(waveTemperature(wave, 0.01, 0.5) - 295.36)).toBeLessThan(0.05);
});

// Carslaw & Jaeger 1959, chapter 2: α 1e-6 m²/s, daily wave and step after 24 h; derived.
test('how deep a day and a year reach', () => {
  const daily = { mean: 0, amplitude: 1, angularFrequency: dailyFrequency, diffusivity: 1e-6 };
  expect(dampingDepth(1e-6, dailyFrequency)).toBeCloseTo(0.16584, 5);
  for (const [depth, share, lag] of [
    [0.05, 0.7397, 1.152],
    [0.1, 0.5472, 2.303],
    [0.2, 0.2994, 4.607],
  ] as const) {
    expect(waveAtDepth(daily, depth).share).toBeCloseTo(share, 4);
    expect(waveAtDepth(daily, depth).lag / 3600).toBeCloseTo(lag, 2);
  }
  expect(dampingDepth(2e-7, annualFrequency)).toBeCloseTo(1.417, 3);
  expect(waveAtDepth({ ...daily, angularFrequency: annualFrequency, diffusivity: 2e-7 }, 4.245).share).toBeCloseTo(0.05, 3);
});
test.each([
  [0.05, 0.9043],
  [0.1, 0.8099],
  [0.3, 0.4705],
])('step at %d m', (depth, share) => {
  expect(stepShare(1e-6, depth, 86400)).toBeCloseTo(share, 4);
  expect(stepShare(1e-6, depth, 0)).toBe(0);
});

/** Uniform ground of diffusivity 1e-6 m²/s that never freezes. */
const uniform = (depth: number, cell: number) =>
  groundOf({
    layers: [
      {
        thickness: depth,
        thawedConductivity: 2,
        frozenConductivity: 2,
        thawedHeatCapacity: 2e6,
        frozenHeatCapacity: 2e6,
        latentHeat: 0,
      },
    ],
    cells: growingCells(depth, cell, 1.1, 0.1),
    freezing: -100,
    interval: 1,
    deepTemperature: null,
    deepDistance: 0,
  });

test('the numerical column follows the daily wave within 1 % of its amplitude', () => {
  const ground = uniform(3, 0.01);
  const wave = { mean: 20, amplitude: 10, angularFrequency: dailyFrequency, diffusivity: 1e-6 };
  let worst = 0;
  const result = runHeldSurface({
    ground,
    start: new Float64Array(ground.cells).fill(20),
    surface: (time) => waveTemperature(wave, 0, time),
    step: 300,
    steps: 288 * 12,
    after: (time, temperature) => {
      if (time <= 11 * 86400) return;
      for (const depth of [0.05, 0.1, 0.2]) {
        const found = temperatureAt(ground, temperature, waveTemperature(wave, 0, time), depth);
        worst = Math.max(worst, Math.abs(found - waveTemperature(wave, depth, time)));
      }
    },
  });
  expect(worst).toBeGreaterThan(0);
  expect(worst).toBeLessThan(0.01 * wave.amplitude);
  expect(Math.abs(result.stored - result.received)).toBeLessThan(1e-6 * result.moved);
});

test('the numerical column follows a step within 1 % of its height', () => {
  const ground = uniform(5, 0.01);
  const { temperature, stored, received } = runHeldSurface({
    ground,
    start: new Float64Array(ground.cells),
    surface: () => 10,
    step: 300,
    steps: 288,
  });
  for (const [depth, share] of [
    [0.05, 0.9043],
    [0.1, 0.8099],
    [0.3, 0.4705],
  ] as const)
    expect(Math.abs(temperatureAt(ground, temperature, 10, depth) - 10 * share)).toBeLessThan(0.1);
  // Heat taken up by a half-space: 2 k ΔT √(t/(π α)).
  expect(received / (2 * 2 * 10 * Math.sqrt(86400 / (Math.PI * 1e-6)))).toBeCloseTo(1, 2);
  expect(Math.abs(stored - received)).toBeLessThan(1e-6 * received);
});

test('finer cells and shorter steps converge on the wave', () => {
  const wave = { mean: 0, amplitude: 10, angularFrequency: dailyFrequency, diffusivity: 1e-6 };
  const errorOf = (cell: number, step: number): number => {
    const ground = uniform(2, cell);
    let worst = 0;
    runHeldSurface({
      ground,
      start: new Float64Array(ground.cells),
      surface: (time) => waveTemperature(wave, 0, time),
      step,
      steps: (8 * 86400) / step,
      after: (time, temperature) => {
        if (time <= 7 * 86400) return;
        const found = temperatureAt(ground, temperature, waveTemperature(wave, 0, time), 0.1);
        worst = Math.max(worst, Math.abs(found - waveTemperature(wave, 0.1, time)));
      },
    });
    return worst;
  };
  const coarse = errorOf(0.02, 3600);
  const fine = errorOf(0.01, 900);
  expect(coarse).toBeLessThan(0.5);
  expect(fine).toBeLessThan(coarse / 2);
});
