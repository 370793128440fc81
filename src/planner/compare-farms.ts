import type { Optimiser } from '#planner/optimiser.ts';
import type { PlanOutcome } from '#planner/plan-recovery.ts';
import type { PlanningOptions } from '#planner/planning-run.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';
import type { Lock, RecoveryProblem } from '#shared/vocabulary/plan.ts';

/** The best plan with the sod of one farm alone. */
export interface FarmOutcome {
  /** null: without any sod. */
  readonly farm: string | null;
  readonly outcome: PlanOutcome;
}

/** Plans the same recovery once with each farm alone and once without sod, to lay them side by side. */
export const compareFarms = async (
  problem: RecoveryProblem,
  optimiser: Optimiser,
  options: PlanningOptions = {},
): Promise<readonly FarmOutcome[]> => {
  const answers: FarmOutcome[] = [];
  for (const farm of [...problem.farms, null]) {
    if (options.signal?.aborted) break;
    const alone = { ...problem, farms: farm === null ? [] : [farm], locks: problem.locks.map((lock) => withFarm(lock, farm)) };
    answers.push({ farm: farm?.id ?? null, outcome: await schedulePlan(alone, optimiser, options) });
  }
  return answers;
};

/** A lock on another farm gives way: it is the farm that is being compared. */
const withFarm = (lock: Lock, farm: Farm | null): Lock =>
  lock.farm === null || lock.farm === farm?.id ? lock : { ...lock, farm: null };
