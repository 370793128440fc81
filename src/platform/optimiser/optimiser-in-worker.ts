import { Worker } from 'node:worker_threads';
import type { Optimiser, Progress, Solution } from '#planner/optimiser.ts';
import type { WorkerMessage, WorkerTask } from '#platform/optimiser/solve-in-worker.ts';

export interface WorkerOptimiserOptions {
  /** The worker's entry file; beside this one unless the program is bundled. */
  readonly entry?: URL;
  /** The solver's WebAssembly bytes, where the worker cannot read the package's own file. */
  readonly wasm?: Uint8Array;
  /** ms between asking a solve to end and ending its thread. */
  readonly patience?: number;
  /** ms beyond its own time limit after which a solve is ended by force. */
  readonly overdue?: number;
}

/** ms; bringing up the solver is not in its time limit, and a busy machine needs some. */
const overdue = 30_000;

const noAnswer: Progress = { seconds: 0, incumbent: null, bound: null, gap: null };

/**
 * Solves each model in a worker thread of its own, so that the caller stays live. Aborting the signal first raises a shared
 * flag, which the solver looks at between branches, and after `patience` ends the thread; either way the best plan found
 * so far comes back with status `cancelled`. A solve that does not keep to its own time limit is ended in the same way, as `stopped`.
 */
export const optimiserInWorker = (settings: WorkerOptimiserOptions = {}): Optimiser => ({
  solve: (model, { onProgress, signal, ...options }) =>
    new Promise<Solution>((resolve, reject) => {
      const flag = new Int32Array(new SharedArrayBuffer(4));
      const task: WorkerTask = { model, options, flag, wasm: settings.wasm ?? null };
      let latest = noAnswer;
      let best: { readonly values: Float64Array; readonly objective: number } | null = null;
      let ending: NodeJS.Timeout | undefined;
      const worker = new Worker(settings.entry ?? new URL('./solve-in-worker.ts', import.meta.url), { workerData: task });
      const settle = (finish: () => void): void => {
        clearTimeout(ending);
        clearTimeout(late);
        signal?.removeEventListener('abort', cancel);
        worker.removeAllListeners();
        void worker.terminate();
        finish();
      };
      const bestSoFar = (status: 'cancelled' | 'stopped'): Solution => ({
        status,
        values: best && best.values.map((value, column) => (model.columns.integer[column] === 1 ? Math.round(value) + 0 : value)),
        objective: best?.objective ?? null,
        bound: latest.bound ?? -Infinity,
        gap: latest.gap ?? Infinity,
        seconds: latest.seconds,
      });
      const cancel = (): void => {
        Atomics.store(flag, 0, 1);
        ending = setTimeout(() => settle(() => resolve(bestSoFar('cancelled'))), settings.patience ?? 1000);
      };
      const late =
        options.timeLimit === undefined
          ? undefined
          : setTimeout(
              () => settle(() => resolve(bestSoFar('stopped'))),
              1000 * options.timeLimit + (settings.overdue ?? overdue),
            );
      worker.on('message', (message: WorkerMessage) => {
        if (message.kind === 'progress') {
          latest = message.progress;
          onProgress?.(message.progress);
        } else if (message.kind === 'improved') {
          best = message;
        } else {
          settle(() => resolve(message.solution));
        }
      });
      worker.on('error', (error) => settle(() => reject(error)));
      worker.on('exit', (code) => settle(() => reject(new Error(`the optimiser's worker ended early with code ${code}`))));
      if (signal?.aborted) cancel();
      else signal?.addEventListener('abort', cancel);
    }),
});
