import { parentPort, workerData } from 'node:worker_threads';
import type { Model, Progress, Solution } from '#planner/optimiser.ts';
import type { PlainSolveOptions } from '#platform/optimiser/solve-with-highs.ts';
import { highsRuntime, solveWithHighs } from '#platform/optimiser/solve-with-highs.ts';

/** What the worker is started with: the solver's WebAssembly, where it cannot read the package's own file. */
export interface WorkerStart {
  readonly wasm: Uint8Array | null;
}

/** To the worker: one model at a time. `flag[0]` turns 1 when the solve is to end. */
export interface WorkerTask {
  readonly model: Model;
  readonly options: PlainSolveOptions;
  readonly flag: Int32Array;
}

/** From the worker; nothing follows `solved` or `failed`. */
export type WorkerMessage =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'improved'; readonly values: Float64Array; readonly objective: number }
  | { readonly kind: 'solved'; readonly solution: Solution }
  | { readonly kind: 'failed'; readonly error: unknown };

const post = (message: WorkerMessage): void => parentPort?.postMessage(message);
const starting = highsRuntime((workerData as WorkerStart).wasm ?? undefined);

const solve = async ({ model, options, flag }: WorkerTask): Promise<void> => {
  try {
    const solution = solveWithHighs(await starting, model, options, {
      progress: (progress) => post({ kind: 'progress', progress }),
      improved: (values, objective) => post({ kind: 'improved', values, objective }),
      cancelled: () => Atomics.load(flag, 0) === 1,
    });
    post({ kind: 'solved', solution });
  } catch (error) {
    post({ kind: 'failed', error });
  }
};

parentPort?.on('message', (task: WorkerTask) => void solve(task));
