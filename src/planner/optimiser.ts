/**
 * The optimiser the planner asks, as an interface. The planner prepares a mixed-integer linear model in the neutral sparse
 * form below and reads back numbers; which program solves it is the caller's business.
 */

/** A mixed-integer linear model to be minimised. Rows are packed one after the other (compressed sparse rows). */
export interface Model {
  readonly columns: {
    readonly cost: Float64Array;
    readonly lower: Float64Array;
    readonly upper: Float64Array;
    /** 1 where the column must be a whole number. */
    readonly integer: Uint8Array;
  };
  readonly rows: {
    readonly lower: Float64Array;
    readonly upper: Float64Array;
    /** `starts[i]` to `starts[i + 1]` are the entries of row i. */
    readonly starts: Int32Array;
    readonly indices: Int32Array;
    readonly values: Float64Array;
  };
}

/** Where a running solve stands. `incumbent` is the best plan found (null before the first), `bound` what no plan can beat. */
export interface Progress {
  /** s since the solve began */
  readonly seconds: number;
  readonly incumbent: number | null;
  readonly bound: number | null;
  /** (incumbent − bound) / |incumbent|; null before the first incumbent. */
  readonly gap: number | null;
}

export interface SolveOptions {
  /** Relative gap at which the answer is good enough. */
  readonly gap: number;
  /** Absolute gap at which it is good enough, in units of the objective. */
  readonly absoluteGap?: number;
  /** A plan with at most this objective is good enough, whatever the gap: the bound comes from elsewhere. */
  readonly target?: number;
  /** s; unlimited when absent. */
  readonly timeLimit?: number;
  /** Stop after this many branches; what makes a stopped solve repeatable. */
  readonly nodeLimit?: number;
  /** Whether the model is simplified before it is searched; it is when absent. */
  readonly simplify?: boolean;
  /** A complete and feasible set of column values to begin with. */
  readonly start?: Float64Array;
  readonly onProgress?: (progress: Progress) => void;
  /** Aborting it ends the solve with `cancelled`. */
  readonly signal?: AbortSignalLike;
}

/** The part of an `AbortSignal` the planner relies on. */
export interface AbortSignalLike {
  readonly aborted: boolean;
  addEventListener(type: 'abort', listener: () => void): void;
  removeEventListener(type: 'abort', listener: () => void): void;
}

/**
 * - `optimal`: within the gaps asked for.
 * - `infeasible`: proved to have no answer.
 * - `stopped`: time or node limit; `values` is the best found, or null.
 * - `cancelled`: ended by the signal; `values` is the best found, or null.
 */
export type SolveStatus = 'optimal' | 'infeasible' | 'stopped' | 'cancelled';

export interface Solution {
  readonly status: SolveStatus;
  /** One value per column; null where none was found. */
  readonly values: Float64Array | null;
  /** Objective of `values`; null where none was found. */
  readonly objective: number | null;
  /** No plan has an objective below this; −Infinity where nothing is known. */
  readonly bound: number;
  /** Relative gap between the two; Infinity where either is missing. */
  readonly gap: number;
  /** s */
  readonly seconds: number;
}

export interface Optimiser {
  /** Never rejects for an infeasible or stopped model; rejects with an `Error` only when the optimiser itself breaks. */
  solve(model: Model, options: SolveOptions): Promise<Solution>;
}
