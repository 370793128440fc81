import { type GreenBand, isGreen } from '#engine/colour/green-pixels.ts';
import { hueColourOf } from '#engine/colour/hue-saturation-brightness.ts';
import type { Picture } from '#engine/colour/photograph-cover.ts';
import { quadratRows, type Corner } from '#engine/colour/quadrat-rows.ts';

/** Every pixel of the small picture is one pixel of the large one, so that it shows what was decided and not a mixture. */
export const coverPreview = (picture: Picture, band: GreenBand, frame: readonly Corner[] | null, widest: number): Picture => {
  const scale = Math.min(1, widest / Math.max(picture.width, picture.height));
  const width = Math.max(1, Math.round(picture.width * scale));
  const height = Math.max(1, Math.round(picture.height * scale));
  const rows = quadratRows(picture.width, picture.height, frame);
  const data = new Uint8ClampedArray(width * height * 4);
  for (let row = 0; row < height; row++) {
    const from = Math.min(picture.height - 1, Math.floor(((row + 0.5) * picture.height) / height));
    for (let column = 0; column < width; column++) {
      const to = (row * width + column) * 4;
      const x = Math.min(picture.width - 1, Math.floor(((column + 0.5) * picture.width) / width));
      data[to + 3] = 255;
      if (x < rows[from * 2]! || x >= rows[from * 2 + 1]!) continue;
      const at = (from * picture.width + x) * 4;
      const [red, green, blue] = [picture.data[at]!, picture.data[at + 1]!, picture.data[at + 2]!];
      const tone = 0.299 * red + 0.587 * green + 0.114 * blue;
      const counts = isGreen(hueColourOf(red, green, blue), band);
      data[to] = counts ? tone * 0.3 : tone;
      data[to + 1] = counts ? 128 + tone * 0.5 : tone;
      data[to + 2] = counts ? tone * 0.3 : tone;
    }
  }
  return { width, height, data };
};
