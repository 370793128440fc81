import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openApplication } from '#application/application.ts';
import { copiesFolder, isGoodCopy } from '#store/copies.ts';
import { newestVersion } from '#store/file-facts.ts';
import { whole } from '#tests/faults/whole.ts';

/** How often the writer is killed; `FIELDBACK_KILLS` asks for more. */
const kills = Number(process.env['FIELDBACK_KILLS'] ?? 8);
const writer = fileURLToPath(new URL('./busy-writer.ts', import.meta.url));

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fieldback-killed-'));
  file = join(folder, 'workspace.fieldback');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Starts the writer, kills it `afterMs` from the moment it is ready (negative: that long after its start), gives what it confirmed. */
const writeAndDie = (afterMs: number): Promise<ReadonlyMap<string, number>> =>
  new Promise((resolve) => {
    const confirmed = new Map<string, number>();
    const child = spawn(process.execPath, [writer, file], { stdio: ['ignore', 'pipe', 'inherit'] });
    const kill = (): void => void child.kill('SIGKILL');
    if (afterMs < 0) setTimeout(kill, -afterMs);
    let text = '';
    child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
      text += chunk;
      const lines = text.split('\n');
      text = lines.pop()!;
      for (const line of lines.map((each) => JSON.parse(each) as { ready?: true; stored?: [string, number] })) {
        if (line.ready && afterMs >= 0) setTimeout(kill, afterMs);
        if (line.stored) confirmed.set(...line.stored);
      }
    });
    child.on('close', () => resolve(confirmed));
  });

describe('a program that is killed while it writes', () => {
  // Fails when an import is no longer one transaction: then some venue is half there.
  test(`${kills} times: the file is whole, every confirmed write is there, nothing is half there`, async () => {
    const confirmed = new Map<string, number>();
    for (let turn = 0; turn < kills; turn++) {
      const early = turn % 4 === 0;
      const before = confirmed.size;
      for (const [id, revision] of await writeAndDie(early ? -(150 + 60 * turn) : 7 + ((turn * 137) % 400)))
        confirmed.set(id, revision);
      if (early && before === 0 && confirmed.size === 0) continue;
      const database = new Database(file, { readonly: true });
      expect(whole(database), `after kill ${turn + 1}`).toEqual([]);
      for (const [id, revision] of confirmed) {
        const row = database.prepare('select revision from venues where id = ?').get(id) as { revision: number } | undefined;
        expect(row?.revision, `${id} after kill ${turn + 1}`).toBeGreaterThanOrEqual(revision);
      }
      database.close();
    }
    expect(confirmed.size).toBeGreaterThan(kills / 2);

    const application = await openApplication({ file });
    expect(application.trouble).toBeNull();
    expect(await application.ask('venue/list', {})).toMatchObject({ ok: true });
    await application.close();
    const copies = readdirSync(copiesFolder(file)).filter((name) => name.endsWith('.fieldback'));
    expect(copies.length).toBeGreaterThan(0);
    for (const name of copies) expect(isGoodCopy(join(copiesFolder(file), name), newestVersion), name).toBe(true);
  }, 300_000);
});
