import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openApplication, type Application } from '#application/application.ts';
import { shippedContent } from '#application/shipped-content.ts';
import type { VenueDocument } from '#shared/contract/contract.ts';
import sample from '../../resources/sample/sample-venue.json' with { type: 'json' };

const folder = mkdtempSync(join(tmpdir(), 'fieldback-shipped-'));
let application: Application;
beforeAll(async () => {
  application = await openApplication({ file: join(folder, 'workspace.fieldback'), firstContent: shippedContent });
});
afterAll(async () => {
  await application.close();
  rmSync(folder, { recursive: true, force: true });
});

const value = async (name: string, request: unknown): Promise<unknown> => {
  const answer = await application.answer(name, request);
  expect(answer).toMatchObject({ ok: true });
  return (answer as { value: unknown }).value;
};

test('a new workspace holds the sample venue with its calendar and bookings, as an import would take them', async () => {
  const exported = (await value('venue/export', { id: sample.venue.id })) as VenueDocument;
  expect(exported.venue).toEqual({ ...sample.venue, revision: 1 });
  expect(exported.fixtures.map((fixture) => fixture.id).toSorted()).toEqual(sample.fixtures.map(({ id }) => id).toSorted());
  expect(exported.bookings.map((booking) => booking.id).toSorted()).toEqual(sample.bookings.map(({ id }) => id).toSorted());
  expect(exported.bookings.length).toBeGreaterThan(0);
});

test('a new workspace holds the starting classes, none of them twice', async () => {
  const ids = ((await value('covering/list', {})) as { id: string }[]).map(({ id }) => id);
  expect(ids.toSorted()).toEqual(shippedContent.coverings.map(({ id }) => id).toSorted());
  expect(ids.length).toBeGreaterThanOrEqual(9);
  const machines = ((await value('vehicle/list', {})) as { id: string }[]).map(({ id }) => id);
  expect(machines.toSorted()).toEqual(shippedContent.vehicles.map(({ id }) => id).toSorted());
});

test('what was removed does not come back when the file is opened again', async () => {
  const venue = (await value('venue/read', { id: sample.venue.id })) as { revision: number };
  await value('venue/remove', { id: sample.venue.id, revision: venue.revision });
  await application.close();
  application = await openApplication({ file: application.file, firstContent: shippedContent });
  expect(await value('venue/list', {})).toEqual([]);
});
