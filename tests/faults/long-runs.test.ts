import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openApplication, type Application } from '#application/application.ts';
import type { Bridge } from '#shared/contract/bridge.ts';
import type { Job } from '#shared/contract/job.ts';
import type { Optimiser } from '#planner/optimiser.ts';
import { optimiserInWorker } from '#platform/optimiser/optimiser-in-worker.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { enter } from '#tests/faults/tally.ts';
import { startWebHost } from '#tests/faults/victim.ts';

let folder: string;
let file: string;
let place: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fieldback-long-'));
  file = join(folder, 'workspace.fieldback');
  place = join(folder, 'fault');
  process.env['FIELDBACK_FAULT_PLACE'] = place;
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const forecast = { venueId: 'small', bookingId: 'small-one', fixtureId: 'small-home', members: 2, seed: 1 };
const planOf = (forecastId: string) => ({ forecastId, now: '2027-06-01T12:00', locks: [], done: [], instead: null });

type Asked = Pick<Bridge, 'answer'>;

const start = async (door: Asked, name: string, request: unknown): Promise<Job> => {
  const answer = await door.answer(name, request);
  expect(answer, name).toMatchObject({ ok: true });
  return (answer as { value: Job }).value;
};

/** The job once it no longer runs. */
const ended = async (door: Asked, { id }: Job): Promise<Job> => {
  for (;;) {
    const answer = await door.answer('job/read', { id });
    const job = (answer as { value: Job }).value;
    if (job.state !== 'running') return job;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

const kept = async (door: Asked): Promise<readonly [number, number]> => {
  const count = async (name: string): Promise<number> => {
    const answer = await door.answer(name, { venueId: 'small' });
    return (answer as { value: unknown[] }).value.length;
  };
  return [await count('forecast/list'), await count('plan/list')];
};

const opened = async (optimiser?: Optimiser): Promise<Application> => {
  const application = await openApplication({
    file,
    workerEntry: new URL('./failing-worker.ts', import.meta.url),
    ...(optimiser ? { optimiser } : {}),
    log: () => undefined,
  });
  expect(await application.ask('venue/import', { document: documentOf('small') })).toMatchObject({ ok: true });
  return application;
};

describe('a calculation whose thread is lost', () => {
  // Fails when a lost worker no longer ends its task (`lose` of the pool), or is answered in other words (`failureOfError`).
  test.each(['die', 'swell'])(
    '(%s) ends with a named failure, keeps nothing, and can be run again',
    async (fault) => {
      const application = await opened();
      writeFileSync(`${place}-${fault}`, '');
      const job = await ended(application, await start(application, 'forecast/run', forecast));
      expect(job).toMatchObject({ state: 'failed', failure: { kind: 'unexpected' } });
      expect(job.failure!.message).toMatch(/ended before it was done.*Nothing was kept; start it again/);
      expect(await kept(application)).toEqual([0, 0]);
      const again = await ended(application, await start(application, 'forecast/run', forecast));
      expect(again.state).toBe('done');
      expect(await kept(application)).toEqual([1, 0]);
      await application.close();
      enter({ kind: `long runs: the thread is lost (${fault})`, tries: 1, survived: 1, lost: 0 });
    },
    300_000,
  );

  // Fails when a cancelled task leaves its thread working (`terminate` in `cancel` of the pool): then the job never ends.
  test('cancelled while it looks at nothing: ends as cancelled, and the next one runs', async () => {
    const application = await opened();
    writeFileSync(`${place}-spin`, '');
    const job = await start(application, 'forecast/run', forecast);
    // The thread takes the file away and then looks at nothing any more.
    while (existsSync(`${place}-spin`)) await new Promise((resolve) => setTimeout(resolve, 10));
    const cancelled = await application.ask('job/cancel', { id: job.id });
    expect(cancelled).toMatchObject({ ok: true, value: { state: 'cancelled', failure: { kind: 'cancelled' } } });
    expect(await kept(application)).toEqual([0, 0]);
    expect((await ended(application, await start(application, 'forecast/run', forecast))).state).toBe('done');
    await application.close();
    enter({ kind: 'long runs: cancelled', tries: 1, survived: 1, lost: 0 });
  }, 120_000);
});

describe('an optimiser that comes to no end', () => {
  const without = { values: null, objective: null, bound: -Infinity, gap: Infinity, seconds: 60 } as const;
  const faults: readonly (readonly [string, Optimiser, RegExp])[] = [
    ['its time is over before it has a plan', { solve: () => Promise.resolve({ status: 'stopped', ...without }) }, /time/i],
    [
      'it does not keep to its time',
      {
        solve: (model, options) =>
          optimiserInWorker({ entry: new URL('./stuck-optimiser.ts', import.meta.url), overdue: 500 }).solve(model, {
            ...options,
            timeLimit: 1,
          }),
      },
      /time/i,
    ],
    ['it throws', { solve: () => Promise.reject(new Error('the optimiser ended with model status 4')) }, /start|again/i],
  ];

  // Fails when `stopped` is taken for a plan (`make`), when a solve that is overdue is waited for (`late` in `optimiserInWorker`), or when
  // what the optimiser throws gets out of the job.
  test.each(faults)(
    '%s: a named failure, no plan kept, and planning again with the real one succeeds',
    async (what, broken, words) => {
      let now: Optimiser = broken;
      const application = await opened({ solve: (model, options) => now.solve(model, options) });
      const run = await ended(application, await start(application, 'forecast/run', forecast));
      const request = planOf((run.value as { id: string }).id);
      const job = await ended(application, await start(application, 'plan/make', request));
      expect(job.state).toBe('failed');
      expect(job.failure!.message).toMatch(words);
      expect(await kept(application)).toEqual([1, 0]);
      now = optimiserInWorker();
      expect(await ended(application, await start(application, 'plan/make', request))).toMatchObject({ state: 'done' });
      expect(await kept(application)).toEqual([1, 1]);
      await application.close();
      enter({ kind: `long runs: the optimiser, ${what}`, tries: 1, survived: 1, lost: 0 });
    },
    300_000,
  );
});

describe('a machine that sleeps in the middle', () => {
  // A stopped process is to itself what a sleeping machine is: the clock jumps and every connection stood still.
  test.skipIf(process.platform === 'win32')(
    'wakes, ends its work once, and answers',
    async () => {
      const host = await startWebHost(file);
      const door: Asked = { answer: async (name, request) => (await host.ask(name, request))! };
      await start(door, 'venue/import', { document: documentOf('small') });
      const job = await start(door, 'forecast/run', { ...forecast, members: 60 });
      host.child.kill('SIGSTOP');
      await new Promise((resolve) => setTimeout(resolve, 3000));
      host.child.kill('SIGCONT');
      const woken = await ended(door, job);
      expect(woken.state).toBe('done');
      expect(await kept(door)).toEqual([1, 0]);
      const plan = await start(door, 'plan/make', planOf((woken.value as { id: string }).id));
      host.child.kill('SIGSTOP');
      await new Promise((resolve) => setTimeout(resolve, 3000));
      host.child.kill('SIGCONT');
      expect((await ended(door, plan)).state).toBe('done');
      expect(await kept(door)).toEqual([1, 1]);
      host.kill();
      await host.ended;
      enter({ kind: 'long runs: sleep and wake', tries: 2, survived: 2, lost: 0 });
    },
    180_000,
  );
});
