import { addDays, addHours, dateOf, daysBetween } from '#shared/calendar/local-time.ts';
import { checkPlan } from '#planner/check-plan.ts';
import type { Optimiser } from '#planner/optimiser.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import type { PlanningOptions } from '#planner/planning-run.ts';
import type { Setting } from '#planner/setting.ts';
import { settingOf } from '#planner/setting.ts';
import type { JobKind, RecoveryPlan, RecoveryProblem, ZonePlan } from '#shared/vocabulary/plan.ts';

/** Rounds in which zones that rain leaves below the target are given a day more each. */
const mostRounds = 3;
/** Chance that another day must bring, else more days are not asked for. */
const leastGain = 0.005;
const day = 24;

type Buffers = NonNullable<RecoveryProblem['buffers']>;

/**
 * A plan pushed through the weather of every member: the order of the jobs stays, work that rain stops waits for the next day, what follows
 * waits for it. Where that leaves a zone below the chance the venue asks for, its work is asked to end a day earlier and planned anew, at
 * most three times and only as long as that helps; zones that stay below are named. Without members the plan stays as it is.
 */
export const weathered = async (
  problem: RecoveryProblem,
  plan: RecoveryPlan,
  optimiser: Optimiser,
  options: PlanningOptions = {},
): Promise<RecoveryPlan> => {
  if (problem.windows.every(({ rain }) => rain === undefined || rain.members.length === 0)) return plan;
  const setting = settingOf(problem);
  let best = inRain(setting, plan);
  let buffers: Buffers = [];
  let latest = best;
  for (let round = 0; round < mostRounds && below(problem, latest).length > 0; round += 1) {
    if (options.signal?.aborted) break;
    buffers = moreBuffer(buffers, below(problem, latest));
    const outcome = await schedulePlan({ ...problem, buffers }, optimiser, options);
    if (outcome.kind !== 'plan') break;
    const next = inRain(setting, withoutBuffers(problem, outcome.plan, buffers));
    const gained = leastChance(next) - leastChance(latest);
    latest = next;
    if (leastChance(next) > leastChance(best) + leastGain) best = next;
    if (gained < leastGain) break;
  }
  const broken = checkPlan(problem, best);
  if (broken.length > 0) throw new Error(`the plan breaks its own rules: ${broken.slice(0, 3).join('; ')}`);
  return { ...best, cautions: [...best.cautions, ...below(problem, best).map(cautionOf(problem))] };
};

/** Zones with work whose chance in the rain lies below the target although their table alone does not. */
const below = ({ rules }: RecoveryProblem, plan: RecoveryPlan): readonly ZonePlan[] =>
  plan.zones.filter(({ finish, chanceInRain }) => finish !== null && (chanceInRain ?? 1) < rules.chanceNeeded - 1e-9);

const leastChance = ({ zones }: RecoveryPlan): number => Math.min(1, ...zones.map(({ chanceInRain }) => chanceInRain ?? 1));

const cautionOf =
  ({ rules, windows }: RecoveryProblem) =>
  ({ zone, window, chanceInRain }: ZonePlan): string =>
    `Zone ${zone}, ${windows.find(({ id }) => id === window)!.name}: when the work waits out the rain it is ready with a chance of ${Math.round(100 * chanceInRain!)} %, ${Math.round(100 * rules.chanceNeeded)} % are asked for. No plan with more in hand does better.`;

const moreBuffer = (buffers: Buffers, zones: readonly ZonePlan[]): Buffers => {
  const kept = new Map(buffers.map((one) => [`${one.zone}|${one.window}`, one]));
  for (const { zone, window } of zones) {
    const key = `${zone}|${window}`;
    kept.set(key, { zone, window, hours: (kept.get(key)?.hours ?? 0) + day });
  }
  return [...kept.values()];
};

/** The latest hours and the time in hand of a plan made with buffers, told against the real deadlines. */
const withoutBuffers = ({ timeZone }: RecoveryProblem, plan: RecoveryPlan, buffers: Buffers): RecoveryPlan => ({
  ...plan,
  zones: plan.zones.map((zone) => {
    const hours = buffers.find((one) => one.zone === zone.zone && one.window === zone.window)?.hours ?? 0;
    return { ...zone, latestFinish: addHours(zone.latestFinish, hours, timeZone), slack: zone.slack + hours };
  }),
});

/** Every zone with its chance over the members. */
const inRain = (setting: Setting, plan: RecoveryPlan): RecoveryPlan => ({
  ...plan,
  zones: plan.zones.map((zone) => {
    const { rain } = setting.problem.windows.find(({ id }) => id === zone.window)!;
    if (!rain || rain.members.length === 0) return zone;
    const sum = rain.members.reduce(
      (all, member) => all + chanceAt(setting, plan, zone, finishInRain(setting, zone, rain.from, member)),
      0,
    );
    return { ...zone, chanceInRain: Math.min(1, sum / rain.members.length) };
  }),
});

/** h since the first shift at which the last job of a zone ends in one member; null where nothing is done. */
export const finishInRain = (setting: Setting, zone: ZonePlan, from: string, rain: string): number | null => {
  const { clock, jobs, hours } = setting;
  const isWet = (date: string): boolean => rain[daysBetween(from, date)] === '1';
  let over: number | null = null;
  for (const job of zone.jobs) {
    if (job.done) continue;
    const kind = jobs.get(job.job)!;
    const [start, end] = [clock.hourOf(job.start), clock.hourOf(job.end)];
    // What lay between two jobs beyond the lag they need takes up delay; the rest moves the job by whole days, to the same hour.
    const late: number = over === null ? 0 : Math.max(0, over + lagBefore(setting, zone, job.job) - start);
    let begin = start + day * Math.ceil(late / day - 1e-9);
    let length = end - start;
    if (kind.stoppedBy.includes('rain')) {
      const last = clock.timeAt(hours.shifts.at(-1)![1]);
      for (let date = dateOf(clock.timeAt(begin)); isWet(date) && date <= last; date = addDays(date, 1)) begin += day;
      const worked = new Set(job.work.map(({ shift }) => dateOf(setting.problem.shifts[shift]!.start)));
      const moved = daysBetween(dateOf(job.start), dateOf(clock.timeAt(begin)));
      // Wet days among those after the first push the rest of the job a day each.
      length += day * [...worked].slice(1).filter((date) => isWet(addDays(date, moved))).length;
    }
    over = begin + length;
  }
  return over;
};

/** h between a job and the last one before it that takes hours: its own lag and those of jobs that only wait. */
const lagBefore = ({ problem, jobs }: Setting, zone: ZonePlan, job: JobKind): number => {
  const order = problem.programmes.find(({ kind }) => kind === zone.programme)!.jobs;
  const at = order.indexOf(job);
  const before = order.slice(0, at).findLastIndex((kind) => zone.jobs.some((one) => one.job === kind));
  return order.slice(before + 1, at + 1).reduce((sum, kind) => sum + jobs.get(kind)!.lagAtLeast, 0);
};

/** Chance of being ready when the work ends then: none once the test and the paint cannot follow. */
const chanceAt = (setting: Setting, plan: RecoveryPlan, zone: ZonePlan, finish: number | null): number => {
  const { problem, clock, readiness } = setting;
  if (finish === null) return zone.chanceReady;
  // The time kept in hand is there to be used by rain.
  if (finish > clock.hourOf(zone.latestFinish) + problem.rules.contingency + 1e-9) return 0;
  const place = problem.windows.findIndex(({ id }) => id === zone.window);
  const before = problem.windows
    .slice(0, place)
    .flatMap(({ id }) => plan.zones.filter((other) => other.zone === zone.zone && other.window === id))
    .at(-1);
  const date = dateOf(clock.timeAt(finish));
  return readiness.at(zone.zone, zone.window, zone.programme, before?.programme ?? null, date)?.chance ?? 0;
};
