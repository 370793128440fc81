import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { darkGreenColourIndex } from '#engine/colour/dark-green-colour-index.ts';
import { greenBands, greenCoverOf, isGreen } from '#engine/colour/green-pixels.ts';
import { hueColourOf } from '#engine/colour/hue-saturation-brightness.ts';
import { countCover } from '#engine/colour/photograph-cover.ts';
import { quadratRows } from '#engine/colour/quadrat-rows.ts';

const channel = fc.integer({ min: 0, max: 255 });
const pixels = fc.array(fc.tuple(channel, channel, channel), { minLength: 1, maxLength: 60 });

describe('counting the pixels of a photograph', () => {
  test('agrees with the definition of a green pixel, pixel by pixel, in both presets', () => {
    fc.assert(
      fc.property(pixels, (all) => {
        const data = Uint8ClampedArray.from(all.flatMap((pixel) => [...pixel, 255]));
        const counted = countCover({ width: all.length, height: 1, data }, greenBands.first, greenBands.later, null);
        expect(counted.cover).toBe(greenCoverOf(data, greenBands.first));
        expect(counted.coverByOther).toBe(greenCoverOf(data, greenBands.later));
        const indexes = all
          .map((pixel) => hueColourOf(...pixel))
          .filter((colour) => isGreen(colour, greenBands.first))
          .map((colour) => darkGreenColourIndex(colour)!);
        if (indexes.length === 0) expect(counted.greenIndex).toBeNull();
        else expect(counted.greenIndex).toBeCloseTo(indexes.reduce((sum, one) => sum + one, 0) / indexes.length, 9);
        expect(counted.least).toBeLessThanOrEqual(counted.cover + 1e-12);
        expect(counted.most).toBeGreaterThanOrEqual(counted.cover - 1e-12);
      }),
    );
  });

  // Straw and dry sand of the reference table; neither is green by the first thresholds, sand is by the later ones (hue 45.455).
  test('straw and dry sand are told from leaf', () => {
    const data = Uint8ClampedArray.from([150, 130, 80, 255, 194, 178, 128, 255, 60, 90, 40, 255, 128, 128, 128, 255]);
    const counted = countCover({ width: 4, height: 1, data }, greenBands.first, greenBands.later, null);
    expect(counted).toMatchObject({ counted: 4, cover: 0.25, coverByOther: 0.5, straw: 0.5, dark: 0, bright: 0 });
  });
});

describe('the pixels inside a quadrat frame', () => {
  test('a square on pixel edges holds exactly its pixels', () => {
    const rows = quadratRows(10, 8, [
      [0.2, 0.25],
      [0.8, 0.25],
      [0.8, 0.75],
      [0.2, 0.75],
    ]);
    expect(Array.from(rows)).toEqual([0, 0, 0, 0, 2, 8, 2, 8, 2, 8, 2, 8, 0, 0, 0, 0]);
  });

  test('the area of a convex frame is that of its corners, either way round', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.2, noNaN: true }), fc.double({ min: 0, max: 0.2, noNaN: true }), (slip, lean) => {
        const corners = [
          [0.1 + slip, 0.1],
          [0.9, 0.1 + lean],
          [0.9 - lean, 0.9],
          [0.1, 0.9 - slip],
        ] as const;
        const twice = corners.reduce((sum, [x, y], at) => sum + x * corners[(at + 1) % 4]![1] - corners[(at + 1) % 4]![0] * y, 0);
        const areaOf = (rows: Int32Array): number => {
          let count = 0;
          for (let row = 0; row < 300; row++) count += rows[row * 2 + 1]! - rows[row * 2]!;
          return count / (400 * 300);
        };
        expect(areaOf(quadratRows(400, 300, corners))).toBeCloseTo(Math.abs(twice) / 2, 2);
        expect(areaOf(quadratRows(400, 300, corners.toReversed()))).toBeCloseTo(Math.abs(twice) / 2, 2);
      }),
      { numRuns: 30 },
    );
  });
});
