import type { ReadinessTable } from '#planner/readiness-table.ts';
import { readinessTable } from '#planner/readiness-table.ts';
import type { HourClock } from '#planner/shift-calendar.ts';
import { hourClock } from '#planner/shift-calendar.ts';
import type { WorkingHours } from '#planner/working-hours.ts';
import { workingHours } from '#planner/working-hours.ts';
import type { Job, JobKind, RecoveryProblem } from '#shared/vocabulary/plan.ts';

/** A problem with what follows from it at once. */
export interface Setting {
  readonly problem: RecoveryProblem;
  readonly clock: HourClock;
  readonly hours: WorkingHours;
  readonly jobs: ReadonlyMap<JobKind, Job>;
  readonly readiness: ReadinessTable;
  readonly now: number;
}

export const settingOf = (problem: RecoveryProblem): Setting => {
  const clock = hourClock(problem.shifts[0]!.start, problem.timeZone);
  return {
    problem,
    clock,
    hours: workingHours(problem, clock),
    jobs: new Map(problem.jobs.map((job) => [job.kind, job])),
    readiness: readinessTable(problem),
    now: clock.hourOf(problem.now),
  };
};
