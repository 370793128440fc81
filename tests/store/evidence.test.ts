import { rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Inspection } from '#shared/vocabulary/inspection.ts';
import type { Photograph } from '#shared/vocabulary/photograph.ts';
import type { OpenStore } from '#store/open-store.ts';
import { smallVenue } from '#tests/contract/small-venue.ts';
import { newFolder, openWell } from '#tests/store/open-workspace.ts';
import { tableHash } from '#tests/store/table-hash.ts';

const inspection = (id: string, corrects: string | null = null): Inspection => ({
  id,
  venueId: smallVenue.id,
  bookingId: 'an-event',
  kind: 'free',
  at: '2027-07-18T15:00',
  inspector: 'Inspector of the tests',
  weather: '',
  note: '',
  readings: [],
  defects: [],
  spills: [],
  witnesses: [],
  photographs: [],
  corrects,
  enteredAt: '2027-07-18T20:00:00.000Z',
});
const photograph = (number: number): Photograph => ({
  id: `photograph-${number}`,
  venueId: smallVenue.id,
  bookingId: 'an-event',
  zone: null,
  point: null,
  takenAt: '2027-07-18T15:00',
  bearing: null,
  fileName: `${number}.jpg`,
  words: '',
  mediaType: 'image/jpeg',
  width: 4000,
  height: 3000,
  bytes: 3_000_000,
  sha256: number.toString(16).padStart(64, '0'),
  enteredAt: '2027-07-18T20:00:00.000Z',
  camera: null,
});

let folder: string;
let file: string;
let store: OpenStore;
beforeEach(async () => {
  folder = newFolder();
  file = join(folder, 'workspace.fieldback');
  store = await openWell(file);
  await store.write(async (contents) => {
    await contents.venues.save(smallVenue);
    await contents.inspections.add(inspection('first'));
    await contents.inspections.add(inspection('second', 'first'));
    await contents.photographs.add(photograph(1), new Uint8Array(9000));
  });
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('evidence', () => {
  test('a row is neither changed nor taken away, whoever tries', () => {
    const before = tableHash(file);
    const other = new Database(file);
    other.pragma('foreign_keys = on');
    for (const statement of [
      "update inspections set document = json_set(document, '$.note', 'nothing happened')",
      "update inspections set at_venue_time = '2027-01-01T00:00' where id = 'first'",
      "delete from inspections where id = 'second'",
      "delete from inspections where id = 'first'",
      'update photographs set booking_id = null',
      'delete from photographs',
      'update thumbnails set jpeg = zeroblob(1)',
      'delete from thumbnails',
    ])
      expect(() => other.exec(statement), statement).toThrow(/is never changed|goes only with its venue/);
    other.close();
    expect(tableHash(file)).toBe(before);
  });

  test('one inspection is put right once, and the line says by which', async () => {
    const lines = await store.read((contents) => contents.inspections.list(smallVenue.id, 'an-event'));
    expect(lines.map(({ inspection: { id }, correctedBy }) => [id, correctedBy])).toEqual([
      ['first', 'second'],
      ['second', null],
    ]);
    await expect(store.write((contents) => contents.inspections.add(inspection('third', 'first')))).rejects.toThrow(/UNIQUE/);
  });

  test('all of it goes with the venue', async () => {
    await store.write((contents) => contents.venues.remove(smallVenue.id, 1));
    const other = new Database(file, { readonly: true });
    for (const table of ['inspections', 'photographs', 'thumbnails'])
      expect(other.prepare(`select count(*) from ${table}`).pluck().get(), table).toBe(0);
    other.close();
  });

  test('500 photographs are listed without reading one of them, and their workspace is open in two seconds', async () => {
    await store.write(async (contents) => {
      for (let number = 2; number <= 500; number++) await contents.photographs.add(photograph(number), new Uint8Array(9000));
    });
    await store.close();
    const before = performance.now();
    store = await openWell(file);
    const plan = new Database(file, { readonly: true });
    const steps = plan.prepare(
      'explain query plan select document from photographs where venue_id = ? order by taken_at_venue_time, id',
    );
    expect(JSON.stringify(steps.all(smallVenue.id))).toMatch(/photographs_by_venue/);
    plan.close();
    expect(await store.read((contents) => contents.photographs.list(smallVenue.id, null))).toHaveLength(500);
    // ms; tests/bench/evidence.ts times the whole application.
    expect(performance.now() - before).toBeLessThan(2000);
    expect((await store.read((contents) => contents.photographs.thumbnail('photograph-500')))?.length).toBe(9000);
  });
});
