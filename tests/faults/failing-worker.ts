import { existsSync, unlinkSync } from 'node:fs';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { recoveryOutlook, type OutlookQuestion } from '#engine/forecast/recovery-outlook.ts';
import { serveTasks } from '#platform/workers/serve-tasks.ts';

/** Whether a fault is laid out for the next calculation; it strikes once. */
const struck = (fault: string): boolean => {
  const file = `${process.env['FIELDBACK_FAULT_PLACE']}-${fault}`;
  if (!existsSync(file)) return false;
  unlinkSync(file);
  return true;
};

/** The worker of the application, which ends, swells or never comes to an end when a file says so. */
serveTasks({
  foresee: (question: ForecastQuestion, report) => {
    if (struck('die')) process.exit(9);
    if (struck('swell')) {
      const kept: unknown[] = [];
      for (;;) kept.push(new Array(100_000).fill(0).map((_, at) => ({ at })));
    }
    if (struck('spin')) for (;;);
    return foresee(question, report);
  },
  outlook: (question: OutlookQuestion, report) => recoveryOutlook(question, report),
});
