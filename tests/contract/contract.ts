import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { contract, operationNames, type OperationName } from '#shared/contract/contract.ts';
import { Failure, type Answer } from '#shared/contract/failure.ts';
import { Job } from '#shared/contract/job.ts';
import { badRequests } from '#tests/contract/bad-requests.ts';
import type { Door, OpenDoor } from '#tests/contract/door.ts';
import { ended, mainPath, steps, type Known } from '#tests/contract/steps.ts';
import { concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { tableHash } from '#tests/store/table-hash.ts';

/** Everything the contract promises, whichever door a question comes through. Each door runs it on its own. */
export const describeContract = (door: Door): void => {
  describe(`the contract through ${door.name}`, () => {
    let folder: string;
    let file: string;
    let open: OpenDoor;

    beforeEach(async () => {
      folder = mkdtempSync(join(tmpdir(), 'fieldback-contract-'));
      file = join(folder, 'workspace.fieldback');
      open = await door.open({ file, waitMs: 300 });
    });
    afterEach(async () => {
      await open.close();
      rmSync(folder, { recursive: true, force: true });
    });

    /** The value of an answer that must be good. */
    const good = async (name: OperationName, request: unknown): Promise<unknown> => {
      const answer = await open.answer(name, request);
      expect(answer, name).toMatchObject({ ok: true });
      return (answer as Extract<Answer<unknown>, { ok: true }>).value;
    };

    /** The failure of an answer that must not be good; its shape is checked. */
    const refused = async (name: string, request: unknown): Promise<Failure> => {
      const answer = await open.answer(name, request);
      expect(answer, name).toMatchObject({ ok: false });
      const { failure } = answer as Extract<Answer<unknown>, { ok: false }>;
      expect(Failure.parse(failure)).toEqual(failure);
      expect(failure.message).toMatch(/^[^\n]+[.]$/);
      expect(failure.message).not.toMatch(/undefined|Error:|\bat .*[.]ts:/);
      return failure;
    };

    const run = async (names: readonly OperationName[]): Promise<Known> => {
      const known: Known = new Map();
      for (const step of steps.filter(({ name }) => names.includes(name))) {
        const request = step.request(known);
        const value = await good(step.name, request);
        const { reply, long } = contract[step.name];
        expect((long ? Job : reply).parse(value), `${step.name} replies in its shape`).toEqual(value);
        known.set(step.name, long ? reply.parse(await ended(open, value as Job)) : value);
        step.then?.(known.get(step.name), known);
      }
      return known;
    };

    /** The small venue with its classes, home date and concert. */
    const begin = (): Promise<Known> => run(mainPath);

    test('every operation answers in its shape', async () => {
      const names = door.keepsJobs ? operationNames : operationNames.filter((name) => !name.startsWith('job/'));
      const known = await run(names);
      expect([...known.keys()].toSorted()).toEqual([...names].toSorted());
    }, 120_000);

    test('replies are plain JSON', async () => {
      await begin();
      for (const name of ['catalogue/read', 'venue/list', 'covering/list', 'workspace/about'] as const) {
        const value = await good(name, {});
        expect(JSON.parse(JSON.stringify(value)), name).toEqual(value);
      }
    });

    describe('what it refuses', () => {
      test('each bad request names its field and reason and changes nothing', async () => {
        await begin();
        const before = tableHash(file);
        for (const { title, name, request, field, reason, kind = 'invalid-request' } of badRequests) {
          const failure = await refused(name, request);
          expect(failure.kind, title).toBe(kind);
          const { problems } = failure as Extract<Failure, { kind: 'invalid-request' }>;
          const problem = problems.find((candidate) => candidate.field === field || candidate.field.startsWith(`${field}.more`));
          expect(problem?.reason, `${title}: ${JSON.stringify(problems)}`).toMatch(reason);
          expect(failure.message, title).toContain(problems[0]!.field);
          expect(failure.message, title).toContain(problems[0]!.reason);
          expect(tableHash(file), title).toBe(before);
        }
      }, 120_000);

      test('50 MB in one request', async () => {
        await begin();
        const before = tableHash(file);
        const failure = await refused('booking/save', { booking: { ...concert, note: 'x'.repeat(50 * 1024 * 1024) } });
        expect(failure.kind).toBe('invalid-request');
        const { problems } = failure as Extract<Failure, { kind: 'invalid-request' }>;
        expect(problems[0]!.field).toMatch(/^(request|booking[.]note)$/);
        expect(problems[0]!.reason).toMatch(/MB/);
        expect(tableHash(file)).toBe(before);
        await good('venue/read', { id: smallVenue.id });
      });
    });

    describe('every kind of failure', () => {
      test('not-found names what is not there', async () => {
        for (const name of ['venue/read', 'venue/export', 'booking/read', 'forecast/read'] as const) {
          expect(await refused(name, { id: 'nowhere' }), name).toMatchObject({ kind: 'not-found', id: 'nowhere' });
        }
        for (const name of ['fixture/list', 'booking/list', 'forecast/list'] as const) {
          expect(await refused(name, { venueId: 'nowhere' }), name).toMatchObject({ kind: 'not-found', what: 'venue' });
        }
        expect(await refused('booking/remove', { id: 'nowhere', revision: 1 })).toMatchObject({ kind: 'not-found' });
        expect(await refused('job/read', { id: 'job-none' })).toMatchObject({ kind: 'not-found', what: 'job' });
      });

      test('conflict: an older revision, an id that is taken, an import that is here', async () => {
        const known = await begin();
        const before = tableHash(file);
        expect(await refused('booking/save', { booking: { ...concert, revision: 7 } })).toMatchObject({ kind: 'conflict' });
        expect(await refused('booking/save', { booking: concert })).toMatchObject({ kind: 'conflict', what: 'booking' });
        expect(await refused('venue/save', { venue: { ...smallVenue, revision: 2 } })).toMatchObject({ kind: 'conflict' });
        expect(await refused('fixture/remove', { id: homeDate.id, revision: 9 })).toMatchObject({ kind: 'conflict' });
        const document = { format: 'fieldback-venue', version: 1, venue: known.get('venue/save'), coverings: [], vehicles: [] };
        const arriving = { document: { ...document, fixtures: [], bookings: [] } };
        expect(await refused('venue/import', arriving)).toMatchObject({ kind: 'conflict', what: 'venue' });
        expect(tableHash(file)).toBe(before);
      });

      test('conflict: the second of two savers is told, and the first is kept', async () => {
        await begin();
        await good('booking/save', { booking: { ...concert, revision: 1, note: 'first' } });
        expect(await refused('booking/save', { booking: { ...concert, revision: 1, note: 'second' } })).toMatchObject({
          kind: 'conflict',
          id: concert.id,
        });
        expect(await good('booking/read', { id: concert.id })).toMatchObject({ note: 'first', revision: 2 });
      });

      test('out-of-range: a home date before the booking is over', async () => {
        await begin();
        await good('fixture/save', {
          fixture: { ...homeDate, id: 'too-early', start: '2027-07-17T12:00', end: '2027-07-17T14:00' },
        });
        const asked = { venueId: smallVenue.id, fixtureId: 'too-early', bookingId: concert.id, members: 1, seed: 0 };
        expect(await refused('forecast/run', asked)).toMatchObject({ kind: 'out-of-range', problems: [{ field: 'fixtureId' }] });
      });

      test.runIf(door.keepsJobs)('cancelled: a job that is stopped keeps nothing', async () => {
        await begin();
        const before = tableHash(file);
        const asked = { venueId: smallVenue.id, fixtureId: homeDate.id, bookingId: concert.id, members: 1000, seed: 1 };
        const job = (await good('forecast/run', asked)) as Job;
        expect(job).toMatchObject({ operation: 'forecast/run', state: 'running' });
        const stopped = (await good('job/cancel', { id: job.id })) as Job;
        expect(stopped).toMatchObject({ state: 'cancelled', failure: { kind: 'cancelled' } });
        expect(await good('job/read', { id: job.id })).toEqual(stopped);
        expect(tableHash(file)).toBe(before);
      });

      test('busy: another program writes and does not stop', async () => {
        await begin();
        const other = new Database(file);
        other.exec('begin immediate');
        try {
          expect(await refused('booking/remove', { id: concert.id, revision: 1 })).toMatchObject({ kind: 'busy' });
          expect(await good('booking/read', { id: concert.id })).toMatchObject({ id: concert.id });
        } finally {
          other.exec('rollback');
          other.close();
        }
        await good('booking/remove', { id: concert.id, revision: 1 });
      });

      test('unexpected: a stored record that cannot be read', async () => {
        await begin();
        const other = new Database(file);
        other
          .prepare('update venues set document = ? where id = ?')
          .run(JSON.stringify({ id: smallVenue.id, revision: 1 }), smallVenue.id);
        other.close();
        expect(await refused('venue/read', { id: smallVenue.id })).toMatchObject({ kind: 'unexpected' });
      });

      test('database-is-newer: a file of a later version', async () => {
        await begin();
        await open.close();
        const other = new Database(file);
        other.pragma('user_version = 9999');
        other.close();
        const before = tableHash(file);
        open = await door.open({ file, waitMs: 300 });
        expect(await refused('venue/list', {})).toMatchObject({ kind: 'database-is-newer' });
        expect(await refused('venue/remove', { id: smallVenue.id, revision: 1 })).toMatchObject({ kind: 'database-is-newer' });
        expect(tableHash(file)).toBe(before);
      });
    });

    describe('what it keeps', () => {
      test('a save is there after closing and opening', async () => {
        await begin();
        await open.close();
        open = await door.open({ file, waitMs: 300 });
        expect(await good('booking/read', { id: concert.id })).toEqual({ ...concert, revision: 1 });
        expect(await good('venue/read', { id: smallVenue.id })).toEqual({ ...smallVenue, revision: 1 });
      });

      test('a venue goes with all that belongs to it, and comes back from its export', async () => {
        await begin();
        const document = await good('venue/export', { id: smallVenue.id });
        await good('venue/remove', { id: smallVenue.id, revision: 1 });
        expect(await refused('booking/read', { id: concert.id })).toMatchObject({ kind: 'not-found' });
        await good('venue/import', { document });
        expect(await good('venue/export', { id: smallVenue.id })).toEqual(document);
      });

      test('bookings are listed in the order they begin', async () => {
        await begin();
        const early = concert.layers.map((layer) => ({ ...layer, on: '2027-07-01T08:00', off: '2027-07-02T08:00', care: [] }));
        await good('booking/save', { booking: { ...concert, id: 'no-layers', name: 'Empty', layers: [], crowds: [] } });
        await good('booking/save', { booking: { ...concert, id: 'earlier', layers: early, crowds: [] } });
        const lines = (await good('booking/list', { venueId: smallVenue.id })) as { id: string }[];
        expect(lines.map((line) => line.id)).toEqual(['earlier', concert.id, 'no-layers']);
      });

      test('the same question and seed keep the same hash and the same result', async () => {
        await begin();
        const asked = { venueId: smallVenue.id, fixtureId: homeDate.id, bookingId: concert.id, members: 2, seed: 5 };
        const first = await ended(open, (await good('forecast/run', asked)) as Job);
        const second = await ended(open, (await good('forecast/run', asked)) as Job);
        const [one, other] = [first, second] as { inputHash: string; result: unknown; id: string }[];
        expect(other!.id).not.toBe(one!.id);
        expect(other!.inputHash).toBe(one!.inputHash);
        expect(JSON.stringify(other!.result)).toBe(JSON.stringify(one!.result));
      }, 60_000);
    });
  });
};
