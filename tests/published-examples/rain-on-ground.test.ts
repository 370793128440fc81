/**
 * Storm run-off: USDA Technical Release 55 (1986), example 2-1 and table 2-1. Infiltration: Chow, Maidment & Mays 1988, Applied
 * hydrology, examples 4.3.1 and 4.4.1. Values computed from the printed inputs; run-off inputs are inches.
 */
import { describe, expect, it } from 'vitest';
import { infiltratedFromSteadyRain, infiltrationRate, ponded, timeToPonding } from '#engine/water/infiltration.ts';
import { stormRunoff } from '#engine/water/storm-runoff.ts';

const near = (value: number, target: number, tolerance: number): void =>
  expect(Math.abs(value - target), `${value} against ${target}`).toBeLessThanOrEqual(tolerance);

describe('storm run-off', () => {
  it('6 in on curve numbers 70 and 75, 4 in on 80', () => {
    near(stormRunoff(6 * 25.4, 70) / 25.4, 2.805, 0.005);
    near(stormRunoff(6 * 25.4, 75) / 25.4, 3.282, 0.005);
    near(stormRunoff(4 * 25.4, 80) / 25.4, 2.042, 0.005);
  });

  it('nothing runs off below the initial abstraction, everything from a sealed surface', () => {
    const retention = 25400 / 70 - 254;
    expect(stormRunoff(0.2 * retention, 70)).toBe(0);
    expect(stormRunoff(0.2 * retention + 1, 70)).toBeGreaterThan(0);
    expect(stormRunoff(37, 100)).toBeCloseTo(37, 12);
    expect(() => stormRunoff(10, 0)).toThrow(RangeError);
  });
});

describe('Green and Ampt, silt loam: K 0.65 cm/h, front suction times rise of water content 5.68 cm', () => {
  it('after an hour under water: 3.167 cm taken in, 1.816 cm/h', () => {
    near(ponded(0.65, 5.68, 1), 3.167, 0.005);
    near(infiltrationRate(0.65, 5.68, ponded(0.65, 5.68, 1)), 1.816, 0.005);
  });

  it('rain of 1 cm/h ponds after 10.55 h, of 5 cm/h after 0.170 h', () => {
    near(timeToPonding(0.65, 5.68, 1), 10.55, 0.005);
    near(timeToPonding(0.65, 5.68, 5), 0.17, 0.005);
    expect(timeToPonding(0.65, 5.68, 0.6)).toBe(Infinity);
  });

  it('rain keeps the implicit equation after ponding and takes all before', () => {
    near(infiltratedFromSteadyRain(0.65, 5.68, 5, 0.1), 0.5, 1e-12);
    const start = timeToPonding(0.65, 5.68, 5);
    const total = infiltratedFromSteadyRain(0.65, 5.68, 5, 1);
    const left = total - 5 * start - 5.68 * Math.log((5.68 + total) / (5.68 + 5 * start));
    near(left, 0.65 * (1 - start), 1e-10);
    expect(total).toBeLessThan(5);
  });
});
