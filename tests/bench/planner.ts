/**
 * Times the planner on generated problems of realistic size, ordinary and starved of crew and trucks, and prints size, time, gap and
 * whether the gap is proven. `node tests/bench/planner.ts [seconds per problem] [part of a name]`
 */
import { addDays } from '#shared/calendar/local-time.ts';
import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import type { Optimiser } from '#planner/optimiser.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import { sampleProblem } from '#tests/planner/sample-problem.ts';

const [seconds = '60', part = ''] = process.argv.slice(2);
const solver = optimiserOnThisThread();

/** Two concerts with a home date after each, in one calendar. */
const withSecondWindow = (problem: RecoveryProblem, days: number): RecoveryProblem => {
  const [window] = problem.windows;
  const half = Math.floor(days / 2);
  const start = problem.readiness[0]!.firstDay;
  const first = { ...window!, homeDate: `${addDays(start, half)}T19:00` };
  const second = {
    id: 'second-home',
    name: 'Home date after the second concert',
    homeDate: window!.homeDate,
    zones: window!.zones.slice(0, 4).map(({ letter }) => ({ letter, from: `${addDays(start, half + 4)}T12:00` })),
  };
  const shifted = (row: RecoveryProblem['readiness'][number], by: number, id: string): RecoveryProblem['readiness'][number] => ({
    ...row,
    window: id,
    firstDay: addDays(start, by),
    chance: row.chance.slice(days - half),
    shortfall: row.shortfall.slice(days - half),
  });
  return {
    ...problem,
    windows: [first, second],
    readiness: problem.readiness.flatMap((row) => [
      shifted(row, 0, first.id),
      ...(second.zones.some(({ letter }) => letter === row.zone) ? [shifted(row, days - half, second.id)] : []),
    ]),
  };
};

const starved = (problem: RecoveryProblem): RecoveryProblem => ({
  ...problem,
  workforce: { ...problem.workforce, dayCrew: 6, nightCrew: 0, overtimeCrew: 1 },
  farms: problem.farms.map((farm) => ({ ...farm, trucksPerDay: 4 })),
});

for (const zones of [10, 20, 30]) {
  for (const days of [12, 28, 35, 60, 120]) {
    for (const [kind, change] of [
      ['ordinary', (problem: RecoveryProblem) => problem],
      ['starved', starved],
      ['two windows', (problem: RecoveryProblem) => withSecondWindow(problem, days)],
    ] as const) {
      const name = `${zones} zones, ${days} days, ${kind}`;
      if (!name.includes(part) || (kind === 'two windows' && days < 35)) continue;
      let size = '';
      const watched: Optimiser = {
        solve(model, options) {
          size ||= `${model.columns.cost.length} columns, ${model.rows.lower.length} rows`;
          return solver.solve(model, options);
        },
      };
      const began = performance.now();
      const outcome = await schedulePlan(change(sampleProblem({ zones, days })), watched, { timeLimit: Number(seconds) });
      const took = ((performance.now() - began) / 1000).toFixed(1);
      const result =
        outcome.kind === 'plan'
          ? `gap ${(100 * outcome.plan.gap).toFixed(2)} %${outcome.plan.proven ? '' : ', not proven'}${outcome.plan.stoppedByTime ? ', a stage stopped by time' : ''}${outcome.plan.cautions.length > 0 ? `, ${outcome.plan.cautions.length} cautions` : ''}`
          : outcome.kind === 'none'
            ? 'no plan exists'
            : outcome.reason;
      console.log(`${name}\t${size}\t${took} s\t${result}`);
    }
  }
}
