import { describe, expect, test } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { grasses } from '#shared/vocabulary/turf.ts';
import {
  frostOdds,
  frostOddsOver,
  frostTolerance,
  halfKillAfter,
  halfKillTemperature,
  hardeningAfter,
  hardeningAt,
  keptAfterFrost,
} from '#engine/injury/frost.ts';

const tolerance = frostTolerance(defaultValues);

test('at the temperature that kills half after some hours, half are alive', () => {
  for (const hours of [1, 5, 40]) {
    const temperature = halfKillAfter(hours, -8, tolerance);
    expect(keptAfterFrost(frostOdds(0, temperature, hours, -8, tolerance))).toBeCloseTo(0.5, 9);
  }
});

test('cutting a stay in two changes nothing; order and mildness are felt', () => {
  const whole = frostOdds(0, -7, 10, -8, tolerance);
  const parts = frostOdds(frostOdds(0, -7, 3, -8, tolerance), -7, 7, -8, tolerance);
  expect(parts).toBeCloseTo(whole, 12);
  const series = Float64Array.from({ length: 10 }, () => -7);
  expect(frostOddsOver(series, 0, 10, -8, tolerance)).toBeCloseTo(whole, 12);
});

test('no harm at and above nought, none that heals, none that overflows', () => {
  expect(frostOdds(0, 0, 1000, -5, tolerance)).toBe(0);
  expect(frostOdds(0.3, 12, 1000, -5, tolerance)).toBe(0.3);
  expect(frostOdds(5, -0.1, 100, -25, tolerance)).toBeGreaterThanOrEqual(5);
  expect(frostOdds(1e9, -0.1, 1, -30, { ...tolerance, gain: 0.01 })).toBe(1e9);
  expect(Number.isFinite(frostOdds(0, -60, 100, -5, tolerance))).toBe(true);
  expect(keptAfterFrost(frostOdds(0, -0.5, 24 * 60, -14.6, tolerance))).toBeGreaterThan(0.99);
});

test('without a duration effect only the coldest hour counts', () => {
  const flat = { ...tolerance, gain: 0 };
  expect(frostOdds(frostOdds(0, -6, 50, -8, flat), -6, 50, -8, flat)).toBe(frostOdds(0, -6, 1, -8, flat));
});

describe('hardening', () => {
  test('every grass is hardier hardened than tender', () => {
    for (const grass of grasses)
      expect(halfKillTemperature(grass, 1, defaultValues)).toBeLessThan(halfKillTemperature(grass, 0, defaultValues));
  });

  test('a share outside 0 to 1 counts as the nearest', () => {
    expect(halfKillTemperature('tall-fescue', 3, defaultValues)).toBe(halfKillTemperature('tall-fescue', 1, defaultValues));
    expect(halfKillTemperature('tall-fescue', -3, defaultValues)).toBe(halfKillTemperature('tall-fescue', 0, defaultValues));
  });

  test('is gained over weeks of cold soil', () => {
    let state = { level: 0, warmHours: 0 };
    for (let day = 0; day < 14; day++) state = hardeningAfter(state, 3, 24, defaultValues);
    expect(state.level).toBeCloseTo(1 - Math.exp(-1), 6);
    for (let day = 0; day < 60; day++) state = hardeningAfter(state, 3, 24, defaultValues);
    expect(state.level).toBeGreaterThan(0.98);
  });

  // Tompkins et al. 2000, second-hand: hardening is lost when the soil is above 8 °C for 48 h.
  test('is kept through two warm days and lost from then on', () => {
    let state = { level: 1, warmHours: 0 };
    for (let hour = 0; hour < 48; hour++) state = hardeningAfter(state, 12, 1, defaultValues);
    expect(state.level).toBe(1);
    for (let hour = 0; hour < 24; hour++) state = hardeningAfter(state, 12, 1, defaultValues);
    expect(state.level).toBeLessThan(0.95);
    const kept = hardeningAfter({ level: 1, warmHours: 40 }, 5, 1, defaultValues);
    expect(kept.warmHours).toBe(0);
    for (let day = 0; day < 60; day++) state = hardeningAfter(state, 12, 24, defaultValues);
    expect(state.level).toBeCloseTo(hardeningAt(12, defaultValues), 3);
  });

  test('by days or by hours, the same', () => {
    let hourly = { level: 0.9, warmHours: 0 };
    let daily = hourly;
    for (let day = 0; day < 6; day++) {
      daily = hardeningAfter(daily, 11, 24, defaultValues);
      for (let hour = 0; hour < 24; hour++) hourly = hardeningAfter(hourly, 11, 1, defaultValues);
    }
    expect(hourly.level).toBeCloseTo(daily.level, 9);
  });
});
