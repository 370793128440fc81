import { copyFileSync, existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { sql, type Kysely } from 'kysely';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { migrations } from '#migrations/index.ts';
import { openApplication } from '#application/application.ts';
import type { OperationName } from '#shared/contract/contract.ts';
import { listCopies } from '#store/copies.ts';
import { migrationNames, newestVersion } from '#store/file-facts.ts';
import { oldRowsOf, rowsOf } from '#tests/faults/rows.ts';
import { enter } from '#tests/faults/tally.ts';
import { tryToOpen } from '#tests/store/open-workspace.ts';

const fixtures = fileURLToPath(new URL('../fixtures/databases/', import.meta.url));
const released = readdirSync(fixtures)
  .filter((name) => name.endsWith('.db'))
  .map((name) => name.slice(0, -3))
  .toSorted();

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fieldback-migrations-'));
  file = join(folder, 'workspace.fieldback');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** What the operations say of everything in the fixtures. */
const told = async (path: string) => {
  const application = await openApplication({ file: path, log: () => undefined });
  expect(application.trouble).toBeNull();
  const ask = async (name: OperationName, request: unknown): Promise<unknown> => {
    const answer = await application.answer(name, request);
    expect(answer, `${name} ${JSON.stringify(request)}`).toMatchObject({ ok: true });
    return (answer as { value: unknown }).value;
  };
  const venues = (await ask('venue/list', {})) as { id: string }[];
  const all = [];
  for (const { id } of venues) {
    const runs = (await ask('forecast/list', { venueId: id })) as { id: string }[];
    const plans = (await ask('plan/list', { venueId: id })) as { id: string }[];
    all.push(
      await ask('venue/export', { id }),
      ...(await Promise.all(runs.map((run) => ask('forecast/read', { id: run.id })))),
      ...(await Promise.all(plans.map((plan) => ask('plan/read', { id: plan.id })))),
      await ask('weather/read', { venueId: id }),
    );
  }
  await application.close();
  return { venues, all };
};

describe('a workspace of every released version', () => {
  test('is kept as a fixture for every migration there is', () => {
    // `npm run node -- tests/fixtures/databases/make.ts` adds the newest.
    expect(released).toEqual(migrationNames);
  });

  // Fails when a migration changes, drops or loses something that an older version had written, or when a document that an older
  // version stored can no longer be read.
  test.each(released)('%s opens with every row it had, and every operation reads it', async (name) => {
    copyFileSync(join(fixtures, `${name}.db`), file);
    const before = rowsOf(file);
    expect(before['venues']!.length).toBeGreaterThan(0);
    expect(before['forecast_runs']!.length).toBeGreaterThan(0);
    const { venues, all } = await told(file);
    expect(oldRowsOf(file, before)).toEqual(before);
    expect(venues).toHaveLength(before['venues']!.length);
    expect(all.length).toBeGreaterThan(2);
    const copies = listCopies(file).filter(({ reason }) => reason === 'before-migration');
    expect(copies).toHaveLength(name === migrationNames.at(-1) ? 0 : 1);
    if (copies[0]) expect(rowsOf(copies[0].path)).toEqual(before);
    enter({ kind: `migration: ${name}`, tries: 1, survived: 1, lost: 0 });
  });
});

describe('a migration that cannot be done', () => {
  const next = `${String(newestVersion + 1).padStart(4, '0')}-later`;
  /** A later program whose migration does something and then breaks. */
  const breaking = (...statements: string[]) => ({
    ...migrations,
    [next]: {
      up: async (db: Kysely<unknown>) => {
        for (const statement of [`pragma user_version = ${newestVersion + 1}`, ...statements])
          await sql.raw(statement).execute(db);
      },
    },
  });

  // Fails when migrations are no longer one transaction (`WholeMigrationAdapter`).
  test.each(released)('%s: the old file keeps every row and its version, and the program before still opens it', async (name) => {
    copyFileSync(join(fixtures, `${name}.db`), file);
    const before = rowsOf(file);
    const bytes = readFileSync(file);
    const opening = await tryToOpen(file, {
      migrations: breaking('delete from bookings', 'create table half (a text) strict', 'insert into nowhere values (1)'),
    });
    expect(opening).toMatchObject({
      ok: false,
      trouble: { kind: 'migration-failed', message: expect.stringMatching(/left as it was/) as string },
    });
    const database = new Database(file);
    expect(database.pragma('user_version', { simple: true })).toBe(released.indexOf(name) + 1);
    database.close();
    expect(rowsOf(file)).toEqual(before);
    const copy = listCopies(file).find(({ reason }) => reason === 'before-migration');
    expect(copy).toBeDefined();
    expect(rowsOf(copy!.path)).toEqual(before);
    expect(bytes.length).toBeGreaterThan(0);
    const known = Object.fromEntries(Object.entries(migrations).slice(0, released.indexOf(name) + 1));
    const again = await tryToOpen(file, { migrations: known });
    expect(again.ok).toBe(true);
    if (again.ok) await again.store.close();
    enter({ kind: `migration that breaks: ${name}`, tries: 1, survived: 1, lost: 0 });
  });

  // Fails when `refuseNewer` is left out.
  test.each(released.slice(0, -1))(
    'a program that knows no more than %s refuses the newest file and leaves every byte',
    async (name) => {
      copyFileSync(join(fixtures, `${released.at(-1)!}.db`), file);
      const bytes = readFileSync(file);
      const known = Object.fromEntries(Object.entries(migrations).slice(0, released.indexOf(name) + 1));
      expect(await tryToOpen(file, { migrations: known })).toMatchObject({
        ok: false,
        trouble: { kind: 'newer', message: expect.stringMatching(/newer Fieldback.*Update.*Nothing was changed/) as string },
      });
      expect(readFileSync(file).equals(bytes)).toBe(true);
      expect(existsSync(`${file}-wal`)).toBe(false);
      enter({ kind: `newer than ${name}`, tries: 1, survived: 1, lost: 0 });
    },
  );
});
