import type { Optimiser } from '#planner/optimiser.ts';
import type { PlanningOptions, PlanOutcome } from '#planner/plan-recovery.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';

/** The best plan with the sod of one farm alone. */
export interface FarmPlan {
  /** null: without any sod. */
  readonly farm: string | null;
  readonly outcome: PlanOutcome;
}

/** Plans the same recovery once with each farm alone and once without sod, to lay them side by side. */
export const compareFarms = async (
  problem: RecoveryProblem,
  optimiser: Optimiser,
  options: PlanningOptions = {},
): Promise<readonly FarmPlan[]> => {
  const answers: FarmPlan[] = [];
  for (const farm of [...problem.farms, null]) {
    if (options.signal?.aborted) break;
    const alone = { ...problem, farms: farm === null ? [] : [farm] };
    answers.push({ farm: farm?.id ?? null, outcome: await schedulePlan(alone, optimiser, options) });
  }
  return answers;
};
