import type { Picture } from '#engine/colour/photograph-cover.ts';
import { streamFor } from '#engine/chance/stream.ts';

type Paint = (x: number, y: number, chance: () => number) => readonly [number, number, number];

/** A picture painted pixel by pixel; invented, the same for the same seed. */
export const painted = (width: number, height: number, paint: Paint, seed = 1): Picture => {
  const data = new Uint8ClampedArray(width * height * 4);
  const chance = streamFor(seed, 'tests: picture');
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [red, green, blue] = paint(x, y, chance);
      data.set([red, green, blue, 255], (y * width + x) * 4);
    }
  return { width, height, data };
};

/** Leaf, straw and dry sand of the reference table (96°, 42.9° and 45.5° of hue). */
export const leaf = [60, 90, 40] as const;
export const straw = [150, 130, 80] as const;
export const sand = [194, 178, 128] as const;

export const lit = ([red, green, blue]: readonly [number, number, number], share: number): readonly [number, number, number] => [
  red * share,
  green * share,
  blue * share,
];
