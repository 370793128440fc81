import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openApplication } from '#application/application.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { smallDisk, whyNoSmallDisk } from '#tests/faults/small-disk.ts';
import { enter } from '#tests/faults/tally.ts';
import { whole } from '#tests/faults/whole.ts';
import { tableHash } from '#tests/store/table-hash.ts';

const writer = fileURLToPath(new URL('./busy-writer.ts', import.meta.url));
/** The limits of a process that these tests set are those of a POSIX shell. */
const posix = process.platform !== 'win32';

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fieldback-disk-'));
  file = join(folder, 'workspace.fieldback');
});
afterEach(() => {
  chmodSync(folder, 0o700);
  rmSync(folder, { recursive: true, force: true });
});

interface Line {
  readonly stored?: [string, number];
  readonly failed?: string;
  readonly message?: string;
}

describe('a disk that takes no more', () => {
  // A process may be told how large a file it may write; a write beyond it fails as on a full disk. Fails when a write is not undone
  // as a whole, or when the words of the failure go back to "something went wrong".
  test.runIf(posix)(
    'the write is refused in words, all before it stays, and work goes on when there is room',
    async () => {
      const shell = `trap '' XFSZ; ulimit -f 400; exec "$0" "$1" "$2" 400`;
      const run = spawnSync('bash', ['-c', shell, process.execPath, writer, file], { encoding: 'utf8', timeout: 120_000 });
      const lines = run.stdout
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line) as Line);
      const refused = lines.filter(({ failed }) => failed === 'unexpected');
      expect(refused.length, run.stdout.slice(-2000)).toBeGreaterThan(0);
      expect(refused[0]!.message).toMatch(/disk.*Nothing was stored/);

      const database = new Database(file);
      expect(whole(database)).toEqual([]);
      for (const { stored } of lines) {
        if (!stored) continue;
        const row = database.prepare('select revision from venues where id = ?').get(stored[0]) as
          { revision: number } | undefined;
        expect(row?.revision, stored[0]).toBeGreaterThanOrEqual(stored[1]);
      }
      database.close();

      enter({ kind: 'disk: full (limit of a process)', tries: refused.length, survived: refused.length, lost: 0 });
      const again = spawnSync(process.execPath, [writer, file, '1'], { encoding: 'utf8', timeout: 60_000 });
      expect(again.stdout).toMatch(/"stored"/);
    },
    180_000,
  );
});

const noDisk = whyNoSmallDisk();

describe.skipIf(noDisk !== null)(`a small disk${noDisk === null ? '' : ` (skipped: ${noDisk})`}`, () => {
  // Fails when a write is not undone as a whole, or the failure no longer says that the disk is full.
  test('full: refused in words, nothing lost, and work goes on when there is room', async () => {
    const disk = smallDisk(1400)!;
    try {
      const place = join(disk.folder, 'workspace.fieldback');
      const application = await openApplication({ file: place, log: () => undefined });
      expect(application.trouble).toBeNull();
      const stored: string[] = [];
      let refusals = 0;
      for (let number = 0; refusals < 20 && number < 400; number++) {
        const answer = await application.ask('venue/import', { document: documentOf(`venue-${number}`) });
        if (answer.ok) stored.push(`venue-${number}`);
        else {
          refusals += 1;
          expect(answer.failure.message).toMatch(/disk is full. Nothing was stored; free some space/);
        }
      }
      expect(refusals).toBe(20);
      const listed = await application.ask('venue/list', {});
      expect(listed.ok && listed.value.map(({ id }) => id).toSorted()).toEqual(stored.toSorted());
      expect(disk.set('size=40000k')).toBe(true);
      expect(await application.ask('venue/import', { document: documentOf('venue-later') })).toMatchObject({ ok: true });
      await application.close();
      const database = new Database(place);
      expect(whole(database)).toEqual([]);
      expect(database.prepare('select count(*) from venues').pluck().get()).toBe(stored.length + 1);
      database.close();
      enter({ kind: 'disk: full (small disk)', tries: refusals, survived: refusals, lost: 0 });
    } finally {
      disk.remove();
    }
  });

  test('read-only: says so, begins nothing new, and opens by itself when it can be written again', async () => {
    const disk = smallDisk(20_000)!;
    try {
      const place = join(disk.folder, 'workspace.fieldback');
      await (await openApplication({ file: place })).close();
      const before = tableHash(place);
      expect(disk.set('ro')).toBe(true);
      const application = await openApplication({ file: place });
      expect(application.trouble).toMatchObject({ kind: 'read-only' });
      expect(application.trouble!.message).toMatch(/read-only.*[Cc]hoose another place/);
      expect(await application.answer('venue/list', {})).toMatchObject({ ok: false, failure: { kind: 'unexpected' } });
      const elsewhere = await openApplication({ file: join(disk.folder, 'new', 'workspace.fieldback') });
      expect(elsewhere.trouble).toMatchObject({ kind: 'read-only' });
      expect(disk.set('rw')).toBe(true);
      expect(tableHash(place)).toBe(before);
      await new Promise((resolve) => setTimeout(resolve, 1100));
      expect(await application.answer('venue/list', {})).toEqual({ ok: true, value: [] });
      await application.close();
      enter({ kind: 'disk: read-only', tries: 2, survived: 2, lost: 0 });
    } finally {
      disk.remove();
    }
  });

  test('that becomes read-only in the middle of work refuses in words and loses nothing', async () => {
    const disk = smallDisk(20_000)!;
    try {
      const place = join(disk.folder, 'workspace.fieldback');
      const application = await openApplication({ file: place, log: () => undefined });
      expect(await application.ask('venue/import', { document: documentOf('venue-1') })).toMatchObject({ ok: true });
      // A file that is open for writing keeps a disk from becoming read-only: then there is nothing to see here.
      if (disk.set('ro')) {
        const answer = await application.ask('venue/import', { document: documentOf('venue-2') });
        expect(answer).toMatchObject({ ok: false, failure: { message: expect.stringMatching(/Nothing was stored/) as string } });
        disk.set('rw');
      }
      await application.close();
      const database = new Database(place, { readonly: true });
      expect(database.prepare('select id from venues').pluck().all()).toEqual(['venue-1']);
      database.close();
    } finally {
      disk.remove();
    }
  });
});

/** Whether permissions hold for this user; the superuser may write everywhere. */
const permissionsHold = posix && process.getuid?.() !== 0;

describe('a folder that cannot be written', () => {
  test.runIf(permissionsHold)('says so and changes nothing', async () => {
    await (await openApplication({ file })).close();
    const before = tableHash(file);
    chmodSync(folder, 0o500);
    const application = await openApplication({ file });
    expect(application.trouble).toMatchObject({ kind: 'read-only' });
    expect(application.trouble!.message).toMatch(/read-only.*[Cc]hoose another place/);
    expect(await application.answer('venue/list', {})).toMatchObject({ ok: false, failure: { kind: 'unexpected' } });
    chmodSync(folder, 0o700);
    expect(tableHash(file)).toBe(before);
  });

  test('a path that leads through a file says so', async () => {
    mkdirSync(join(folder, 'a'));
    await (await openApplication({ file })).close();
    const application = await openApplication({ file: join(file, 'workspace.fieldback') });
    expect(application.trouble).toMatchObject({ kind: 'read-only' });
  });
});
