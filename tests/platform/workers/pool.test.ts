import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openPool, TaskCancelled, TaskFailed, WorkerLost, type Pool } from '#platform/workers/pool.ts';

const entry = new URL('./tasks.ts', import.meta.url);
let pool: Pool;
beforeEach(() => {
  pool = openPool({ entry, size: 2, memory: 64 });
});
afterEach(() => pool.close());

describe('a pool of workers', () => {
  test('runs tasks and gives what they give', async () => {
    expect(await Promise.all([1, 2, 3, 4, 5].map((number) => pool.run('double', number)))).toEqual([2, 4, 6, 8, 10]);
  });

  test('tells how far a task is, in order, and nothing after its end', async () => {
    const heard: number[] = [];
    await pool.run('count', 5, { report: ({ share }) => heard.push(share) });
    expect(heard).toEqual([0.2, 0.4, 0.6, 0.8, 1]);
  });

  test('names what a task threw, and works on', async () => {
    const error = await pool.run('refuse', null).catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(TaskFailed);
    expect((error as TaskFailed).facts).toMatchObject({ name: 'RangeError', field: 'members', message: 'must be at least 1' });
    expect(await pool.run('double', 4)).toBe(8);
  });

  test('refuses a task that is not there, also one named like a thing every object has', async () => {
    await expect(pool.run('paint', null)).rejects.toBeInstanceOf(TaskFailed);
    await expect(pool.run('constructor', null)).rejects.toBeInstanceOf(TaskFailed);
  });

  test.each(['die', 'swallow'])('a worker that is lost (%s) ends its task by name, and the next one works', async (task) => {
    await expect(pool.run(task, null)).rejects.toBeInstanceOf(WorkerLost);
    expect(await pool.run('double', 21)).toBe(42);
  });

  test('a module that does not come up ends the task by name', async () => {
    const broken = openPool({ entry: new URL('./not-there.ts', import.meta.url), size: 2 });
    await expect(broken.run('double', 1)).rejects.toBeInstanceOf(WorkerLost);
    await broken.close();
  });

  test('stops a task that never ends, and works on', async () => {
    const stop = new AbortController();
    const spinning = pool.run('spin', null, { signal: stop.signal });
    setTimeout(() => stop.abort(), 100);
    await expect(spinning).rejects.toBeInstanceOf(TaskCancelled);
    expect(await pool.run('double', 3)).toBe(6);
  });

  test('drops a task that waits when nobody wants it any more', async () => {
    const stop = new AbortController();
    const [first, later] = [new AbortController(), new AbortController()];
    const spinning = pool.run('spin', null, { signal: first.signal });
    const waiting = pool.run('double', 1, { signal: later.signal });
    later.abort();
    await expect(waiting).rejects.toBeInstanceOf(TaskCancelled);
    stop.abort();
    await expect(pool.run('double', 1, { signal: stop.signal })).rejects.toBeInstanceOf(TaskCancelled);
    first.abort();
    await expect(spinning).rejects.toBeInstanceOf(TaskCancelled);
  });

  test('keeps one worker free for what is urgent', async () => {
    const stop = new AbortController();
    const spinning = [1, 2, 3].map(() => pool.run('spin', null, { signal: stop.signal }));
    expect(await pool.run('double', 8, { urgent: true })).toBe(16);
    stop.abort();
    expect((await Promise.allSettled(spinning)).every(({ status }) => status === 'rejected')).toBe(true);
  });

  test('ends everything when it closes', async () => {
    const spinning = [pool.run('spin', null), pool.run('spin', null, { urgent: true }), pool.run('double', 1)];
    const ends = Promise.allSettled(spinning);
    await pool.close();
    for (const end of await ends) expect((end as PromiseRejectedResult).reason).toBeInstanceOf(TaskCancelled);
    await expect(pool.run('double', 1)).rejects.toBeInstanceOf(TaskCancelled);
  });
});
