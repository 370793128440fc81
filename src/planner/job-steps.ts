import type { Span, WorkingHours, WorkKind } from '#planner/working-hours.ts';
import { lengthOf, without } from '#planner/working-hours.ts';
import type { Job, JobKind, Programme, RecoveryProblem } from '#shared/vocabulary/plan.ts';

/** A job on one zone with the working hours it takes there. */
export interface SizedJob {
  readonly job: Job;
  /** Working hours: `fixedHours + area / rate`. */
  readonly hours: number;
}

/**
 * Jobs that one crew does one after the other without a break between: what the model starts as one piece. Short jobs of a zone
 * follow each other within a shift instead of taking a shift each.
 */
export interface Step {
  readonly jobs: readonly SizedJob[];
  readonly hours: number;
  readonly kind: WorkKind;
  readonly mayPause: boolean;
  readonly heavy: boolean;
  readonly opensGround: boolean;
  /** h between the end of the step before and the start of this one. */
  readonly lagAtLeast: number;
  readonly lagAtMost: number | null;
  /** It needs sod on the field. */
  readonly laysSod: boolean;
  /** Hour at which it must begin, h since the first shift; null where the planner chooses. */
  readonly heldAt: number | null;
}

export const hoursOfJob = (job: Job, area: number): number => job.fixedHours + (job.rate === null ? 0 : area / job.rate);

/** Length of an ordinary shift, h. */
const shiftLength = 12;

/** Real hours that working hours take with their breaks, in whole minutes upward: a plan is written in minutes. */
export const lengthOfWork = (hours: number, workShare: number): number => Math.ceil((hours / workShare) * 60 - 1e-6) / 60;

const lengthOfStep = (step: Step, workShare: number): number =>
  step.jobs.reduce((sum, { hours }) => sum + lengthOfWork(hours, workShare), 0);

const together = (one: Step, other: Step, workShare: number): boolean =>
  other.lagAtLeast === 0 &&
  lengthOfStep(one, workShare) + lengthOfStep(other, workShare) <= shiftLength &&
  one.kind.noisy === other.kind.noisy &&
  one.heavy === other.heavy &&
  one.opensGround === other.opensGround &&
  one.mayPause === other.mayPause &&
  one.heldAt === null &&
  other.heldAt === null &&
  !one.laysSod &&
  !other.laysSod;

const joined = (one: Step, other: Step): Step => ({
  ...one,
  jobs: [...one.jobs, ...other.jobs],
  hours: one.hours + other.hours,
  kind: {
    daylight: one.kind.daylight || other.kind.daylight,
    noisy: one.kind.noisy,
    stoppedBy: [...new Set([...one.kind.stoppedBy, ...other.kind.stoppedBy])].sort(),
    crew: Math.max(one.kind.crew, other.kind.crew),
  },
});

/** The steps of a programme on an area (m²), jobs in `done` left out, those in `held` by themselves at their hours. Waiting jobs without crew become lags of the next step. */
export const stepsOf = (
  programme: Programme,
  area: number,
  jobs: ReadonlyMap<JobKind, Job>,
  workShare: number,
  done: ReadonlySet<JobKind> = new Set(),
  held: ReadonlyMap<JobKind, number> = new Map(),
): readonly Step[] => {
  const steps: Step[] = [];
  let waiting = 0;
  for (const kind of programme.jobs) {
    const job = jobs.get(kind)!;
    const hours = hoursOfJob(job, area);
    waiting += job.lagAtLeast;
    if (done.has(kind)) {
      waiting = 0;
      continue;
    }
    if (hours === 0) continue;
    const step: Step = {
      jobs: [{ job, hours }],
      hours,
      kind: { daylight: job.daylight, noisy: job.noisy, stoppedBy: [...job.stoppedBy].sort(), crew: job.crew },
      mayPause: job.mayPause,
      heavy: job.heavy,
      opensGround: job.opensGround,
      lagAtLeast: waiting,
      lagAtMost: job.lagAtMost,
      laysSod: programme.sod !== null && kind === 'lay',
      heldAt: held.get(kind) ?? null,
    };
    waiting = 0;
    const last = steps.at(-1);
    if (last && together(last, step, workShare)) steps[steps.length - 1] = joined(last, step);
    else steps.push(step);
  }
  return steps;
};

/** A job in its hours. */
export interface TimedJob {
  readonly job: Job;
  /** h since the first shift. */
  readonly from: number;
  readonly until: number;
  readonly work: readonly { readonly shift: number; readonly hours: number }[];
}

/** A step begun in a shift. */
export interface TimedStep {
  readonly shift: number;
  readonly lastShift: number;
  /** h since the first shift. */
  readonly at: number;
  readonly end: number;
  readonly jobs: readonly TimedJob[];
}

/**
 * The hours of a step that begins with the first free hour of a shift, not before `earliest` (h since the first shift); null where it
 * cannot begin there. A step that fits into one shift is done within it; a longer one goes on in the next shifts it may be
 * worked in, pausing at most `longestPause` h.
 */
export const timeStep = (
  step: Step,
  shift: number,
  zone: string,
  earliest: number,
  hours: WorkingHours,
  settings: RecoveryProblem['settings'],
): TimedStep | null => {
  const first = withoutBefore(hours.free(shift, step.kind, zone), earliest);
  const needed = lengthOfStep(step, settings.workShare);
  if (lengthOf(first) < 1e-6) return null;
  const long = needed > shiftLength + 1e-9;
  if (!long && lengthOf(first) < needed - 1e-9) return null;
  const spans: { readonly shift: number; readonly span: Span }[] = first.map((span) => ({ shift, span }));
  let gathered = lengthOf(first);
  for (let next = shift + 1; gathered < needed - 1e-9; next += 1) {
    if (next >= hours.shifts.length) return null;
    const free = hours.free(next, step.kind, zone);
    if (!step.mayPause && lengthOf(free) < 1e-6) return null;
    for (const span of free) {
      if (span[0] - spans.at(-1)!.span[1] > settings.longestPause) return null;
      spans.push({ shift: next, span });
      gathered += span[1] - span[0];
    }
  }
  return layOut(step, spans, settings.workShare);
};

const withoutBefore = (spans: readonly Span[], earliest: number): readonly Span[] => without(spans, [-Infinity, earliest]);

/** Puts the jobs of a step one after the other into free spans. */
const layOut = (step: Step, spans: readonly { readonly shift: number; readonly span: Span }[], workShare: number): TimedStep => {
  let position = 0;
  let at = spans[0]!.span[0];
  const jobs = step.jobs.map(({ job, hours }): TimedJob => {
    const length = lengthOfWork(hours, workShare);
    let left = length;
    let from: number | null = null;
    const work: { shift: number; hours: number }[] = [];
    while (left > 1e-9) {
      const { shift, span } = spans[position]!;
      at = Math.max(at, span[0]);
      const room = span[1] - at;
      if (room <= 1e-9) {
        position += 1;
        continue;
      }
      from ??= at;
      const taken = Math.min(room, left);
      left -= taken;
      at += taken;
      const last = work.at(-1);
      if (last?.shift === shift) last.hours += (taken / length) * hours;
      else work.push({ shift, hours: (taken / length) * hours });
    }
    return { job, from: from!, until: at, work };
  });
  return { shift: spans[0]!.shift, lastShift: jobs.at(-1)!.work.at(-1)!.shift, at: jobs[0]!.from, end: at, jobs };
};

/** Number of the shift an hour lies in; −1 before the first, the number of shifts after the last. */
export const shiftAt = (hour: number, hours: WorkingHours): number => {
  if (hour < hours.shifts[0]![0]) return -1;
  const found = hours.shifts.findIndex(([, until]) => hour < until);
  return found < 0 ? hours.shifts.length : found;
};

/** The wall-clock day a shift belongs to: the day it begins on. */
export const dayOfShift = (problem: RecoveryProblem, shift: number): string => problem.shifts[shift]!.start.slice(0, 10);
