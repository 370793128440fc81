import { expect, test } from 'vitest';
import { iceCoefficientFromInches, iceMass, icePressure, iceThickness, idealIceCoefficient } from '#engine/heat/ice-growth.ts';

// Derived: k 2.24 W/(m K), 917 kg/m³, 333.7 kJ/kg give 3.56 cm/√(°C d) = 1.04 in/√(°F d).
test('ideal ice coefficient', () => {
  const ideal = idealIceCoefficient(2.24, 917, 333700);
  expect(100 * ideal).toBeCloseTo(3.56, 2);
  expect(iceCoefficientFromInches(1.04) / ideal).toBeCloseTo(1, 2);
});

// USACE ERDC/CRREL TN-04-3: windy lake without snow 0.8 in/√(°F d), lake with snow 0.5 to 0.7.
test.each([
  [0.8, 2.7],
  [0.7, 2.4],
  [0.5, 1.7],
  [1, 3.41],
])('%d inches per root degree-day', (inches, centimetres) =>
  expect(Math.abs(100 * iceCoefficientFromInches(inches) - centimetres)).toBeLessThan(0.05),
);

// Derived from the same coefficients: thickness after 50 °C d, 0.1 cm.
test.each([
  [3.56, 25.2],
  [2.7, 19.1],
  [1.7, 12.0],
])('coefficient %d cm after 50 degree-days', (coefficient, centimetres) =>
  expect(Math.abs(100 * iceThickness(coefficient / 100, 50) - centimetres)).toBeLessThan(0.1),
);

test('no frost, no ice', () => expect(iceThickness(0.0356, -3)).toBe(0));

// Derived: 50 mm of ice at 917 kg/m³ weigh 46 kg/m², 0.45 kPa; 2 %.
test('weight of a rink’s ice', () => {
  expect(Math.abs(iceMass(0.05) / 46 - 1)).toBeLessThan(0.02);
  expect(Math.abs(icePressure(0.05) / 0.45 - 1)).toBeLessThan(0.02);
});
