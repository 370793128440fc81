import { describe, expect, it } from 'vitest';
import { addHours } from '#shared/calendar/local-time.ts';
import type { NotPossible, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { PlanAnswer } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkPlan } from '#planner/check-plan.ts';
import { applyMend } from '#planner/mends.ts';
import { planRecovery } from '#planner/not-possible.ts';
import { nearFarm, sampleProblem } from '#tests/planner/sample-problem.ts';

const optimiser = optimiserOnThisThread();
const base = sampleProblem({ zones: 4, days: 10, farms: [nearFarm] });
const window = base.windows[0]!;

const because = async (problem: RecoveryProblem): Promise<NotPossible> => {
  const answer = await planRecovery(problem, optimiser);
  expect(PlanAnswer.safeParse(answer).error?.issues ?? []).toEqual([]);
  if (answer.outcome !== 'not-possible') throw new Error(`there is ${answer.outcome}`);
  return answer.because;
};

/** Every mend that is offered makes the problem possible. */
const applied = async (problem: RecoveryProblem, { mends }: NotPossible): Promise<void> => {
  expect(mends.length).toBeGreaterThan(0);
  expect(mends.length).toBeLessThanOrEqual(3);
  for (const { mend } of mends) {
    const mended = applyMend(problem, mend);
    const answer = await planRecovery(mended, optimiser);
    expect(answer.outcome, JSON.stringify(mend)).toBe('plan');
    if (answer.outcome === 'plan') expect(checkPlan(mended, answer.plan)).toEqual([]);
  }
};

const later = (problem: RecoveryProblem, hours: number): RecoveryProblem => ({
  ...problem,
  windows: problem.windows.map((one) => ({
    ...one,
    zones: one.zones.map((zone) => ({ ...zone, from: addHours(zone.from, hours, problem.timeZone) })),
  })),
});

/** A changed plan, or a reason with mends that work. */
const changedOrMended = async (problem: RecoveryProblem): Promise<'plan' | NotPossible> => {
  const answer = await planRecovery(problem, optimiser);
  if (answer.outcome === 'plan') {
    const first = await planRecovery(base, optimiser);
    expect(first.outcome === 'plan' && first.plan.zones).not.toEqual(answer.plan.zones);
    return 'plan';
  }
  expect(answer.outcome).toBe('not-possible');
  if (answer.outcome !== 'not-possible') throw new Error('stopped');
  await applied(problem, answer.because);
  return answer.because;
};

describe('not possible because', { timeout: 180_000 }, () => {
  it('the farm needs more notice than there is: the smallest cut of the notice is offered', async () => {
    const problem = { ...base, farms: [{ ...nearFarm, notice: 200 }] };
    const answer = await changedOrMended(problem);
    if (answer === 'plan') throw new Error('possible after all');
    const offer = answer.mends.find(({ mend }) => mend.kind === 'shorter-notice')!;
    const hours = offer.mend.kind === 'shorter-notice' ? offer.mend.hours : 0;
    expect(offer.words).toBe(`Near Farm needs ${hours} h less notice`);
    const less = await planRecovery(
      applyMend(problem, { kind: 'shorter-notice', farm: 'near-farm', hours: hours - 1 }),
      optimiser,
      { mendTime: 0 },
    );
    expect(less.outcome).toBe('not-possible');
    expect(answer.noHelp).toContain('more people');
  });

  it('people are away: how many, on how many shifts, at what price', async () => {
    const problem = { ...base, workforce: { ...base.workforce, dayCrew: 5, nightCrew: 2, overtimeCrew: 0 } };
    const answer = await changedOrMended(problem);
    if (answer === 'plan') throw new Error('possible after all');
    expect(answer.reasons[0]).toContain('it takes 6 people and there are 5');
    const offer = answer.mends[0]!;
    expect(offer.mend).toEqual({ kind: 'more-people', people: 1 });
    expect(offer.words).toMatch(/^one more person on \w+ shifts?$/);
    expect(offer.price).toBeGreaterThan(0);
  });

  it('two people away from a crew that has more: the plan changes', async () => {
    expect(await changedOrMended({ ...base, workforce: { ...base.workforce, dayCrew: 5, nightCrew: 2 } })).toBe('plan');
  });

  it('the strike is 14 h late: the plan changes', async () => {
    expect(await changedOrMended(later(base, 14))).toBe('plan');
  });

  it('the strike is 80 h late: an earlier strike, a zone less or a later date', async () => {
    const answer = await changedOrMended(later(base, 80));
    if (answer === 'plan') throw new Error('possible after all');
    expect(answer.reasons[0]).toMatch(/^Zone A cannot be ready for Home date after the concert\. /);
    expect(answer.reasons[0]).toMatch(/would end \d+ h after/);
    expect(answer.firstDate).not.toBeNull();
    expect(answer.firstDate! > window.homeDate).toBe(true);
    // The first date that can be met can be met, and the day before it not.
    const days = Math.round((Date.parse(`${answer.firstDate}:00Z`) - Date.parse(`${window.homeDate}:00Z`)) / 86_400_000);
    const at = async (moved: number) =>
      (
        await planRecovery(applyMend(later(base, 80), { kind: 'later-home-date', window: window.id, days: moved }), optimiser, {
          mendTime: 0,
        })
      ).outcome;
    expect(await at(days)).toBe('plan');
    if (days > 1) expect(await at(days - 1)).toBe('not-possible');
  });

  it('a second night takes two days: a changed plan or mends that work', async () => {
    const second = later(base, 48);
    await changedOrMended({
      ...second,
      blocks: [
        ...base.blocks,
        { kind: 'event', name: 'Second night', from: '2027-07-18T12:00', until: '2027-07-20T12:00', zones: null },
      ],
    });
  });

  it('the trucks do not suffice', async () => {
    const answer = await changedOrMended({ ...base, farms: [{ ...nearFarm, trucksPerDay: 1 }] });
    if (answer === 'plan') throw new Error('possible after all');
    expect(answer.reasons[0]).toContain('Receive and lay rolls cannot start: Near Farm sends 1 truck a day, ');
    const offer = answer.mends.find(({ mend }) => mend.kind === 'more-trucks')!;
    expect(offer.words).toMatch(/more trucks? of Near Farm on \w+ days?$/);
    expect(offer.price! % nearFarm.truckPrice!).toBe(0);
  });

  it('a machine is missing', async () => {
    const machines = { ...base.workforce.machines, grader: 0 };
    const answer = await changedOrMended({ ...base, workforce: { ...base.workforce, machines } });
    if (answer === 'plan') throw new Error('possible after all');
    expect(answer.reasons[0]).toContain('there is no grader');
    expect(answer.mends[0]!.words).toBe('one more grader');
  });

  it('nothing helps but giving the zones up, which are named', async () => {
    const readiness = base.readiness.map((row) => (row.zone === 'A' ? { ...row, chance: row.chance.map(() => 0.1) } : row));
    const answer = await because({ ...base, readiness });
    expect(answer.mends.map(({ words }) => words)).toEqual(['zone A not ready']);
    await applied({ ...base, readiness }, answer);
    expect(answer.firstDate).toBeNull();
  });
});
