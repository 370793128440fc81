import type { RecoveryPlan } from '#shared/vocabulary/plan.ts';
import type { FarmPlan } from '#shared/vocabulary/sod.ts';
import type { PlanOutcome } from '#planner/plan-recovery.ts';

/** A plan in the few figures that are laid beside those of others, or why there is none. */
export const figuresOf = (outcome: PlanOutcome): Pick<FarmPlan, 'plan' | 'reason'> => {
  if (outcome.kind === 'plan') return { plan: planFigures(outcome.plan), reason: null };
  if (outcome.kind === 'stopped') return { plan: null, reason: 'No plan was found in the time given.' };
  const [first] = outcome.closed;
  return {
    plan: null,
    reason: first ? `Zone ${first.zone}: ${first.reason}` : 'No plan keeps every rule of the work.',
  };
};

const planFigures = ({ cost, gap, orders, zones }: RecoveryPlan): FarmPlan['plan'] => {
  const [first] = orders.toSorted((one, other) => (one.releaseBy < other.releaseBy ? -1 : 1));
  return {
    total: cost.total,
    unpriced: cost.unpriced,
    gap,
    ordered: orders.reduce((sum, order) => sum + order.ordered, 0),
    trucks: orders.reduce((sum, order) => sum + order.trucks.length, 0),
    releaseBy: first?.releaseBy ?? null,
    slack: first?.slack ?? null,
    leastChance: zones.reduce((least, zone) => Math.min(least, zone.chanceReady), 1),
  };
};
