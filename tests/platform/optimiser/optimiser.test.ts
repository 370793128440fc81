import { describe, expect, it } from 'vitest';
import { linearModel } from '#planner/linear-model.ts';
import type { Model, Optimiser, Progress } from '#planner/optimiser.ts';
import { optimiserInWorker } from '#platform/optimiser/optimiser-in-worker.ts';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';

/** Four things of value 10, 13, 7, 4 and weight 3, 4, 2, 1 into a bag for 6: the best takes 10 + 7 + 4 = 21 (13 + 7 is 20). */
const bag = (): Model => {
  const model = linearModel();
  const columns = [10, 13, 7, 4].map((value) => model.column(-value, 0, 1, true));
  model.row(
    -Infinity,
    6,
    columns.map((column, index) => [column, [3, 4, 2, 1][index]!] as const),
  );
  return model.build();
};

/** A market split: equalities that take very long to prove impossible, with slacks so that plans are found at once. */
const longModel = (): Model => {
  const model = linearModel();
  const columns = Array.from({ length: 50 }, () => model.column(0, 0, 1, true));
  for (let row = 0; row < 6; row += 1) {
    const weights = columns.map((_, index) => (((index + 3) * (row + 7) * 7919) % 97) + 3);
    const half = Math.floor(weights.reduce((sum, weight) => sum + weight, 0) / 2);
    const over = model.column(1, 0, Infinity, false);
    const under = model.column(1, 0, Infinity, false);
    model.row(half, half, [...columns.map((column, index) => [column, weights[index]!] as const), [over, 1], [under, -1]]);
  }
  return model.build();
};

const impossible = (): Model => {
  const model = linearModel();
  const one = model.column(1, 0, 1, true);
  model.row(2, Infinity, [[one, 1]]);
  return model.build();
};

const doors: readonly (readonly [string, Optimiser])[] = [
  ['on this thread', optimiserOnThisThread()],
  ['in a worker', optimiserInWorker()],
];

describe.each(doors)('the optimiser %s', (_, optimiser) => {
  it('finds the best of a small bag and proves it', async () => {
    const solution = await optimiser.solve(bag(), { gap: 0 });
    expect(solution.status).toBe('optimal');
    expect(solution.objective).toBeCloseTo(-21, 9);
    expect(solution.bound).toBeCloseTo(-21, 6);
    expect([...solution.values!]).toEqual([1, 0, 1, 1]);
    expect(solution.gap).toBeLessThan(1e-9);
  });

  it('says when there is no answer', async () => {
    expect(await optimiser.solve(impossible(), { gap: 0 })).toMatchObject({
      status: 'infeasible',
      values: null,
      objective: null,
    });
  });

  it('accepts a complete start', async () => {
    const solution = await optimiser.solve(bag(), { gap: 0, start: Float64Array.from([0, 1, 1, 0]) });
    expect(solution.objective).toBeCloseTo(-21, 9);
  });

  it('stops at the time limit with what it has, and its bound', async () => {
    const solution = await optimiser.solve(longModel(), { gap: 0, timeLimit: 0.6 });
    expect(solution.status).toBe('stopped');
    expect(solution.values).not.toBeNull();
    expect(solution.bound).toBeLessThanOrEqual(solution.objective! + 1e-9);
  });

  it('is satisfied with a target', async () => {
    const free = await optimiser.solve(longModel(), { gap: 0, target: 100 });
    expect(free.status).toBe('optimal');
    expect(free.objective).toBeLessThanOrEqual(100);
  });

  it('answers a model without columns by its rows', async () => {
    const model = linearModel();
    expect((await optimiser.solve(model.build(), { gap: 0 })).status).toBe('optimal');
    model.row(1, 1, []);
    expect((await optimiser.solve(model.build(), { gap: 0 })).status).toBe('infeasible');
  });

  it('finds the same best whether it simplifies the model or not', async () => {
    const [one, other] = [await optimiser.solve(bag(), { gap: 0 }), await optimiser.solve(bag(), { gap: 0, simplify: false })];
    expect(other).toMatchObject({ status: 'optimal', objective: one.objective });
  });

  it('gives the same answer to the same question', async () => {
    const [one, other] = [await optimiser.solve(bag(), { gap: 0 }), await optimiser.solve(bag(), { gap: 0 })];
    expect([...one.values!]).toEqual([...other.values!]);
  });
});

describe('a solve in a worker', () => {
  it('leaves the caller live, reports progress and can be cancelled with the best so far', async () => {
    const stop = new AbortController();
    const seen: Progress[] = [];
    let ticks = 0;
    const ticking = setInterval(() => (ticks += 1), 20);
    const solving = optimiserInWorker().solve(longModel(), {
      gap: 0,
      timeLimit: 60,
      signal: stop.signal,
      onProgress: (progress) => {
        seen.push(progress);
        if (progress.incumbent !== null && progress.bound !== null) setTimeout(() => stop.abort(), 100);
      },
    });
    const solution = await solving;
    clearInterval(ticking);
    expect(solution.status).toBe('cancelled');
    expect(solution.values).not.toBeNull();
    expect(ticks).toBeGreaterThan(2);
    expect(seen.some(({ gap }) => gap !== null)).toBe(true);
    for (const { incumbent, bound } of seen)
      if (incumbent !== null && bound !== null) expect(bound).toBeLessThanOrEqual(incumbent + 1e-6);
  });

  it('is ended by force when it does not look at the flag', async () => {
    const stop = new AbortController();
    const solving = optimiserInWorker({ patience: 0 }).solve(longModel(), { gap: 0, timeLimit: 60, signal: stop.signal });
    stop.abort();
    expect((await solving).status).toBe('cancelled');
  });

  it('keeps its thread for the next model, but not one that had to be ended', async () => {
    const optimiser = optimiserInWorker({ entry: new URL('./thread-that-names-itself.ts', import.meta.url), patience: 0 });
    const thread = async (): Promise<number | null> => (await optimiser.solve(bag(), { gap: 0 })).objective;
    const first = await thread();
    expect(await thread()).toBe(first);
    const stop = new AbortController();
    const stuck = optimiser.solve(linearModel().build(), { gap: 0, signal: stop.signal });
    stop.abort();
    expect((await stuck).status).toBe('cancelled');
    const later = await thread();
    expect(later).not.toBe(first);
    const [one, other] = await Promise.all([thread(), thread()]);
    expect(one).not.toBe(other);
    expect([one, other]).toContain(later);
  });

  it('tells a broken worker from an impossible model', async () => {
    const missing = optimiserInWorker({ entry: new URL('./no-such-worker.ts', import.meta.url) });
    await expect(missing.solve(bag(), { gap: 0 })).rejects.toThrow();
  });

  it('takes the WebAssembly bytes from the caller', async () => {
    const { readFile } = await import('node:fs/promises');
    const { createRequire } = await import('node:module');
    const wasm = await readFile(createRequire(import.meta.url).resolve('highs/runtime'));
    const solution = await optimiserInWorker({ wasm: new Uint8Array(wasm) }).solve(bag(), { gap: 0 });
    expect(solution.objective).toBeCloseTo(-21, 9);
  });
});
