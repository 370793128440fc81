import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkPlan } from '#planner/check-plan.ts';
import { applyMend } from '#planner/mends.ts';
import { schedulePlan, zoneChoices } from '#planner/plan-recovery.ts';
import type { ChosenZone, StepStart, ZoneOption } from '#planner/zone-options.ts';
import { writtenPlan } from '#planner/written-plan.ts';
import { settingOf } from '#planner/setting.ts';
import { farFarm, nearFarm, sampleProblem } from '#tests/planner/sample-problem.ts';

const optimiser = optimiserOnThisThread();
/** Value of the best plan, proven to the last cent; Infinity where there is none. */
const best = async (problem: RecoveryProblem): Promise<number> => {
  const outcome = await schedulePlan(problem, optimiser, { gap: 0 });
  if (outcome.kind === 'none') return Infinity;
  if (outcome.kind !== 'plan') throw new Error('stopped');
  expect(checkPlan(problem, outcome.plan)).toEqual([]);
  expect(outcome.plan.value - outcome.plan.bound).toBeLessThanOrEqual(0.5001);
  return outcome.plan.value;
};
/** Two proofs to half a unit of the currency each. */
const cents = 1.01;

const shape = fc.record({
  zones: fc.integer({ min: 1, max: 3 }),
  days: fc.integer({ min: 9, max: 14 }),
  dayCrew: fc.integer({ min: 6, max: 9 }),
  nightCrew: fc.integer({ min: 0, max: 4 }),
  overtimeCrew: fc.integer({ min: 0, max: 2 }),
  notice: fc.integer({ min: 10, max: 90 }),
  trucksPerDay: fc.integer({ min: 2, max: 5 }),
  farms: fc.constantFrom([nearFarm], [nearFarm, farFarm]),
});
const problemOf = (one: typeof shape extends fc.Arbitrary<infer Value> ? Value : never): RecoveryProblem => {
  const base = sampleProblem({ zones: one.zones, days: one.days, farms: one.farms });
  return {
    ...base,
    rules: { ...base.rules, contingency: 0 },
    workforce: { ...base.workforce, dayCrew: one.dayCrew, nightCrew: one.nightCrew, overtimeCrew: one.overtimeCrew },
    farms: base.farms.map((farm) => ({ ...farm, notice: one.notice, trucksPerDay: one.trucksPerDay })),
  };
};
const some = { numRuns: 8, seed: 20270718 };

describe('a recovery is never worse with', { timeout: 180_000 }, () => {
  it.each<readonly [string, (problem: RecoveryProblem) => RecoveryProblem]>([
    ['more people', (problem) => applyMend(problem, { kind: 'more-people', people: 2 })],
    [
      'more overtime',
      (problem) => ({ ...problem, workforce: { ...problem.workforce, overtimeCrew: problem.workforce.overtimeCrew + 2 } }),
    ],
    ['a farm that needs less notice', (problem) => applyMend(problem, { kind: 'shorter-notice', farm: 'near-farm', hours: 10 })],
    ['more trucks', (problem) => applyMend(problem, { kind: 'more-trucks', farm: 'near-farm', perDay: 2 })],
    ['a later home date', (problem) => applyMend(problem, { kind: 'later-home-date', window: 'august-home', days: 2 })],
    [
      'cheaper sod',
      (problem) => ({ ...problem, farms: problem.farms.map((farm) => ({ ...farm, thickPrice: 900, thinPrice: 300 })) }),
    ],
    [
      'another farm',
      (problem) => ({ ...problem, farms: [...problem.farms, { ...farFarm, id: 'third-farm', name: 'Third Farm' }] }),
    ],
    ['no curfew', (problem) => ({ ...problem, workforce: { ...problem.workforce, curfew: null } })],
  ])('%s', async (_, better) => {
    let possible = 0;
    await fc.assert(
      fc.asyncProperty(shape, async (one) => {
        const problem = problemOf(one);
        const value = await best(problem);
        if (Number.isFinite(value)) possible += 1;
        expect(await best(better(problem))).toBeLessThanOrEqual(value + cents);
      }),
      some,
    );
    // A law about impossible plans alone would say nothing.
    expect(possible).toBeGreaterThan(2);
  });
});

/** Limits that a venue may enter, each tight enough to matter in some of the instances. */
const limitsShape = fc.record({
  sodDrivers: fc.integer({ min: 1, max: 2 }),
  perHour: fc.integer({ min: 1, max: 2 }),
  opens: fc.constantFrom('05:00', '07:00', '09:00'),
  shuts: fc.constantFrom('11:00', '15:00', '20:00'),
  gap: fc.constantFrom(0.02, 0.2),
  boarded: fc.boolean(),
  halves: fc.boolean(),
});
const limitedBy = (
  problem: RecoveryProblem,
  one: typeof limitsShape extends fc.Arbitrary<infer Value> ? Value : never,
): RecoveryProblem => ({
  ...problem,
  soil: { sandShare: 0.95, gap: one.gap },
  farms: problem.farms.map((farm, index) => ({ ...farm, sandShare: index === 0 ? 0.95 : 0.9 })),
  workforce: { ...problem.workforce, skills: { 'sod-machines': one.sodDrivers } },
  rules: { ...problem.rules, gateTrucksPerHour: one.perHour, gateHours: { from: one.opens, until: one.shuts } },
  zones: problem.zones.map((zone) => ({ ...zone, boarded: one.boarded, route: zone.letter === 'B' ? ['A'] : [] })),
  sequences: one.halves && problem.zones.length > 1 ? [{ before: ['A'], after: ['B'] }] : [],
});

describe('with the limits of a venue a recovery keeps them and is never worse with', { timeout: 180_000 }, () => {
  it.each<readonly [string, (problem: RecoveryProblem) => RecoveryProblem]>([
    ['more who may do the work', (problem) => applyMend(problem, { kind: 'more-skilled', skill: 'sod-machines', people: 1 })],
    ['sod that may differ more', (problem) => ({ ...problem, soil: { sandShare: 0.95, gap: 1 } })],
    ['boards', (problem) => applyMend(problem, { kind: 'boards' })],
    ['both halves at once', (problem) => applyMend(problem, { kind: 'whole-field' })],
  ])('%s', async (_, better) => {
    let possible = 0;
    await fc.assert(
      fc.asyncProperty(shape, limitsShape, async (one, limits) => {
        const problem = limitedBy(problemOf(one), limits);
        const value = await best(problem);
        if (Number.isFinite(value)) possible += 1;
        expect(await best(better(problem))).toBeLessThanOrEqual(value + cents);
      }),
      { numRuns: 5, seed: 20270718 },
    );
    expect(possible).toBeGreaterThan(1);
  });
});

describe('it does not matter', { timeout: 180_000 }, () => {
  it('in which order the zones, farms, programmes and jobs are given', async () => {
    await fc.assert(
      fc.asyncProperty(shape, async (one) => {
        const problem = problemOf(one);
        const turned = {
          ...problem,
          zones: [...problem.zones].reverse(),
          farms: [...problem.farms].reverse(),
          jobs: [...problem.jobs].reverse(),
          programmes: [...problem.programmes].reverse(),
          readiness: [...problem.readiness].reverse(),
          windows: problem.windows.map((window) => ({ ...window, zones: [...window.zones].reverse() })),
        };
        const [here, there] = [await best(problem), await best(turned)];
        if (here === Infinity) expect(there).toBe(Infinity);
        else expect(Math.abs(here - there)).toBeLessThanOrEqual(cents);
      }),
      some,
    );
  });

  it('whether a zone is counted as one or as two halves, up to a truck', async () => {
    const problem = sampleProblem({ zones: 2, days: 10, farms: [nearFarm] });
    const halves = ['A', 'C'];
    const split = {
      ...problem,
      zones: [
        ...halves.map((letter) => ({ ...problem.zones[0]!, letter, area: problem.zones[0]!.area / 2, neighbours: [] })),
        { ...problem.zones[1]!, neighbours: [], route: [] },
      ],
      windows: problem.windows.map((window) => ({ ...window, zones: [...window.zones, { ...window.zones[0]!, letter: 'C' }] })),
      readiness: [
        ...problem.readiness,
        ...problem.readiness.filter(({ zone }) => zone === 'A').map((row) => ({ ...row, zone: 'C' })),
      ],
    };
    const difference = Math.abs((await best(problem)) - (await best(split)));
    expect(difference).toBeLessThanOrEqual(nearFarm.truckPrice! / 100 + cents);
  });
});

/** Every schedule of a tiny problem: one option per zone and one chain of starts, those that the checker accepts. */
const bruteForce = (problem: RecoveryProblem): number => {
  const setting = settingOf(problem);
  const chains = (option: ZoneOption): readonly (readonly StepStart[])[] =>
    option.starts.reduce<readonly (readonly StepStart[])[]>(
      (some, starts) =>
        some.flatMap((chain) =>
          starts
            .filter(({ timed }) => chain.length === 0 || timed.at >= chain.at(-1)!.timed.end - 1e-9)
            .map((start) => [...chain, start]),
        ),
      [[]],
    );
  const all = zoneChoices(setting).map(({ open }) =>
    open.flatMap((option) => chains(option).map((starts): ChosenZone => ({ option, starts }))),
  );
  const standing = { aim: 'least-cost', value: 0, bound: 0, gap: 0, proven: true, stoppedByTime: false } as const;
  let least = Infinity;
  const place = (index: number, chosen: readonly ChosenZone[]): void => {
    if (index < all.length) return all[index]!.forEach((one) => place(index + 1, [...chosen, one]));
    const plan = writtenPlan(setting, chosen, standing);
    if (plan.cost.total / 100 < least && checkPlan(problem, plan).length === 0) least = plan.cost.total / 100;
  };
  place(0, []);
  return least;
};

describe('trying everything', { timeout: 180_000 }, () => {
  const rules = { contingency: 0, paint: 12, certifyLead: 24 };
  it.each([
    ['enough of everything', { days: 9, dayCrew: 7, nightCrew: 4, overtimeCrew: 0, trucksPerDay: 8 }, true],
    ['two days for the trucks', { days: 9, dayCrew: 7, nightCrew: 4, overtimeCrew: 0, trucksPerDay: 3 }, true],
    ['people called in for the laying', { days: 9, dayCrew: 5, nightCrew: 0, overtimeCrew: 1, trucksPerDay: 8 }, true],
    ['people called in at night', { days: 8, dayCrew: 5, nightCrew: 3, overtimeCrew: 2, trucksPerDay: 4 }, true],
    ['too little time by day alone', { days: 7, dayCrew: 7, nightCrew: 0, overtimeCrew: 0, trucksPerDay: 8 }, false],
    ['too few trucks', { days: 8, dayCrew: 7, nightCrew: 4, overtimeCrew: 0, trucksPerDay: 2 }, false],
  ])('finds nothing cheaper than the planner: %s', async (_, { days, trucksPerDay, ...workforce }, possible) => {
    const base = sampleProblem({ zones: 2, days, farms: [nearFarm] });
    const problem = {
      ...base,
      blocks: [],
      rules: { ...base.rules, ...rules },
      workforce: { ...base.workforce, ...workforce },
      farms: [{ ...nearFarm, trucksPerDay }],
    };
    const [planned, tried] = [await best(problem), bruteForce(problem)];
    expect(Number.isFinite(tried)).toBe(possible);
    if (possible) expect(Math.abs(planned - tried)).toBeLessThanOrEqual(cents);
    else expect(planned).toBe(Infinity);
  });
});

describe('the checker', { timeout: 180_000 }, () => {
  it('refuses a thousand plans that were changed for the worse', async () => {
    const problem = sampleProblem({ zones: 6, days: 12 });
    const outcome = await schedulePlan(problem, optimiser);
    if (outcome.kind !== 'plan') throw new Error('no plan');
    const { plan } = outcome;
    expect(checkPlan(problem, plan)).toEqual([]);
    let refused = 0;
    fc.assert(
      fc.property(mutation(plan), ({ name, changed }) => {
        const broken = checkPlan(problem, changed);
        refused += 1;
        expect(broken, name).not.toEqual([]);
      }),
      { numRuns: 1000, seed: 1 },
    );
    expect(refused).toBe(1000);
  });
});

type Zone = RecoveryPlan['zones'][number];
type Job = Zone['jobs'][number];
type Order = RecoveryPlan['orders'][number];

/** A plan with one thing in it changed so that it cannot be right any more. */
const mutation = (plan: RecoveryPlan): fc.Arbitrary<{ readonly name: string; readonly changed: RecoveryPlan }> => {
  const busy = plan.zones.flatMap((zone, index) => (zone.jobs.length > 1 ? [index] : []));
  const withZone = (index: number, change: (zone: Zone) => Zone): RecoveryPlan => ({
    ...plan,
    zones: plan.zones.map((zone, at) => (at === index ? change(zone) : zone)),
  });
  const withJob = (index: number, place: number, change: (job: Job) => Job): RecoveryPlan =>
    withZone(index, (zone) => ({
      ...zone,
      jobs: zone.jobs.map((job, at) => (at === place % zone.jobs.length ? change(job) : job)),
    }));
  const withOrder = (index: number, change: (order: Order) => Order): RecoveryPlan => ({
    ...plan,
    orders: plan.orders.map((order, at) => (at === index % plan.orders.length ? change(order) : order)),
  });
  const moved = (time: string, hours: number): string =>
    new Date(Date.parse(`${time}:00Z`) + hours * 3_600_000).toISOString().slice(0, 16);
  const zoneAt = fc.constantFrom(...busy);
  const place = fc.nat({ max: 9 });
  const hours = fc.integer({ min: 1, max: 200 });
  const named = (name: string, changed: fc.Arbitrary<RecoveryPlan>) => changed.map((one) => ({ name, changed: one }));
  return fc.oneof(
    named(
      'a job is dropped',
      fc
        .tuple(zoneAt, place)
        .map(([zone, at]) =>
          withZone(zone, (one) => ({ ...one, jobs: one.jobs.filter((_, index) => index !== at % one.jobs.length) })),
        ),
    ),
    named(
      'a job is done twice',
      fc
        .tuple(zoneAt, place)
        .map(([zone, at]) => withZone(zone, (one) => ({ ...one, jobs: [...one.jobs, one.jobs[at % one.jobs.length]!] }))),
    ),
    named(
      'a job is moved out of its shift',
      fc.tuple(zoneAt, place, fc.integer({ min: 13, max: 200 }), fc.boolean()).map(([zone, at, by, back]) =>
        withJob(zone, at, (job) => ({
          ...job,
          start: moved(job.start, back ? -by : by),
          end: moved(job.end, back ? -by : by),
        })),
      ),
    ),
    named(
      'a job ends early',
      fc.tuple(zoneAt, place).map(([zone, at]) => withJob(zone, at, (job) => ({ ...job, end: job.start }))),
    ),
    named(
      'a job takes less work',
      fc
        .tuple(zoneAt, place, fc.integer({ min: 1, max: 99 }))
        .map(([zone, at, percent]) =>
          withJob(zone, at, (job) => ({ ...job, work: job.work.map((one) => ({ ...one, hours: (one.hours * percent) / 100 })) })),
        ),
    ),
    named(
      'a job is worked at in another shift',
      fc
        .tuple(zoneAt, place, fc.integer({ min: 1, max: 12 }))
        .map(([zone, at, by]) =>
          withJob(zone, at, (job) => ({ ...job, work: job.work.map((one) => ({ ...one, shift: one.shift + by })) })),
        ),
    ),
    named(
      'a job has other people',
      fc
        .tuple(zoneAt, place, fc.integer({ min: 1, max: 9 }))
        .map(([zone, at, by]) => withJob(zone, at, (job) => ({ ...job, crew: job.crew + by }))),
    ),
    named(
      'a job has no machine',
      fc
        .tuple(zoneAt, place)
        .map(([zone, at]) => withJob(zone, at, (job) => ({ ...job, machine: job.machine === null ? 'mower' : null }))),
    ),
    named(
      'a job is said to be done',
      fc.tuple(zoneAt, place).map(([zone, at]) => withJob(zone, at, (job) => ({ ...job, done: true }))),
    ),
    named(
      'two jobs change places',
      fc.tuple(zoneAt, place).map(([zone, at]) => withZone(zone, (one) => swapped(one, at % (one.jobs.length - 1)))),
    ),
    named(
      'a zone is left out',
      fc
        .tuple(fc.nat({ max: plan.zones.length - 1 }))
        .map(([zone]) => ({ ...plan, zones: plan.zones.filter((_, index) => index !== zone) })),
    ),
    named(
      'a zone is planned twice',
      fc.tuple(fc.nat({ max: plan.zones.length - 1 })).map(([zone]) => ({ ...plan, zones: [...plan.zones, plan.zones[zone]!] })),
    ),
    named(
      'a zone takes another programme',
      zoneAt.map((zone) => withZone(zone, (one) => ({ ...one, programme: one.programme === 'leave' ? 'recover' : 'leave' }))),
    ),
    named(
      'a zone is said to be readier',
      zoneAt.chain((zone) =>
        fc
          .integer({ min: 1, max: 5 })
          .map((by) => withZone(zone, (one) => ({ ...one, chanceReady: one.chanceReady - by / 1000 }))),
      ),
    ),
    named(
      'a zone has more time in hand',
      fc.tuple(zoneAt, hours).map(([zone, by]) => withZone(zone, (one) => ({ ...one, slack: one.slack + by }))),
    ),
    named(
      'a zone is said to be over earlier',
      fc.tuple(zoneAt, hours).map(([zone, by]) => withZone(zone, (one) => ({ ...one, finish: moved(one.finish!, -by) }))),
    ),
    named(
      'a zone may be over later',
      fc
        .tuple(zoneAt, hours)
        .map(([zone, by]) => withZone(zone, (one) => ({ ...one, latestFinish: moved(one.latestFinish, by) }))),
    ),
    named(
      'the water is forgotten',
      zoneAt.map((zone) => withZone(zone, (one) => ({ ...one, dailyHours: one.dailyHours + 1 }))),
    ),
    named('an order is dropped', fc.constant({ ...plan, orders: plan.orders.slice(1) })),
    named(
      'an order is short',
      fc
        .tuple(place, fc.integer({ min: 1, max: 99 }))
        .map(([at, percent]) => withOrder(at, (order) => ({ ...order, ordered: (order.ordered * percent) / 100 }))),
    ),
    named(
      'an order has fewer rolls',
      fc
        .tuple(place, fc.integer({ min: 1, max: 50 }))
        .map(([at, by]) => withOrder(at, (order) => ({ ...order, rolls: order.rolls - by }))),
    ),
    named(
      'an order may be released later',
      fc.tuple(place, hours).map(([at, by]) => withOrder(at, (order) => ({ ...order, releaseBy: moved(order.releaseBy, by) }))),
    ),
    named(
      'an order goes to another farm',
      place.map((at) => withOrder(at, (order) => ({ ...order, farm: order.farm === 'near-farm' ? 'far-farm' : 'near-farm' }))),
    ),
    named(
      'a truck is dropped',
      fc.tuple(place, place).map(([at, truck]) =>
        withOrder(at, (order) => ({
          ...order,
          trucks: order.trucks.filter((_, index) => index !== truck % order.trucks.length),
        })),
      ),
    ),
    named(
      'a truck carries another load',
      fc.tuple(place, place, fc.integer({ min: 1, max: 40 })).map(([at, truck, by]) =>
        withOrder(at, (order) => ({
          ...order,
          trucks: order.trucks.map((one, index) =>
            index === truck % order.trucks.length ? { ...one, rolls: one.rolls + by } : one,
          ),
        })),
      ),
    ),
    named(
      'a truck comes at another hour',
      fc.tuple(place, place, hours).map(([at, truck, by]) =>
        withOrder(at, (order) => ({
          ...order,
          trucks: order.trucks.map((one, index) =>
            index === truck % order.trucks.length ? { ...one, arrive: moved(one.arrive, by) } : one,
          ),
        })),
      ),
    ),
    named(
      'sod lies longer than it says',
      fc.tuple(place, place, hours).map(([at, truck, by]) =>
        withOrder(at, (order) => ({
          ...order,
          trucks: order.trucks.map((one, index) =>
            index === truck % order.trucks.length ? { ...one, hoursInRoll: one.hoursInRoll - by } : one,
          ),
        })),
      ),
    ),
    named(
      'the sum is wrong',
      fc.integer({ min: 1, max: 1e6 }).map((by) => ({ ...plan, cost: { ...plan.cost, total: plan.cost.total + by } })),
    ),
    named(
      'a cost line is wrong',
      fc.tuple(place, fc.integer({ min: 1, max: 90 })).map(([at, percent]) => ({ ...plan, cost: costWith(plan, at, percent) })),
    ),
    named(
      'a cost line is dropped',
      place.map((at) => ({
        ...plan,
        cost: { ...plan.cost, lines: plan.cost.lines.filter((_, index) => index !== at % plan.cost.lines.length) },
      })),
    ),
    named('painting is forgotten', fc.constant({ ...plan, fieldJobs: plan.fieldJobs.slice(1) })),
    named(
      'the test is at another hour',
      hours.map((by) => ({ ...plan, fieldJobs: plan.fieldJobs.map((job) => ({ ...job, start: moved(job.start, by) })) })),
    ),
    named(
      'the bound lies above the value',
      hours.map((by) => ({ ...plan, bound: plan.value + by })),
    ),
  );
};

const swapped = (zone: Zone, at: number): Zone => {
  const jobs = [...zone.jobs];
  const [one, other] = [jobs[at]!, jobs[at + 1]!];
  jobs[at] = { ...other, start: one.start, end: one.end, work: one.work };
  jobs[at + 1] = { ...one, start: other.start, end: other.end, work: other.work };
  return { ...zone, jobs };
};

const costWith = (plan: RecoveryPlan, at: number, percent: number): RecoveryPlan['cost'] => {
  const lines = plan.cost.lines.map((line, index) =>
    index === at % plan.cost.lines.length
      ? { ...line, quantity: (line.quantity * percent) / 100, sum: Math.round((line.sum! * percent) / 100) }
      : line,
  );
  return { ...plan.cost, lines, total: lines.reduce((sum, line) => sum + (line.sum ?? 0), 0) };
};
