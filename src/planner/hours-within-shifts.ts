import type { Step, TimedJob, TimedStep } from '#planner/job-steps.ts';
import { shiftAt, timeStep } from '#planner/job-steps.ts';
import { ordersOf } from '#planner/plan-orders.ts';
import { skilledPeople } from '#planner/limits.ts';
import type { Clash } from '#planner/recovery-model.ts';
import type { ChosenZone, StepStart, ZoneOption } from '#planner/zone-options.ts';
import type { Job } from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';
import type { Setting } from '#planner/setting.ts';
import { farmRefusal, releasedAt } from '#planner/zone-options.ts';

/** Jobs already placed: people and machines over real hours. */
type Placed = TimedJob[];

/**
 * The model gives every step its shift; the hours within the shift are settled here, so that a machine is in one place at a time and
 * no more people are at work than there are. Steps longer than a shift and those held by hand stay; other ones are strung out after each other in the
 * order of their chains, each at the first hour that is free for it. A step for which no such hour is found keeps its place and is
 * named as a clash.
 */
export const hoursWithinShifts = (
  setting: Setting,
  chosen: readonly ChosenZone[],
): { readonly zones: readonly ChosenZone[]; readonly clashes: readonly Clash[] } => {
  const clashes: Clash[] = [];
  const starts = chosen.map((zone) => [...zone.starts]);
  const placed: Placed = [];
  const farmOf = ({ farm }: StepStart): Farm => setting.problem.farms[farm!]!;
  const plannedBefore = new Map(
    setting.problem.before.map((job) => [`${job.zone}|${job.window}|${job.job}`, setting.clock.hourOf(job.start)]),
  );
  const pieces = chosen
    .flatMap(({ option }, zone) => option.steps.map((step, number) => ({ zone, number, step, option })))
    .map((piece) => ({ ...piece, timed: starts[piece.zone]![piece.number]!.timed }));
  const stays = ({ timed, step }: (typeof pieces)[number]): boolean => timed.shift !== timed.lastShift || step.heldAt !== null;
  for (const piece of pieces) if (stays(piece)) placed.push(...piece.timed.jobs);
  const short = pieces.filter((piece) => !stays(piece));
  for (const shift of [...new Set(short.map(({ timed }) => timed.shift))].sort((one, other) => one - other)) {
    const mine = short
      .filter(({ timed }) => timed.shift === shift)
      .map((piece) => ({ ...piece, latest: latestEnd(piece, starts[piece.zone]!) - (piece.timed.end - piece.timed.at) }))
      .sort((one, other) => one.latest - other.latest || other.step.hours - one.step.hours);
    for (const { zone, number, step, option, timed } of mine) {
      const before = starts[zone]![number - 1]?.timed;
      const after = starts[zone]![number + 1]?.timed;
      const dayOf = (hour: number): string => setting.clock.timeAt(hour).slice(0, 10);
      const fits = (moved: TimedStep): boolean =>
        moved.end <= option.deadline + 1e-9 &&
        (before === undefined || step.lagAtMost === null || moved.at - before.end <= step.lagAtMost + 1e-9) &&
        (before === undefined || moved.at - before.end >= step.lagAtLeast - 1e-9) &&
        (after === undefined || after.at - moved.end >= option.steps[number + 1]!.lagAtLeast - 1e-9) &&
        (after !== undefined || dayOf(moved.end) === dayOf(timed.end)) &&
        (!step.laysSod ||
          farmRefusal(setting, farmOf(starts[zone]![number]!), option.programme, moved, option.zone, option.window.id) ===
            null) &&
        roomFor(setting, placed, moved);
      const earlier = plannedBefore.get(`${option.zone.letter}|${option.window.id}|${timed.jobs[0]!.job.kind}`);
      const preferred = earlier !== undefined && earlier >= timed.at && earlier < timed.end + 12 ? [earlier] : [];
      const lay = (moment: number): TimedStep | null =>
        timeStep(step, timed.shift, option.zone.letter, moment, setting.hours, setting.problem.settings);
      const found = firstFit([...preferred, ...momentsFor(timed, placed)], lay, fits);
      if (found === null) clashes.push(clashOf(shift, { option, number, step }, mine));
      const kept: StepStart = { ...starts[zone]![number]!, timed: found ?? timed };
      starts[zone]![number] = kept;
      placed.push(...kept.timed.jobs);
    }
  }
  const zones = chosen.map((zone, index) => ({ ...zone, starts: starts[index]! }));
  return { zones, clashes: [...clashes, ...gateClashes(setting, zones)] };
};

/** Lays whose trucks the gate would want in before the farm can have them there: not all of them begin in that shift. */
const gateClashes = (setting: Setting, zones: readonly ChosenZone[]): readonly Clash[] =>
  ordersOf(setting, zones).flatMap(({ window, farm, zones: letters, terms, releaseBy }): readonly Clash[] => {
    const { problem, clock } = setting;
    const from = releasedAt(
      setting,
      window,
      problem.farms.find(({ id }) => id === farm)!,
    );
    if (clock.hourOf(releaseBy) >= from - 1 / 60) return [];
    const first = shiftAt(clock.hourOf(terms[0]!.at), setting.hours);
    const pieces = zones.flatMap(({ option, starts }) =>
      option.window.id === window && letters.includes(option.zone.letter)
        ? starts.flatMap(({ timed, farm: own }, step) =>
            own !== null && timed.shift === first ? [{ zone: option.zone.letter, window, step }] : [],
          )
        : [],
    );
    return pieces.length === 0 ? [] : [{ shift: first, pieces }];
  });

interface Piece {
  readonly option: ZoneOption;
  readonly number: number;
  readonly step: Step;
}

/** The steps of a shift that want the same machines as one that found no place, or all of them where it has no machine. */
const clashOf = (shift: number, lost: Piece, all: readonly Piece[]): Clash => {
  const machines = new Set(lost.step.jobs.flatMap(({ job }) => job.machine ?? []));
  const rivals = all.filter(
    ({ step }) => machines.size === 0 || step.jobs.some(({ job }) => job.machine !== null && machines.has(job.machine)),
  );
  const pieces = rivals.length > 1 ? rivals : all;
  return {
    shift,
    pieces: pieces.map(({ option, number }) => ({ zone: option.zone.letter, window: option.window.id, step: number })),
  };
};

/** Latest hour by which a piece may end, from what comes before and after it in its chain. */
const latestEnd = (
  {
    option,
    number,
    step,
    timed,
  }: { readonly option: ZoneOption; readonly number: number; readonly step: Step; readonly timed: TimedStep },
  own: readonly StepStart[],
): number => {
  const before = own[number - 1]?.timed;
  const after = own[number + 1]?.timed;
  const bySequence = after === undefined ? option.deadline : after.at - option.steps[number + 1]!.lagAtLeast;
  const byLag = before === undefined || step.lagAtMost === null ? Infinity : before.end + step.lagAtMost + timed.end - timed.at;
  return Math.min(bySequence, byLag);
};

/**
 * Hours at which a step could begin: when it could at first, and such that one of its jobs begins just when people or a machine come
 * free, so that one zone is graded while the next is stripped.
 */
const momentsFor = (timed: TimedStep, placed: Placed): readonly number[] => {
  const moments = new Set<number>([timed.at]);
  for (const { until, job } of placed) {
    if (until > timed.at && until < timed.at + 14) moments.add(until);
    for (const own of timed.jobs) {
      const moment = until - (own.from - timed.at);
      if (own.job.machine !== null && own.job.machine === job.machine && moment > timed.at && moment < timed.at + 14)
        moments.add(moment);
    }
  }
  return [...moments].sort((one, other) => one - other);
};

const firstFit = (
  moments: readonly number[],
  lay: (moment: number) => TimedStep | null,
  fits: (moved: TimedStep) => boolean,
): TimedStep | null => {
  for (const moment of moments) {
    // Whole minutes, so that what is written down is what was reckoned with.
    const moved = lay(Math.ceil(moment * 60 - 1e-6) / 60);
    if (moved === null) continue;
    if (fits(moved)) return moved;
  }
  return null;
};

/** Whether those who hold the skill a job asks for suffice beside what they do already. */
const skillsSuffice = ({ problem }: Setting, { skill }: Job, beside: Placed): boolean =>
  !skill ||
  beside.reduce((sum, { job }) => sum + (job.skill?.kind === skill.kind ? job.skill.people : 0), skill.people) <=
    skilledPeople(problem, skill.kind);

/** Whether people and machines suffice for a step beside the jobs placed before it. */
const roomFor = (setting: Setting, placed: Placed, moved: TimedStep): boolean => {
  const { workforce } = setting.problem;
  const most = setting.hours.people(moved.shift);
  return moved.jobs.every(({ job, from, until }) => {
    const beside = placed.filter((other) => other.from < until - 1e-6 && other.until > from + 1e-6);
    const moments = [from, ...beside.map((other) => other.from).filter((moment) => moment > from)];
    return moments.every((moment) => {
      const now = beside.filter((other) => other.from <= moment + 1e-9 && other.until > moment + 1e-6);
      const people = now.reduce((sum, other) => sum + other.job.crew, job.crew);
      const machines = now.filter((other) => other.job.machine === job.machine).length + 1;
      return (
        skillsSuffice(setting, job, now) &&
        people <= most &&
        (job.machine === null || machines <= (workforce.machines[job.machine] ?? 0))
      );
    });
  });
};
