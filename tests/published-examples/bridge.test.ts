import { describe, expect, it } from 'vitest';
import { bridgeFormula, groupsOverLimit, kgPerPound, kNPerPound } from '#engine/loads/bridge-formula.ts';
import { crowdSpots } from '#engine/loads/crowd-density.ts';
import { forkliftWheel } from '#engine/loads/forklift-wheel.ts';
import { parkRuleFlag } from '#engine/loads/load-flags.ts';
import { aluminiumWarnings, closedHoursLeft, sodKnitting } from '#engine/loads/park-rules.ts';
import { crowdPressure, fillPressure, icePressure, plateContact } from '#engine/loads/standing-loads.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { forkliftClasses } from '#shared/parameters/vehicles.ts';

const share = (actual: number, expected: number, part: number): void =>
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(part);

const limits = {
  single: defaultValues['bridge.single'],
  tandem: defaultValues['bridge.tandem'],
  gross: defaultValues['bridge.gross'],
  exceptionSpread: defaultValues['bridge.exceptionSpread'],
};

describe('FHWA, Bridge Formula Weights (2019); 23 CFR 658', () => {
  it.each([
    [2, 4, 34000],
    [5, 48, 78000],
    [4, 36, 66000],
    // By the formula (derived); the first is the worked truck, axles 1–3.
    [3, 20, 51000],
    [4, 10, 48500],
    [5, 40, 73000],
  ])('%i axles over %i ft carry %i lb', (axles, length, weight) => expect(bridgeFormula(axles, length)).toBe(weight));
  it('single, tandem and gross limits in kg and kN', () => {
    for (const [pounds, kg, kN] of [
      [limits.single, 9072, 89.0],
      [limits.tandem, 15422, 151.2],
      [limits.gross, 36287, 355.9],
    ] as const) {
      share(pounds * kgPerPound, kg, 0.001);
      share(pounds * kNPerPound, kN, 0.001);
    }
  });
  const pairs = (apart: number) => [
    { load: 34000 / 2, at: 0 },
    { load: 34000 / 2, at: 4 },
    { load: 34000 / 2, at: apart - 4 },
    { load: 34000 / 2, at: apart },
  ];
  it('two full tandems pass by exception from 36 ft on', () => {
    expect(groupsOverLimit(pairs(36), limits)).toEqual([]);
    expect(groupsOverLimit(pairs(35), limits)).toContainEqual({ from: 1, to: 4, load: 68000, limit: bridgeFormula(4, 35) });
  });
  it('a group over its limit fails even when the whole truck passes', () => {
    // Five axles over 51 ft may carry 80,000 lb; this truck has 76,000 but its first three axles stand too close.
    const truck = [
      { load: 12000, at: 0 },
      { load: 22000, at: 10 },
      { load: 12000, at: 14 },
      { load: 15000, at: 47 },
      { load: 15000, at: 51 },
    ];
    const over = groupsOverLimit(truck, limits);
    expect(over.find((group) => group.from === 1 && group.to === 5)).toBeUndefined();
    expect(over).toContainEqual({ from: 2, to: 2, load: 22000, limit: 20000 });
  });
  it('an inner group can fail by the formula alone', () => {
    // FHWA worked truck: axles 1–3 over 20 ft may carry 51,000 lb.
    const truck = [
      { load: 18500, at: 0 },
      { load: 17000, at: 16 },
      { load: 17000, at: 20 },
    ];
    expect(groupsOverLimit(truck, limits)).toEqual([{ from: 1, to: 3, load: 52500, limit: 51000 }]);
  });
  it('refuses a group of one', () => expect(() => bridgeFormula(1, 4)).toThrow(RangeError));
});

describe('forklifts, decks and crowds (arithmetic)', () => {
  it('FL3 of EN 1991-1-1: 91 % on the front axle, 31.5 kN on a wheel, 0.045 m² at 700 kPa', () => {
    const wheel = forkliftWheel(
      forkliftClasses.classes.find(({ name }) => name === 'FL3')!,
      700,
    );
    share(wheel.frontShare, 0.913, 0.01);
    share(wheel.wheelLoad, 31.5, 0.01);
    share(wheel.patch, 0.045, 0.01);
    share(forkliftWheel({ netWeight: 44, hoistLoad: 25, axleLoad: 63 }, 700, 1.4).wheelLoad, 44.1, 0.001);
  });
  it('deck leg: 2.44 × 1.22 m at 7.5 kPa on four legs of 150 mm', () => {
    const load = (2.44 * 1.22 * 7.5) / 4;
    share(load, 5.6, 0.01);
    share(plateContact({ load, plate: 0.15 }), 248, 0.01);
  });
  it('four people of 80 kg on a square metre: 3.14 kPa', () => share(crowdPressure(4, 80), 3.14, 0.01));
  it('2 per m² with the festival multipliers gives 5 and 0.5 (HSG195 para 87; Yourope)', () => {
    const spots = crowdSpots(defaultValues['crowd.density.outdoor'], {
      hotspot: defaultValues['crowd.density.hotspot'],
      sparse: defaultValues['crowd.density.sparse'],
    });
    expect(spots).toEqual({ densest: 5, thinnest: 0.5 });
  });
  it('50 mm of ice weighs 0.45 kPa', () => share(icePressure(0.05, defaultValues['ice.density']), 0.45, 0.02));
  it('a foot of dirt at 100 lb/ft³ is 100 lb/ft², 4.79 kPa', () => {
    share(fillPressure(0.3048, defaultValues['fill.unitWeight']), 4.788, 0.001);
  });
});

describe('US National Park Service, Turf Management and Event Operations Guide', () => {
  const settings = { parkPressure: defaultValues['park.pressure'] };
  it('47.9 kPa straight on turf passes, 48.3 does not (7 psi = 48.26 kPa)', () => {
    expect(parkRuleFlag(47.9, settings)).toBeNull();
    expect(parkRuleFlag(48.3, settings)).toMatchObject({ kind: 'park-rule', value: 48.3 });
    share(settings.parkPressure, 7 * 6.894757, 0.001);
  });
  const rule = {
    hours: defaultValues['park.aluminium.hours'],
    before: defaultValues['park.aluminium.before'],
    after: defaultValues['park.aluminium.after'],
  };
  it('roll-out aluminium: 4 h a day passes, 5 h warns, noon warns', () => {
    expect(aluminiumWarnings([[6, 10]], rule)).toEqual([]);
    expect(aluminiumWarnings([[8, 10], [16, 18]], rule)).toEqual([]); // prettier-ignore
    expect(aluminiumWarnings([[5, 10]], rule)).toEqual([{ reason: 'too-long', hours: 1 }]);
    expect(aluminiumWarnings([[16, 19], [17, 20]], rule)).toEqual([]); // prettier-ignore
    expect(aluminiumWarnings([[11, 13]], rule)).toEqual([{ reason: 'midday', hours: 2 }]);
  });
  it('48 h closed after removal; sod 21 days at least, 60 at most', () => {
    expect(closedHoursLeft(0, defaultValues['park.closedAfterRemoval'])).toBe(48);
    expect(closedHoursLeft(47, defaultValues['park.closedAfterRemoval'])).toBe(1);
    expect(closedHoursLeft(48, defaultValues['park.closedAfterRemoval'])).toBe(0);
    const sod = { least: defaultValues['park.sodKnitting.least'], most: defaultValues['park.sodKnitting.most'] };
    expect([20, 21, 59, 60].map((age) => sodKnitting(age, sod))).toEqual(['kept-off', 'knitting', 'knitting', 'knit']);
  });
});
