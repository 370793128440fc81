import { beforeAll, describe, expect, it } from 'vitest';
import { addHours, hoursBetween, shiftDays } from '#shared/calendar/local-time.ts';
import type { DoneJob, PlannedJob, RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkMoves } from '#planner/check-moves.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import { nearFarm, sampleProblem } from '#tests/planner/sample-problem.ts';

/*
 * What comes with a job that is moved by hand: the trucks of its sod with the gate they pass, and the light rigs with the power they draw.
 */

const optimiser = optimiserOnThisThread();
const planOf = async (problem: RecoveryProblem): Promise<RecoveryPlan> => {
  const outcome = await schedulePlan(problem, optimiser);
  if (outcome.kind !== 'plan') throw new Error(`no plan: ${JSON.stringify(outcome)}`);
  return outcome.plan;
};
const small = sampleProblem({ zones: 4, days: 10, farms: [nearFarm] });
const { timeZone } = small;
const lock = (zone: string, programme: 'replace-thick' | 'recover-under-lights', window = 'august-home') =>
  ({ zone, window, programme, farm: null }) as const;

/** The job at the same clock hour so many days on, or beginning at an hour. */
const moved = (job: PlannedJob, to: number | string): DoneJob => {
  const start = typeof to === 'string' ? to : shiftDays(job.start, to);
  const end = addHours(start, hoursBetween(job.start, job.end, timeZone), timeZone);
  return { zone: job.zone!, window: job.window, job: job.job, start, end };
};
const jobOf = (plan: RecoveryPlan, zone: string, kind: PlannedJob['job'], window = 'august-home'): PlannedJob =>
  plan.zones.find((one) => one.zone === zone && one.window === window)!.jobs.find(({ job }) => job === kind)!;

describe('the sod of a lay put at other hours', { timeout: 120_000 }, () => {
  const thick: RecoveryProblem = {
    ...small,
    locks: ['A', 'B', 'C'].map((zone) => lock(zone, 'replace-thick')),
    workforce: { ...small.workforce, dayCrew: 20, nightCrew: 20 },
  };
  const gated = (rules: Partial<RecoveryProblem['rules']>): RecoveryProblem => ({
    ...thick,
    rules: { ...thick.rules, ...rules },
  });
  let plan: RecoveryPlan;
  beforeAll(async () => {
    plan = await planOf(thick);
  });
  const said = (problem: RecoveryProblem, ...moves: readonly DoneJob[]): string =>
    checkMoves(problem, plan, moves)[0]!.broken.join('; ');

  it('comes with it: a later day breaks nothing of the delivery', () => {
    const lay = jobOf(plan, 'A', 'lay');
    expect(said(thick, moved(lay, 0))).toBe('');
    expect(said(thick, moved(lay, 1))).toBe('roll, sand seams, water would begin before lay sod ends');
  });

  it('cannot be released earlier than now, or than it was', () => {
    const lay = jobOf(plan, 'A', 'lay');
    // Notice 48 h, road 5 h and cutting before the first roll: two days after now no truck can be there.
    const early = moved(lay, addHours(thick.now, 50, timeZone));
    expect(said(thick, early)).toMatch(
      /the sod for zone [A-C, ]+ would have to be released by \w+ \d+ \w+ \d\d:\d\d, earlier than it can be/,
    );
    const at = addHours(thick.now, -24, timeZone);
    const given = { ...thick, released: [{ window: 'august-home', farm: nearFarm.id, at }] };
    expect(said(given, early)).not.toContain('released by');
  });

  it('waits inside a gate that lets it in only in its hours, and may lie too long for it', () => {
    const settings = { ...thick.settings, rollHours: 18, rollHoursHot: 18 };
    const morning = { ...gated({ gateHours: { from: '06:00', until: '06:30' } }), settings };
    const lay = jobOf(plan, 'C', 'lay');
    const day = shiftDays(lay.start, 1).slice(0, 10);
    const [evening, dawn] = [moved(lay, `${day}T20:00`), moved(lay, `${day}T06:10`)];
    expect(said(morning, evening)).toMatch(
      /the sod of truck \d+ would lie \d+ h in the roll, 18 h are the limit, because the gate lets it in at \w+ \d+ \w+ 06:30/,
    );
    expect(said({ ...thick, settings }, evening)).not.toContain('in the roll');
    expect(said(morning, dawn)).not.toContain('in the roll');
  });

  it('takes a slot that is free: so many trucks within an hour and no more', async () => {
    const rules = { gateTrucksPerHour: 1 };
    const one = await planOf(gated(rules));
    const [lay, other] = [jobOf(one, 'C', 'lay'), jobOf(one, 'A', 'lay')];
    const trucks = one.orders.flatMap((order) => order.trucks);
    expect(trucks.every(({ zones }) => !(zones.includes('C') && zones.includes('A')))).toBe(true);
    // Half an hour inside the gate is allowed; who finds his hour taken waits longer.
    const settings = { ...thick.settings, rollHours: nearFarm.haul + thick.settings.cutHours + 0.5, rollHoursHot: 8 };
    const among = (perHour: number): string =>
      checkMoves({ ...gated({ gateTrucksPerHour: perHour }), settings }, one, [moved(lay, other.start)])[0]!.broken.join('; ');
    expect(among(1)).toMatch(/the sod of truck \d+ would lie \d+ h in the roll, .* because the gate lets it in at/);
    expect(among(9)).not.toContain('because the gate');
  });

  it('keeps to the trucks that the gate takes and the farm sends in a day', async () => {
    const rules = { gateTrucks: 3 };
    const few = { ...gated(rules), farms: [{ ...nearFarm, trucksPerDay: 4 }] };
    const spread = await planOf(few);
    const day = jobOf(spread, 'A', 'lay').start.slice(0, 10);
    const together = ['B', 'C'].map((zone) => moved(jobOf(spread, zone, 'lay'), `${day}T12:00`));
    const words = (problem: RecoveryProblem): string => checkMoves(problem, spread, together)[0]!.broken.join('; ');
    const count = spread.orders.flatMap((order) => order.trucks).length;
    expect(count).toBeGreaterThan(4);
    expect(words(few)).toContain(`${count} trucks would come on ${day}, the gate takes 3`);
    expect(words(few)).toContain(`Near Farm would send ${count} trucks on ${day}, it has 4`);
    const many = { ...gated({ gateTrucks: count }), farms: [{ ...nearFarm, trucksPerDay: count }] };
    expect(words(many)).not.toMatch(/trucks would come|would send/);
  });

  it('is not cut on a closed day, nor before the crop is old enough', () => {
    const cutOf = (lay: DoneJob): string => addHours(lay.start, -nearFarm.haul - thick.settings.cutHours, timeZone).slice(0, 10);
    const lay = jobOf(plan, 'A', 'lay');
    const [later, earlier] = [moved(lay, 2), moved(lay, -1)];
    const farm = (changes: Partial<typeof nearFarm>): RecoveryProblem => ({ ...thick, farms: [{ ...nearFarm, ...changes }] });
    expect(said(farm({ blockedDays: [cutOf(later)] }), later)).toContain(`Near Farm does not cut on ${cutOf(later)}`);
    expect(said(farm({ blockedDays: [cutOf(earlier)] }), later)).not.toContain('does not cut');
    const cutFrom = cutOf(moved(lay, 0));
    expect(said(farm({ cutFrom }), earlier)).toContain(`the crop of Near Farm is too young before ${cutFrom}`);
    expect(said(farm({ cutFrom }), later)).not.toContain('too young');
  });
});

describe('light rigs set at other hours', { timeout: 120_000 }, () => {
  const second = {
    id: 'second-home',
    name: 'Second home date',
    homeDate: '2027-08-08T19:00',
    zones: [{ letter: 'D', from: '2027-07-29T12:00' }],
  };
  const row = (zone: string, window: string): RecoveryProblem['readiness'][number] => ({
    zone,
    window,
    programme: 'recover-under-lights',
    after: null,
    firstDay: '2027-07-18',
    chance: Array.from({ length: 25 }, () => 1),
    shortfall: Array.from({ length: 25 }, () => 0),
  });
  const long = sampleProblem({ zones: 4, days: 22 });
  const [c, d] = ['C', 'D'].map((zone) => Math.ceil(long.zones.find(({ letter }) => letter === zone)!.area / 30)) as [
    number,
    number,
  ];
  const most = Math.max(c, d);
  const lit = (rigs: number, lightPower?: number): RecoveryProblem => ({
    ...long,
    blocks: [],
    rigs: { area: 30, power: 6 },
    windows: [{ ...long.windows[0]!, homeDate: '2027-07-28T19:00', zones: [{ letter: 'C', from: '2027-07-18T12:00' }] }, second],
    readiness: [row('C', 'august-home'), row('D', 'second-home')],
    locks: [lock('C', 'recover-under-lights'), lock('D', 'recover-under-lights', 'second-home')],
    workforce: {
      ...long.workforce,
      machines: { ...long.workforce.machines, 'light-rig': rigs },
      ...(lightPower === undefined ? {} : { lightPower }),
    },
  });
  let plan: RecoveryPlan;
  beforeAll(async () => {
    plan = await planOf(lit(most, 6 * most));
  });
  const said = (problem: RecoveryProblem, days: number): string => {
    const lights = jobOf(plan, 'D', 'lights', 'second-home');
    return checkMoves(problem, plan, [moved(lights, days)])[0]!.broken.join('; ');
  };

  it('are no more than there are as long as those of the other home date stand', () => {
    expect(said(lit(most), 0)).toBe('');
    expect(said(lit(most), 1)).not.toContain('rigs');
    expect(said(lit(most), -8)).toContain(`${c + d} light rigs would stand at once, there are ${most}`);
    expect(said(lit(c + d), -8)).not.toContain('rigs');
  });

  it('draw no more than the supply gives', () => {
    const power = 6 * (c + d);
    expect(said(lit(c + d, power - 1), -8)).toContain(
      `the light rigs would draw ${power} kW at once, the supply gives ${power - 1} kW`,
    );
    expect(said(lit(c + d, power), -8)).not.toContain('draw');
    expect(said(lit(c + d, power - 1), 0)).not.toContain('draw');
  });
});
