import type { TimedJob } from '#planner/job-steps.ts';
import { shiftAt } from '#planner/job-steps.ts';
import type { Setting } from '#planner/setting.ts';
import type { Job, RecoveryWindow } from '#shared/vocabulary/plan.ts';

/** Painting and testing of the whole field before a home date: fixed hours that follow from the venue's rules. */
export const fieldJobsOf = (setting: Setting, window: RecoveryWindow): readonly TimedJob[] => {
  const { rules } = setting.problem;
  const test = setting.clock.hourOf(window.homeDate) - rules.certifyLead;
  const spans: readonly (readonly [Job | undefined, number, number])[] = [
    [setting.jobs.get('paint'), test - rules.paint, rules.paint],
    [setting.jobs.get('certify'), test, rules.certifyLead],
  ];
  return spans.flatMap(([job, from, room]): readonly TimedJob[] => {
    if (!job || room <= 0) return [];
    return [spread(setting, job, from, Math.min(room, job.fixedHours / setting.problem.settings.workShare))];
  });
};

/** A job over real hours from a moment on, with its working hours by shift. */
const spread = (setting: Setting, job: Job, from: number, length: number): TimedJob => {
  const until = from + length;
  const work: { shift: number; hours: number }[] = [];
  for (let shift = Math.max(0, shiftAt(from, setting.hours)); shift < setting.hours.shifts.length; shift += 1) {
    const [begin, end] = setting.hours.shifts[shift]!;
    const part = Math.min(until, end) - Math.max(from, begin);
    if (part > 1e-9) work.push({ shift, hours: part * setting.problem.settings.workShare });
  }
  return { job, from, until, work };
};
