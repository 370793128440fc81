import { clockOf, hoursBetween } from '#shared/calendar/local-time.ts';
import type { DoneJob, Job, PlannedJob, RecoveryPlan, RecoveryProblem, WeatherStop, ZonePlan } from '#shared/vocabulary/plan.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import { momentWords } from '#shared/wording/moments.ts';
import { movedOrders, ofDeliveries } from '#planner/check-deliveries.ts';
import { ofWays } from '#planner/check-ways.ts';
import { rigsOn, skilledPeople } from '#planner/limits.ts';
import type { Setting } from '#planner/setting.ts';
import { settingOf } from '#planner/setting.ts';
import { jobWords, machineWords, skillWords } from '#shared/wording/words.ts';

/** A job put at other hours, and the rules it would break there; none where it keeps them all. */
export interface MoveFinding {
  readonly zone: string;
  readonly window: string;
  readonly job: DoneJob['job'];
  readonly broken: readonly string[];
}

interface Span {
  readonly start: LocalTime;
  readonly end: LocalTime;
}
const overlap = (one: Span, other: Span): boolean => one.start < other.end && other.start < one.end;

/**
 * The rules that jobs of a plan break when they are put at other hours, all other jobs staying where they are and the trucks of a lay moving
 * with it. What the plan itself seems to break is not told: a job that pauses overnight spans a curfew without working in it.
 */
export const checkMoves = (problem: RecoveryProblem, plan: RecoveryPlan, moves: readonly DoneJob[]): readonly MoveFinding[] => {
  const planned = moves.flatMap((move) => {
    const job = plan.zones.flatMap((zone) => zone.jobs).find((one) => isOf(move, one));
    return job ? [{ ...move, start: job.start, end: job.end }] : [];
  });
  const setting = moves.some((move) => isOpenLay(problem, move)) ? settingOf(problem) : null;
  const before = findings(problem, plan, planned, setting);
  return findings(problem, plan, moves, setting).map((found) => {
    const known = before.find((one) => one.zone === found.zone && one.window === found.window && one.job === found.job);
    return { ...found, broken: found.broken.filter((words) => !known?.broken.includes(words)) };
  });
};

const isOf = (move: DoneJob, job: PlannedJob): boolean =>
  move.zone === job.zone && move.window === job.window && move.job === job.job;

/** A lay that is still to come, with its sod. */
const isOpenLay = ({ now }: RecoveryProblem, { job, end }: Pick<DoneJob, 'job' | 'end'>): boolean => job === 'lay' && end > now;

const findings = (
  problem: RecoveryProblem,
  plan: RecoveryPlan,
  moves: readonly DoneJob[],
  setting: Setting | null,
): readonly MoveFinding[] => {
  const moved = (job: PlannedJob): PlannedJob => {
    const move = moves.find((one) => isOf(one, job));
    return move ? { ...job, start: move.start, end: move.end } : job;
  };
  const zones = plan.zones.map((zone) => ({ ...zone, jobs: zone.jobs.map(moved) }));
  const all = [...zones.flatMap((zone) => zone.jobs), ...plan.fieldJobs];
  const orders = setting ? movedOrders(setting, plan, all) : [];
  return moves.map(({ zone: letter, window, job: kind }) => {
    const zone = zones.find((one) => one.zone === letter && one.window === window);
    const at = zone?.jobs.findIndex((one) => one.job === kind) ?? -1;
    if (!zone || at < 0) return { zone: letter, window, job: kind, broken: ['the plan has no such job'] };
    const job = zone.jobs[at]!;
    const broken = [
      ...ofHours(problem, job),
      ...ofOrder(problem, zone.jobs, at),
      ...(at === zone.jobs.length - 1 && job.end > zone.latestFinish
        ? [`it ends after the latest end, ${momentWords(zone.latestFinish)}`]
        : []),
      ...ofCapacity(problem, all, job),
      ...ofHalves(problem, all, job),
      ...ofRigs(problem, zones, job),
      ...ofWays(problem, zones, job),
      ...(setting && isOpenLay(problem, job) ? ofDeliveries(setting, plan, orders, job) : []),
    ];
    return { zone: letter, window, job: kind, broken };
  });
};

const libraryJob = (problem: RecoveryProblem, kind: DoneJob['job']): Job | undefined =>
  problem.jobs.find((one) => one.kind === kind);

/** Now, the zone being clear, events and practice, curfew, daylight, weather. What is over already keeps its hours, whatever they were. */
const ofHours = (problem: RecoveryProblem, job: PlannedJob): readonly string[] => {
  if (job.end <= problem.now) return [];
  const kind = libraryJob(problem, job.job);
  const clear = problem.windows.find((window) => window.id === job.window)?.zones.find((zone) => zone.letter === job.zone)?.from;
  const taken = problem.blocks.filter(
    (block) =>
      overlap(job, { start: block.from, end: block.until }) && (block.zones === null || block.zones.includes(job.zone ?? '')),
  );
  const shifts = problem.shifts.filter((shift) => overlap(job, shift));
  const works = job.crew > 0 || job.machine !== null;
  const stops: Readonly<Record<WeatherStop, boolean>> = {
    rain: shifts.some((shift) => shift.rainChance > problem.settings.rainMask),
    wind: shifts.some((shift) => shift.windy),
    frost: shifts.some((shift) => shift.frozen),
    saturation: shifts.some((shift) => shift.saturated),
    heat: shifts.some((shift) => shift.hot),
  };
  return [
    ...(job.start < problem.now ? [`it begins before now, ${momentWords(problem.now)}`] : []),
    ...(clear !== undefined && job.start < clear ? [`zone ${job.zone} is clear only from ${momentWords(clear)}`] : []),
    ...(works ? taken.map((block) => `the field is taken: ${block.name}`) : []),
    ...(kind?.noisy && works && inCurfew(problem, job) ? ['it is noisy and falls into the curfew'] : []),
    ...(kind?.daylight && shifts.some((shift) => shift.night) ? ['it needs daylight'] : []),
    ...(kind?.stoppedBy ?? []).filter((stop) => stops[stop]).map((stop) => `${stop} stops it in those hours`),
  ];
};

const inCurfew = ({ workforce, timeZone }: RecoveryProblem, span: Span): boolean => {
  const { curfew } = workforce;
  if (curfew === null || curfew.from === curfew.until) return false;
  if (hoursBetween(span.start, span.end, timeZone) >= 24) return true;
  const crosses = curfew.from > curfew.until;
  const within = (clock: string): boolean =>
    crosses ? clock >= curfew.from || clock < curfew.until : clock >= curfew.from && clock < curfew.until;
  const [start, end] = [clockOf(span.start), clockOf(span.end)];
  const passes = (clock: string): boolean => (start < end ? clock >= start && clock < end : clock >= start || clock < end);
  return within(start) || passes(curfew.from);
};

/** The jobs before and after it in its zone, with the hours that must lie between. */
const ofOrder = (problem: RecoveryProblem, jobs: readonly PlannedJob[], at: number): readonly string[] => {
  const job = jobs[at]!;
  const gap = (first: PlannedJob, second: PlannedJob): string | null => {
    const lag = libraryJob(problem, second.job)?.lagAtLeast ?? 0;
    const between = second.start < first.end ? -1 : hoursBetween(first.end, second.start, problem.timeZone);
    if (between < 0) return `${jobWords[second.job]} would begin before ${jobWords[first.job]} ends`;
    return between + 1e-6 < lag ? `${jobWords[second.job]} must wait ${lag} h after ${jobWords[first.job]}` : null;
  };
  const [before, after] = [jobs[at - 1], jobs[at + 1]];
  return [before ? gap(before, job) : null, after ? gap(job, after) : null].filter((words) => words !== null);
};

/** People and machines that are wanted at once, at the moments at which something begins while the job runs. */
const ofCapacity = (problem: RecoveryProblem, all: readonly PlannedJob[], job: PlannedJob): readonly string[] => {
  const { workforce } = problem;
  if (job.end <= problem.now) return [];
  const beside = all.filter((other) => overlap(other, job));
  const moments = [job.start, ...beside.map((other) => other.start).filter((start) => start > job.start)];
  const broken = new Set<string>();
  for (const moment of moments) {
    const running = beside.filter((other) => other.start <= moment && moment < other.end);
    const people = running.reduce((sum, other) => sum + other.crew, 0);
    const skill = libraryJob(problem, job.job)?.skill;
    if (skill) {
      const asked = running.reduce((sum, other) => {
        const also = libraryJob(problem, other.job)?.skill;
        return also?.kind === skill.kind ? sum + also.people : sum;
      }, 0);
      const able = skilledPeople(problem, skill.kind);
      if (asked > able) broken.add(`${asked} who may ${skillWords[skill.kind]} are wanted at once, ${able} are there`);
    }
    const night = problem.shifts.find((shift) => shift.start <= moment && moment < shift.end)?.night ?? false;
    const there = (night ? workforce.nightCrew : workforce.dayCrew) + workforce.overtimeCrew;
    if (job.crew > 0 && people > there) broken.add(`${people} people are wanted at once, ${there} are there`);
    if (job.machine === null) continue;
    const wanted = running.filter((other) => other.machine === job.machine).length;
    const owned = workforce.machines[job.machine] ?? 0;
    if (wanted > owned) broken.add(`${wanted} ${machineWords[job.machine]} are wanted at once, ${owned} on call`);
  }
  return [...broken];
};

/** Where the field is done half by half, the ground of the second is opened only when the first is laid. */
const ofHalves = (problem: RecoveryProblem, all: readonly PlannedJob[], job: PlannedJob): readonly string[] => {
  const opens = (one: PlannedJob): boolean => libraryJob(problem, one.job)?.opensGround === true;
  if (!opens(job) || job.end <= problem.now) return [];
  return problem.sequences.flatMap(({ before, after }) => {
    const mine = [before, after].findIndex((letters) => letters.includes(job.zone ?? ''));
    if (mine < 0) return [];
    const others = all.filter(
      (other) => opens(other) && other.window === job.window && (mine === 0 ? after : before).includes(other.zone ?? ''),
    );
    const early = others.find((other) => (mine === 0 ? other.start < job.end : other.end > job.start));
    if (early === undefined) return [];
    const [first, second] = mine === 0 ? [job, early] : [early, job];
    return [`zone ${second.zone} would be opened before zone ${first.zone} is laid`];
  });
};

/** Light rigs that stand at once from the hour at which they are set on this zone, against those there are and the power they draw. */
const ofRigs = (problem: RecoveryProblem, zones: readonly ZonePlan[], job: PlannedJob): readonly string[] => {
  const { rigs, workforce } = problem;
  if (job.job !== 'lights' || !rigs) return [];
  // Rigs stand from the day they are set until the work of their window must be over.
  const standing = zones.flatMap(({ zone, window, programme, jobs, latestFinish }) => {
    const set = jobs.find((one) => one.job === 'lights');
    const area = problem.zones.find(({ letter }) => letter === zone)?.area ?? 0;
    const kind = problem.programmes.find((one) => one.kind === programme);
    if (!set || !kind) return [];
    const own = zone === job.zone && window === job.window;
    return [{ own, start: set.start, end: set.end > latestFinish ? set.end : latestFinish, count: rigsOn(problem, kind, area) }];
  });
  const own = standing.find((one) => one.own);
  if (!own) return [];
  const beside = standing.filter((other) => overlap(other, own));
  const most = Math.max(
    ...beside
      .map(({ start }) => (start > own.start ? start : own.start))
      .map((at) => beside.filter((one) => one.start <= at && at < one.end).reduce((sum, { count }) => sum + count, 0)),
  );
  const owned = workforce.machines['light-rig'] ?? 0;
  const power = most * rigs.power;
  return [
    ...(most > owned ? [`${most} light rigs would stand at once, there are ${owned}`] : []),
    ...(workforce.lightPower !== undefined && power > workforce.lightPower + 1e-6
      ? [`the light rigs would draw ${Math.round(power)} kW at once, the supply gives ${workforce.lightPower} kW`]
      : []),
  ];
};
