import { describe, expect, test } from 'vitest';
import { jpegOf, pngOf } from '#platform/photographs/codecs.ts';
import { cameraNoteOf } from '#platform/photographs/camera-note.ts';
import { pictureHeader } from '#platform/photographs/header.ts';
import { exifBlock, inJpeg, inPng, type CameraSays } from '#tests/platform/photographs/exif.ts';
import { leaf, painted } from '#tests/platform/photographs/synthetic-pictures.ts';

const picture = painted(40, 30, () => leaf);
const jpeg = await jpegOf(picture, 80);
const png = await pngOf(picture);
const full: CameraSays = {
  time: '2027:07:19 15:20:31',
  offsetOfOriginal: '-05:00',
  reference: 'T',
  direction: [1425, 100],
};

describe('what the camera noted (Exif, CIPA DC-008)', () => {
  test.each([true, false])('time, offset, bearing and its north, little-endian %s, in a JPEG and in a PNG', (little) => {
    const noted = { takenAt: '2027-07-19T15:20:31', offset: '-05:00', bearing: 14.25, north: 'true' };
    for (const bytes of [inJpeg(jpeg, exifBlock(full, little)), inPng(png, exifBlock(full, little))]) {
      expect(pictureHeader(bytes).ok).toBe(true);
      expect(cameraNoteOf(bytes)).toEqual(noted);
    }
  });

  test('the general offset serves where that of the original is missing', () => {
    const { offsetOfOriginal: _, ...rest } = full;
    expect(cameraNoteOf(inJpeg(jpeg, exifBlock({ ...rest, offset: '+09:30' }, true)))).toMatchObject({ offset: '+09:30' });
    expect(cameraNoteOf(inJpeg(jpeg, exifBlock({ ...full, offset: '+09:30' }, true)))).toMatchObject({ offset: '-05:00' });
  });

  test.each([
    ['a blank time', { time: '    :  :     :  :  ' }, { takenAt: null, offset: null, bearing: 14.25 }],
    ['a day that is none', { time: '2027:02:30 10:00:00' }, { takenAt: null, offset: null }],
    ['a clock that was never set', { time: '1970:01:01 00:00:00' }, { takenAt: null }],
    ['an offset that is none', { offsetOfOriginal: '-25:00' }, { takenAt: '2027-07-19T15:20:31', offset: null }],
    ['a bearing over nought', { direction: [1, 0] }, { bearing: null, north: null }],
    ['a bearing round the circle', { direction: [720, 2] }, { bearing: 0, north: 'true' }],
    ['a bearing beyond the circle', { direction: [361, 1] }, { bearing: null }],
    ['magnetic north', { reference: 'M' }, { bearing: 14.25, north: 'magnetic' }],
    ['a north that is not said', { reference: 'X' }, { bearing: 14.25, north: null }],
  ] as const)('%s', (_, says, noted) => {
    expect(cameraNoteOf(inJpeg(jpeg, exifBlock({ ...full, ...says }, false)))).toMatchObject(noted);
  });

  test('no note, neither time nor bearing, or a damaged one: nothing, and no error', () => {
    expect(cameraNoteOf(jpeg)).toBeNull();
    expect(cameraNoteOf(png)).toBeNull();
    expect(cameraNoteOf(inJpeg(jpeg, exifBlock({ reference: 'T' }, true)))).toBeNull();
    const block = exifBlock(full, true);
    for (let length = 0; length < block.length; length += 3)
      expect(() => cameraNoteOf(inJpeg(jpeg, block.subarray(0, length)))).not.toThrow();
    for (let at = 0; at < block.length; at++) {
      const spoilt = Buffer.from(block);
      spoilt[at] = 0xff;
      expect(() => cameraNoteOf(inPng(png, spoilt))).not.toThrow();
    }
  });
});
