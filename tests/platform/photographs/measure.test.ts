import { describe, expect, test } from 'vitest';
import type { FrameCorners } from '#shared/vocabulary/photograph.ts';
import { decodePhotograph, jpegOf, pngOf } from '#platform/photographs/codecs.ts';
import { pictureHeader } from '#platform/photographs/header.ts';
import { measurePhotograph } from '#platform/photographs/measure.ts';
import { thumbnailOf } from '#platform/photographs/thumbnail.ts';
import { leaf, lit, painted, sand, straw } from '#tests/platform/photographs/synthetic-pictures.ts';

const kinds = (measured: Awaited<ReturnType<typeof measurePhotograph>>) => measured.limits.map(({ kind }) => kind);

/** Blades: stripes 5 pixels wide of leaf, the rest straw, so that a known share is green. */
const stripes = (share: number) => painted(600, 400, (x, y) => ((x + 3 * y) % 100 < share * 100 ? leaf : straw));

describe('green cover of a photograph', () => {
  for (const share of [0, 0.18, 0.5, 0.83, 1])
    test(`a picture that is ${share * 100} % green is measured within one point, as PNG and as JPEG`, async () => {
      const picture = stripes(share);
      const png = await measurePhotograph({ bytes: await pngOf(picture), thresholds: 'first', frame: null });
      expect(png.cover).toBeCloseTo(share, 6);
      const blocks = painted(640, 400, (x, y) =>
        (Math.floor(x / 32) * 7 + Math.floor(y / 40) * 3) % 20 < share * 20 ? leaf : straw,
      );
      const truth = Array.from(blocks.data).filter((one, at) => at % 4 === 0 && one === leaf[0]).length / (640 * 400);
      const jpeg = await measurePhotograph({ bytes: await jpegOf(blocks, 92), thresholds: 'first', frame: null });
      expect(Math.abs(jpeg.cover - truth)).toBeLessThan(0.01);
    });

  test('the dark green colour index is that of the leaf, 0.5638 (60, 90, 40 in the reference table)', async () => {
    const { greenIndex } = await measurePhotograph({ bytes: await pngOf(stripes(0.4)), thresholds: 'first', frame: null });
    expect(greenIndex).toBeCloseTo(0.5638, 4);
  });

  /** A quadrat frame of white plastic on turf: 70 % leaf of many shades, straw between, a shadow over the left fifth. */
  const frame: FrameCorners = [
    [0.2, 0.15],
    [0.85, 0.2],
    [0.8, 0.9],
    [0.15, 0.85],
  ];
  const inside = (x: number, y: number): boolean =>
    frame.every(([x1, y1], index) => {
      const [x2, y2] = frame[(index + 1) % 4]!;
      return (x2 - x1) * (y - y1) - (y2 - y1) * (x - x1) >= 0;
    });
  const turf = (plastic: readonly [number, number, number] = [238, 241, 246]) =>
    painted(900, 700, (x, y, chance) => {
      const blade = chance();
      const light = 0.7 + 0.6 * chance();
      const [u, v] = [(x + 0.5) / 900, (y + 0.5) / 700];
      if (!inside(u, v)) return plastic;
      const shaded = u < 0.3 ? 0.16 : 1;
      return lit(blade < 0.7 ? leaf : blade < 0.9 ? straw : sand, light * shaded);
    });

  test('a frame, a shadow and straw: the number is that of the frame, and says what speaks against it', async () => {
    const measured = await measurePhotograph({ bytes: await pngOf(turf()), thresholds: 'first', frame });
    expect(measured.cover).toBeGreaterThan(0.66);
    expect(measured.cover).toBeLessThan(0.74);
    expect(kinds(measured)).toEqual(expect.arrayContaining(['shadow', 'dead-leaf']));
    expect(kinds(measured)).not.toContain('no-frame');
    expect(kinds(measured)).not.toContain('glare');
    expect(measured.least).toBeLessThan(measured.cover);
    expect(measured.most).toBeGreaterThan(measured.cover);
    expect(measured.dark).toBeGreaterThan(0.1);
    for (const { words } of measured.limits) expect(words).not.toMatch(/\bsafe\b/i);
  });

  test('without the mask the white frame counts as bare ground and is told of', async () => {
    const measured = await measurePhotograph({ bytes: await pngOf(turf()), thresholds: 'first', frame: null });
    expect(measured.cover).toBeLessThan(0.5);
    expect(kinds(measured)).toEqual(expect.arrayContaining(['glare', 'no-frame']));
  });

  test('a white with a breath of yellow falls into the first thresholds, which take any saturation: the range says so', async () => {
    const measured = await measurePhotograph({ bytes: await pngOf(turf([245, 245, 243])), thresholds: 'first', frame: null });
    expect(measured.cover).toBeGreaterThan(0.8);
    expect(kinds(measured)).toEqual(expect.arrayContaining(['glare', 'thresholds-disagree']));
    expect(measured.least).toBeLessThan(0.5);
  });

  test('a blurred picture is told of', async () => {
    const soft = painted(600, 400, (x) => lit(leaf, 0.8 + 0.3 * Math.sin(x / 20)));
    expect(kinds(await measurePhotograph({ bytes: await pngOf(soft), thresholds: 'first', frame: null }))).toContain('blur');
    expect(kinds(await measurePhotograph({ bytes: await pngOf(turf()), thresholds: 'first', frame }))).not.toContain('blur');
  });

  test('dark greens that only the later thresholds take are told of', async () => {
    const dark = painted(300, 300, (x) => (x % 2 === 0 ? [34, 68, 34] : [60, 90, 40]));
    const bytes = await pngOf(dark);
    const first = await measurePhotograph({ bytes, thresholds: 'first', frame: null });
    expect(first).toMatchObject({ cover: 0.5, coverByOther: 1 });
    expect(kinds(first)).toContain('thresholds-disagree');
    expect(await measurePhotograph({ bytes, thresholds: 'later', frame: null })).toMatchObject({ cover: 1, coverByOther: 0.5 });
  });

  test('the preview shows green what was counted, grey what was not, black what was masked', async () => {
    const measured = await measurePhotograph({
      bytes: await pngOf(stripes(0.5)),
      thresholds: 'first',
      frame: [
        [0.5, 0],
        [1, 0],
        [1, 1],
        [0.5, 1],
      ],
    });
    const preview = await decodePhotograph(Buffer.from(measured.preview.base64, 'base64'));
    expect([preview.width, preview.height]).toEqual([600, 400]);
    let [green, black] = [0, 0];
    for (let at = 0; at < preview.data.length; at += 4) {
      const [red, grass, blue] = [preview.data[at]!, preview.data[at + 1]!, preview.data[at + 2]!];
      if (red + grass + blue === 0) black++;
      else if (grass > red) green++;
    }
    expect(black).toBe(300 * 400);
    expect(green / (300 * 400)).toBeCloseTo(measured.cover, 6);
  });

  test('a frame whose corners cross, or that holds nothing, is refused by name', async () => {
    const bytes = await pngOf(stripes(0.5));
    const asked = (corners: FrameCorners) => measurePhotograph({ bytes, thresholds: 'first', frame: corners });
    await expect(
      asked([
        [0, 0],
        [1, 1],
        [1, 0],
        [0, 1],
      ]),
    ).rejects.toMatchObject({ field: 'frame' });
    await expect(
      asked([
        [0, 0],
        [0.05, 0],
        [0.05, 0.05],
        [0, 0.05],
      ]),
    ).rejects.toMatchObject({ field: 'frame' });
  });
});

describe('what is refused before anything is decoded', () => {
  test('a head that claims a huge picture', async () => {
    const png = await pngOf(stripes(0.5));
    new DataView(png.buffer).setUint32(16, 60_000);
    expect(pictureHeader(png)).toMatchObject({ ok: false, reason: expect.stringMatching(/60000 × 400 pixels/) as string });
    const jpeg = await jpegOf(stripes(0.5), 80);
    const frame = jpeg.findIndex((byte, at) => byte === 0xff && (jpeg[at + 1] === 0xc0 || jpeg[at + 1] === 0xc2));
    jpeg.set([0xff, 0xff, 0xff, 0xff], frame + 5);
    expect(pictureHeader(jpeg)).toMatchObject({ ok: false, reason: expect.stringMatching(/65535 × 65535/) as string });
    await expect(decodePhotograph(jpeg)).rejects.toMatchObject({ field: 'base64' });
  });

  test('files cut short, of another kind, or none', async () => {
    const png = await pngOf(stripes(0.5));
    const jpeg = await jpegOf(stripes(0.5), 80);
    expect(pictureHeader(png)).toEqual({ ok: true, mediaType: 'image/png', width: 600, height: 400 });
    expect(pictureHeader(jpeg)).toEqual({ ok: true, mediaType: 'image/jpeg', width: 600, height: 400 });
    for (const cut of [png.slice(0, -20), jpeg.slice(0, -500), jpeg.slice(0, 40), png.slice(0, 30)])
      expect(pictureHeader(cut)).toMatchObject({ ok: false });
    for (const text of ['', 'x', '%PDF-1.7 not a picture, but quite long enough to be looked at twice', '<svg/>'])
      expect(pictureHeader(new TextEncoder().encode(text))).toMatchObject({
        ok: false,
        reason: expect.stringMatching(/neither/) as string,
      });
  });

  test('a damaged file that keeps its head is refused as damaged, and the next one is decoded as before', async () => {
    const png = await pngOf(stripes(0.5));
    const broken = png.slice();
    broken.fill(0x55, 60, 400);
    await expect(decodePhotograph(broken)).rejects.toMatchObject({
      field: 'base64',
      message: expect.stringMatching(/damaged/) as string,
    });
    expect(await decodePhotograph(png)).toMatchObject({ width: 600, height: 400 });
  });
});

test('a thumbnail is a small JPEG of the whole picture', async () => {
  const small = await decodePhotograph(
    await thumbnailOf({ bytes: await pngOf(painted(1600, 1200, (x) => (x < 800 ? leaf : straw))) }),
  );
  expect([small.width, small.height]).toEqual([320, 240]);
  expect(small.data[(120 * 320 + 40) * 4 + 1]! - small.data[(120 * 320 + 40) * 4]!).toBeGreaterThan(15);
  expect(small.data[(120 * 320 + 280) * 4]! - small.data[(120 * 320 + 280) * 4 + 1]!).toBeGreaterThan(10);
});

test('a picture taken on its side is turned upright, as its camera noted', async () => {
  const jpeg = await jpegOf(
    painted(60, 40, (x) => (x < 30 ? leaf : straw)),
    95,
  );
  // An EXIF note of one entry: orientation 6, "turn right by a quarter".
  const exif = [
    0xff,
    0xe1,
    0,
    34,
    ...Buffer.from('Exif\0\0'),
    ...Buffer.from('MM'),
    0,
    42,
    0,
    0,
    0,
    8,
    0,
    1,
    1,
    0x12,
    0,
    3,
    0,
    0,
    0,
    1,
    0,
    6,
    0,
    0,
    0,
    0,
    0,
    0,
  ];
  const turned = await decodePhotograph(Uint8Array.from([...jpeg.slice(0, 2), ...exif, ...jpeg.slice(2)]));
  expect([turned.width, turned.height]).toEqual([40, 60]);
  // What was left is now on top.
  expect(turned.data[(5 * 40 + 20) * 4 + 1]!).toBeGreaterThan(turned.data[(5 * 40 + 20) * 4]!);
  expect(turned.data[(55 * 40 + 20) * 4 + 1]!).toBeLessThan(turned.data[(55 * 40 + 20) * 4]!);
});
