import type { Optimiser } from '#planner/optimiser.ts';
import { highsRuntime, solveWithHighs } from '#platform/optimiser/solve-with-highs.ts';

/** Solves on the calling thread, which it blocks: for tests, and for a program that has nothing else to do meanwhile. */
export const optimiserOnThisThread = (wasm?: Uint8Array): Optimiser => ({
  async solve(model, { onProgress, signal, ...options }) {
    const highs = await highsRuntime(wasm);
    return solveWithHighs(highs, model, options, {
      progress: (progress) => onProgress?.(progress),
      improved: () => undefined,
      cancelled: () => signal?.aborted ?? false,
    });
  },
});
