import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { checkMoves } from '#planner/check-moves.ts';
import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

/** Which rules jobs of a kept plan would break at other hours. Nothing is planned anew and nothing is kept. */
export const recheckPlan: Service<'plan/recheck'> = (needs, { id, moves }) =>
  needs.store.read(async (contents) => {
    const run = await contents.plans.find(id);
    const input = await contents.plans.inputOf(id);
    if (run === null || input === null) return notFound('plan', id);
    return done([...checkMoves(JSON.parse(input) as RecoveryProblem, run.plan, moves)]);
  });
