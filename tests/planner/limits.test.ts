import { describe, expect, it } from 'vitest';
import type { RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkPlan } from '#planner/check-plan.ts';
import { applyMend } from '#planner/mends.ts';
import { planRecovery } from '#planner/not-possible.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import { nearFarm, sampleProblem } from '#tests/planner/sample-problem.ts';

/*
 * Each limit three times over: the plan obeys it, the checker refuses a plan that was made without it, and where it cannot be kept the
 * answer says so by name.
 */

const optimiser = optimiserOnThisThread();
const planOf = async (problem: RecoveryProblem): Promise<RecoveryPlan> => {
  const outcome = await schedulePlan(problem, optimiser);
  if (outcome.kind !== 'plan') throw new Error(`no plan: ${JSON.stringify(outcome)}`);
  expect(checkPlan(problem, outcome.plan)).toEqual([]);
  return outcome.plan;
};
const whyNot = async (problem: RecoveryProblem) => {
  const answer = await planRecovery(problem, optimiser);
  if (answer.outcome !== 'not-possible') throw new Error(answer.outcome);
  for (const { mend } of answer.because.mends)
    expect((await schedulePlan(applyMend(problem, mend), optimiser, { anyPlan: true })).kind, JSON.stringify(mend)).toBe('plan');
  return answer.because;
};
const small = sampleProblem({ zones: 4, days: 10, farms: [nearFarm] });
const lock = (zone: string, programme: 'replace-thick' | 'recover-under-lights' | 'recover') =>
  ({ zone, window: 'august-home', programme, farm: null }) as const;

describe('sod that matches the root zone', { timeout: 120_000 }, () => {
  const clay = { ...nearFarm, id: 'clay-farm', name: 'Clay Farm', sandShare: 0.4, thickPrice: 100, thinPrice: 100 };
  const problem = { ...small, farms: [nearFarm, clay], soil: { sandShare: 0.93, gap: 0.1 } };

  it('is ordered although other sod is cheaper', async () => {
    const free = await planOf({ ...problem, soil: { sandShare: 0.93, gap: 1 } });
    expect(free.orders[0]!.farm).toBe('clay-farm');
    const plan = await planOf(problem);
    expect(new Set(plan.orders.map(({ farm }) => farm))).toEqual(new Set(['near-farm']));
    expect(checkPlan(problem, free).join()).toContain('does not match the root zone');
  });

  it('is what a plan fails for by name', async () => {
    const because = await whyNot({ ...problem, farms: [clay] });
    expect(because.reasons.join()).toContain(
      'sod of Clay Farm grows on 40 % sand, the root zone has 93 % and may differ by 10 %',
    );
  });
});

describe('work that asks for a skill', { timeout: 120_000 }, () => {
  const skilled = (skills: RecoveryProblem['workforce']['skills']): RecoveryProblem => ({
    ...small,
    workforce: { ...small.workforce, ...(skills ? { skills } : {}) },
  });

  /** Slow laying, many people and machines: only the skill keeps the zones from being laid at once. */
  const slow: RecoveryProblem = {
    ...small,
    jobs: small.jobs.map((job) => (job.kind === 'lay' ? { ...job, rate: 100 } : job)),
    locks: ['A', 'B', 'C'].map((zone) => lock(zone, 'replace-thick')),
    workforce: {
      ...small.workforce,
      dayCrew: 30,
      nightCrew: 30,
      machines: { ...small.workforce.machines, 'sod-installer': 3, grader: 3, stripper: 3 },
    },
  };
  const one = { ...slow, workforce: { ...slow.workforce, skills: { 'sod-machines': 1 } } };
  const laying = (plan: RecoveryPlan): readonly number[] => {
    const used = new Map<number, number>();
    for (const job of plan.zones.flatMap(({ jobs }) => jobs).filter(({ job: kind }) => kind === 'lay'))
      for (const { shift, hours } of job.work) used.set(shift, (used.get(shift) ?? 0) + hours);
    return [...used.values()];
  };

  it('takes no more hours of a shift than those who may do it have', async () => {
    for (const hours of laying(await planOf(one))) expect(hours).toBeLessThanOrEqual(10 + 1e-3);
  });

  it('is refused by the checker when too few may do it', async () => {
    const free = await planOf(slow);
    expect(Math.max(...laying(free))).toBeGreaterThan(10.5);
    expect(checkPlan(one, free).join()).toMatch(/people with the skill sod-machines are wanted [\d.]+ h of 10.0 h/);
    const none = checkPlan({ ...slow, workforce: { ...slow.workforce, skills: { 'sod-machines': 0 } } }, free).join();
    expect(none).toContain('lay takes 1 people with the skill sod-machines, there are 0');
  });

  it('is what a plan fails for by name, and more who may do it mend it', async () => {
    const because = await whyNot({ ...skilled({ 'sod-machines': 0 }), locks: [lock('A', 'replace-thick')] });
    expect(because.reasons.join()).toContain('Receive and lay rolls: it takes 1 who may drive sod installers and there are none');
    expect(
      because.mends.some(
        ({ mend, words }) => mend.kind === 'more-skilled' && words === 'one more person who may drive sod installers',
      ),
    ).toBe(true);
  });

  it('counts the test of the surface: nobody to make it is nonsense', async () => {
    await expect(schedulePlan(skilled({ 'surface-testing': 1 }), optimiser)).rejects.toThrow(
      /takes 2 who may do it, there are 1/,
    );
  });
});

describe('light rigs', { timeout: 120_000 }, () => {
  const areas = new Map(small.zones.map(({ letter, area }) => [letter, area]));
  const rigsFor = (letter: string): number => Math.ceil(areas.get(letter)! / 30);
  const lit = (rigs: number, lightPower?: number): RecoveryProblem => ({
    ...small,
    rigs: { area: 30, power: 6 },
    readiness: [
      ...small.readiness,
      ...['C', 'D'].flatMap((zone) =>
        small.readiness
          .filter((row) => row.zone === zone && row.programme === 'recover')
          .map((row) => ({ ...row, programme: 'recover-under-lights' as const, chance: row.chance.map(() => 1) })),
      ),
    ],
    workforce: {
      ...small.workforce,
      machines: { ...small.workforce.machines, 'light-rig': rigs },
      ...(lightPower === undefined ? {} : { lightPower }),
    },
  });
  const both = (problem: RecoveryProblem): RecoveryProblem => ({
    ...problem,
    locks: ['C', 'D'].map((zone) => lock(zone, 'recover-under-lights')),
  });
  const needed = rigsFor('C') + rigsFor('D');

  it('stand on every zone they light, and are moved every day', async () => {
    const plan = await planOf(both(lit(needed)));
    const zone = plan.zones.find((one) => one.zone === 'C')!;
    expect(zone.programme).toBe('recover-under-lights');
    // 90 m² an hour aside and back.
    expect(zone.dailyHours).toBeCloseTo(areas.get('C')! / 90, 9);
  });

  it('are not enough by one, or draw too much: no plan, and the checker refuses the one made with more', async () => {
    const plan = await planOf(both(lit(needed)));
    expect((await schedulePlan(both(lit(needed - 1)), optimiser)).kind).toBe('none');
    expect(checkPlan(both(lit(needed - 1)), plan)).toEqual([
      `${needed} light rigs stand before Home date after the concert, there are ${needed - 1}`,
    ]);
    const power = 6 * needed;
    await planOf(both(lit(needed, power)));
    expect((await schedulePlan(both(lit(needed, power - 1)), optimiser)).kind).toBe('none');
    expect(checkPlan(both(lit(needed, power - 1)), plan).join()).toContain(`draw ${power} kW of ${power - 1} kW`);
  });

  it('are named where one zone alone asks for too many', async () => {
    const because = await whyNot({ ...lit(2), locks: [lock('C', 'recover-under-lights')] });
    expect(because.reasons.join()).toContain(`it takes ${rigsFor('C')} light rigs and there are 2`);
    const dark = await whyNot({ ...lit(needed, 12), locks: [lock('C', 'recover-under-lights')] });
    expect(dark.reasons.join()).toContain(`${rigsFor('C')} light rigs draw ${6 * rigsFor('C')} kW and the supply gives 12 kW`);
  });
});

describe('the gate', { timeout: 120_000 }, () => {
  const thick: RecoveryProblem = {
    ...small,
    locks: ['A', 'B', 'C'].map((zone) => lock(zone, 'replace-thick')),
    workforce: {
      ...small.workforce,
      dayCrew: 20,
      nightCrew: 20,
      machines: { ...small.workforce.machines, 'sod-installer': 3 },
    },
  };
  const hoursOf = (plan: RecoveryPlan): readonly string[] =>
    plan.orders.flatMap(({ trucks }) => trucks.map(({ arrive }) => arrive));

  it('lets trucks in only in its hours, and the release comes earlier by the wait', async () => {
    const free = await planOf(thick);
    const rules = { ...thick.rules, gateHours: { from: '06:00', until: '06:30' } };
    expect(checkPlan({ ...thick, rules }, free).join()).toMatch(/a truck comes at .* when the gate is shut/);
    const plan = await planOf({ ...thick, rules });
    for (const arrive of hoursOf(plan)) expect(arrive.slice(11) >= '06:00' && arrive.slice(11) <= '06:30', arrive).toBe(true);
    for (const { trucks, terms, releaseBy } of plan.orders) {
      for (const { arrive, begin } of trucks) expect(arrive <= begin).toBe(true);
      expect(terms.at(-1)!.at).toBe(releaseBy);
    }
  });

  it('lets in so many an hour', async () => {
    const free = await planOf(thick);
    const rules = { ...thick.rules, gateTrucksPerHour: 1 };
    const plan = await planOf({ ...thick, rules });
    const hours = hoursOf(plan).map((time) => time.slice(0, 13));
    expect(new Set(hours).size).toBe(hours.length);
    expect(hours.length).toBeGreaterThan(3);
    const crowded: RecoveryPlan = {
      ...free,
      orders: free.orders.map((order) => ({
        ...order,
        trucks: order.trucks.map((truck) => ({ ...truck, arrive: order.trucks[0]!.arrive })),
      })),
    };
    expect(checkPlan({ ...thick, rules }, crowded).join()).toContain('the gate takes 1');
  });

  it('that opens in the middle of a shift has the lay begin then, where the rolls could not wait from the day before', async () => {
    const limit = nearFarm.haul + thick.settings.cutHours + 1;
    const problem = {
      ...thick,
      settings: { ...thick.settings, rollHours: limit, rollHoursHot: limit },
      rules: { ...thick.rules, gateHours: { from: '10:00', until: '18:00' } },
    };
    const plan = await planOf(problem);
    const lays = plan.zones.flatMap(({ jobs }) => jobs.filter(({ job }) => job === 'lay'));
    expect(lays.length).toBe(3);
    for (const { start } of lays) expect(start.slice(11) >= '10:00' && start.slice(11) <= '19:00', start).toBe(true);
    expect(lays.some(({ start }) => start.endsWith('10:00'))).toBe(true);
  });

  it('that is never open is nonsense', async () => {
    const rules = { ...thick.rules, gateHours: { from: '06:00', until: '06:00' } };
    await expect(schedulePlan({ ...thick, rules }, optimiser)).rejects.toThrow(/never open/);
  });
});

describe('ways and halves', { timeout: 120_000 }, () => {
  it('the checker refuses machines over live turf, and boards mend it', async () => {
    const live = {
      ...small,
      zones: [
        ...small.zones.map((zone) => ({ ...zone, boarded: false, route: zone.letter === 'A' ? ['Z'] : [] })),
        { letter: 'Z', area: 500, weight: 1, neighbours: [], route: [], boarded: false },
      ],
    };
    const free = await planOf(small);
    expect(checkPlan(live, free).join()).toContain('machines for zone A would cross the live turf of zone Z');
    const because = await whyNot(live);
    expect(because.reasons.join()).toContain('Heavy machines would have to cross live turf');
    expect(because.mends.some(({ mend }) => mend.kind === 'boards')).toBe(true);
  });

  it('the checker refuses a second half opened too early', async () => {
    const free = await planOf({ ...small, locks: ['A', 'B'].map((zone) => lock(zone, 'replace-thick')) });
    const opened = (letter: string): string =>
      free.zones.find(({ zone }) => zone === letter)!.jobs.find(({ job }) => job === 'strip')!.start;
    const [first, second] = opened('A') < opened('B') ? ['A', 'B'] : ['B', 'A'];
    const turned = { ...small, sequences: [{ before: [second!], after: [first!] }] };
    expect(checkPlan(turned, free).join()).toContain(`zone ${first} is opened before zone ${second} is laid`);
  });
});
