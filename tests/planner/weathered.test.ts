import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, shiftDays } from '#shared/calendar/local-time.ts';
import type { RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { checkPlan } from '#planner/check-plan.ts';
import { planRecovery } from '#planner/not-possible.ts';
import { finishInRain } from '#planner/weathered.ts';
import { settingOf } from '#planner/setting.ts';
import { nearFarm, sampleProblem } from '#tests/planner/sample-problem.ts';

const optimiser = optimiserOnThisThread();
const small = sampleProblem({ zones: 3, days: 16, farms: [nearFarm] });
const first = small.shifts[0]!.start.slice(0, 10);
const count = daysBetween(first, small.windows[0]!.homeDate.slice(0, 10)) + 1;
/** One member: the days on which it rains. */
const wet = (rains: (date: string) => boolean): string =>
  Array.from({ length: count }, (_, day) => (rains(addDays(first, day)) ? '1' : '0')).join('');
const withRain = (members: readonly string[]): RecoveryProblem => ({
  ...small,
  windows: small.windows.map((window) => ({ ...window, rain: { from: first, members } })),
});
const planOf = async (problem: RecoveryProblem): Promise<RecoveryPlan> => {
  const answer = await planRecovery(problem, optimiser);
  if (answer.outcome !== 'plan') throw new Error(answer.outcome);
  expect(checkPlan(problem, answer.plan)).toEqual([]);
  return answer.plan;
};

describe('a plan in the rain of the members', { timeout: 120_000 }, () => {
  it('is as likely as the table says where it never rains', async () => {
    const plan = await planOf(withRain([wet(() => false), wet(() => false)]));
    for (const zone of plan.zones) expect(zone.chanceInRain).toBeCloseTo(zone.chanceReady, 9);
    expect(plan.cautions.join()).not.toContain('rain');
    const dry = await planOf(small);
    expect(dry.zones.every(({ chanceInRain }) => chanceInRain === undefined)).toBe(true);
    expect(plan.zones.map(({ finish }) => finish)).toEqual(dry.zones.map(({ finish }) => finish));
  });

  it('moves work that rain stops to the next dry day, what follows with it, and nothing else', async () => {
    const plan = await planOf(small);
    const setting = settingOf(small);
    const zone = plan.zones.find(({ programme }) => programme.startsWith('replace'))!;
    const lay = zone.jobs.find(({ job }) => job === 'lay')!;
    const strip = zone.jobs.find(({ job }) => job === 'strip')!;
    const over = (rain: string): string => setting.clock.timeAt(finishInRain(setting, zone, first, rain)!);
    expect(over(wet(() => false))).toBe(zone.finish);
    const day = lay.start.slice(0, 10);
    const once = over(wet((date) => date === day));
    expect(once > zone.finish!).toBe(true);
    expect(once <= shiftDays(zone.finish!, 1)).toBe(true);
    const twice = over(wet((date) => date === day || date === addDays(day, 1)));
    expect(twice).toBe(shiftDays(once, 1));
    // Stripping goes on in the rain; only frost stops it.
    if (strip.start.slice(0, 10) !== day) expect(over(wet((date) => date === strip.start.slice(0, 10)))).toBe(zone.finish);
  });

  it('names the zones that rain leaves below the target, whatever is kept in hand', async () => {
    // In four members of ten it rains from the first day on: work that rain stops is never done.
    const members = Array.from({ length: 10 }, (_, member) => wet(() => member < 4));
    const plan = await planOf(withRain(members));
    const laid = plan.zones.filter(({ jobs }) => jobs.some(({ job }) => job === 'lay'));
    expect(laid.length).toBeGreaterThan(0);
    for (const zone of laid) {
      expect(zone.chanceInRain).toBeLessThanOrEqual(0.6);
      expect(plan.cautions.some((words) => words.startsWith(`Zone ${zone.zone},`) && words.includes('90 % are asked for'))).toBe(
        true,
      );
    }
  });

  it('asks for more time in hand where that helps, and pays for it', async () => {
    const start = '2027-07-18';
    const late = addDays(start, 10);
    const one = sampleProblem({
      zones: 1,
      days: 16,
      farms: [
        { ...nearFarm, id: 'dear', thickPrice: 3000 },
        { ...nearFarm, id: 'cheap', thickPrice: 900, cutFrom: late },
      ],
    });
    const locked = { ...one, locks: [{ zone: 'A', window: 'august-home', programme: 'replace-thick' as const, farm: null }] };
    const dry = await planOf(locked);
    expect(dry.orders[0]!.farm).toBe('cheap');
    expect(dry.zones[0]!.slack).toBeLessThan(24);
    // From the day on which the cheap sod could be laid it rains in three members of ten.
    const members = Array.from({ length: 10 }, (_, member) => wet((date) => member < 3 && date >= late));
    const rainy = { ...locked, windows: locked.windows.map((window) => ({ ...window, rain: { from: first, members } })) };
    const plan = await planOf(rainy);
    expect(plan.orders[0]!.farm).toBe('dear');
    expect(plan.zones[0]!.slack).toBeGreaterThanOrEqual(24);
    expect(plan.zones[0]!.latestFinish).toBe(dry.zones[0]!.latestFinish);
    expect(plan.zones[0]!.chanceInRain).toBeGreaterThanOrEqual(0.9);
    expect(plan.cost.total).toBeGreaterThan(dry.cost.total);
  });
});
