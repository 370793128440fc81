import { describe, expect, it } from 'vitest';
import { addHours } from '#shared/calendar/local-time.ts';
import { RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkPlan } from '#planner/check-plan.ts';
import { compareFarms } from '#planner/compare-farms.ts';
import { applyMend } from '#planner/mends.ts';
import { planRecovery } from '#planner/not-possible.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import { programmesFor } from '#planner/programmes.ts';
import { farFarm, nearFarm, sampleProblem } from '#tests/planner/sample-problem.ts';

const optimiser = optimiserOnThisThread();
const planOf = async (problem: RecoveryProblem): Promise<RecoveryPlan> => {
  const outcome = await schedulePlan(problem, optimiser);
  if (outcome.kind !== 'plan') throw new Error(`no plan: ${JSON.stringify(outcome)}`);
  expect(checkPlan(problem, outcome.plan)).toEqual([]);
  return outcome.plan;
};
const of = (plan: RecoveryPlan, letter: string) => plan.zones.find(({ zone }) => zone === letter)!;
const jobOf = (plan: RecoveryPlan, letter: string, job: string) => of(plan, letter).jobs.find((one) => one.job === job)!;
const small = sampleProblem({ zones: 4, days: 10 });

describe('a recovery plan', () => {
  it('of the sample is proven, checked, and has the shape that is stored', async () => {
    const problem = sampleProblem();
    expect(RecoveryProblem.safeParse(problem).error?.issues ?? []).toEqual([]);
    const plan = await planOf(problem);
    expect(plan.proven).toBe(true);
    expect(plan.gap).toBeLessThanOrEqual(0.005);
    expect(plan.stoppedByTime).toBe(false);
    expect(RecoveryPlan.safeParse(plan).error?.issues ?? []).toEqual([]);
    expect(plan.zones).toHaveLength(10);
    // Every price is entered: the value of the aim is the cost.
    expect(plan.aim).toBe('least-cost');
    expect(plan.value).toBeCloseTo(plan.cost.total / 100, 0);
    for (const zone of plan.zones) expect(zone.chanceReady).toBeGreaterThanOrEqual(0.9);
  });

  it('gives the same plan to the same question', async () => {
    expect(await planOf(small)).toEqual(await planOf(small));
  });

  it('orders the sod it lays, in trucks that carry what they may, released in time', async () => {
    const plan = await planOf(small);
    const laid = plan.zones.filter(({ farm }) => farm !== null);
    expect(laid.length).toBeGreaterThan(0);
    expect(plan.orders.flatMap(({ zones }) => zones).sort()).toEqual(laid.map(({ zone }) => zone).sort());
    for (const order of plan.orders) {
      const farm = small.farms.find(({ id }) => id === order.farm)!;
      expect(order.ordered).toBeCloseTo(order.area * 1.05, 6);
      expect(order.trucks.reduce((sum, { rolls }) => sum + rolls, 0)).toBe(order.rolls);
      for (const truck of order.trucks) expect(truck.weight).toBeLessThanOrEqual(farm.payload);
      expect(order.releaseBy >= small.now).toBe(true);
      expect(order.terms.at(-1)!.at).toBe(order.releaseBy);
      expect(plan.decisions.some(({ at }) => at === order.releaseBy)).toBe(true);
    }
  });

  it('keeps a machine in one place at a time', async () => {
    const plan = await planOf(small);
    const jobs = plan.zones.flatMap(({ jobs: mine }) => mine).filter(({ machine }) => machine !== null);
    for (const job of jobs) {
      const beside = jobs.filter((other) => other.machine === job.machine && other.start <= job.start && other.end > job.start);
      expect(beside.length).toBeLessThanOrEqual(small.workforce.machines[job.machine!]!);
    }
    expect(plan.cautions).toEqual([]);
  });

  it('works around practice, events and curfew', async () => {
    const problem = {
      ...small,
      blocks: [{ kind: 'event' as const, name: 'Family day', from: '2027-07-20T06:00', until: '2027-07-21T06:00', zones: null }],
    };
    const plan = await planOf(problem);
    for (const job of plan.zones.flatMap(({ jobs }) => jobs)) {
      for (const { shift } of job.work) {
        const { start } = problem.shifts[shift]!;
        expect(start < '2027-07-20T06:00' || start >= '2027-07-21T06:00').toBe(true);
      }
    }
    const noisy = plan.zones.flatMap(({ jobs }) => jobs).filter(({ job }) => ['strip', 'grade', 'lay'].includes(job));
    for (const { start, end } of noisy) {
      expect(start.slice(11) >= '06:00' && start.slice(11) < '23:00').toBe(true);
      expect(end.slice(11) > '06:00' && end.slice(11) <= '23:00').toBe(true);
    }
  });

  it('strips nothing of a stitched hybrid', async () => {
    expect(programmesFor('stitched-hybrid').some(({ jobs }) => jobs.includes('strip') || jobs.includes('lay'))).toBe(false);
    const sand = sampleProblem({ zones: 3, days: 28 });
    const hybrid: RecoveryProblem = {
      ...sand,
      construction: 'stitched-hybrid',
      programmes: programmesFor('stitched-hybrid'),
      readiness: sand.readiness.map((row) =>
        row.programme === 'replace-thin'
          ? { ...row, programme: 'plane-and-reseed' }
          : row.programme === 'replace-thick'
            ? { ...row, programme: 'replace-carpet' }
            : row,
      ),
    };
    const plan = await planOf(hybrid);
    expect(plan.orders).toEqual([]);
    const kinds = new Set(plan.zones.flatMap(({ jobs }) => jobs.map(({ job }) => job)));
    expect(kinds.has('strip')).toBe(false);
    expect(kinds.has('plane')).toBe(true);
  });

  it('compares by people-hours and says "no price" where one is missing', async () => {
    const unpriced = { ...small, farms: small.farms.map((farm) => ({ ...farm, thickPrice: null })) };
    const plan = await planOf(unpriced);
    expect(plan.aim).toBe('least-people-hours');
    const line = plan.cost.lines.find(({ kind, price }) => kind === 'sod' && price === null)!;
    expect(line.sum).toBeNull();
    expect(plan.cost.unpriced).toContain('sod');
    expect(plan.cost.total).toBe(plan.cost.lines.reduce((sum, one) => sum + (one.sum ?? 0), 0));
    expect(plan.orders.every(({ price, cut }) => (cut === 'thick' ? price === null : true))).toBe(true);
  });

  it('keeps locks on programme and farm', async () => {
    const locked = {
      ...small,
      locks: [{ zone: 'D', window: 'august-home', programme: 'replace-thick' as const, farm: 'far-farm' }],
    };
    const plan = await planOf(locked);
    expect(of(plan, 'D').programme).toBe('replace-thick');
    expect(plan.orders.every(({ farm }) => farm === 'far-farm')).toBe(true);
  });

  it('takes the sod of a window from one farm, and lays farms side by side', async () => {
    const compared = await compareFarms(small, optimiser);
    expect(compared.map(({ farm }) => farm)).toEqual(['near-farm', 'far-farm', null]);
    const values = compared.map(({ outcome }) => (outcome.kind === 'plan' ? outcome.plan.value : Infinity));
    const both = await planOf(small);
    expect(both.value).toBeLessThanOrEqual(Math.min(...values) * 1.006);
    expect(values[2]).toBe(Infinity);
  });

  it('orders nothing on a day the farm does not cut', async () => {
    const plan = await planOf({ ...small, farms: [nearFarm] });
    const cutDays = new Set(plan.orders.flatMap(({ trucks }) => trucks.map(({ cut }) => cut.slice(0, 10))));
    const blocked = { ...small, farms: [{ ...nearFarm, blockedDays: [...cutDays] }] };
    const other = await planOf(blocked);
    for (const { trucks } of other.orders) for (const { cut } of trucks) expect(cutDays.has(cut.slice(0, 10))).toBe(false);
  });

  it('cuts no crop before it is old enough, and brings no more trucks in a day than the gate takes', async () => {
    const usual = await planOf({ ...small, farms: [nearFarm] });
    const cuts = (plan: RecoveryPlan): readonly string[] =>
      plan.orders.flatMap(({ trucks }) => trucks.map(({ cut }) => cut.slice(0, 10)));
    const days = (plan: RecoveryPlan): readonly number[] => {
      const begun = plan.orders.flatMap(({ trucks }) => trucks.map(({ begin }) => begin.slice(0, 10)));
      return [...new Set(begun)].map((day) => begun.filter((one) => one === day).length);
    };
    const most = Math.max(...days(usual));
    expect(most).toBeGreaterThan(2);
    const narrow = await planOf({ ...small, rules: { ...small.rules, gateTrucks: most - 1 }, farms: [nearFarm] });
    expect(Math.max(...days(narrow))).toBeLessThan(most);
    const cutFrom = addHours(`${cuts(usual).toSorted()[0]!}T12:00`, 24, 'UTC').slice(0, 10);
    const young = await planOf({ ...small, farms: [{ ...nearFarm, cutFrom }] });
    for (const day of cuts(young)) expect(day >= cutFrom).toBe(true);
    expect((await schedulePlan({ ...small, farms: [{ ...nearFarm, cutFrom: '2027-09-01' }] }, optimiser)).kind).toBe('none');
  });

  it('puts thin and thick sod of one farm on trucks of their own', async () => {
    const lock = (zone: string, programme: 'replace-thin' | 'replace-thick') =>
      ({ zone, window: 'august-home', programme, farm: null }) as const;
    const plan = await planOf({
      ...small,
      farms: [nearFarm],
      locks: [lock('A', 'replace-thick'), lock('B', 'replace-thin')],
      readiness: small.readiness.map((row) =>
        row.zone === 'B' && row.programme === 'replace-thin' ? { ...row, chance: row.chance.map(() => 1) } : row,
      ),
    });
    expect(new Set(plan.orders.map(({ cut }) => cut))).toEqual(new Set(['thin', 'thick']));
    expect(plan.value).toBeCloseTo(plan.cost.total / 100, 0);
  });

  it('crosses only lost or boarded ground, and never new turf', async () => {
    const behind = small.zones.map((zone) => ({ ...zone, boarded: false, route: zone.letter === 'B' ? ['A'] : [] }));
    const plan = await planOf({ ...small, zones: behind });
    expect(of(plan, 'A').programme).toMatch(/^replace/);
    for (const job of of(plan, 'B').jobs.filter(({ job: kind }) =>
      ['strip', 'grade', 'lay', 'spike', 'topdress'].includes(kind),
    )) {
      expect(job.end <= jobOf(plan, 'A', 'lay').start).toBe(true);
    }
    // A live zone on the only way closes every programme with machines behind it.
    const live = small.zones.map((zone) => ({ ...zone, boarded: false, route: zone.letter === 'B' ? ['D'] : [] }));
    const locked = {
      ...small,
      zones: live,
      locks: [{ zone: 'D', window: 'august-home', programme: 'leave' as const, farm: null }],
      readiness: small.readiness.map((row) =>
        row.zone === 'D' && row.programme === 'leave' ? { ...row, chance: row.chance.map(() => 1) } : row,
      ),
    };
    expect((await schedulePlan(locked, optimiser)).kind).toBe('none');
  });

  it('keeps the half-field sequence', async () => {
    const plan = await planOf({ ...small, sequences: [{ before: ['A', 'B'], after: ['C', 'D'] }] });
    const opened = ['C', 'D'].flatMap((letter) =>
      of(plan, letter)
        .jobs.filter(({ job }) => job === 'strip')
        .map(({ start }) => start),
    );
    const laid = ['A', 'B'].map((letter) => jobOf(plan, letter, 'lay').end);
    expect(opened.length).toBeGreaterThan(0);
    expect(opened.sort()[0]! >= laid.sort().at(-1)!).toBe(true);
  });

  it('gives work in a stripped zone the road alone', async () => {
    const route = small.zones.map((zone) => ({ ...zone, route: zone.letter === 'D' ? ['A'] : [] }));
    const plan = await planOf({ ...small, zones: route });
    const shiftsOf = (letter: string, kinds: readonly string[]): number[] =>
      of(plan, letter)
        .jobs.filter(({ job }) => kinds.includes(job))
        .flatMap(({ work }) => work.map(({ shift }) => shift));
    const open = new Set(shiftsOf('A', ['strip', 'grade', 'lay']));
    expect(shiftsOf('D', ['spike', 'topdress']).some((shift) => open.has(shift))).toBe(false);
  });

  it('uses overtime only when the crew does not do', async () => {
    const usual = await planOf(small);
    expect(usual.cost.lines.some(({ kind }) => kind === 'overtime')).toBe(false);
    const few = await planOf({ ...small, workforce: { ...small.workforce, dayCrew: 4, nightCrew: 0, overtimeCrew: 4 } });
    const overtime = few.cost.lines.find(({ kind }) => kind === 'overtime')!;
    expect(overtime.quantity).toBeGreaterThan(0);
    // Laying takes six people: two of them are called in for all its hours at least.
    const laying = few.zones.flatMap(({ jobs }) => jobs).filter(({ job }) => job === 'lay');
    const hours = laying.flatMap(({ work }) => work).reduce((sum, one) => sum + one.hours, 0);
    expect(overtime.quantity).toBeGreaterThanOrEqual(2 * hours - 1e-3);
  });
});

describe('replanning', () => {
  it('leaves done jobs where they are and moves little else', async () => {
    const first = await planOf(small);
    const all = first.zones.flatMap(({ jobs, zone, window }) =>
      jobs.map(({ job, start, end }) => ({ zone, window, job, start, end })),
    );
    const now = '2027-07-20T18:00';
    const done = all.filter(({ end }) => end <= now);
    const open = all.filter(({ start }) => start >= now);
    const underWay = all.filter(({ start, end }) => start < now && end > now);
    expect(done.length).toBeGreaterThan(0);
    const released = first.orders.map(({ window, farm, releaseBy }) => ({ window, farm, at: releaseBy }));
    const again = await planOf({ ...small, now, done: [...done, ...underWay], before: open, released });
    for (const job of done) expect(jobOf(again, job.zone, job.job)).toMatchObject({ start: job.start, end: job.end, done: true });
    expect(again.moved).toEqual([]);
    for (const job of open) expect(jobOf(again, job.zone, job.job).start).toBe(job.start);
  });

  it('lists what had to move when rain takes a shift', async () => {
    const first = await planOf(small);
    const laying = first.zones.flatMap(({ jobs }) => jobs).find(({ job }) => job === 'lay')!;
    const wet = laying.work[0]!.shift;
    const all = first.zones.flatMap(({ jobs, zone, window }) =>
      jobs.map(({ job, start, end }) => ({ zone, window, job, start, end })),
    );
    const again = await planOf({
      ...small,
      shifts: small.shifts.map((shift, index) => (index === wet ? { ...shift, rainChance: 1 } : shift)),
      before: all,
    });
    expect(again.moved.some(({ job }) => job === 'lay')).toBe(true);
    for (const job of again.zones.flatMap(({ jobs }) => jobs))
      if (job.job === 'lay') expect(job.work.some(({ shift }) => shift === wet)).toBe(false);
    for (const { zone, job, from, to } of again.moved) {
      expect(jobOf(first, zone, job).start).toBe(from);
      expect(jobOf(again, zone, job).start).toBe(to);
    }
  });
});

describe('a job held by hand', () => {
  const later = (job: { readonly start: string; readonly end: string }, hours: number) => ({
    start: addHours(job.start, hours, small.timeZone),
    end: addHours(job.end, hours, small.timeZone),
  });

  it('begins at its hour, is worked and manned like any other, and keeps its sod and what comes before it', async () => {
    const first = await planOf(small);
    const zone = first.zones.find(({ farm, slack }) => farm !== null && slack > 24)!;
    const lay = zone.jobs.find(({ job }) => job === 'lay')!;
    const held = [{ zone: zone.zone, window: zone.window, job: 'lay' as const, ...later(lay, 26) }];
    const problem = { ...small, held };
    const plan = await planOf(problem);
    const now = jobOf(plan, zone.zone, 'lay');
    expect(now).toMatchObject({ start: held[0]!.start, done: false });
    expect(now.work.reduce((sum, { hours }) => sum + hours, 0)).toBeCloseTo(
      lay.work.reduce((sum, { hours }) => sum + hours, 0),
      4,
    );
    expect(of(plan, zone.zone).jobs.map(({ job }) => job)).toEqual(zone.jobs.map(({ job }) => job));
    expect(plan.orders.flatMap(({ zones }) => zones).sort()).toEqual(first.orders.flatMap(({ zones }) => zones).sort());
    // The checker knows it by itself: the plan without the hold does not keep it.
    expect(checkPlan(problem, first).join()).toMatch(/lay of zone . in .*: is held at .* and starts at/);
  });

  it('that cannot be worked then is named with its hours, and letting go of it is offered and helps', async () => {
    const first = await planOf(small);
    const zone = first.zones.find(({ farm }) => farm !== null)!;
    const lay = zone.jobs.find(({ job }) => job === 'lay')!;
    const held = small.windows
      .flatMap(({ zones }) => zones)
      .filter(({ letter }) => letter === zone.zone)
      .map(({ letter, from }) => ({ zone: letter, window: zone.window, job: 'lay' as const, start: from, end: lay.end }));
    const answer = await planRecovery({ ...small, held }, optimiser, { mendTime: 20 });
    if (answer.outcome !== 'not-possible') throw new Error(answer.outcome);
    expect(answer.because.reasons.join()).toContain(`it is held at ${held[0]!.start.replace('T', ' ')}`);
    const [mend] = answer.because.mends;
    expect(mend).toMatchObject({ mend: { kind: 'let-go' }, words: 'let the jobs held by hand move again' });
    await planOf(applyMend({ ...small, held }, mend!.mend));
  });
});

describe('several windows', () => {
  const one = sampleProblem({ zones: 2, days: 20 });
  const second = {
    id: 'second-home',
    name: 'Second home date',
    homeDate: '2027-08-07T19:00',
    zones: [{ letter: 'A', from: '2027-07-29T12:00' }],
  };
  const firstWindow = { ...one.windows[0]!, homeDate: '2027-07-27T19:00' };
  const row = (window: string, zone: string, programme: string, after: string | null, chance: number) =>
    ({
      window,
      zone,
      programme,
      after,
      firstDay: '2027-07-18',
      chance: Array.from({ length: 25 }, () => chance),
      shortfall: Array.from({ length: 25 }, () => 0.1),
    }) as RecoveryProblem['readiness'][number];
  const problem: RecoveryProblem = {
    ...one,
    blocks: [],
    windows: [firstWindow, second],
    readiness: [
      row('august-home', 'A', 'recover', null, 0.95),
      row('august-home', 'A', 'replace-thick', null, 0.99),
      row('august-home', 'B', 'leave', null, 1),
      // After a cheap recovery the second home date would need thick sod; after thick sod it can be left.
      row('second-home', 'A', 'leave', 'recover', 0.2),
      row('second-home', 'A', 'leave', 'replace-thick', 0.97),
      row('second-home', 'A', 'recover', 'recover', 0.5),
    ],
  };

  it('lets what comes later decide what is done now', async () => {
    const plan = await planOf(problem);
    expect(plan.zones.find(({ zone, window }) => zone === 'A' && window === 'august-home')!.programme).toBe('replace-thick');
    expect(plan.zones.find(({ zone, window }) => zone === 'A' && window === 'second-home')!.programme).toBe('leave');
    const alone = await planOf({ ...problem, windows: [firstWindow] });
    expect(alone.zones.find(({ zone }) => zone === 'A')!.programme).toBe('recover');
    expect(plan.value).toBeGreaterThan(alone.value);
  });

  it('counts the stock of a farm over all of them', async () => {
    const thick = [
      row('august-home', 'A', 'replace-thick', null, 0.99),
      row('august-home', 'B', 'leave', null, 1),
      row('second-home', 'A', 'replace-thick', null, 0.99),
    ];
    const area = problem.zones[0]!.area * 1.05;
    const enough = { ...problem, readiness: thick, farms: [{ ...farFarm, stock: 2 * area + 1 }] };
    expect((await planOf(enough)).orders).toHaveLength(2);
    expect((await schedulePlan({ ...enough, farms: [{ ...farFarm, stock: 2 * area - 1 }] }, optimiser)).kind).toBe('none');
  });
});

describe('the last allowed hour', () => {
  it('is kept to the hour, and one hour less is too little', async () => {
    const problem = sampleProblem({ zones: 1, days: 10, farms: [nearFarm] });
    const thick = { ...problem, locks: [{ zone: 'A', window: 'august-home', programme: 'replace-thick' as const, farm: null }] };
    const free = await planOf(thick);
    // Pull the home date in by exactly the slack of the earliest plan: the job ends on the latest hour.
    const { finish } = of(free, 'A');
    const lead = 48 + 24 + 24 + 24;
    const home = addHours(finish!, lead, problem.timeZone);
    const readiness = thick.readiness.map((row) => ({ ...row, chance: row.chance.map(() => 1) }));
    const tight = { ...thick, readiness, windows: [{ ...thick.windows[0]!, homeDate: home }] };
    const plan = await planOf(tight);
    expect(of(plan, 'A').finish).toBe(finish);
    expect(of(plan, 'A').slack).toBeCloseTo(0, 6);
    const late = { ...tight, windows: [{ ...tight.windows[0]!, homeDate: addHours(home, -1, problem.timeZone) }] };
    expect((await schedulePlan(late, optimiser)).kind).toBe('none');
  });
});
