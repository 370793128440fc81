import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { mowLimits } from '#engine/recovery/mowing.ts';
import { cubicYard, foot, inch, pound, poundPerCubicFoot, shortTon, squareFoot } from '#engine/works/customary-units.ts';
import { applicationsFor, bulkDensityAt, drainPipe, layerVolume, sandFor } from '#engine/works/topdressing.ts';

const sand = 100 * poundPerCubicFoot;

// Volume = area · depth; sand 2,700 lb/yd³ ("Sand math", sand supplier's bulletin, 2011).
describe('topdressing', () => {
  it.each([
    [1 / 16, 0.193, 521, 0.26, 11.1],
    [1 / 8, 0.386, 1042, 0.52, 22.2],
    [1 / 4, 0.772, 2083, 1.04, 44.4],
    [1 / 2, 1.543, 4167, 2.08, 88.9],
  ])('%s in', (depth, yards, pounds, tons, field) => {
    const order = sandFor(1000 * squareFoot, depth * inch, sand);
    expect(Math.abs(order.volume / cubicYard - yards)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(order.mass / pound - pounds)).toBeLessThanOrEqual(1);
    expect(Math.abs(order.mass / shortTon - tons)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(sandFor(57_600 * squareFoot, depth * inch, sand).volume / cubicYard - field)).toBeLessThanOrEqual(0.05);
  });
  it('uses the exact 1/324, from which the printed 0.0031 differs by 0.4 %', () => {
    const exact = sandFor(squareFoot, inch, sand).volume / cubicYard;
    expect(exact).toBeCloseTo(1 / 324, 12);
    expect((0.0031 / exact - 1) * 100).toBeCloseTo(0.44, 2);
  });
  it('weighs 1.35 tons a cubic yard', () => expect((cubicYard * sand) / shortTon).toBeCloseTo(1.35, 9));
  it('adds 10–20 % where it settles', () => {
    expect(sandFor(100, 0.01, 1600, 0.2).volume).toBeCloseTo(1.2, 12);
  });
  // Kowalewski et al. 2010, HortTechnology 20(5):867-872: 1/4 in in one application, 1/2 in over five weeks.
  it('goes on in whole applications of at most a quarter inch', () => {
    expect(applicationsFor(inch / 2, defaultValues['topdress.most'])).toBe(2);
    expect(applicationsFor(0.51 * inch, defaultValues['topdress.most'])).toBe(3);
  });
  it('root zones of 35–55 % pore space have 1.19–1.72 g/cm³', () => {
    expect(bulkDensityAt(0.55, 2.65)).toBeCloseTo(1.19, 2);
    expect(bulkDensityAt(0.35, 2.65)).toBeCloseTo(1.72, 2);
  });
});

describe('build', () => {
  it('drains on 15 ft centres', () => {
    expect(drainPipe(10_000 * squareFoot, 15 * foot) / foot).toBeCloseTo(666.667, 3);
    expect(drainPipe(57_600 * squareFoot, 15 * foot) / foot).toBeCloseTo(3840, 9);
  });
  it('3 in of gravel and 9 in of sand on 10,000 ft²', () => {
    expect(layerVolume(10_000 * squareFoot, 3 * inch) / cubicYard).toBeCloseTo(92.593, 3);
    expect(layerVolume(10_000 * squareFoot, 9 * inch) / cubicYard).toBeCloseTo(277.778, 3);
  });
});

describe('mowing at 1-1/8 in', () => {
  it('cuts before 1.6875 in and takes at most 0.5625 in', () => {
    const limits = mowLimits(1.125 * inch);
    expect(limits.cutBefore / inch).toBeCloseTo(1.6875, 12);
    expect(limits.removeAtMost / inch).toBeCloseTo(0.5625, 12);
  });
});
