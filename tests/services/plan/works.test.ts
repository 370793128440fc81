import { describe, expect, it } from 'vitest';
import { defaultValues, type ParameterValues } from '#shared/parameters/catalogue.ts';
import type { RecoveryPlan } from '#shared/vocabulary/plan.ts';
import { RecoveryPlan as RecoveryPlanShape } from '#shared/vocabulary/plan.ts';
import { cubicFoot, inch, pound, squareFoot } from '#engine/works/customary-units.ts';
import { amountsOf, dressingOf, feedProblem, nitrogenOf, piercedShare, tineGrid } from '#services/plan/amounts.ts';
import { worksOf, type WorksParts } from '#services/plan/works.ts';
import { smallVenue } from '#tests/contract/small-venue.ts';
import { examplePapers } from '#tests/reports/example-papers.ts';

const values = (changes: Partial<Record<keyof ParameterValues, number>>): ParameterValues => ({ ...defaultValues, ...changes });
/** lb/ft³ to kg/m³. */
const perCubicFoot = pound / cubicFoot;

describe('sand of a topdressing', () => {
  // Woods 2009, surface share of tines: 1/2 in on 2 by 2 in takes 4.91 %; its holes, 3 in deep, hold 12.27 ft³ per 1000 ft², 1,227 lb.
  const half = values({
    'aeration.tine.diameter': 0.5 * inch,
    'aeration.tine.depth': 3 * inch,
    'plan.spike.pierced': Math.PI / 64,
    'sand.density': 100 * perCubicFoot,
    'sand.settling': 0,
  });

  it('fills the holes of a grid by their geometry', () => {
    expect(tineGrid(half).along / inch).toBeCloseTo(2, 9);
    expect(100 * piercedShare(half)).toBeCloseTo(4.91, 2);
    const { fill } = dressingOf(half, 1000 * squareFoot);
    expect((1000 * fill) / pound).toBeCloseTo(1227, 0);
  });

  it('takes 10–20 % more where it settles (Sand math, 2011), and lies on top of that', () => {
    const settled = dressingOf({ ...half, 'sand.settling': 0.15 }, 1000 * squareFoot);
    expect((1000 * settled.fill) / pound).toBeCloseTo(1227.18 * 1.15, 0);
    // Sand math, 2011: 1/8 in on 1000 ft² weighs 1,042 lb.
    const surface = dressingOf({ ...half, 'plan.topdress.depth': inch / 8 }, 1000 * squareFoot).surface;
    expect(Math.abs((1000 * surface) / pound - 1042)).toBeLessThanOrEqual(1);
    expect(amountsOf(half, 'perennial-ryegrass').sand).toBeCloseTo(dressingOf(half, 1).fill + dressingOf(half, 1).surface, 12);
  });
});

describe('seed and nitrogen', () => {
  it('is bought by pure live seed: 0.95 by 0.85 is 0.8075, so 1.238 times (Cornell)', () => {
    const { seed } = amountsOf(values({ 'seed.purity': 0.95, 'seed.germination': 0.85 }), 'perennial-ryegrass');
    expect(seed / (defaultValues['seed.rate.perennial-ryegrass'] / 1000)).toBeCloseTo(1.238, 3);
  });

  it('stays within 4.88 g/m² in one application (Koske 2003), whatever is asked for', () => {
    expect(nitrogenOf(defaultValues)).toBe(2.44);
    const much = values({ 'nitrogen.recovery': 9 });
    expect(nitrogenOf(much)).toBe(4.88);
    expect(amountsOf(much, 'perennial-ryegrass').feed).toBeCloseTo(0.00488 / 0.2, 9);
    expect(feedProblem(much, null)).toBeNull();
    expect(feedProblem(defaultValues, 9)).toMatch(/9 days after the feed before; 14 days are usual/);
  });
});

describe('the works of a plan', () => {
  const { plan } = examplePapers().plan;
  const days = Array.from({ length: 31 }, (_, day) => `2027-07-${String(day + 1).padStart(2, '0')}`);
  const weather = (maximum: number, rain: number) => ({
    maximum: days.map(() => maximum),
    minimum: days.map(() => maximum - 12),
    rain: days.map(() => rain),
    radiation: days.map(() => 20),
    growthPotential: days.map(() => 1),
  });
  const parts = (maximum: number, rain = 0): WorksParts => ({
    venue: smallVenue,
    values: defaultValues,
    forecasts: [{ days, weather: weather(maximum, rain) }],
    areas: new Map(plan.zones.map(({ zone }) => [zone, 100])),
  });
  const laid = plan.zones.find(({ jobs }) => jobs.some(({ job }) => job === 'lay'))!;

  it('have the shape that is stored', () => {
    const whole = RecoveryPlanShape.parse({ ...plan, works: worksOf(parts(25), plan) });
    expect(whole.works!.waterings.length).toBeGreaterThan(0);
  });

  it('water young sod from its last roll down, four times a day at first, less where it rains', () => {
    const mine = (works: RecoveryPlan['works']) => works!.waterings.filter(({ zone }) => zone === laid.zone);
    const dry = mine(worksOf(parts(28), plan));
    const end = laid.jobs.find(({ job }) => job === 'lay')!.end;
    expect(dry[0]!.at >= end).toBe(true);
    // What falls to the hours before the last roll is down is one watering, and no less than the 12 mm of the first day in all.
    expect(new Set(dry.map(({ at }) => at)).size).toBe(dry.length);
    const day = dry.filter(({ at }) => at.slice(0, 10) === end.slice(0, 10));
    expect(day.reduce((sum, { depth }) => sum + depth, 0)).toBeGreaterThanOrEqual(12 - 1e-9);
    const second = dry.filter(({ at }) => at.slice(0, 10) === days[days.indexOf(end.slice(0, 10)) + 1]);
    expect(second.map(({ at }) => at.slice(11))).toEqual(['06:00', '10:00', '13:00', '16:00']);
    for (const { depth, volume } of dry) expect(volume).toBeCloseTo((depth / 1000) * 100, 9);
    const wet = mine(worksOf(parts(28, 3), plan));
    const all = (waterings: typeof dry): number => waterings.reduce((sum, { depth }) => sum + depth, 0);
    expect(all(wet)).toBeLessThan(all(dry));
    expect(all(mine(worksOf(parts(20), plan)))).toBeLessThan(all(dry));
  });

  it('hold the hours in the roll against the heat: 85 °F and more shortens them to those of heat', () => {
    const cool = worksOf(parts(15), plan);
    const hot = worksOf(parts(35), plan);
    expect(cool.rolls.length).toBe(plan.orders.flatMap(({ trucks }) => trucks).length);
    for (const { allowed } of cool.rolls) expect(allowed).toBe(defaultValues['sod.roll.hours.cool']);
    for (const { allowed } of hot.rolls) expect(allowed).toBe(defaultValues['sod.roll.hours.hot']);
    const short = worksOf({ ...parts(35), values: values({ 'sod.roll.hours.hot': 1 }) }, plan);
    expect(short.rolls.every(({ within }) => !within)).toBe(true);
    expect(short.cautions[0]).toMatch(/h in the roll, 1.0 h are the limit on so warm a day/);
  });

  it('say where seed falls outside its season by name, and move nothing', () => {
    const [zone] = plan.zones;
    const sown = (start: string): RecoveryPlan => ({
      ...plan,
      zones: [{ ...zone!, jobs: [{ ...laid.jobs[0]!, zone: zone!.zone, job: 'seed', start, end: start }] }],
    });
    const said = (start: string, changes: Partial<typeof smallVenue.field> = {}, latitude = 40): readonly string[] => {
      const venue = { ...smallVenue, place: { ...smallVenue.place, latitude }, field: { ...smallVenue.field, ...changes } };
      return worksOf({ ...parts(25), venue }, sown(start)).cautions.filter((line) => line.startsWith('Seed'));
    };
    expect(said('2027-07-20T08:00')).toEqual([
      `Seed in zone ${zone!.zone} on 2027-07-20: outside the window "cool-season seeding", 08-15 to 09-15.`,
    ]);
    expect(said('2027-08-20T08:00')).toEqual([]);
    expect(said('2027-02-20T08:00', {}, -35)).toEqual([]);
    const overseeded = [{ grass: 'bermudagrass-hybrid', share: 0.3 }, { grass: 'perennial-ryegrass', share: 0.7 }] as const; // prettier-ignore
    expect(said('2027-10-20T08:00', { sward: overseeded })).toEqual([]);
    expect(said('2027-07-20T08:00', { sward: overseeded })[0]).toMatch(/ryegrass overseed, transition zone.*; .*repeat/);
    expect(said('2027-07-20T08:00', { sward: [{ grass: 'zoysiagrass', share: 1 }] })).toEqual([]);
  });
});
