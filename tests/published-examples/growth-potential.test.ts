import { describe, expect, it } from 'vitest';
import {
  celsiusCurves,
  fahrenheitCurves,
  goodTimeForStress,
  growthPotential,
  readGrowth,
  temperaturesAt,
} from '#engine/recovery/growth-potential.ts';
import { closedGap, gapClosureRate, logisticCover, logisticRate, recoveryRate } from '#engine/recovery/regrowth.ts';

// Gelernter & Stowell 2005, Golf Course Management 73(3):108-113; Woods 2014: each unit form against its own column.
const fahrenheit = [
  [32, 0.0015, 0.0, 0.0],
  [40, 0.0198, 0.0003, 0.0003],
  [50, 0.1979, 0.0066, 0.0066],
  [68, 1.0, 0.2494, 0.2494],
  [80, 0.4868, 0.8007, 0.8007],
  [88, 0.1353, 1.0, 1.0],
  [100, 0.006, 0.6065, 1.0],
] as const;
const celsius = [
  [0, 0.0013, 0.0001],
  [5, 0.0243, 0.001],
  [10, 0.1915, 0.0111],
  [20, 1.0, 0.2909],
  [30, 0.1915, 0.9898],
  [31, 0.1353, 1.0],
  [35, 0.0243, 0.8494],
] as const;
const within = (found: number, wanted: number, most: number) => expect(Math.abs(found - wanted)).toBeLessThanOrEqual(most);

describe('growth potential', () => {
  it.each(fahrenheit)('at %s °F', (temperature, cool, warm, modified) => {
    within(growthPotential(temperature, fahrenheitCurves.cool), cool, 0.00005);
    within(growthPotential(temperature, fahrenheitCurves.warm), warm, 0.00005);
    within(growthPotential(temperature, fahrenheitCurves.warmModified), modified, 0.00005);
  });
  it.each(celsius)('at %s °C', (temperature, cool, warm) => {
    within(growthPotential(temperature, celsiusCurves.cool), cool, 0.00005);
    within(growthPotential(temperature, celsiusCurves.warm), warm, 0.00005);
  });
  it('is 1 at the optimum, 0.6065 one spread away, and symmetric', () => {
    for (const curve of [fahrenheitCurves.cool, fahrenheitCurves.warm, celsiusCurves.cool, celsiusCurves.warm]) {
      expect(growthPotential(curve.optimum, curve)).toBe(1);
      for (let off = 0; off <= 40; off += 0.5) {
        within(growthPotential(curve.optimum + off, curve), growthPotential(curve.optimum - off, curve), 1e-12);
      }
      within(growthPotential(curve.optimum + curve.spread, curve), 0.6065, 0.00005);
    }
  });
  it('takes half and a tenth at the published temperatures', () => {
    within(temperaturesAt(0.5, fahrenheitCurves.cool).lower, 56.23, 0.01);
    within(temperaturesAt(0.5, fahrenheitCurves.cool).upper!, 79.77, 0.01);
    within(temperaturesAt(0.5, fahrenheitCurves.warm).lower, 73.87, 0.01);
    within(temperaturesAt(0.1, fahrenheitCurves.cool).lower, 46.54, 0.01);
    within(temperaturesAt(0.1, fahrenheitCurves.cool).upper!, 89.46, 0.01);
    within(temperaturesAt(0.1, fahrenheitCurves.warm).lower, 62.25, 0.01);
    expect(temperaturesAt(0.5, fahrenheitCurves.warmModified).upper).toBeNull();
    expect(() => temperaturesAt(0, fahrenheitCurves.warm)).toThrow(/level/);
  });
  it('never falls below the Gaussian form with the plateau, equals it below 88 °F, and is exactly 1 from 88 °F', () => {
    for (let temperature = 20; temperature <= 120; temperature += 0.25) {
      const plain = growthPotential(temperature, fahrenheitCurves.warm);
      const held = growthPotential(temperature, fahrenheitCurves.warmModified);
      expect(held).toBeGreaterThanOrEqual(plain);
      if (temperature < 88) expect(held).toBe(plain);
      else expect(held).toBe(1);
    }
  });
  it('differs between the Fahrenheit form and the rounded Celsius form by no more than 0.0074 and 0.0446', () => {
    const most = { cool: 0, warm: 0 };
    for (let temperature = 0; temperature <= 40; temperature += 0.01) {
      for (const season of ['cool', 'warm'] as const) {
        const other = growthPotential(temperature * 1.8 + 32, fahrenheitCurves[season]);
        most[season] = Math.max(most[season], Math.abs(growthPotential(temperature, celsiusCurves[season]) - other));
      }
    }
    within(most.cool, 0.0074, 0.00005);
    within(most.warm, 0.0446, 0.00005);
  });
  it('is above one half at both ends of each printed band of good growth', () => {
    for (const end of [60, 75]) expect(growthPotential(end, fahrenheitCurves.cool)).toBeGreaterThan(0.5);
    for (const end of [80, 95]) expect(growthPotential(end, fahrenheitCurves.warm)).toBeGreaterThan(0.5);
  });
  // Gelernter & Stowell, research notes: 0.50–1.00 good, 0.10 or less extremely limited; stress when GP > 0.50 and rising.
  it('reads as the notes say', () => {
    expect([1, 0.5, 0.49, 0.11, 0.1, 0].map((growth) => readGrowth(growth))).toEqual([
      'good',
      'good',
      'slow',
      'slow',
      'hardly grows',
      'hardly grows',
    ]);
    expect(goodTimeForStress(0.5, 0.6)).toBe(true);
    expect(goodTimeForStress(0.7, 0.6)).toBe(false);
    expect(goodTimeForStress(0.4, 0.5)).toBe(false);
  });
});

// HortTechnology, October 2022: 38.3, 26.9 or 26.8 % cover right after coring, 85.3–90.1 % seven days later.
describe('rates of recovery after coring', () => {
  it.each([
    [0.383, 0.853, 0.205, 0.319],
    [0.383, 0.901, 0.261, 0.384],
    [0.268, 0.853, 0.229, 0.395],
    [0.268, 0.901, 0.286, 0.459],
  ])('from %s to %s in seven days', (before, after, closure, logistic) => {
    within(gapClosureRate(before, after, 7), closure, 0.0005);
    within(logisticRate(before, after, 7), logistic, 0.0005);
    within(closedGap(before, closure, 7), after, 0.001);
    within(logisticCover(before, logistic, 7), after, 0.001);
  });
  it('is zero at a growth potential of 0.10 or less and never exceeds 0.459 a day', () => {
    for (const growth of [0, 0.05, 0.1]) expect(recoveryRate(0.3, growth, 1, 0.1, 0.459)).toBe(0);
    expect(recoveryRate(0.3, 0.100001, 1, 0.1, 0.459)).toBeGreaterThan(0);
    expect(recoveryRate(5, 1, 1, 0.1, 0.459)).toBe(0.459);
  });
  // SportsTurf, September 2013: bermudagrass from 50 to 95 % in 42–56 days.
  it('puts the spread of bermudagrass between 0.053 and 0.070 a day', () => {
    within(logisticRate(0.5, 0.95, 42), 0.07, 0.0005);
    within(logisticRate(0.5, 0.95, 56), 0.053, 0.0005);
  });
});
