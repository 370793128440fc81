import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { jpegOf, pngOf } from '#platform/photographs/codecs.ts';
import { photographsFolder } from '#platform/photographs/folder.ts';
import { concert, smallVenue } from '#tests/contract/small-venue.ts';
import { fromEpoch } from '#shared/calendar/local-time.ts';
import { exifBlock, inJpeg } from '#tests/platform/photographs/exif.ts';
import { leaf, painted } from '#tests/platform/photographs/synthetic-pictures.ts';
import { inspectionOf, smallWorkspace, spot, type SmallWorkspace } from '#tests/services/evidence/small-workspace.ts';
import { tableHash } from '#tests/store/table-hash.ts';

let workspace: SmallWorkspace;
beforeAll(async () => {
  workspace = await smallWorkspace();
});
afterAll(() => workspace.close());

const listed = () => workspace.good('inspection/list', { venueId: smallVenue.id, bookingId: concert.id });
const problemOf = async (inspection: object) => {
  const failure = await workspace.refused('inspection/add', { inspection });
  expect(failure.kind).toBe('invalid-request');
  return (failure as Extract<typeof failure, { kind: 'invalid-request' }>).problems[0]!;
};

describe('inspections', () => {
  test('a correction is a new one; the old one stays word for word and says by which it was put right', async () => {
    const first = await workspace.good('inspection/add', { inspection: inspectionOf() });
    const second = await workspace.good('inspection/add', {
      inspection: inspectionOf({ readings: [spot('A', { cover: 0.45 })], corrects: first.inspection.id, note: 'misread' }),
    });
    const lines = await listed();
    expect(lines).toEqual([
      { ...first, correctedBy: second.inspection.id },
      { ...second, correctedBy: null },
    ]);
    expect(await problemOf(inspectionOf({ corrects: first.inspection.id }))).toMatchObject({
      field: 'inspection.corrects',
      reason: expect.stringMatching(/put right already/) as string,
    });
  });

  test.each([
    [
      'a hardness without its hammer',
      { readings: [spot('A', { hardness: { peak: 90 } as never })] },
      'inspection.readings.0.hardness.hammerMass',
    ],
    [
      'a hardness of drop 0',
      { readings: [spot('A', { hardness: { peak: 90, hammerMass: 2.25, dropHeight: 0.46, dropNumber: 0 } })] },
      'inspection.readings.0.hardness.dropNumber',
    ],
    ['a spot at which nothing was read', { readings: [spot('A', {})] }, 'inspection.readings.0.zone'],
    ['a zone that is not there', { readings: [spot('Q', { cover: 0.5 })] }, 'inspection.readings.0.zone'],
    ['more cover than there is ground', { readings: [spot('A', { cover: 1.1 })] }, 'inspection.readings.0.cover'],
    [
      'a witness with neither name nor refusal',
      { witnesses: [{ answer: 'named', party: 'promoter' }] },
      'inspection.witnesses.0.name',
    ],
    ['a photograph that is not kept', { photographs: ['photograph-none'] }, 'inspection.photographs.0'],
    ['a correction of nothing', { corrects: 'inspection-none' }, 'inspection.corrects'],
    [
      'a clause nobody agreed to',
      {
        defects: [
          { zone: 'A', kind: 'rut', length: 2, area: 1, depth: 0.02, cause: 'crowd', chargeable: true, clause: '9', words: '' },
        ],
      },
      'inspection.defects.0.clause',
    ],
  ])('%s is refused by its field and nothing is kept', async (_, changes, field) => {
    const before = tableHash(workspace.file);
    expect((await problemOf(inspectionOf(changes))).field).toBe(field);
    expect(tableHash(workspace.file)).toBe(before);
  });

  test('what is left of the venue is a zone too: its own, and the rest', async () => {
    const kept = await workspace.good('inspection/add', {
      inspection: inspectionOf({
        bookingId: null,
        kind: 'free',
        readings: [spot('M', { cover: 0.9 }), spot('R', { moisture: 0.2 })],
      }),
    });
    expect(await workspace.good('inspection/read', { id: kept.inspection.id })).toEqual(kept);
  });
});

const photographOf = (changes: object = {}) => ({
  venueId: smallVenue.id,
  bookingId: concert.id,
  zone: 'A',
  point: 'A1',
  takenAt: '2027-07-18T15:00',
  bearing: 270,
  fileName: 'a1.jpg',
  words: '',
  ...changes,
});
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

describe('photographs', () => {
  test('the original lies untouched beside the workspace under its hash, once, and is told when it was tampered with', async () => {
    const bytes = await jpegOf(
      painted(640, 480, (x) => [60 + (x % 40), 90, 40]),
      90,
    );
    const kept = await workspace.good('photograph/add', { photograph: photographOf(), base64: base64(bytes) });
    const again = await workspace.good('photograph/add', { photograph: photographOf({ words: 'again' }), base64: base64(bytes) });
    expect(again.sha256).toBe(kept.sha256);
    const folder = photographsFolder(workspace.file);
    expect(readdirSync(folder)).toEqual([`${kept.sha256}.jpg`]);
    expect(readFileSync(join(folder, `${kept.sha256}.jpg`)).equals(bytes)).toBe(true);
    const small = await workspace.good('photograph/read', { id: kept.id, size: 'small' });
    expect(Buffer.from(small.base64, 'base64').length).toBeLessThan(bytes.length);
    writeFileSync(
      join(folder, `${kept.sha256}.jpg`),
      await jpegOf(
        painted(640, 480, () => leaf),
        90,
      ),
    );
    expect(await workspace.refused('photograph/read', { id: kept.id, size: 'original' })).toMatchObject({
      kind: 'conflict',
      message: expect.stringMatching(/no longer have the hash/) as string,
    });
    writeFileSync(join(folder, `${kept.sha256}.jpg`), bytes);
    expect((await workspace.good('photograph/read', { id: kept.id, size: 'original' })).base64).toBe(base64(bytes));
  });

  test('a picture that would unpack to gigabytes is refused by its head, and nothing is kept of it', async () => {
    const png = await pngOf(painted(50, 50, () => leaf));
    new DataView(png.buffer).setUint32(16, 16_000);
    new DataView(png.buffer).setUint32(20, 16_000);
    const before = [tableHash(workspace.file), readdirSync(photographsFolder(workspace.file)).length];
    expect(await workspace.refused('photograph/add', { photograph: photographOf(), base64: base64(png) })).toMatchObject({
      kind: 'invalid-request',
      problems: [{ field: 'base64', reason: expect.stringMatching(/16000 × 16000/) as string }],
    });
    expect(await workspace.refused('photograph/measure', { of: { base64: base64(png) }, frame: null })).toMatchObject({
      problems: [{ field: 'base64' }],
    });
    expect([tableHash(workspace.file), readdirSync(photographsFolder(workspace.file)).length]).toEqual(before);
  });

  test('a damaged picture, a text, and a file above 6 MB are refused', async () => {
    const png = await pngOf(painted(200, 200, (x, y) => [x, y, 40]));
    png.fill(0x55, 60, 300);
    for (const [bytes, kind, reason] of [
      [png, 'out-of-range', /damaged/],
      [new TextEncoder().encode('<svg onload="alert(1)"/>'.repeat(9)), 'invalid-request', /neither a JPEG nor a PNG/],
      [new Uint8Array(6 * 1024 * 1024 + 1), 'invalid-request', /more than 6 MB|8388608/],
    ] as const)
      expect(await workspace.refused('photograph/add', { photograph: photographOf(), base64: base64(bytes) })).toMatchObject({
        kind,
        problems: [{ field: 'base64', reason: expect.stringMatching(reason) as string }],
      });
    expect(await workspace.refused('photograph/add', { photograph: photographOf(), base64: 'no base 64!' })).toMatchObject({
      problems: [{ field: 'base64', reason: 'is not the Base64 of a file' }],
    });
  });

  test('a frame that crosses itself is refused by name', async () => {
    const png = await pngOf(painted(50, 50, () => leaf));
    const frame = [
      [0, 0],
      [1, 1],
      [1, 0],
      [0, 1],
    ];
    expect(await workspace.refused('photograph/measure', { of: { base64: base64(png) }, frame })).toMatchObject({
      kind: 'out-of-range',
      problems: [{ field: 'frame' }],
    });
  });

  test('the folder is there only once a photograph is', async () => {
    const other = await smallWorkspace();
    expect(existsSync(photographsFolder(other.file))).toBe(false);
    await other.close();
  });

  test('what the camera noted is kept beside what was entered, and goes before it where that is asked for', async () => {
    const picture = await jpegOf(
      painted(64, 48, () => leaf),
      90,
    );
    const says = { time: '2027:07:18 22:04:59', offsetOfOriginal: '+02:00', reference: 'M', direction: [2755, 10] } as const;
    const bytes = inJpeg(picture, exifBlock(says, true));
    const camera = { takenAt: '2027-07-18T22:04:59', offset: '+02:00', bearing: 275.5, north: 'magnetic' };
    const add = (changes: object, file: Uint8Array) =>
      workspace.good('photograph/add', { photograph: photographOf(changes), base64: base64(file) });
    expect(await add({}, bytes)).toMatchObject({ takenAt: '2027-07-18T15:00', bearing: 270, camera });
    // 22:04 two hours ahead of universal time is 20:04 there, and on the venue's clock:
    const there = fromEpoch(Date.UTC(2027, 6, 18, 20, 4), smallVenue.place.timeZone);
    expect(await add({ fromCamera: true }, bytes)).toMatchObject({ takenAt: there, bearing: 275.5, camera });
    // Without an offset the camera is taken to have shown the venue's time.
    const plain = inJpeg(picture, exifBlock({ time: says.time }, false));
    expect(await add({ fromCamera: true }, plain)).toMatchObject({ takenAt: '2027-07-18T22:04', bearing: 270 });
    const none = await add({ fromCamera: true }, picture);
    expect(none).toMatchObject({ takenAt: '2027-07-18T15:00', bearing: 270, camera: null });
    const listed = await workspace.good('photograph/list', { venueId: smallVenue.id, bookingId: concert.id });
    expect(listed.find(({ id }) => id === none.id)).toEqual(none);
    expect(listed.filter((one) => one.camera?.north === 'magnetic')).toHaveLength(2);
  });
});
