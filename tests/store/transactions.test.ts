import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { OpenStore } from '#store/open-store.ts';
import type { Stored } from '#store/store.ts';
import { concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { newFolder, openWell } from '#tests/store/open-workspace.ts';
import { tableHash } from '#tests/store/table-hash.ts';

let folder: string;
let file: string;
let one: OpenStore;
let other: OpenStore;
beforeEach(async () => {
  folder = newFolder();
  file = join(folder, 'workspace.fieldback');
  one = await openWell(file, { waitMs: 5000 });
  other = await openWell(file, { waitMs: 5000 });
  await one.write((contents) => contents.venues.save(smallVenue));
});
afterEach(async () => {
  await one.close();
  await other.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('a transaction', () => {
  test('that throws leaves nothing', async () => {
    const before = tableHash(file);
    const work = one.write(async (contents) => {
      await contents.bookings.save(concert);
      await contents.fixtures.save(homeDate);
      throw new Error('half-way');
    });
    await expect(work).rejects.toThrow('half-way');
    expect(tableHash(file)).toBe(before);
  });

  test('that answers with a refusal leaves nothing and gives the refusal', async () => {
    const before = tableHash(file);
    const answer = await one.write(async (contents) => {
      await contents.bookings.save(concert);
      return { ok: false as const, failure: 'no' };
    });
    expect(answer).toEqual({ ok: false, failure: 'no' });
    expect(tableHash(file)).toBe(before);
  });

  test('that reads sees one moment, whatever another program writes meanwhile', async () => {
    const [before, after] = await one.read(async (contents) => {
      const first = await contents.venues.find(smallVenue.id);
      await other.write((others) => others.venues.save({ ...smallVenue, revision: 1, name: 'Renamed' }));
      return [first, await contents.venues.find(smallVenue.id)];
    });
    expect(after).toEqual(before);
    expect(await one.read((contents) => contents.venues.find(smallVenue.id))).toMatchObject({ name: 'Renamed', revision: 2 });
  });

  test('foreign keys hold', async () => {
    await expect(one.write((contents) => contents.bookings.save({ ...concert, venueId: 'nowhere' }))).rejects.toThrow(
      /FOREIGN KEY/,
    );
  });
});

describe('two programs on one file', () => {
  test('lose no update: 200 changes by each, every stale one told and repeated', async () => {
    const add = async (store: OpenStore): Promise<void> => {
      for (;;) {
        const standing = (await store.read((contents) => contents.venues.find(smallVenue.id)))!;
        const count = Number(standing.about.replaceAll(/\D/g, '') || 0);
        const stored: Stored<unknown> = await store.write((contents) =>
          contents.venues.save({ ...standing, about: `count ${count + 1}` }),
        );
        if (stored.outcome === 'stored') return;
        expect(stored.outcome).toBe('stale');
      }
    };
    const many = async (store: OpenStore): Promise<void> => {
      for (let turn = 0; turn < 200; turn++) await add(store);
    };
    await Promise.all([many(one), many(other)]);
    const end = await one.read((contents) => contents.venues.find(smallVenue.id));
    expect(end).toMatchObject({ about: 'count 400', revision: 401 });
  }, 60_000);

  test('the second writer waits for the first', async () => {
    const order: string[] = [];
    const first = one.write(async (contents) => {
      await contents.bookings.save(concert);
      await new Promise((resolve) => setTimeout(resolve, 300));
      order.push('first');
    });
    await new Promise((resolve) => setTimeout(resolve, 50));
    const second = other.write(async (contents) => {
      order.push('second');
      return contents.bookings.save({ ...concert, revision: 1 });
    });
    await first;
    expect(await second).toMatchObject({ outcome: 'stored', value: { revision: 2 } });
    expect(order).toEqual(['first', 'second']);
  });
});

describe('a kept run', () => {
  test('is never changed', async () => {
    const { default: Database } = await import('better-sqlite3');
    const database = new Database(file);
    database
      .prepare(
        `insert into forecast_runs (id, venue_id, booking_id, fixture_id, created_at, members, seed, cell_size_m,
           engine_version, parameter_version, input_sha256, input_gzip, result_gzip)
         values ('r', ?, null, 'f', '2027-01-01T00:00:00Z', 1, 0, 1, '1', '1', ?, x'00', x'00')`,
      )
      .run(smallVenue.id, 'a'.repeat(64));
    expect(() => database.exec('update forecast_runs set seed = 1')).toThrow(/never changed/);
    database.close();
  });
});
