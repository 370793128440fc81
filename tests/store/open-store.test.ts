import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { sql, type Kysely } from 'kysely';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { migrations } from '#migrations/index.ts';
import { copiesFolder, listCopies, restoreCopy } from '#store/copies.ts';
import { migrationNames, newestVersion, workspaceId } from '#store/file-facts.ts';
import type { Trouble } from '#store/trouble.ts';
import { boardFloor, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { dayMs, newFolder, noon, openWell, tryToOpen } from '#tests/store/open-workspace.ts';
import { tableHash } from '#tests/store/table-hash.ts';

let folder: string;
let file: string;
beforeEach(() => {
  folder = newFolder();
  file = join(folder, 'workspace.fieldback');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const begun = async (): Promise<void> => {
  const store = await openWell(file);
  await store.write((contents) => contents.venues.save(smallVenue));
  await store.close();
};
const trouble = async (): Promise<Trouble> => {
  const opening = await tryToOpen(file);
  expect(opening.ok).toBe(false);
  return (opening as Extract<typeof opening, { ok: false }>).trouble;
};
const change = (work: (database: Database.Database) => void): void => {
  const database = new Database(file);
  work(database);
  database.close();
};

describe('a new workspace', () => {
  test('is a database of ours with every migration, strict tables and a write-ahead log', async () => {
    await begun();
    change((database) => {
      expect(database.pragma('application_id', { simple: true })).toBe(workspaceId);
      expect(database.pragma('user_version', { simple: true })).toBe(newestVersion);
      expect(database.pragma('journal_mode', { simple: true })).toBe('wal');
      const tables = (database.pragma('table_list') as { name: string; type: string; strict: number }[]).filter(
        ({ name, type }) => type === 'table' && !name.startsWith('sqlite_') && !name.startsWith('kysely_'),
      );
      expect(tables.length).toBeGreaterThan(5);
      for (const table of tables) expect(table.strict, table.name).toBe(1);
    });
  });

  test('migrations are numbered by one from 0001', () => {
    expect(Object.keys(migrations).map((name) => name.slice(0, 5))).toEqual(
      migrationNames.map((_, index) => `${String(index + 1).padStart(4, '0')}-`),
    );
  });

  test('is filled once, or not begun at all', async () => {
    const failing = tryToOpen(file, { fill: () => Promise.reject(new Error('the filling broke')) });
    await expect(failing).rejects.toThrow('the filling broke');
    let filled = 0;
    const fill = async (): Promise<void> => void (filled += 1);
    await (await openWell(file, { fill })).close();
    await (await openWell(file, { fill })).close();
    expect(filled).toBe(1);
  });

  test('two programs that begin it at once begin it once', async () => {
    let filled = 0;
    const wishes = { waitMs: 5000, fill: async () => void (filled += 1) };
    const stores = await Promise.all([openWell(file, wishes), openWell(file, wishes), openWell(file, wishes)]);
    await Promise.all(stores.map((store) => store.close()));
    expect(filled).toBe(1);
  });

  test('a file left by a program that ended while it began is begun again', async () => {
    change((database) => database.exec('create table kysely_migration (name text primary key, timestamp text not null)'));
    await (await openWell(file)).close();
  });

  test('an empty file without a past is new', async () => {
    writeFileSync(file, '');
    await (await openWell(file)).close();
  });
});

describe('a file that cannot be opened is left as it is, and says why', () => {
  test('newer', async () => {
    await begun();
    change((database) => database.pragma(`user_version = ${newestVersion + 1}`));
    const before = readFileSync(file);
    expect(await trouble()).toMatchObject({ kind: 'newer', message: expect.stringMatching(/newer Fieldback.*Update/) as string });
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test('newer by a migration nobody here knows', async () => {
    await begun();
    change((database) => database.exec("insert into kysely_migration values ('9999-later', '2030')"));
    expect((await trouble()).kind).toBe('newer');
  });

  test('no database', async () => {
    writeFileSync(file, 'Dear head of grounds,\nthe field is fine.\n');
    expect((await trouble()).kind).toBe('not-a-workspace');
    expect(readFileSync(file, 'utf8')).toMatch(/^Dear/);
  });

  test('a folder', async () => {
    mkdirSync(file);
    expect((await trouble()).kind).toBe('not-a-workspace');
  });

  test('a database of another program', async () => {
    change((database) => database.exec('create table songs (title text)'));
    expect(await trouble()).toMatchObject({
      kind: 'not-a-workspace',
      message: expect.stringMatching(/another program/) as string,
    });
  });

  test('held by another program', async () => {
    await begun();
    const other = new Database(file);
    other.pragma('locking_mode = exclusive');
    other.exec('begin exclusive');
    expect(await trouble()).toMatchObject({ kind: 'locked', message: expect.stringMatching(/[Cc]lose it there/) as string });
    other.close();
    await (await openWell(file)).close();
  });

  test('gone, although its copies are here: no new one is begun', async () => {
    await begun();
    rmSync(file);
    const told = await trouble();
    expect(told.kind).toBe('missing');
    expect(told.newestCopy).toBe(listCopies(file)[0]!.path);
    expect(existsSync(file)).toBe(false);
  });

  test('emptied, although its copies are here', async () => {
    await begun();
    writeFileSync(file, '');
    expect((await trouble()).kind).toBe('missing');
    expect(statSync(file).size).toBe(0);
  });

  test('rows that point to nothing', async () => {
    await begun();
    change((database) => {
      database.pragma('foreign_keys = off');
      database.exec("insert into fixtures values ('a', 'nowhere', 1, 'practice', 'a', '2027-01-01T10:00', '2027-01-01T11:00')");
    });
    expect((await trouble()).kind).toBe('damaged');
  });

  test.each([
    ['cut short', (path: string) => truncateSync(path, 8192)],
    [
      'overwritten in the middle',
      (path: string) => {
        const bytes = readFileSync(path);
        bytes.fill(0xa5, 4096, 4096 * 6);
        writeFileSync(path, bytes);
      },
    ],
    [
      'without its head',
      (path: string) => writeFileSync(path, Buffer.concat([Buffer.alloc(100), readFileSync(path).subarray(100)])),
    ],
  ])('%s: offers the newest good copy, and the way back works', async (_, spoil) => {
    await begun();
    const store = await openWell(file);
    await store.copyNow('asked');
    await store.close();
    const before = tableHash(file);
    spoil(file);
    const spoilt = readFileSync(file);

    const told = await trouble();
    expect(['damaged', 'not-a-workspace']).toContain(told.kind);
    expect(told.newestCopy).not.toBeNull();
    expect(told.message).toContain(told.newestCopy!);
    expect(readFileSync(file).equals(spoilt)).toBe(true);

    await restoreCopy(file, told.newestCopy!, noon + 1, newestVersion);
    expect(tableHash(file)).toBe(before);
    const aside = join(copiesFolder(file), '2027-06-01T12-00-00.001Z.put-aside.fieldback');
    expect(readFileSync(aside).equals(spoilt)).toBe(true);
    await (await openWell(file)).close();
  });

  test('a damaged copy is passed over for an older good one', async () => {
    await begun();
    const store = await openWell(file, { now: () => noon + 5 });
    const good = listCopies(file)[0]!.path;
    const bad = (await store.copyNow('asked')).path;
    await store.close();
    truncateSync(bad, 5000);
    rmSync(file);
    expect((await trouble()).newestCopy).toBe(good);
    await expect(restoreCopy(file, bad, noon, newestVersion)).rejects.toThrow(/not a whole workspace/);
    expect(existsSync(file)).toBe(false);
  });
});

describe('a file of an older version', () => {
  const next = `${String(newestVersion + 1).padStart(4, '0')}-weather-vanes`;
  const later = (...statements: string[]) => ({
    ...migrations,
    [next]: {
      up: async (db: Kysely<unknown>) => {
        for (const statement of [`pragma user_version = ${newestVersion + 1}`, ...statements])
          await sql.raw(statement).execute(db);
      },
    },
  });
  const addsTable = 'create table weather_vanes (id text primary key) strict';

  test('is copied as it was, migrated, and refused by the program that it came from', async () => {
    await begun();
    const before = tableHash(file);
    const store = await openWell(file, { migrations: later(addsTable) });
    expect(store.schemaVersion).toBe(next);
    expect(await store.read((contents) => contents.venues.find(smallVenue.id))).toEqual({ ...smallVenue, revision: 1 });
    await store.close();
    const copy = listCopies(file).find(({ reason }) => reason === 'before-migration')!;
    expect(tableHash(copy.path)).toBe(before);
    expect((await trouble()).kind).toBe('newer');
  });

  test.each(migrationNames.slice(0, -1).map((name, index) => [name, index + 1] as const))(
    'written by the program of %s opens with everything that was in it',
    async (_, version) => {
      const known = Object.fromEntries(Object.entries(migrations).slice(0, version));
      const old = await openWell(file, { migrations: known });
      await old.write(async (contents) => {
        await contents.coverings.save(boardFloor);
        await contents.venues.save(smallVenue);
        await contents.fixtures.save(homeDate);
        await contents.bookings.save(concert);
      });
      await old.close();
      const store = await openWell(file);
      expect(store.schemaVersion).toBe(migrationNames.at(-1));
      await store.read(async (contents) => {
        expect(await contents.coverings.list()).toEqual([boardFloor]);
        expect(await contents.venues.find(smallVenue.id)).toEqual({ ...smallVenue, revision: 1 });
        expect(await contents.fixtures.ofVenue(smallVenue.id)).toEqual([{ ...homeDate, revision: 1 }]);
        expect(await contents.bookings.find(concert.id)).toEqual({ ...concert, revision: 1 });
      });
      await store.close();
      expect(listCopies(file).some(({ reason }) => reason === 'before-migration')).toBe(true);
    },
  );

  test('is left as it was, every table of it, by a migration that fails half-way', async () => {
    await begun();
    const before = tableHash(file);
    const opening = await tryToOpen(file, {
      migrations: later(addsTable, 'delete from venues', 'insert into nowhere values (1)'),
    });
    expect(opening).toMatchObject({ ok: false, trouble: { kind: 'migration-failed' } });
    expect((opening as { trouble: Trouble }).trouble.message).toMatch(/nowhere.*left as it was/);
    expect(tableHash(file)).toBe(before);
    await (await openWell(file)).close();
  });

  test('is left as it was by a migration that leaves rows pointing to nothing', async () => {
    await begun();
    const opening = await tryToOpen(file, {
      migrations: later(addsTable, "insert into fixtures values ('a', 'nowhere', 1, 'practice', 'a', '2027', '2028')"),
    });
    expect(opening).toMatchObject({ ok: false, trouble: { kind: 'migration-failed' } });
    await (await openWell(file)).close();
  });
});

describe('copies', () => {
  test('one is made on opening, the next when a day has passed, and only so many are kept', async () => {
    let now = noon;
    const wishes = { now: () => now, copies: { everyMs: dayMs, keep: 3 } };
    for (let day = 0; day < 6; day++) {
      const store = await openWell(file, wishes);
      await store.copyIfDue();
      await store.close();
      now += dayMs / 2;
    }
    expect(listCopies(file).map((copy) => copy.madeAt)).toEqual([noon + 2 * dayMs, noon + dayMs, noon]);
    now += dayMs;
    await (await openWell(file, wishes)).close();
    expect(listCopies(file).map((copy) => copy.madeAt)).toEqual([noon + 4 * dayMs, noon + 2 * dayMs, noon + dayMs]);
  });

  test('a clock that was set back by a year does not stop them', async () => {
    await (await openWell(file)).close();
    await (await openWell(file, { now: () => noon - 365 * dayMs })).close();
    expect(listCopies(file)).toHaveLength(2);
  });

  test('a copy is one plain file with everything that was confirmed, made while the file is in use', async () => {
    const store = await openWell(file);
    await store.write((contents) => contents.venues.save(smallVenue));
    const copy = (await store.copyNow('asked')).path;
    const before = tableHash(file);
    await store.close();
    expect(existsSync(`${copy}-wal`)).toBe(false);
    const apart = join(folder, 'apart.fieldback');
    copyFileSync(copy, apart);
    expect(tableHash(apart)).toBe(before);
  });

  test('one that cannot be made does not stop work, and is told', async () => {
    const told: string[] = [];
    writeFileSync(copiesFolder(file), 'a file where the folder should be');
    const store = await openWell(file, { log: (line) => told.push(line) });
    await store.write((contents) => contents.venues.save(smallVenue));
    await store.close();
    expect(told.join()).toMatch(/copy .* was not made/);
  });
});
