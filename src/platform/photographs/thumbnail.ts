import type { Picture } from '#engine/colour/photograph-cover.ts';
import { decodePhotograph, jpegOf } from '#platform/photographs/codecs.ts';

/** Pixels on the longer side, and JPEG quality. */
const longest = 320;
const quality = 70;

/** A small JPEG of a photograph. @throws RangeError with field `base64` where it cannot be decoded */
export const thumbnailOf = async ({ bytes }: { readonly bytes: Uint8Array }): Promise<Uint8Array> =>
  jpegOf(shrunk(await decodePhotograph(bytes), longest), quality);

/** Each small pixel is the mean of the block it stands for. */
export const shrunk = (picture: Picture, side: number): Picture => {
  const scale = Math.min(1, side / Math.max(picture.width, picture.height));
  const width = Math.max(1, Math.round(picture.width * scale));
  const height = Math.max(1, Math.round(picture.height * scale));
  const data = new Uint8ClampedArray(width * height * 4);
  for (let row = 0; row < height; row++) {
    const [top, bottom] = blockOf(row, height, picture.height);
    for (let column = 0; column < width; column++) {
      const [left, right] = blockOf(column, width, picture.width);
      const sums = [0, 0, 0];
      for (let y = top; y < bottom; y++)
        for (let x = left; x < right; x++)
          for (let channel = 0; channel < 3; channel++) sums[channel]! += picture.data[(y * picture.width + x) * 4 + channel]!;
      const to = (row * width + column) * 4;
      const count = (bottom - top) * (right - left);
      for (let channel = 0; channel < 3; channel++) data[to + channel] = sums[channel]! / count;
      data[to + 3] = 255;
    }
  }
  return { width, height, data };
};

const blockOf = (index: number, small: number, large: number): readonly [number, number] => {
  const from = Math.floor((index * large) / small);
  return [from, Math.max(from + 1, Math.floor(((index + 1) * large) / small))];
};
