import { copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openApplication } from '#application/application.ts';
import { copiesFolder, isGoodCopy, listCopies } from '#store/copies.ts';
import { newestVersion } from '#store/file-facts.ts';
import { chance } from '#tests/faults/chance.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { rowsOf, oldRowsOf } from '#tests/faults/rows.ts';
import { enter, tries } from '#tests/faults/tally.ts';
import { startVictim, type DoorName, type Victim } from '#tests/faults/victim.ts';
import { whole } from '#tests/faults/whole.ts';
import { smallVenue } from '#tests/contract/small-venue.ts';

const kinds = ['write', 'import', 'migration', 'backup', 'draft'] as const;
type Kind = (typeof kinds)[number];

const oldest = fileURLToPath(new URL('../fixtures/databases/0001-workspace.db', import.meta.url));
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Waits until something is there, looking every millisecond; false when it did not come. */
const until = async (holds: () => boolean, patienceMs: number): Promise<boolean> => {
  const end = performance.now() + patienceMs;
  while (!holds()) {
    if (performance.now() > end) return false;
    await pause(1);
  }
  return true;
};

const unfinished = (file: string): boolean =>
  existsSync(copiesFolder(file)) && readdirSync(copiesFolder(file)).some((name) => name.includes('.part'));

/**
 * Ends one program many times while it writes, imports, migrates and copies, and looks at the file after each. `few`: what is tried when
 * all else is tested too.
 *
 * Guards shown by it: one transaction per import (`Store.write`): without it a venue is half there. `synchronous = full` and the write-ahead
 * log: without them a confirmed write is missing. Renaming a finished copy (`makeCopy`): without it a half copy carries a copy's name. One
 * transaction per migration (`WholeMigrationAdapter`): without it the old rows differ at a version in between.
 */
export const describeKills = (door: DoorName, seed: number, few: readonly Kind[]): void => {
  const count = tries(few.length, 70);
  const order = tries(1, 0) === 1 ? few : kinds;
  describe(`the ${door}, killed ${count} times while it works`, () => {
    let folder: string;
    let file: string;
    const confirmed = new Map<string, number>();
    const dice = chance(seed);
    /** ms a whole run of the command line takes, where each question is one. */
    let runTime = 0;
    let venues = 0;
    /** By booking: the change whose draft was confirmed last. */
    const drafts = new Map<string, number>();
    let changes = 0;

    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'fieldback-killed-'));
      file = join(folder, 'workspace.fieldback');
      const application = await openApplication({ file, log: () => undefined });
      for (const id of ['venue-a', 'venue-b']) {
        expect(await application.ask('venue/import', { document: documentOf(id) })).toMatchObject({ ok: true });
        confirmed.set(id, 1);
      }
      await application.close();
      if (door === 'command line') {
        const begun = performance.now();
        await (await startVictim(door, file)).ask('workspace/about', {});
        runTime = performance.now() - begun;
      }
    });
    afterAll(() => rmSync(folder, { recursive: true, force: true }));

    /** Writes in one way until it is ended; what was answered with a good answer is confirmed. */
    const work = async (victim: Victim, kind: Kind): Promise<void> => {
      for (;;) {
        const [id, revision] = [...confirmed][dice.below(Math.max(1, confirmed.size))] ?? [];
        if (kind === 'backup') {
          if ((await victim.ask('workspace/copy', {})) === null) return;
        } else if (kind === 'draft') {
          const [booking] = documentOf('venue-a').bookings;
          const name = `Changed ${++changes}`;
          const answer = await victim.ask('draft/keep', { booking: { ...booking, revision: 1, name } });
          if (answer === null) return;
          expect(answer, name).toMatchObject({ ok: true });
          drafts.set(booking!.id, changes);
        } else if (kind === 'import' || id === undefined || revision === undefined) {
          const arriving = `venue-${++venues}`;
          const answer = await victim.ask('venue/import', { document: documentOf(arriving) });
          if (answer === null) return;
          expect(answer, arriving).toMatchObject({ ok: true });
          confirmed.set(arriving, 1);
        } else {
          const answer = await victim.ask('venue/save', { venue: { ...smallVenue, id, revision, about: `at ${venues}` } });
          if (answer === null) {
            // It may have been written without being confirmed: either is right; the file says which revision stands.
            confirmed.delete(id);
            unsure.set(id, revision);
            return;
          }
          expect(answer, id).toMatchObject({ ok: true });
          confirmed.set(id, revision + 1);
        }
      }
    };
    const unsure = new Map<string, number>();

    const killWhileWorking = async (kind: Kind): Promise<void> => {
      const victim = await startVictim(door, file);
      const working = work(victim, kind);
      if (kind === 'backup') {
        // A copy is made in a moment: wait until one has begun.
        await until(() => unfinished(file), 8000);
        await pause(dice.below(12));
      } else if (door === 'command line') await pause(runTime * (0.5 + dice.next()));
      else await pause(dice.below(400));
      victim.kill();
      await victim.ended;
      await working;
    };

    const killWhileMigrating = async (turn: number): Promise<void> => {
      const old = join(folder, `old-${turn}.fieldback`);
      copyFileSync(oldest, old);
      const before = rowsOf(old);
      const starting = startVictim(door, old);
      starting.catch(() => undefined);
      // The copy before the migration is the first thing that shows; the migration follows within milliseconds.
      const asking = door === 'command line' ? starting.then((victim) => victim.ask('workspace/about', {})) : null;
      await until(() => existsSync(copiesFolder(old)), 15_000);
      await pause(dice.below(60));
      const victim = await Promise.race([starting, pause(4000).then(() => null)]);
      victim?.kill();
      await victim?.ended;
      await asking;
      const database = new Database(old);
      expect(whole(database)).toEqual([]);
      const version = database.pragma('user_version', { simple: true }) as number;
      database.close();
      expect([1, newestVersion], 'a version in between').toContain(version);
      expect(oldRowsOf(old, before), 'what was there').toEqual(before);
      const application = await openApplication({ file: old, log: () => undefined });
      expect(application.trouble).toBeNull();
      await application.close();
      expect(oldRowsOf(old, before)).toEqual(before);
    };

    test(
      'the file is whole, every confirmed write is there, nothing is half there',
      async () => {
        let lost = 0;
        for (let turn = 0; turn < count; turn++) {
          const kind = order[turn % order.length]!;
          if (kind === 'migration') {
            await killWhileMigrating(turn);
            continue;
          }
          await killWhileWorking(kind);
          const database = new Database(file, { readonly: true });
          expect(whole(database), `after kill ${turn + 1} (${kind})`).toEqual([]);
          const standing = (id: string) =>
            database.prepare('select revision from venues where id = ?').pluck().get(id) as number | undefined;
          for (const [id, revision] of unsure) {
            const found = standing(id) ?? 0;
            if (found < revision) lost += 1;
            confirmed.set(id, found);
          }
          unsure.clear();
          for (const [id, revision] of confirmed) {
            if ((standing(id) ?? 0) !== revision) lost += 1;
            expect(standing(id), `${id} after kill ${turn + 1} (${kind})`).toBe(revision);
          }
          for (const [id, change] of drafts) {
            const name = database.prepare("select document ->> 'name' from drafts where booking_id = ?").pluck().get(id);
            const kept = Number(/\d+$/.exec(String(name))?.[0] ?? -1);
            // One that was not answered any more may have been kept too: of this kill, or of one before it.
            if (kept < change) lost += 1;
            const named = `the draft of ${id} after kill ${turn + 1}`;
            expect(kept, named).toBeGreaterThanOrEqual(change);
            expect(kept, named).toBeLessThanOrEqual(changes);
            drafts.set(id, kept);
          }
          database.close();
          for (const { path } of listCopies(file)) expect(await isGoodCopy(path, newestVersion), path).toBe(true);
        }
        expect(confirmed.size).toBeGreaterThan(0);
        expect(statSync(file).size).toBeGreaterThan(0);
        const application = await openApplication({ file, log: () => undefined });
        expect(application.trouble).toBeNull();
        await application.close();
        enter({ kind: `killed: ${door}`, tries: count, survived: count, lost });
      },
      tries(240_000, 1_800_000),
    );
  });
};
