import { expect, test } from 'vitest';
import { heatFlow, seriesResistance, slabResistance } from '#engine/heat/series-resistance.ts';

// Derived from EN ISO 10456:2007 Table 3 conductivities: 12 mm plywood (0.13) on 50 mm expanded polystyrene (0.036).
test('plywood on insulation', () => {
  const stack = [
    { thickness: 0.012, conductivity: 0.13 },
    { thickness: 0.05, conductivity: 0.036 },
  ];
  expect(slabResistance(stack[0]!)).toBeCloseTo(0.092, 3);
  expect(slabResistance(stack[1]!)).toBeCloseTo(1.389, 3);
  expect(Math.abs(seriesResistance(stack) - 1.481)).toBeLessThan(1e-3);
  expect(heatFlow(10, seriesResistance(stack))).toBeCloseTo(6.75, 2);
});

// CIBSE Guide A, Table 3.36: aluminium 230 W/(m K). A metal sheet's own resistance is nil beside plywood's.
test('a metal sheet hardly insulates', () => {
  expect(slabResistance({ thickness: 0.01, conductivity: 230 })).toBeLessThan(1e-4);
  // ASHRAE Handbook of Fundamentals 2013, chapter 26: 9.5 mm lapped plywood 0.10 m² K/W is of the order of the bare sheet's.
  expect(slabResistance({ thickness: 0.0095, conductivity: 0.13 })).toBeLessThan(0.1);
});

test('nothing has no resistance', () => expect(seriesResistance([])).toBe(0));
