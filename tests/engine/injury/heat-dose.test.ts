import { expect, test } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { halfKillTime, heatDose, heatDoseOf, keptAfterHeat } from '#engine/injury/heat-dose.ts';

const cool = {
  halfKill: defaultValues['heat.halfKill.cool'],
  decade: defaultValues['heat.decade'],
  steepness: defaultValues['heat.doseSteepness'],
};

// Heckman, Horst & Gaussoin 2001, HortScience 36(2):365-367: 36.1 °C for four days kills half of Kentucky bluegrass.
test('four days at 36.1 °C kill half', () => {
  expect(keptAfterHeat(heatDoseOf(36.1, 96, cool), cool)).toBeCloseTo(0.5, 12);
  expect(halfKillTime(36.1, cool)).toBeCloseTo(96, 12);
});

test('five degrees more take a tenth of the time', () => {
  expect(halfKillTime(41.1, cool)).toBeCloseTo(9.6, 9);
  expect(keptAfterHeat(heatDoseOf(41.1, 9.6, cool), cool)).toBeCloseTo(0.5, 9);
});

test('a series is the sum of its hours, and only the asked ones', () => {
  const crown = Float64Array.of(20, 30, 40, 45, 38);
  const sum = [30, 40, 45].reduce((dose, temperature) => dose + heatDoseOf(temperature, 1, cool), 0);
  expect(heatDose(crown, 1, 4, cool)).toBeCloseTo(sum, 12);
  expect(heatDose(crown, 2, 2, cool)).toBe(0);
  expect(heatDose(crown, 1, 4, cool, 2)).toBeCloseTo(2 * sum, 12);
});

test('cool days do no harm, a clear sheet over a hot afternoon kills', () => {
  expect(keptAfterHeat(heatDoseOf(25, 24 * 14, cool), cool)).toBeGreaterThan(0.99);
  expect(keptAfterHeat(heatDoseOf(50, 4, cool), cool)).toBeLessThan(0.01);
  expect(keptAfterHeat(0, cool)).toBe(1);
});

test('warm-season crowns outlive what kills cool-season ones', () => {
  const warm = { ...cool, halfKill: defaultValues['heat.halfKill.warm'] };
  expect(keptAfterHeat(heatDoseOf(42, 24, warm), warm)).toBeGreaterThan(0.9);
  expect(keptAfterHeat(heatDoseOf(42, 24, cool), cool)).toBeLessThan(0.1);
});
