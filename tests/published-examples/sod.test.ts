import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { sodTraitsOf } from '#engine/recovery/turf-traits.ts';
import { youngSodWear } from '#engine/recovery/sod-anchoring.ts';
import { foot, inch, pound, poundPerCubicFoot, poundPerSquareFoot, squareFoot } from '#engine/works/customary-units.ts';
import { heatByMoisture, stackIsLethal } from '#engine/works/sod-perishing.ts';
import {
  areaPerLoad,
  coilDiameter,
  longSeam,
  piecesFor,
  sodMassPerArea,
  sodOrder,
  thickToThinTrucks,
  trucksByArea,
} from '#engine/works/sod-quantity.ts';

const payload = 45_000 * pound;
const weight = (thickness: number, density: number) =>
  sodMassPerArea(thickness * inch, density * poundPerCubicFoot) / poundPerSquareFoot;

// Arithmetic of w = thickness/12 · density, lb/ft²; loose dry sand 100 lb/ft³ from "Sand math" (2011).
describe('weight of sod', () => {
  it.each([
    [0.5, 4.17, 4.79, 5.0, 9391],
    [0.75, 6.25, 7.19, 7.5, 6261],
    [1.0, 8.33, 9.58, 10.0, 4696],
    [1.25, 10.42, 11.98, 12.5, 3757],
    [1.5, 12.5, 14.38, 15.0, 3130],
    [1.75, 14.58, 16.77, 17.5, 2683],
    [2.0, 16.67, 19.17, 20.0, 2348],
  ])('%s in thick', (thickness, at100, at115, at120, load) => {
    expect(Math.abs(weight(thickness, 100) - at100)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(weight(thickness, 115) - at115)).toBeLessThanOrEqual(0.005001);
    expect(Math.abs(weight(thickness, 120) - at120)).toBeLessThanOrEqual(0.005);
    const area = areaPerLoad(payload, sodMassPerArea(thickness * inch, 115 * poundPerCubicFoot));
    expect(Math.abs(area / squareFoot - load)).toBeLessThanOrEqual(1);
  });
  it('of a thick roll, 4 ft by 30 or 35 ft by 1.25 in', () => {
    const roll = (length: number, density: number) => 4 * length * weight(1.25, density);
    expect([100, 115, 120].map((density) => Math.round(roll(30, density)))).toEqual([1250, 1438, 1500]);
    expect([100, 115, 120].map((density) => Math.round(roll(35, density)))).toEqual([1458, 1677, 1750]);
    expect(coilDiameter(32.5 * foot, 1.25 * inch, 4 * inch) / inch).toBeGreaterThan(24);
    expect(coilDiameter(32.5 * foot, 1.25 * inch, 4 * inch) / inch).toBeLessThan(26);
  });
});

describe('counts', () => {
  const tenThousand = 10_000 * squareFoot;
  it('of rolls are whole after the waste', () => {
    for (const [length, bare, wasted] of [
      [30, 84, 88],
      [35, 72, 75],
    ] as const) {
      expect(piecesFor(tenThousand, 0, 4 * foot * length * foot)).toBe(bare);
      expect(piecesFor(tenThousand, 0.05, 4 * foot * length * foot)).toBe(wasted);
    }
  });
  it('of slabs for 450 ft²', () => {
    expect(piecesFor(450 * squareFoot, 0, 16 * inch * 24 * inch)).toBe(169);
    expect(piecesFor(450 * squareFoot, 0, 8 * squareFoot)).toBe(57);
  });
  it.each([
    [20_000, 6, 4, 2],
    [40_000, 12, 8, 4],
    [80_000, 23, 15, 8],
  ])('of trucks for %s ft² at 3,500, 5,500 and 10,000 ft² a truck', (area, thick, middle, thin) => {
    expect([3500, 5500, 10_000].map((each) => trucksByArea(area * squareFoot, each * squareFoot))).toEqual([thick, middle, thin]);
  });
  // SportsTurf March 2013, pp. 14 and 18: a truck carries less than half of a thick cut, up to three times the trucking.
  it('puts the ratio of thick to thin trucks between 2 and 3', () => {
    expect(thickToThinTrucks(1.25, 0.5)).toBe(2.5);
    expect(9391 / 3757).toBeCloseTo(2.5, 2);
  });
  it('keeps every truck within its payload', () => {
    for (const area of [500, 1858, 7432]) {
      for (const thickness of [0.5, 1, 1.25, 1.5, 2]) {
        const cut = { thickness: thickness * inch, density: 115 * poundPerCubicFoot, rollWidth: 4 * foot, rollLength: 35 * foot };
        const order = sodOrder(area, 0.05, cut, payload);
        expect(order.loads.reduce((sum, rolls) => sum + rolls, 0)).toBe(order.rolls);
        for (const rolls of order.loads) expect(rolls * order.rollMass).toBeLessThanOrEqual(payload);
        expect(order.area).toBeGreaterThanOrEqual(area * 1.05 - 1e-9);
        expect(order.area - area * 1.05).toBeLessThan(cut.rollWidth * cut.rollLength);
      }
    }
  });
  it('refuses a roll that no truck carries', () => {
    const cut = { thickness: 0.05, density: 1842, rollWidth: 1.2, rollLength: 40 };
    expect(() => sodOrder(100, 0, cut, 4000)).toThrow(/payload/);
    expect(() => sodOrder(100, 0, { ...cut, rollWidth: 0 }, 20_000)).toThrow(/rollWidth/);
  });
  it('of long seams per 10,000 ft² by roll width', () => {
    expect([48, 42, 24, 16].map((width) => Math.round(longSeam(tenThousand, width * inch) / foot))).toEqual([
      2500, 2857, 5000, 7500,
    ]);
  });
});

// Heckman, Meyer, Horst & Gaussoin 2005: +0.0032 W per kg dry weight per % moisture, 6–30 %.
describe('heat of harvested sod', () => {
  it('is 0.0768 W/kg more at 30 % than at 6 %', () =>
    expect(Math.abs(heatByMoisture(6, 30) - 0.0768)).toBeLessThanOrEqual(0.0001));
  it('is refused outside the measured range', () => expect(() => heatByMoisture(5, 20)).toThrow(/fromPercent/));
  // Heckman, Horst & Gaussoin 2001: half killed at 36.1 °C in four days.
  it('kills from 36.1 °C', () => {
    expect(stackIsLethal(36.1, defaultValues['sod.lethalStack'])).toBe(true);
    expect(stackIsLethal(36, defaultValues['sod.lethalStack'])).toBe(false);
  });
});

describe('young sod', () => {
  it('wears faster than established turf, less so as it ages', () => {
    const traits = sodTraitsOf(defaultValues, 'kentucky-bluegrass');
    expect(youngSodWear(0, traits)).toBeGreaterThan(1);
    expect(youngSodWear(30, traits)).toBeLessThan(youngSodWear(10, traits));
    expect(youngSodWear(365, traits)).toBe(1);
  });
});
