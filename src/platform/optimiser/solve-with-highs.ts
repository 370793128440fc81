import loadHighs from 'highs';
import type { Model, Progress, Solution, SolveOptions } from '#planner/optimiser.ts';

type Highs = Awaited<ReturnType<typeof loadHighs>>;

/** What a solve needs besides the model; plain data, so that it can be posted to a worker. */
export type PlainSolveOptions = Omit<SolveOptions, 'onProgress' | 'signal'>;

/** What the solver reports while it runs. */
export interface SolveListener {
  progress(progress: Progress): void;
  /** Called with every better plan found, so that a kill loses nothing. */
  improved(values: Float64Array, objective: number): void;
  /** Asked between branches; true ends the solve. */
  cancelled(): boolean;
}

const relativeGap = (objective: number | null, bound: number): number => {
  if (objective === null || !Number.isFinite(bound)) return Infinity;
  const difference = Math.max(0, objective - bound);
  return difference === 0 ? 0 : difference / Math.max(Math.abs(objective), 1e-9);
};

const loaded = new Map<Uint8Array | undefined, Promise<Highs>>();

/** The solver's WebAssembly, loaded once. `wasm` are its bytes where the package cannot read its own file. */
export const highsRuntime = (wasm?: Uint8Array): Promise<Highs> => {
  const known = loaded.get(wasm);
  if (known) return known;
  const starting = loadHighs(wasm ? { wasmBinary: wasm.slice().buffer } : {});
  loaded.set(wasm, starting);
  return starting;
};

/**
 * Solves a model with HiGHS on the calling thread, which it blocks. One thread and a fixed seed: without a time limit the
 * same model gives the same answer. Integer columns are rounded in the answer.
 */
export const solveWithHighs = (highs: Highs, model: Model, options: PlainSolveOptions, listener: SolveListener): Solution => {
  const { columns, rows } = model;
  if (columns.cost.length === 0) return emptyAnswer(rows);
  const began = performance.now();
  const elapsed = (): number => (performance.now() - began) / 1000;
  const whole = columns.integer.some((mark) => mark === 1);
  const instance = highs.createModel({
    numCols: columns.cost.length,
    numRows: rows.lower.length,
    colCost: columns.cost,
    colLower: columns.lower,
    colUpper: columns.upper,
    rowLower: rows.lower,
    rowUpper: rows.upper,
    matrix: {
      format: 'csr',
      numRows: rows.lower.length,
      numCols: columns.cost.length,
      starts: rows.starts,
      indices: rows.indices,
      values: rows.values,
    },
    ...(whole ? { integrality: Int32Array.from(columns.integer) } : {}),
  });
  try {
    instance.options.set({
      output_flag: false,
      random_seed: 1,
      presolve: options.simplify === false ? 'off' : 'choose',
      mip_rel_gap: options.gap,
      mip_abs_gap: options.absoluteGap ?? 1e-6,
      ...(options.timeLimit === undefined ? {} : { time_limit: Math.max(0.05, options.timeLimit) }),
      ...(options.target === undefined ? {} : { objective_target: options.target }),
      ...(options.nodeLimit === undefined ? {} : { mip_max_nodes: options.nodeLimit }),
    } as never);
    if (options.start) instance.setSolution({ colValue: options.start });
    let best: Float64Array | null = null;
    let bestObjective: number | null = null;
    let bound = -Infinity;
    let stopAsked = false;
    const kinds = highs.constants.callbackType;
    const inspect = (event: { data: Readonly<Record<string, unknown>>; interrupt(): void }): undefined => {
      const primal = event.data['mip_primal_bound'] as number | undefined;
      const dual = event.data['mip_dual_bound'] as number | undefined;
      if (dual !== undefined && Math.abs(dual) < 1e20) bound = Math.max(bound, dual);
      const incumbent = primal !== undefined && Math.abs(primal) < 1e20 ? primal : bestObjective;
      const known = Number.isFinite(bound) ? bound : null;
      listener.progress({
        seconds: elapsed(),
        incumbent,
        bound: known,
        gap: incumbent !== null && known !== null ? relativeGap(incumbent, known) : null,
      });
      if (listener.cancelled()) {
        stopAsked = true;
        event.interrupt();
      }
      return undefined;
    };
    instance.run({
      [kinds.mipImprovingSolution](event: { data: Readonly<Record<string, unknown>> }) {
        const values = event.data['mip_solution'] as Float64Array | undefined;
        if (!values) return undefined;
        best = values;
        bestObjective = event.data['objective_function_value'] as number;
        listener.improved(values, bestObjective);
        return undefined;
      },
      [kinds.mipInterrupt]: inspect,
      [kinds.simplexInterrupt](event: { interrupt(): void }) {
        if (listener.cancelled()) {
          stopAsked = true;
          event.interrupt();
        }
        return undefined;
      },
    } as never);
    const status = instance.getModelStatus() as number;
    const named = highs.constants.modelStatus;
    if (status === named.infeasible) return answer('infeasible', null, null, Infinity, elapsed());
    const reached = status === named.objectiveTarget;
    const optimal = status === named.optimal || reached;
    if (optimal) {
      best = instance.getSolution().colValue;
      bestObjective = instance.getObjectiveValue();
      const proved = whole ? (instance.info.get('mip_dual_bound' as never) as number) : bestObjective;
      if (Number.isFinite(proved)) bound = Math.min(bestObjective, Math.max(bound, proved));
    } else {
      const known = [named.timeLimit, named.interrupted, named.solutionLimit, named.iterationLimit, named.objectiveBound];
      if (!known.includes(status as never) && status !== named.unknown) {
        throw new Error(`the optimiser ended with model status ${status}`);
      }
    }
    const values = best && tidied(best, columns.integer);
    return answer(optimal ? 'optimal' : stopAsked ? 'cancelled' : 'stopped', values, bestObjective, bound, elapsed());
  } finally {
    instance.dispose();
  }
};

const answer = (
  status: Solution['status'],
  values: Float64Array | null,
  objective: number | null,
  bound: number,
  seconds: number,
): Solution => ({ status, values, objective, bound, gap: relativeGap(objective, bound), seconds });

const tidied = (values: Float64Array, integer: Uint8Array): Float64Array =>
  values.map((value, column) => (integer[column] === 1 ? Math.round(value) + 0 : value));

/** A model without columns is answered by looking whether its rows allow zero. */
const emptyAnswer = (rows: Model['rows']): Solution => {
  const possible = rows.lower.every((low, row) => low <= 1e-9 && rows.upper[row]! >= -1e-9);
  return possible ? answer('optimal', new Float64Array(0), 0, 0, 0) : answer('infeasible', null, null, Infinity, 0);
};
