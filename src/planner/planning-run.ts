import type { AbortSignalLike, Optimiser, Progress, Solution } from '#planner/optimiser.ts';
import type { LinearModel } from '#planner/linear-model.ts';

export type PlanStage = 'programmes' | 'sequence' | 'polish' | 'surface' | 'slack';

export interface PlanningOptions {
  /** Relative gap to be proven; 0.005 when absent. */
  readonly gap?: number;
  /** s for the whole; 60 when absent. */
  readonly timeLimit?: number;
  readonly onProgress?: (stage: PlanStage, progress: Progress) => void;
  readonly signal?: AbortSignalLike;
  /** Only ask whether there is any plan at all: no polish, no later stages. */
  readonly anyPlan?: boolean;
}

export interface Ask {
  readonly gap: number;
  readonly absoluteGap?: number;
  /** Value that is good enough because the bound is known from elsewhere. */
  readonly target?: number;
  /** Share of the time left that it may take. */
  readonly share: number;
  readonly start?: Float64Array;
}
export interface Runner {
  (stage: PlanStage, model: { readonly model: LinearModel }, ask: Ask): Promise<Solution>;
  cancelled(): boolean;
  stoppedByTime(): boolean;
}

/** Hands models to the optimiser within the time and the signal of one planning. */
export const runner = (optimiser: Optimiser, options: PlanningOptions): Runner => {
  let left = options.timeLimit ?? 60;
  let stopped = false;
  const run = async (
    stage: PlanStage,
    { model }: { readonly model: LinearModel },
    { gap, absoluteGap, target, share, start }: Ask,
  ): Promise<Solution> => {
    const solution = await optimiser.solve(model.build(), {
      gap,
      absoluteGap: absoluteGap ?? 0.5,
      timeLimit: Math.max(0.5, left * share),
      // Starts by the hour leave little to take away, and what is put together hides the order of the hours from the search.
      simplify: false,
      ...(target === undefined ? {} : { target }),
      ...(start ? { start } : {}),
      ...(options.signal ? { signal: options.signal } : {}),
      ...(options.onProgress ? { onProgress: (progress: Progress) => options.onProgress!(stage, progress) } : {}),
    });
    left -= solution.seconds;
    if (solution.status === 'stopped') stopped = true;
    return solution;
  };
  return Object.assign(run, { cancelled: () => options.signal?.aborted ?? false, stoppedByTime: () => stopped });
};
