import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openApplication } from '#application/application.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { chance, type Chance } from '#tests/faults/chance.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { enter, tries } from '#tests/faults/tally.ts';
import { startVictim, type DoorName, type Victim } from '#tests/faults/victim.ts';
import { whole } from '#tests/faults/whole.ts';

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fieldback-two-'));
  file = join(folder, 'workspace.fieldback');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const venues = ['venue-1', 'venue-2'];
const bookings = venues.flatMap((id) => [`${id}-one`, `${id}-two`]);

interface Tally {
  asked: number;
  conflicts: number;
  busy: number;
  /** Saves that were answered with a good answer, by booking. */
  readonly saved: Map<string, number>;
  readonly wrong: string[];
}

/** Counts up in a booking's name: a lost update would leave the count behind the number of confirmed saves. */
const countUp = async (door: Victim, id: string, asleep: () => Promise<void>, tally: Tally): Promise<void> => {
  const read = (await door.ask('booking/read', { id })) as Answer<Booking>;
  tally.asked += 1;
  if (!read.ok) return note(tally, read, id);
  await asleep();
  const count = Number(/\d+$/.exec(read.value.name)?.[0] ?? 0) + 1;
  const saved = await door.ask('booking/save', { booking: { ...read.value, name: `Counted ${count}` } });
  tally.asked += 1;
  if (saved?.ok) tally.saved.set(id, (tally.saved.get(id) ?? 0) + 1);
  else note(tally, saved, id);
};

const note = (tally: Tally, answer: Answer<unknown> | null, id: string): void => {
  const failure = answer?.ok === false ? answer.failure : null;
  if (failure?.kind === 'conflict') {
    tally.conflicts += 1;
    if (!failure.message.includes(id) || !/revision/.test(failure.message)) tally.wrong.push(failure.message);
  } else if (failure?.kind === 'busy') tally.busy += 1;
  else tally.wrong.push(`${id}: ${JSON.stringify(answer)}`);
};

/** One program's share of the operations: counting up, stale saves, whole venues, reading and copying. */
const work = async (door: Victim, many: number, dice: Chance, tally: Tally): Promise<void> => {
  const mine = { asked: 0 };
  const ask = async (name: string, request: unknown): Promise<Answer<unknown> | null> => {
    tally.asked += 1;
    return door.ask(name, request);
  };
  const asleep = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, dice.below(4)));
  while (mine.asked < many) {
    const before = tally.asked;
    const kind = dice.below(20);
    const id = dice.pick(bookings);
    if (kind < 12) await countUp(door, id, asleep, tally);
    else if (kind < 15) {
      const listed = await ask('booking/list', { venueId: dice.pick(venues) });
      if (listed?.ok !== true) note(tally, listed, id);
    } else if (kind < 17) {
      const stale = await ask('booking/remove', { id, revision: 100_000 });
      if (stale?.ok !== false) tally.wrong.push(`${id}: a removal with a wrong revision went through`);
      else note(tally, stale, id);
    } else if (kind < 19) {
      const venueId = dice.pick(venues);
      const day = {
        date: '2027-05-01',
        maximum: 20,
        minimum: 10,
        rain: dice.below(9),
        radiation: null,
        vapourPressure: null,
        wind: null,
      };
      const logged = await ask('weather/set-days', { venueId, standing: 'actual', days: [day] });
      if (logged?.ok !== true) note(tally, logged, id);
    } else {
      const read = await ask('venue/list', {});
      if (read?.ok !== true) note(tally, read, id);
    }
    mine.asked += Math.max(1, tally.asked - before);
  }
};

describe('application, web host and command line on one file', () => {
  const many = tries(200, 10_000);
  // Each of its operations is a program of its own.
  const ofCommandLine = tries(3, 60);

  // Fails when `refusal` of the revisions lets a stale save through: then the counts stand behind the confirmed saves. Fails when a write
  // no longer waits for another program (`whileBusy`, `begin immediate`): then answers other than a conflict come back.
  test(
    `${many} operations: every confirmed save counts, a stale one is a conflict that names the booking`,
    async () => {
      const application = await openApplication({ file, log: () => undefined });
      for (const id of venues)
        expect(await application.ask('venue/import', { document: documentOf(id) })).toMatchObject({ ok: true });
      const own: Victim = { ask: application.answer, kill: () => undefined, ended: Promise.resolve() };
      const others = await Promise.all((['web host', 'desktop'] satisfies DoorName[]).map((door) => startVictim(door, file)));
      const shell = await startVictim('command line', file);
      const tally: Tally = { asked: 0, conflicts: 0, busy: 0, saved: new Map(), wrong: [] };
      const shared = { each: Math.ceil((many - ofCommandLine) / 3) };
      const tallies = [own, ...others, shell].map((): Tally => ({ ...tally, saved: new Map(), wrong: [] }));
      await Promise.all([
        ...[own, ...others].map((door, at) => work(door, shared.each, chance(41 + at), tallies[at]!)),
        work(shell, ofCommandLine, chance(44), tallies[3]!),
      ]);
      for (const each of tallies) {
        tally.asked += each.asked;
        tally.conflicts += each.conflicts;
        tally.busy += each.busy;
        tally.wrong.push(...each.wrong);
        for (const [id, count] of each.saved) tally.saved.set(id, (tally.saved.get(id) ?? 0) + count);
      }
      expect(tally.wrong.slice(0, 5)).toEqual([]);
      expect(tally.asked).toBeGreaterThanOrEqual(many);
      expect(tally.conflicts).toBeGreaterThan(0);
      let lost = 0;
      for (const id of bookings) {
        const read = await application.ask('booking/read', { id });
        const booking = (read as { value: Booking }).value;
        const confirmed = tally.saved.get(id) ?? 0;
        lost += confirmed - (booking.revision - 1);
        expect([booking.name, booking.revision], id).toEqual([`Counted ${confirmed}`, confirmed + 1]);
      }
      for (const door of others) {
        door.kill();
        await door.ended;
      }
      await application.close();
      const database = new Database(file, { readonly: true });
      expect(whole(database)).toEqual([]);
      database.close();
      enter({
        kind: 'two at once: application, web host, desktop, command line',
        tries: tally.asked,
        survived: tally.asked,
        lost,
        note: `${tally.conflicts} conflicts named, ${tally.busy} asked to wait`,
      });
    },
    tries(120_000, 1_800_000),
  );
});
