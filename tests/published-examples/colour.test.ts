import { describe, expect, it } from 'vitest';
import { darkGreenColourIndex } from '#engine/colour/dark-green-colour-index.ts';
import { greenBands, greenCoverOf, isGreen } from '#engine/colour/green-pixels.ts';
import { hueColourOf } from '#engine/colour/hue-saturation-brightness.ts';

// Karcher & Richardson 2003, Crop Science 43:943-951: DGCI = ((H − 60)/60 + (1 − S) + (1 − B))/3. Standard RGB to HSB.
const rows = [
  [0, 255, 0, 120, 1, 1, 0.3333, false],
  [255, 255, 0, 60, 1, 1, 0, true],
  [0, 128, 0, 120, 1, 0.502, 0.4993, false],
  [60, 90, 40, 96, 0.5556, 0.3529, 0.5638, true],
  [120, 140, 60, 75, 0.5714, 0.549, 0.3765, true],
  [40, 60, 30, 100, 0.5, 0.2353, 0.6438, true],
  [150, 130, 80, 42.857, 0.4667, 0.5882, 0.2198, false],
  [194, 178, 128, 45.455, 0.3402, 0.7608, 0.2189, false],
  [34, 68, 34, 120, 0.5, 0.2667, 0.7444, false],
] as const;

describe('dark green colour index', () => {
  it.each(rows)('of %s, %s, %s', (red, green, blue, hue, saturation, brightness, index, inBand) => {
    const colour = hueColourOf(red, green, blue);
    expect(Math.abs(colour.hue! - hue)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(colour.saturation - saturation)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(colour.brightness - brightness)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(darkGreenColourIndex(colour)! - index)).toBeLessThanOrEqual(0.00005);
    expect(isGreen(colour, greenBands.first)).toBe(inBand);
  });
  it('is 0 for yellow and a third for pure green', () => {
    expect(darkGreenColourIndex(hueColourOf(255, 255, 0))).toBe(0);
    expect(darkGreenColourIndex(hueColourOf(0, 255, 0))).toBeCloseTo(1 / 3, 12);
  });
  it('does not cut the hue to 60–120', () => {
    expect(darkGreenColourIndex(hueColourOf(255, 0, 0))!).toBeCloseTo(-1 / 3, 12);
    expect(hueColourOf(0, 0, 255).hue).toBe(240);
  });
});

describe('green pixels', () => {
  // The later band reaches from 45 to 140 degrees from a tenth of saturation on.
  it('of the later band are all of the table but the straw', () => {
    expect(rows.map(([red, green, blue]) => isGreen(hueColourOf(red, green, blue), greenBands.later))).toEqual([
      true,
      true,
      true,
      true,
      true,
      true,
      false,
      true,
      true,
    ]);
  });
  it('are never grey', () => {
    for (const level of [0, 90, 255]) {
      const colour = hueColourOf(level, level, level);
      expect(colour.hue).toBeNull();
      expect(darkGreenColourIndex(colour)).toBeNull();
      expect(isGreen(colour, { hueLow: 0, hueHigh: 360, saturationLow: 0, saturationHigh: 1 })).toBe(false);
    }
  });
  it('over all pixels are the cover', () => {
    const image = Uint8ClampedArray.from([60, 90, 40, 255, 150, 130, 80, 255, 40, 60, 30, 255, 90, 90, 90, 255]);
    expect(greenCoverOf(image, greenBands.first)).toBe(0.5);
    expect(greenCoverOf(new Uint8ClampedArray(0), greenBands.first)).toBeNull();
  });
});
