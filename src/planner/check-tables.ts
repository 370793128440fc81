import { addDays, daysBetween, toEpoch } from '#shared/calendar/local-time.ts';
import type { Job, JobKind, RecoveryProblem } from '#shared/vocabulary/plan.ts';

/** The tables of a problem, looked up in the checker's own way. */
export interface Tables {
  readonly problem: RecoveryProblem;
  hour(time: string): number;
  job(kind: JobKind): Job;
  /** Working hours that a job may be worked at between two hours in a shift. */
  usable(job: Job, zone: string | null, shift: number, from: number, until: number): number;
}

export const tablesOf = (problem: RecoveryProblem): Tables => {
  const zero = toEpoch(problem.shifts[0]!.start, problem.timeZone);
  const known = new Map<string, number>();
  const hour = (time: string): number => {
    let found = known.get(time);
    if (found === undefined) known.set(time, (found = (toEpoch(time, problem.timeZone) - zero) / 3_600_000));
    return found;
  };
  const curfew = problem.workforce.curfew;
  const quiet: (readonly [number, number])[] = [];
  if (curfew && curfew.from !== curfew.until) {
    const first = problem.shifts[0]!.start.slice(0, 10);
    const days = daysBetween(first, problem.shifts.at(-1)!.end.slice(0, 10));
    for (let day = -1; day <= days; day += 1) {
      const begins = addDays(first, day);
      const ends = curfew.until > curfew.from ? begins : addDays(begins, 1);
      quiet.push([hour(`${begins}T${curfew.from}`), hour(`${ends}T${curfew.until}`)]);
    }
  }
  const usable: Tables['usable'] = (job, zone, index, from, until) => {
    const shift = problem.shifts[index]!;
    if (job.daylight && shift.night) return 0;
    if (job.stoppedBy.includes('rain') && shift.rainChance >= problem.settings.rainMask) return 0;
    if (job.stoppedBy.includes('wind') && shift.windy) return 0;
    if (job.stoppedBy.includes('frost') && shift.frozen) return 0;
    if (job.stoppedBy.includes('saturation') && shift.saturated) return 0;
    if (job.stoppedBy.includes('heat') && shift.hot) return 0;
    const a = Math.max(from, hour(shift.start));
    const b = Math.min(until, hour(shift.end));
    if (b <= a) return 0;
    const shut = problem.blocks
      .filter((block) => block.zones === null || (zone !== null && block.zones.includes(zone)))
      .map((block) => [hour(block.from), hour(block.until)] as const)
      .concat(job.noisy ? quiet : [])
      .filter(([begins, ends]) => begins < b && ends > a)
      .sort(([one], [other]) => one - other);
    let free = 0;
    let at = a;
    for (const [begins, ends] of shut) {
      free += Math.max(0, Math.min(begins, b) - at);
      at = Math.max(at, Math.min(ends, b));
    }
    return (free + Math.max(0, b - at)) * problem.settings.workShare;
  };
  const jobs = new Map(problem.jobs.map((job) => [job.kind, job]));
  return { problem, hour, usable, job: (kind) => jobs.get(kind)! };
};
