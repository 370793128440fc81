import { monthOf } from '#shared/calendar/local-time.ts';
import type { Step, TimedStep } from '#planner/job-steps.ts';
import { dayOfShift, hoursOfJob, shiftAt, stepsOf, timeStep } from '#planner/job-steps.ts';
import type { Outlook } from '#planner/readiness-table.ts';
import { firstEntry, latestEntry, longestQueue } from '#planner/gate.ts';
import type { Setting } from '#planner/setting.ts';
import { closedForGood, soilRefusal } from '#planner/limits.ts';
import { mostTrucks, sodUnits } from '#planner/sod-loads.ts';
import type {
  DoneJob,
  JobKind,
  Programme,
  ProgrammeKind,
  RecoveryProblem,
  RecoveryWindow,
  RecoveryZone,
} from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';

/** One allowed start of a step, with the farm its sod comes from. */
export interface StepStart {
  readonly timed: TimedStep;
  /** Number of the farm; null where the step lays no sod. */
  readonly farm: number | null;
}

/** A programme a zone can take in a window, with every allowed start of its steps. */
export interface ZoneOption {
  readonly zone: RecoveryZone;
  readonly window: RecoveryWindow;
  readonly programme: Programme;
  readonly steps: readonly Step[];
  readonly starts: readonly (readonly StepStart[])[];
  /** Latest end, h since the first shift. */
  readonly deadline: number;
  /** Jobs of it that are over. */
  readonly done: readonly DoneJob[];
  /** What taking it counts by itself: set where a zone is given up, which is only done to find out what is missing. */
  readonly weight?: number;
  /** Outlook by the hour the last step ends, after a programme in the window before. */
  outlook(finish: number | null, after: ProgrammeKind | null): Outlook | null;
}

/** A zone with the programme it takes and the start of each step. */
export interface ChosenZone {
  readonly option: ZoneOption;
  readonly starts: readonly StepStart[];
}

/** A programme that a zone cannot take in a window, and the rule met last. */
export interface ClosedOption {
  readonly zone: string;
  readonly window: string;
  readonly programme: ProgrammeKind;
  readonly reason: string;
}

/** Hour by which the work of a programme must be over: home date − test − paint − time in hand − settling of new turf. */
export const deadlineOf = (setting: Setting, window: RecoveryWindow, programme: Programme, zone: string): number => {
  const { rules } = setting.problem;
  const laid = programme.jobs.includes('lay') || programme.jobs.includes('lay-carpet');
  const buffer = setting.problem.buffers?.find((one) => one.zone === zone && one.window === window.id)?.hours ?? 0;
  return (
    setting.clock.hourOf(window.homeDate) -
    buffer -
    rules.certifyLead -
    rules.paint -
    rules.contingency -
    (laid ? rules.settle : 0)
  );
};

export interface OptionLimits {
  /** Programme of the window before, where it is already chosen; absent: any. */
  readonly after?: ProgrammeKind;
  /** Programmes that may precede it in the window before, where none is chosen. */
  readonly possibleBefore?: readonly ProgrammeKind[];
  /** Every chance of being ready is accepted: asked only when no plan exists. */
  readonly readyOrNot?: boolean;
}

/** A programme for a zone and window with its allowed starts, or the reason why there is none. */
export const zoneOption = (
  setting: Setting,
  zone: RecoveryZone,
  window: RecoveryWindow,
  programme: Programme,
  limits: OptionLimits = {},
): ZoneOption | ClosedOption => {
  const { problem, readiness } = setting;
  const closed = (reason: string): ClosedOption => ({ zone: zone.letter, window: window.id, programme: programme.kind, reason });
  if (!readiness.knows(zone.letter, window.id, programme.kind)) return closed('there is no forecast for it');
  const done = problem.done.filter((job) => job.zone === zone.letter && job.window === window.id);
  const foreign = done.find((job) => !programme.jobs.includes(job.job));
  if (foreign) return closed(`${foreign.job} has been done, which is not part of it`);
  const held = (problem.held ?? []).filter((job) => job.zone === zone.letter && job.window === window.id);
  const unfit = held.find((job) => !programme.jobs.includes(job.job));
  if (unfit) return closed(`${unfit.job} is held to hours to come, which is not part of it`);
  const doneKinds = new Set(done.map(({ job }) => job));
  const lastDone = programme.jobs.findLastIndex((kind) => doneKinds.has(kind));
  const isOver = new Set(programme.jobs.slice(0, lastDone + 1));
  const never = closedForGood(problem, programme, setting.jobs, zone.area);
  if (never !== null) return closed(never);
  const long = longerThanWindow(setting, zone, window, programme, isOver);
  if (long !== null) return closed(long);
  const steps = stepsOf(programme, zone.area, setting.jobs, problem.settings.workShare, isOver, heldHours(setting, held));
  const deadline = deadlineOf(setting, window, programme, zone.letter);
  const outlook = (finish: number | null, after: ProgrammeKind | null): Outlook | null => {
    const from = window.zones.find(({ letter }) => letter === zone.letter)!.from;
    const over = finish === null ? lastEnd(setting, done) : finish;
    const day = over === null ? from.slice(0, 10) : setting.clock.timeAt(over).slice(0, 10);
    return readiness.at(zone.letter, window.id, programme.kind, after, day);
  };
  const ready = (finish: number | null): boolean => {
    const before = limits.after !== undefined ? [limits.after] : (limits.possibleBefore ?? [null]);
    return before.some((after) => {
      const found = outlook(finish, after);
      return found !== null && (limits.readyOrNot || found.chance >= problem.rules.chanceNeeded - 1e-9);
    });
  };
  const option = { zone, window, programme, steps, deadline, done, outlook };
  if (steps.length === 0) {
    return ready(null) ? { ...option, starts: [] } : closed(notReadyWords(problem, outlook(null, limits.after ?? null)));
  }
  const all = steps.map((step) => allowedStarts(setting, zone, window, step, programme));
  const empty = all.findIndex(({ starts }) => starts.length === 0);
  if (empty >= 0) return closed(`${nameOf(steps[empty]!)} cannot start: ${all[empty]!.reason}`);
  let starts = chained(
    steps,
    all.map(({ starts: some }) => some),
    earliestAfterDone(setting, done, steps[0]!),
  );
  if (starts.some((some) => some.length === 0)) {
    return closed(
      `its jobs do not follow each other in the time there is${all.some(({ reason }) => reason) ? ` (${all.find(({ reason }) => reason)!.reason})` : ''}`,
    );
  }
  const inTime = starts.at(-1)!.filter(({ timed }) => timed.end <= deadline + 1e-9);
  if (inTime.length === 0) {
    const late = Math.ceil(Math.min(...starts.at(-1)!.map(({ timed }) => timed.end)) - deadline);
    return closed(`its last job would end ${late} h after ${wordsOf(setting, deadline)}, the latest hour`);
  }
  const inReadiness = inTime.filter(({ timed }) => ready(timed.end));
  if (inReadiness.length === 0) {
    return closed(notReadyWords(problem, outlook(Math.min(...inTime.map(({ timed }) => timed.end)), limits.after ?? null)));
  }
  starts = chained(steps, [...starts.slice(0, -1), inReadiness], earliestAfterDone(setting, done, steps[0]!));
  return { ...option, starts };
};

/** Hour by job at which those held by hand begin, h since the first shift. */
const heldHours = ({ clock }: Setting, held: readonly DoneJob[]): ReadonlyMap<JobKind, number> =>
  new Map(held.map(({ job, start }) => [job, clock.hourOf(start)]));

/** The first job of a programme that would not be over in the whole window, day and night; null where there is none. */
const longerThanWindow = (
  setting: Setting,
  zone: RecoveryZone,
  window: RecoveryWindow,
  programme: Programme,
  isOver: ReadonlySet<JobKind>,
): string | null => {
  const from = window.zones.find(({ letter }) => letter === zone.letter)!.from;
  const whole = setting.clock.hourOf(window.homeDate) - setting.clock.hourOf(from);
  const job = programme.jobs
    .map((kind) => setting.jobs.get(kind)!)
    .find((one) => !isOver.has(one.kind) && hoursOfJob(one, zone.area) > whole);
  return job === undefined
    ? null
    : `${job.name} takes ${Math.ceil(hoursOfJob(job, zone.area))} h, longer than the whole window of ${Math.floor(whole)} h`;
};

const notReadyWords = (problem: RecoveryProblem, outlook: Outlook | null): string =>
  outlook === null
    ? 'the forecast does not reach that day'
    : `the chance of being ready is ${Math.round(outlook.chance * 100)} %, ${Math.round(problem.rules.chanceNeeded * 100)} % are asked for`;

export const nameOf = (step: Step): string => step.jobs.map(({ job }) => job.name).join(', ');

const lastEnd = (setting: Setting, done: readonly DoneJob[]): number | null =>
  done.length === 0 ? null : Math.max(...done.map(({ end }) => setting.clock.hourOf(end)));

/** Span in which the first open step may start after the jobs that are over. */
const earliestAfterDone = (setting: Setting, done: readonly DoneJob[], first: Step): readonly [number, number] => {
  const end = lastEnd(setting, done);
  if (end === null) return [-Infinity, Infinity];
  return [end + first.lagAtLeast, first.lagAtMost === null ? Infinity : end + first.lagAtMost];
};

/** Leaves out every start that no chain of the programme can use, looking forward and backward. */
const chained = (
  steps: readonly Step[],
  all: readonly (readonly StepStart[])[],
  [earliest, latest]: readonly [number, number],
): readonly (readonly StepStart[])[] => {
  const starts = all.map((some) => [...some]);
  starts[0] = starts[0]!.filter(({ timed }) => timed.at >= earliest - 1e-9 && timed.at <= latest + 1e-9);
  for (let step = 1; step < starts.length; step += 1) {
    const ready = Math.min(...starts[step - 1]!.map(({ timed }) => timed.end)) + steps[step]!.lagAtLeast;
    const last = Math.max(...starts[step - 1]!.map(({ timed }) => timed.end)) + (steps[step]!.lagAtMost ?? Infinity);
    starts[step] = starts[step]!.filter(({ timed }) => timed.at >= ready - 1e-9 && timed.at <= last + 1e-9);
  }
  for (let step = starts.length - 2; step >= 0; step -= 1) {
    const needed = Math.max(...starts[step + 1]!.map(({ timed }) => timed.at)) - steps[step + 1]!.lagAtLeast;
    const first = Math.min(...starts[step + 1]!.map(({ timed }) => timed.at)) - (steps[step + 1]!.lagAtMost ?? Infinity);
    starts[step] = starts[step]!.filter(({ timed }) => timed.end <= needed + 1e-9 && timed.end >= first - 1e-9);
  }
  return starts;
};

/** Every shift in which a step may begin, and why the last of the others fell away. */
const allowedStarts = (
  setting: Setting,
  zone: RecoveryZone,
  window: RecoveryWindow,
  step: Step,
  programme: Programme,
): { readonly starts: readonly StepStart[]; readonly reason: string } => {
  const { problem, clock, hours } = setting;
  const clear = clock.hourOf(window.zones.find(({ letter }) => letter === zone.letter)!.from) + problem.rules.rest;
  const earliest = Math.max(clear, setting.now);
  const home = clock.hourOf(window.homeDate);
  const missing = step.jobs.find(({ job }) => job.machine !== null && !(problem.workforce.machines[job.machine] ?? 0));
  if (missing) return { starts: [], reason: `there is no ${missing.job.machine}` };
  const starts: StepStart[] = [];
  const { heldAt } = step;
  if (heldAt !== null && heldAt < earliest - 1e-9)
    return { starts: [], reason: `it is held at ${wordsOf(setting, heldAt)}, before the zone is clear` };
  const from = Math.max(earliest, heldAt ?? -Infinity);
  let reason = 'no shift lies between the last covering and the home date';
  let byFarm: string | null = null;
  for (let shift = Math.max(0, shiftAt(from, hours)); shift < hours.shifts.length && hours.shifts[shift]![0] < home; shift += 1) {
    if (heldAt !== null && hours.shifts[shift]![0] > heldAt) break;
    const timed = timeStep(step, shift, zone.letter, from, hours, problem.settings);
    if (timed === null || timed.end > home || (heldAt !== null && timed.at > heldAt + 1e-6)) {
      const blocker = hours.blocker(shift, step.kind, zone.letter);
      const closed = blocker ? blockerWords(blocker, step, setting) : 'no shift has enough free hours for it';
      reason = heldAt === null ? closed : `it is held at ${wordsOf(setting, heldAt)} and cannot be worked from then (${closed})`;
      continue;
    }
    if (!step.laysSod) {
      starts.push({ timed, farm: null });
      continue;
    }
    const refusalOf = (farm: Farm, lay: TimedStep): string | null => farmRefusal(setting, farm, programme, lay, zone, window.id);
    problem.farms.forEach((farm, index) => {
      const refusal = refusalOf(farm, timed);
      if (refusal === null) {
        starts.push({ timed, farm: index });
        return;
      }
      byFarm = refusal;
      // Later in the same shift the first truck may be there.
      const delivered = heldAt === null ? firstDelivery(setting, farm, window.id, timed.at) : timed.at;
      const later = delivered > timed.at ? timeStep(step, shift, zone.letter, delivered, hours, problem.settings) : null;
      if (later !== null && later.end <= home && refusalOf(farm, later) === null) starts.push({ timed: later, farm: index });
    });
    if (problem.farms.length === 0) byFarm = 'there is no farm to order from';
  }
  // Hours in which the crew could lay and no farm can bring the sod say more than hours in which nobody could.
  return { starts, reason: byFarm ?? reason };
};

const wordsOf = ({ clock }: Setting, hour: number): string => clock.timeAt(hour).replace('T', ' ');

const blockerWords = (blocker: string, step: Step, { problem, hours }: Setting): string => {
  const most = Math.max(...problem.shifts.map((shift, index) => (step.kind.daylight && shift.night ? 0 : hours.people(index))));
  if (step.kind.crew > most) return `it takes ${step.kind.crew} people and there are ${most}`;
  return `the last shift it would fit into is closed by ${blocker === 'crew' ? 'too few people' : blocker}`;
};

/** Why a farm cannot bring the sod of a lay in time; null where it can. */
export const farmRefusal = (
  setting: Setting,
  farm: Farm,
  programme: Programme,
  lay: TimedStep,
  zone: RecoveryZone,
  windowId: string,
): string | null => {
  const { problem, clock } = setting;
  const units = sodUnits(farm, programme.sod!, problem.settings.sodDensity);
  if (units === null) return `${farm.name} does not cut ${programme.sod} sod`;
  if (!lockAllowsFarm(problem, zone, farm)) return 'another farm is agreed on';
  const unlike = soilRefusal(problem, farm);
  if (unlike !== null) return unlike;
  const cutHours = problem.settings.cutHours;
  const entry = latestEntry(setting, lay.at) - longestQueue(setting);
  if (entry - farm.haul - cutHours < releasedAt(setting, windowId, farm) + farm.notice - 1e-9) {
    return `${farm.name} needs ${farm.notice} h of notice, ${cutHours} h to cut and ${farm.haul} h on the road${
      lay.at - entry > 1e-9 ? ', and the gate wants the first truck in earlier' : ''
    }`;
  }
  const area = zone.area * (1 + problem.rules.sodWaste);
  if (area > farm.stock) return `${farm.name} has ${Math.round(farm.stock)} m² open for order`;
  const tooMuch = tooMuchForADay(setting, farm, units.truckArea, lay, area);
  if (tooMuch !== null) return tooMuch;
  for (const { shift } of lay.jobs[0]!.work) {
    const wanted = Math.max(lay.at, setting.hours.shifts[shift]![0]);
    const from = latestEntry(setting, wanted);
    const day = clock.timeAt(from - farm.haul - cutHours).slice(0, 10);
    if (farm.blockedDays.includes(day) || farm.closedMonths.includes(monthOf(day) + 1)) {
      return `${farm.name} does not cut on ${day}`;
    }
    if (farm.cutFrom !== undefined && day < farm.cutFrom) return `the crop of ${farm.name} is too young before ${farm.cutFrom}`;
    const limit = problem.shifts[shift]!.hot ? problem.settings.rollHoursHot : problem.settings.rollHours;
    if (wanted - from + farm.haul + cutHours > limit) return `sod of ${farm.name} would lie more than ${limit} h in the roll`;
  }
  return null;
};

/** First hour, not before `at`, by which a farm has had its notice and the gate has let in as many trucks as a lay may begin with. */
const firstDelivery = (setting: Setting, farm: Farm, windowId: string, at: number): number => {
  const noticed = releasedAt(setting, windowId, farm) + farm.notice + setting.problem.settings.cutHours + farm.haul;
  // Whole minutes, so that what is written down is what was reckoned with.
  return Math.ceil(firstEntry(setting, Math.max(at, noticed)) * 60 - 1e-6) / 60 + longestQueue(setting);
};

/** Why the sod that one lay takes on one day is more than the farm can cut and send; null where it is not. */
const tooMuchForADay = ({ problem }: Setting, farm: Farm, truckArea: number, lay: TimedStep, ordered: number): string | null => {
  const { work } = lay.jobs[0]!;
  const total = work.reduce((sum, { hours }) => sum + hours, 0);
  const days = new Map<string, number>();
  for (const { shift, hours } of work) {
    const day = dayOfShift(problem, shift);
    days.set(day, (days.get(day) ?? 0) + (ordered * hours) / total);
  }
  const most = Math.max(...days.values());
  const trucks = Math.ceil(most / truckArea - 1e-6);
  const several = (count: number): string => `${count} ${count === 1 ? 'truck' : 'trucks'} a day`;
  if (trucks > farm.trucksPerDay) return `${farm.name} sends ${several(farm.trucksPerDay)}, ${trucks} are needed`;
  if (trucks > mostTrucks(problem, farm)) return `the gate takes ${several(mostTrucks(problem, farm))}, ${trucks} are needed`;
  return most > farm.harvestPerDay + 1e-6 ? `${farm.name} cuts ${Math.round(farm.harvestPerDay)} m² a day` : null;
};

/** When the notice of a farm begins: now, or when its sod was released. */
export const releasedAt = (setting: Setting, windowId: string, farm: Farm): number => {
  const release = setting.problem.released.find((one) => one.window === windowId && one.farm === farm.id);
  return release ? Math.min(setting.now, setting.clock.hourOf(release.at)) : setting.now;
};

const lockAllowsFarm = (problem: RecoveryProblem, zone: RecoveryZone, farm: Farm): boolean =>
  problem.locks.every((lock) => lock.zone !== zone.letter || lock.farm === null || lock.farm === farm.id);

/** Programmes a lock leaves open for a zone and window. */
export const unlockedProgrammes = (problem: RecoveryProblem, zone: string, window: string): readonly Programme[] => {
  const lock = problem.locks.find((one) => one.zone === zone && one.window === window);
  return lock ? problem.programmes.filter(({ kind }) => kind === lock.programme) : problem.programmes;
};
