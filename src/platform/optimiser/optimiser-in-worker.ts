import { Worker } from 'node:worker_threads';
import type { Optimiser, Progress, Solution } from '#planner/optimiser.ts';
import type { WorkerMessage, WorkerStart, WorkerTask } from '#platform/optimiser/solve-in-worker.ts';

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

/** ms that a thread waits for the next model before it is ended. */
const rest = 30_000;

/** By name: what Node itself listens to keeps the messages coming. */
const letGo = (worker: Worker): void => {
  for (const event of ['message', 'error', 'exit']) worker.removeAllListeners(event);
};

/**
 * Threads with the solver in them. One that has solved waits for the next model: bringing up the solver, and its first run while its code is
 * still slow, cost more than most models do.
 */
const threadsOf = ({ entry, wasm }: WorkerOptimiserOptions) => {
  let resting: { readonly worker: Worker; readonly ending: NodeJS.Timeout } | null = null;
  const give = (): Worker => {
    if (resting === null) {
      const start: WorkerStart = { wasm: wasm ?? null };
      return new Worker(entry ?? new URL('./solve-in-worker.ts', import.meta.url), { workerData: start });
    }
    const { worker, ending } = resting;
    clearTimeout(ending);
    letGo(worker);
    resting = null;
    return worker;
  };
  const takeBack = (worker: Worker): void => {
    if (resting !== null) return void worker.terminate();
    const mine = { worker, ending: setTimeout(() => void worker.terminate(), rest).unref() };
    worker.unref();
    const gone = (): void => {
      clearTimeout(mine.ending);
      if (resting === mine) resting = null;
    };
    worker.once('exit', gone).once('error', gone);
    resting = mine;
  };
  return { give, takeBack };
};

/**
 * Solves each model in a worker thread, so that the caller stays live. Aborting the signal first raises a shared flag, which the solver
 * looks at between branches, and after `patience` ends the thread; either way the best plan found so far comes back with status
 * `cancelled`. A solve that does not keep to its own time limit is ended in the same way, as `stopped`.
 */
export const optimiserInWorker = (settings: WorkerOptimiserOptions = {}): Optimiser => {
  const threads = threadsOf(settings);
  return {
    solve: (model, { onProgress, signal, ...options }) =>
      new Promise<Solution>((resolve, reject) => {
        const flag = new Int32Array(new SharedArrayBuffer(4));
        let latest = noAnswer;
        let best: { readonly values: Float64Array; readonly objective: number } | null = null;
        let ending: NodeJS.Timeout | undefined;
        const worker = threads.give();
        const settle = (after: 'rest' | 'end', finish: () => void): void => {
          clearTimeout(ending);
          clearTimeout(late);
          signal?.removeEventListener('abort', cancel);
          letGo(worker);
          if (after === 'rest') threads.takeBack(worker);
          else void worker.terminate();
          finish();
        };
        const bestSoFar = (status: 'cancelled' | 'stopped'): Solution => ({
          status,
          values:
            best && best.values.map((value, column) => (model.columns.integer[column] === 1 ? Math.round(value) + 0 : value)),
          objective: best?.objective ?? null,
          bound: latest.bound ?? -Infinity,
          gap: latest.gap ?? Infinity,
          seconds: latest.seconds,
        });
        const cancel = (): void => {
          Atomics.store(flag, 0, 1);
          ending = setTimeout(() => settle('end', () => resolve(bestSoFar('cancelled'))), settings.patience ?? 1000);
        };
        const late =
          options.timeLimit === undefined
            ? undefined
            : setTimeout(
                () => settle('end', () => resolve(bestSoFar('stopped'))),
                1000 * options.timeLimit + (settings.overdue ?? overdue),
              );
        worker.on('message', (message: WorkerMessage) => {
          if (message.kind === 'progress') {
            latest = message.progress;
            onProgress?.(message.progress);
          } else if (message.kind === 'improved') best = message;
          else if (message.kind === 'solved') settle('rest', () => resolve(message.solution));
          else settle('end', () => reject(message.error instanceof Error ? message.error : new Error(String(message.error))));
        });
        worker.on('error', (error) => settle('end', () => reject(error)));
        worker.on('exit', (code) =>
          settle('end', () => reject(new Error(`the optimiser's worker ended early with code ${code}`))),
        );
        if (signal?.aborted) cancel();
        else signal?.addEventListener('abort', cancel);
        worker.ref();
        const task: WorkerTask = { model, options, flag };
        worker.postMessage(task);
      }),
  };
};
