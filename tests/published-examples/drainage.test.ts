/**
 * Drain spacing and water held by a drained root zone.
 * Equivalent depth: van der Molen & Wesseling 1991, Agricultural Water Management 19; Moody 1966. Spacing: ILRI Publication 16
 * (Ritzema ed. 1994), chapter 8, example 8.1. Values are computed from the printed formulas and inputs.
 */
import { describe, expect, it } from 'vitest';
import {
  drainDownTime,
  drainSpacing,
  equivalentDepthExact,
  equivalentDepthMoody,
  steadyDischarge,
  steadyHeight,
} from '#engine/water/drain-spacing.ts';
import { hydrostaticMean, hydrostaticProfile, suctionAt, waterContentAt } from '#engine/water/retention.ts';

const near = (value: number, target: number, tolerance: number): void =>
  expect(Math.abs(value - target), `${value} against ${target}`).toBeLessThanOrEqual(tolerance);

// spacing m, depth below the drains m, exact m, Moody m; drain radius 0.10 m
const depths = [
  [10, 1, 0.77, 0.8],
  [10, 2, 1.03, 1.08],
  [10, 5, 1.13, 1.14],
  [30, 1, 0.91, 0.92],
  [30, 2, 1.52, 1.56],
  [30, 5, 2.3, 2.39],
  [50, 1, 0.94, 0.95],
  [50, 2, 1.68, 1.71],
  [50, 5, 2.93, 3.02],
] as const;

describe('equivalent depth', () => {
  it('exact series and fitted form, each to 0.01 m', () => {
    for (const [spacing, depth, exact, moody] of depths) {
      near(equivalentDepthExact(spacing, depth, 0.1), exact, 0.01);
      near(equivalentDepthMoody(spacing, depth, 0.1), moody, 0.01);
    }
  });

  it('the two forms agree within 5 % of the fitted one', () => {
    for (const [spacing, depth] of depths) {
      const moody = equivalentDepthMoody(spacing, depth, 0.1);
      near(equivalentDepthExact(spacing, depth, 0.1) / moody, 1, 0.05);
    }
  });

  it('the closed form for small arguments joins the series', () => {
    const spacing = 40;
    const joint = (0.5 * spacing) / (2 * Math.PI);
    near(equivalentDepthExact(spacing, joint - 1e-9, 0.1), equivalentDepthExact(spacing, joint + 1e-9, 0.1), 1e-6);
  });

  it('never exceeds the depth itself and is nothing over an impermeable base', () => {
    expect(equivalentDepthExact(30, 0, 0.1)).toBe(0);
    expect(equivalentDepthMoody(30, 0, 0.1)).toBe(0);
    expect(equivalentDepthExact(100, 0.2, 0.1)).toBeLessThanOrEqual(0.2);
  });
});

describe('spacing', () => {
  const ground = { conductivityAbove: 0.14, conductivityBelow: 0.14, depthBelow: 5, radius: 0.1 };

  it('ILRI 16, example 8.1: 29.4 m by the series, 30.1 m by the fitted form', () => {
    near(drainSpacing(ground, 0.002, 0.6), 29.4, 0.3);
    near(drainSpacing({ ...ground, form: 'moody' }, 0.002, 0.6), 30.1, 0.3);
    near(equivalentDepthExact(drainSpacing(ground, 0.002, 0.6), 5, 0.1), 2.28, 0.01);
  });

  it('discharge, height and spacing turn one another round', () => {
    const spacing = drainSpacing(ground, 0.002, 0.6);
    near(steadyDischarge(ground, spacing, 0.6), 0.002, 1e-12);
    near(steadyHeight(ground, spacing, 0.002), 0.6, 1e-9);
  });

  it('sand on an impermeable base: 1.47 m at 150 mm/h and 2.08 m at 300 mm/h for 25 mm/h and 0.3 m', () => {
    const sand = (conductivity: number) => ({
      conductivityAbove: (conductivity * 24) / 1000,
      conductivityBelow: 0,
      depthBelow: 0,
      radius: 0.05,
    });
    near(drainSpacing(sand(150), 0.6, 0.3), 1.47, 0.01);
    near(drainSpacing(sand(300), 0.6, 0.3), 2.08, 0.01);
    near(drainSpacing(sand(150), 0.6, 0.3), 2 * 0.3 * Math.sqrt(150 / 25), 1e-9);
  });

  it('drain-down time is what stepping the steady formula gives', () => {
    const [spacing, porosity] = [10, 0.1];
    let height = 0.6;
    let days = 0;
    const step = 1e-4;
    while (height > 0.3) {
      const middle = height - ((step / 2) * steadyDischarge(ground, spacing, height)) / porosity;
      height -= (step * steadyDischarge(ground, spacing, middle)) / porosity;
      days += step;
    }
    near(drainDownTime(ground, spacing, porosity, 0.6, 0.3), days, 0.001);
    const base = { ...ground, depthBelow: 0 };
    near(drainDownTime(base, spacing, porosity, 0.6, 0.3), ((porosity * 100) / (4 * 0.14)) * (1 / 0.3 - 1 / 0.6), 1e-9);
  });
});

describe('retention', () => {
  // van Genuchten's equation with the sand of Carsel & Parrish 1988; computed.
  const sand = { residual: 0.045, porosity: 0.43, alpha: 14.5, n: 2.68 };

  it('hydrostatic profile 0 to 30 cm above a saturated base', () => {
    const expected = [0.43, 0.354, 0.214, 0.142, 0.107, 0.077];
    hydrostaticProfile(sand, [0, 0.05, 0.1, 0.15, 0.2, 0.3]).forEach((content, i) => near(content, expected[i]!, 0.001));
    near(hydrostaticMean(sand, 0, 0.3), 0.194, 0.001);
  });

  it('suction turns the curve round', () => {
    for (const suction of [0.02, 0.3, 2, 150]) near(suctionAt(sand, waterContentAt(sand, suction)) / suction, 1, 1e-6);
  });
});
