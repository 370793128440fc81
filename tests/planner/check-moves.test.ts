import { describe, expect, it } from 'vitest';
import { addHours, hoursBetween, shiftDays } from '#shared/calendar/local-time.ts';
import type { DoneJob, PlannedJob } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkMoves } from '#planner/check-moves.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import { sampleProblem } from '#tests/planner/sample-problem.ts';

const problem = sampleProblem({ zones: 4, days: 10 });
const outcome = await schedulePlan(problem, optimiserOnThisThread());
if (outcome.kind !== 'plan') throw new Error('the sample has a plan');
const { plan } = outcome;
const jobs = plan.zones.flatMap((zone) => zone.jobs);
const at = (job: PlannedJob, start: string, end: string): DoneJob => ({
  zone: job.zone!,
  window: job.window,
  job: job.job,
  start,
  end,
});
const brokenBy = (move: DoneJob): string => checkMoves(problem, plan, [move])[0]!.broken.join('; ');

describe('jobs put at other hours', () => {
  it('break nothing at the hours the plan gave them', () => {
    expect(jobs.length).toBeGreaterThan(4);
    for (const job of jobs) expect(brokenBy(at(job, job.start, job.end))).toBe('');
  });

  it('must wait until the zone is clear', () => {
    const job = jobs[0]!;
    const clear = problem.windows[0]!.zones.find((zone) => zone.letter === job.zone)!.from;
    const early = addHours(clear, -30, problem.timeZone);
    if (early >= problem.now)
      expect(brokenBy(at(job, early, addHours(early, 2, problem.timeZone)))).toMatch(/is clear only from/);
    const past = addHours(problem.now, -2, problem.timeZone);
    expect(brokenBy(at(job, past, addHours(problem.now, 1, problem.timeZone)))).toMatch(/it begins before now/);
  });

  it('keep their order within a zone', () => {
    const zone = plan.zones.find((one) => one.jobs.length > 1)!;
    const [first, second] = zone.jobs as [PlannedJob, PlannedJob];
    const hours = hoursBetween(first.start, first.end, problem.timeZone);
    expect(brokenBy(at(first, second.start, addHours(second.start, hours, problem.timeZone)))).toMatch(
      /would begin before .* ends/,
    );
  });

  it('must leave the latest end of the zone', () => {
    const zone = plan.zones.find((one) => one.jobs.length > 0)!;
    const last = zone.jobs.at(-1)!;
    const [start, end] = [shiftDays(zone.latestFinish, 1), shiftDays(zone.latestFinish, 2)];
    expect(brokenBy(at(last, start, end))).toMatch(/it ends after the latest end/);
  });

  it('do not want more machines at once than there are', () => {
    const busy = jobs.filter((job) => job.machine !== null);
    const [one] = busy;
    const owned = problem.workforce.machines[one!.machine!] ?? 0;
    const same = busy.filter((job) => job.machine === one!.machine);
    const moves = same.map((job) => at(job, one!.start, one!.end));
    const said = checkMoves(problem, plan, moves).flatMap(({ broken }) => broken);
    if (same.length > owned) expect(said.join('; ')).toContain(`are wanted at once, ${owned} on call`);
    else expect(said.join('; ')).not.toContain('on call');
  });

  const opening = (zone: string): readonly PlannedJob[] =>
    jobs.filter((job) => job.zone === zone && problem.jobs.some(({ kind, opensGround }) => kind === job.job && opensGround));
  const [one, other] = plan.zones.map(({ zone }) => zone).filter((zone) => opening(zone).length > 0) as [string, string];

  const later = (job: PlannedJob): PlannedJob => ({ ...job, start: shiftDays(job.start, 20), end: shiftDays(job.end, 20) });
  /** The plan with one zone's jobs far from all others. */
  const apart = {
    ...plan,
    zones: plan.zones.map((zone) => (zone.zone === other ? { ...zone, jobs: zone.jobs.map(later) } : zone)),
  };

  it('do not want more people with a skill at once than there are', () => {
    const [first, second] = [one, other].map((zone) => jobs.find((job) => job.zone === zone && job.job === 'strip')!);
    const skill = { kind: 'ground-machines', people: 1 } as const;
    const said = (people: number): string => {
      const among = {
        ...problem,
        jobs: problem.jobs.map((job) => (job.kind === 'strip' ? { ...job, skill } : job)),
        workforce: { ...problem.workforce, skills: { 'ground-machines': people } },
      };
      return checkMoves(among, apart, [at(second!, first!.start, first!.end)])[0]!.broken.join('; ');
    };
    expect(said(1)).toMatch(/[2-4] who may drive strippers and graders are wanted at once, 1 are there/);
    expect(said(4)).not.toContain('who may');
  });

  it('open the second half only when the first is laid', () => {
    const halves = { ...problem, sequences: [{ before: [one], after: [other] }] };
    const second = later(opening(other)[0]!);
    const said = (move: DoneJob): string => checkMoves(halves, apart, [move])[0]!.broken.join('; ');
    expect(said(at(second, second.start, second.end))).not.toContain('would be opened');
    const first = opening(one).at(-1)!;
    expect(said(at(second, first.start, first.end))).toContain(`zone ${other} would be opened before zone ${one} is laid`);
    expect(said(at(first, second.start, second.end))).toContain(`zone ${other} would be opened before zone ${one} is laid`);
  });
});

describe('machines on their way to a zone', () => {
  const planOf = async (zones: typeof problem.zones, programme: 'recover' | null = null) => {
    const asked = {
      ...problem,
      zones,
      locks: programme === null ? [] : [{ zone: 'D', window: 'august-home', programme, farm: null }],
      readiness: problem.readiness.map((row) =>
        row.zone === 'D' && row.programme === programme ? { ...row, chance: row.chance.map(() => 1) } : row,
      ),
    };
    const answer = await schedulePlan(asked, optimiserOnThisThread());
    if (answer.kind !== 'plan') throw new Error('there is a plan with these ways');
    const of = (letter: string, kind: string): PlannedJob =>
      answer.plan.zones.find(({ zone }) => zone === letter)!.jobs.find(({ job }) => job === kind)!;
    const said = (job: PlannedJob, start: string): string => {
      const end = addHours(start, hoursBetween(job.start, job.end, problem.timeZone), problem.timeZone);
      return checkMoves(asked, answer.plan, [at(job, start, end)])[0]!.broken.join('; ');
    };
    return { of, said };
  };

  it('do not cross new turf without boards, whichever of the two is moved', async () => {
    const { of, said } = await planOf(
      problem.zones.map((zone) => ({ ...zone, boarded: false, route: zone.letter === 'B' ? ['A'] : [] })),
    );
    const [strip, lay] = [of('B', 'strip'), of('A', 'lay')];
    const words = 'machines for zone B would cross the new turf of zone A';
    expect(said(strip, strip.start)).toBe('');
    expect(said(strip, shiftDays(lay.start, 1))).toContain(words);
    expect(said(lay, strip.start)).toContain(words);
  });

  it('do not pass while the ground on their way is open', async () => {
    const ways = problem.zones.map((zone) => ({ ...zone, route: zone.letter === 'D' ? ['A'] : [] }));
    const { of, said } = await planOf(ways, 'recover');
    const [spike, strip] = [of('D', 'spike'), of('A', 'strip')];
    const words = 'the way of machines for zone D is closed by open ground in zone A';
    expect(said(spike, spike.start)).toBe('');
    expect(said(spike, strip.start)).toContain(words);
    expect(said(strip, spike.start)).toContain(words);
  });
});
