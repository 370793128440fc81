import type { Picture } from '#engine/colour/photograph-cover.ts';
import { quadratRows, type Corner } from '#engine/colour/quadrat-rows.ts';

/** Pixels between the two that are far apart; rows and columns between the spots looked at. */
const far = 8;
const rowStep = 4;
const columnStep = 5;

/**
 * How much of the change of brightness over eight pixels already happens from one pixel to the next. Where detail is a pixel wide this is
 * near 1; where everything is blurred over more than eight pixels, brightness runs straight between them and it is an eighth.
 * @returns null where the picture is one even tone
 */
export const sharpnessOf = ({ width, height, data }: Picture, frame: readonly Corner[] | null): number | null => {
  const rows = quadratRows(width, height, frame);
  let [near, over] = [0, 0];
  for (let row = 0; row < height; row += rowStep) {
    const end = row * width + rows[row * 2 + 1]! - far;
    for (let pixel = row * width + rows[row * 2]!; pixel < end; pixel += columnStep) {
      const here = tone(data, pixel);
      near += Math.abs(tone(data, pixel + 1) - here);
      over += Math.abs(tone(data, pixel + far) - here);
    }
  }
  return over === 0 ? null : near / over;
};

/** Brightness as the eye weighs the channels, 0–255. */
const tone = (data: Picture['data'], pixel: number): number =>
  0.299 * data[pixel * 4]! + 0.587 * data[pixel * 4 + 1]! + 0.114 * data[pixel * 4 + 2]!;
