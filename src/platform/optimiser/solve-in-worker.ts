import { parentPort, workerData } from 'node:worker_threads';
import type { Model, Progress, Solution } from '#planner/optimiser.ts';
import type { PlainSolveOptions } from '#platform/optimiser/solve-with-highs.ts';
import { highsRuntime, solveWithHighs } from '#platform/optimiser/solve-with-highs.ts';

/** What the worker is started with. `flag[0]` turns 1 when the solve is to end. */
export interface WorkerTask {
  readonly model: Model;
  readonly options: PlainSolveOptions;
  readonly flag: Int32Array;
  readonly wasm: Uint8Array | null;
}

export type WorkerMessage =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'improved'; readonly values: Float64Array; readonly objective: number }
  | { readonly kind: 'solved'; readonly solution: Solution };

const task = workerData as WorkerTask;
const post = (message: WorkerMessage): void => parentPort?.postMessage(message);

const highs = await highsRuntime(task.wasm ?? undefined);
const solution = solveWithHighs(highs, task.model, task.options, {
  progress: (progress) => post({ kind: 'progress', progress }),
  improved: (values, objective) => post({ kind: 'improved', values, objective }),
  cancelled: () => Atomics.load(task.flag, 0) === 1,
});
post({ kind: 'solved', solution });
