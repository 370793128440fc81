import type { MachineKind } from '#shared/vocabulary/resources.ts';
import { shiftAt } from '#planner/job-steps.ts';
import { lengthOf } from '#planner/working-hours.ts';
import type { StepStart, ZoneOption } from '#planner/zone-options.ts';
import type { Setting } from '#planner/setting.ts';

/** Shifts kept beyond what the busiest crew or machine needs, and how much more than that need. */
const spareShifts = 14;
const spareShare = 1.6;
/** Shifts kept on either side of a start that is to stay possible. */
const around = 2;

/**
 * How many of the first allowed shifts of every step are enough to lay the work of these options out one after the other: shifts that
 * the busiest crew or machine needs, with room to choose.
 */
export const bandSize = (setting: Setting, options: readonly ZoneOption[]): number => {
  const { problem, hours } = setting;
  const { workforce, settings } = problem;
  const mean = (noisy: boolean): number =>
    (problem.shifts.reduce(
      (sum, _, shift) => sum + lengthOf(hours.free(shift, { daylight: false, noisy, stoppedBy: [], crew: 0 }, null)),
      0,
    ) /
      problem.shifts.length) *
    settings.workShare;
  const machines = new Map<MachineKind, number>();
  let people = 0;
  for (const { job, hours: length } of options.flatMap(({ steps }) => steps).flatMap(({ jobs }) => jobs)) {
    people += job.crew * length;
    if (job.machine !== null) machines.set(job.machine, (machines.get(job.machine) ?? 0) + length);
  }
  const crew = (workforce.dayCrew + workforce.nightCrew) / 2;
  const busiest = Math.max(
    people / Math.max(0.1, crew * mean(false)),
    ...[...machines].map(([machine, length]) => length / Math.max(0.1, (workforce.machines[machine] ?? 0) * mean(true))),
  );
  return Math.ceil(spareShare * busiest) + spareShifts;
};

/**
 * An option with only the first `size` allowed shifts of every step, those about the plan before and about the starts in `keep`, and
 * with sod of one farm where `farm` names it; null where nothing is left of a step.
 */
export const withinBand = (
  setting: Setting,
  option: ZoneOption,
  size: number,
  { farm, keep }: { readonly farm?: number | undefined; readonly keep?: readonly StepStart[] } = {},
): ZoneOption | null => {
  const before = shiftsBefore(setting, option);
  const starts = option.starts.map((some, step) => {
    const mine = farm === undefined ? some : some.filter((start) => start.farm === null || start.farm === farm);
    const first = new Set([...new Set(mine.map(({ timed }) => timed.shift))].slice(0, size));
    const wanted = keep ? [...before, keep[step]!.timed.shift] : before;
    return mine.filter(({ timed }) => first.has(timed.shift) || wanted.some((shift) => Math.abs(timed.shift - shift) <= around));
  });
  return starts.some((some) => some.length === 0) ? null : { ...option, starts };
};

/** Shifts in which jobs of the plan before began on this zone. */
const shiftsBefore = ({ problem, clock, hours }: Setting, { zone, window }: ZoneOption): readonly number[] =>
  problem.before
    .filter((job) => job.zone === zone.letter && job.window === window.id)
    .map((job) => shiftAt(clock.hourOf(job.start), hours));
