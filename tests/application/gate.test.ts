import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openApplication, type Application } from '#application/application.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import type { Compute } from '#services/needs.ts';
import { contract, operationNames } from '#shared/contract/contract.ts';
import { operations } from '#services/operations.ts';
import type { Event, Job } from '#shared/contract/job.ts';
import { TaskFailed, WorkerLost } from '#platform/workers/pool.ts';
import { forecastOf } from '#tests/contract/fake-engine.ts';
import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';

let folder: string;
let application: Application;
let log: string[];
/** What the engine does next; the tests put their own here. */
let engine: Compute;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fieldback-gate-'));
  log = [];
  engine = ((_task: string, question: never) => Promise.resolve(forecastOf(question))) as Compute;
  application = await openApplication({
    file: join(folder, 'workspace.fieldback'),
    clock: fixedClock('2027-06-01T12:00:00Z'),
    compute: ((...asked: Parameters<Compute>) => engine(...asked)) as Compute,
    log: (line) => log.push(line),
  });
  for (const [name, request] of [
    ['covering/save', { covering: boardFloor }],
    ['vehicle/save', { vehicle: cart }],
    ['venue/save', { venue: smallVenue }],
    ['fixture/save', { fixture: homeDate }],
    ['booking/save', { booking: concert }],
  ] as const) {
    expect(await application.answer(name, request), name).toMatchObject({ ok: true });
  }
});
afterEach(async () => {
  await application.close();
  rmSync(folder, { recursive: true, force: true });
});

const asked = { venueId: smallVenue.id, fixtureId: homeDate.id, bookingId: concert.id, members: 1, seed: 3 };
const preview = { venueId: smallVenue.id, fixtureId: homeDate.id, booking: null, cellSize: 1 as const };

/** The events up to and with the end of the next job. */
const untilJobEnds = (): Promise<Event[]> =>
  new Promise((resolve) => {
    const heard: Event[] = [];
    const stop = application.listen((event) => {
      heard.push(event);
      if (event.kind === 'job' && event.job.state !== 'running') {
        stop();
        setImmediate(() => resolve(heard));
      }
    });
  });

describe('the gate', () => {
  test('has a service for every operation and no other', () => {
    expect(Object.keys(operations).toSorted()).toEqual([...operationNames].toSorted());
  });

  test.each([undefined, null, 0, 'x', [], {}, () => 1, Symbol('x'), 10n, new Map(), NaN])(
    'never throws, whatever it is asked (%#)',
    async (request) => {
      for (const name of operationNames) {
        const answer = await application.answer(name, request);
        if (contract[name].request.safeParse(request).success) continue;
        expect(answer, name).toMatchObject({ ok: false, failure: { kind: 'invalid-request' } });
      }
      for (const name of ['', 'toString', '__proto__', 'constructor', 'venue', undefined, 7]) {
        expect(await application.answer(name as string, request)).toMatchObject({
          ok: false,
          failure: { kind: 'invalid-request' },
        });
      }
    },
  );

  test('takes a request that contains itself for what it is', async () => {
    const request: Record<string, unknown> = {};
    request['booking'] = request;
    expect(await application.answer('booking/save', request)).toMatchObject({
      ok: false,
      failure: { kind: 'invalid-request', problems: [{ reason: expect.stringMatching(/deep/) as string }] },
    });
  });

  test('tells of changes with what and id, and of nothing when nothing was changed', async () => {
    const heard: Event[] = [];
    const stop = application.listen((event) => heard.push(event));
    await application.ask('booking/save', { booking: { ...concert, revision: 1 } });
    await application.ask('booking/save', { booking: { ...concert, revision: 1 } });
    await application.ask('booking/read', { id: concert.id });
    await application.ask('fixture/remove', { id: homeDate.id, revision: 1 });
    stop();
    await application.ask('booking/remove', { id: concert.id, revision: 2 });
    expect(heard).toEqual([
      { kind: 'changed', what: 'booking', id: concert.id },
      { kind: 'changed', what: 'fixture', id: homeDate.id },
    ]);
  });

  test('a listener that throws hurts nobody else', async () => {
    const heard: Event[] = [];
    application.listen(() => {
      throw new Error('deaf');
    });
    application.listen((event) => heard.push(event));
    expect(await application.ask('venue/save', { venue: { ...smallVenue, revision: 1 } })).toMatchObject({ ok: true });
    expect(heard).toHaveLength(1);
    expect(log.join()).toMatch(/deaf/);
  });

  test('a value that is not in its shape does not go out', async () => {
    engine = ((_task: string, question: never) =>
      Promise.resolve({ ...forecastOf(question), chanceAllReady: Number.NaN })) as Compute;
    expect(await application.ask('forecast/preview', preview)).toMatchObject({ ok: false, failure: { kind: 'unexpected' } });
    expect(log.join()).toMatch(/chanceAllReady/);
  });

  test('the details of an error go to the log, not to the caller', async () => {
    engine = () => Promise.reject(new Error('secret path /home/someone'));
    const answer = await application.ask('forecast/preview', preview);
    expect(answer).toMatchObject({ ok: false, failure: { kind: 'unexpected' } });
    expect(JSON.stringify(answer)).not.toMatch(/secret/);
    expect(log.join()).toMatch(/secret path/);
  });

  test('after closing everything is answered with cancelled', async () => {
    await application.close();
    expect(await application.answer('venue/list', {})).toMatchObject({ ok: false, failure: { kind: 'cancelled' } });
  });
});

describe('long work', () => {
  test('answers with its job at once, tells how far it is, and ends with its value', async () => {
    engine = (async (_task: string, question: never, wishes: Parameters<Compute>[2]) => {
      wishes?.report?.({ share: 0.5, note: 'half' });
      return forecastOf(question);
    }) as Compute;
    const events = untilJobEnds();
    const answer = await application.ask('forecast/run', asked);
    expect(answer).toMatchObject({ ok: true, value: { state: 'running', operation: 'forecast/run', progress: { share: 0 } } });
    const jobs = (await events).filter((event) => event.kind === 'job').map(({ job }) => job);
    expect(jobs.map(({ state, progress }) => [state, progress.share])).toEqual([
      ['running', 0],
      ['running', 0.5],
      ['done', 1],
    ]);
    const { id } = jobs.at(-1)!.value as { id: string };
    expect(await application.ask('forecast/read', { id })).toMatchObject({
      ok: true,
      value: { createdAt: '2027-06-01T12:00:00.000Z' },
    });
    expect(await events).toContainEqual({ kind: 'changed', what: 'forecast', id });
  });

  test.each([
    ['a lost worker', new WorkerLost('foresee', 'it ended with code 3'), 'unexpected', /ended before it was done/],
    [
      'a number out of range',
      new TaskFailed('foresee', { name: 'RangeError', message: 'must be below 1', stack: '', field: 'soil.depth' }),
      'out-of-range',
      /soil[.]depth: must be below 1/,
    ],
    ['a fault of ours', new TypeError('x is not a function'), 'unexpected', /Nothing was stored/],
  ])('that meets %s ends as failed, keeps nothing, and can be run again', async (_, error, kind, message) => {
    const working = engine;
    engine = () => Promise.reject(error);
    const events = untilJobEnds();
    await application.ask('forecast/run', asked);
    const { job } = (await events).findLast((event) => event.kind === 'job')! as { job: Job };
    expect(job).toMatchObject({ state: 'failed', failure: { kind, message: expect.stringMatching(message) as string } });
    expect(await application.ask('forecast/list', { venueId: smallVenue.id })).toEqual({ ok: true, value: [] });

    engine = working;
    const again = untilJobEnds();
    await application.ask('forecast/run', asked);
    expect((await again).at(-1)).toMatchObject({ kind: 'job', job: { state: 'done' } });
  });

  test('is refused at once, without a job, when it cannot be done', async () => {
    const heard: Event[] = [];
    application.listen((event) => heard.push(event));
    expect(await application.ask('forecast/run', { ...asked, bookingId: 'nobody' })).toMatchObject({
      failure: { kind: 'not-found' },
    });
    expect(heard).toEqual([]);
  });

  test('is stopped when the application closes', async () => {
    let stopped = false;
    engine = ((_task: string, _question: unknown, wishes: Parameters<Compute>[2]) =>
      new Promise((_resolve, reject) =>
        wishes?.signal?.addEventListener('abort', () => {
          stopped = true;
          reject(new Error('aborted'));
        }),
      )) as Compute;
    await application.ask('forecast/run', asked);
    await application.close();
    expect(stopped).toBe(true);
  });

  test('the input that is kept gives its hash again and holds only what the booking uses', async () => {
    await application.ask('covering/save', { covering: { ...boardFloor, id: 'unused' } });
    let first = '';
    for (const name of ['Unused floor', 'Renamed unused floor']) {
      await application.ask('covering/save', { covering: { ...boardFloor, id: 'unused', name } });
      const events = untilJobEnds();
      await application.ask('forecast/run', asked);
      const { job } = (await events).findLast((event) => event.kind === 'job')! as { job: Job };
      const { inputHash } = job.value as { inputHash: string };
      first ||= inputHash;
      expect(inputHash).toBe(first);
    }
    await application.ask('covering/save', { covering: { ...boardFloor, thickness: 0.04 } });
    const events = untilJobEnds();
    await application.ask('forecast/run', asked);
    const { job } = (await events).findLast((event) => event.kind === 'job')! as { job: Job };
    expect((job.value as { inputHash: string }).inputHash).not.toBe(first);
  });
});
