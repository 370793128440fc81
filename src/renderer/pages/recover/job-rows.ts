import type { PlanRun } from '#shared/contract/contract.ts';
import { addDays, dateOf, daysBetween } from '#shared/calendar/local-time.ts';
import type { DoneJob, PlannedJob } from '#shared/vocabulary/plan.ts';
import { machineWords } from '#shared/wording/words.ts';

export type ChartBy = 'zone' | 'crew';

/** All jobs of a plan in the order they begin, at the hours they are held to where they are. */
export const jobsOf = ({ plan }: PlanRun, done: readonly DoneJob[]): readonly PlannedJob[] =>
  [...plan.zones.flatMap((zone) => zone.jobs), ...plan.fieldJobs]
    .map((job) => {
      const held = heldHours(job, done);
      return held ? { ...job, start: held.start, end: held.end } : job;
    })
    .toSorted((a, b) => (a.start < b.start ? -1 : 1));

export const heldHours = (job: PlannedJob, done: readonly DoneJob[]): DoneJob | undefined =>
  done.find((one) => one.zone === job.zone && one.window === job.window && one.job === job.job);

/** The row a job stands in: its zone, or the machine it takes, or the hands alone. */
export const rowOf = (job: PlannedJob, by: ChartBy): string =>
  by === 'zone'
    ? (job.zone ?? 'field')
    : job.machine !== null
      ? machineWords[job.machine]
      : job.crew > 0
        ? 'hands alone'
        : 'time alone';

export const rowsOf = (jobs: readonly PlannedJob[], by: ChartBy): readonly string[] => [
  ...new Set(jobs.toSorted((a, b) => rowOf(a, by).localeCompare(rowOf(b, by))).map((job) => rowOf(job, by))),
];

export interface ShiftPeople {
  readonly name: string;
  readonly date: string;
  readonly night: boolean;
  /** The most people wanted at once in the shift. */
  readonly people: number;
}

/** People wanted at once, shift by shift: 06:00–18:00 and 18:00–06:00. */
export const peopleByShift = (jobs: readonly PlannedJob[]): readonly ShiftPeople[] => {
  const working = jobs.filter((job) => job.crew > 0);
  if (working.length === 0) return [];
  const first = dateOf(working.map((job) => job.start).toSorted()[0]!);
  const last = dateOf(
    working
      .map((job) => job.end)
      .toSorted()
      .at(-1)!,
  );
  return Array.from({ length: daysBetween(first, last) + 1 }, (_, day) => addDays(first, day)).flatMap((date) =>
    [false, true].map((night): ShiftPeople => {
      const [start, end] = night ? [`${date}T18:00`, `${addDays(date, 1)}T06:00`] : [`${date}T06:00`, `${date}T18:00`];
      const there = working.filter((job) => job.start < end && start < job.end);
      const moments = [start, ...there.map((job) => job.start).filter((moment) => moment > start)];
      const people = Math.max(
        0,
        ...moments.map((moment) =>
          there.filter((job) => job.start <= moment && moment < job.end).reduce((sum, job) => sum + job.crew, 0),
        ),
      );
      return { name: `${Number(date.slice(8))}${night ? ' night' : ''}`, date, night, people };
    }),
  );
};
