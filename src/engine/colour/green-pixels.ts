import { hueColourOf, type HueColour } from '#engine/colour/hue-saturation-brightness.ts';

/** What counts as a green pixel: hue in degrees, saturation 0–1, both ends included. */
export interface GreenBand {
  readonly hueLow: number;
  readonly hueHigh: number;
  readonly saturationLow: number;
  readonly saturationHigh: number;
}

/** The two bands in use; from memory of their source. Pure green (120°) lies outside the first. @source richardson-2001 */
export const greenBands = {
  first: { hueLow: 57, hueHigh: 107, saturationLow: 0, saturationHigh: 1 },
  later: { hueLow: 45, hueHigh: 140, saturationLow: 0.1, saturationHigh: 1 },
} as const satisfies Record<string, GreenBand>;

/** Whether a colour counts as green. A grey never does. */
export const isGreen = (colour: HueColour, band: GreenBand): boolean =>
  colour.hue !== null &&
  colour.hue >= band.hueLow &&
  colour.hue <= band.hueHigh &&
  colour.saturation >= band.saturationLow &&
  colour.saturation <= band.saturationHigh;

/**
 * Green cover of an image, 0–1: green pixels over all pixels.
 * @param pixels red, green, blue, alpha for each pixel, 0–255 @returns null for an image without pixels
 */
export const greenCoverOf = (pixels: ArrayLike<number>, band: GreenBand): number | null => {
  const count = Math.floor(pixels.length / 4);
  if (count === 0) return null;
  let green = 0;
  for (let pixel = 0; pixel < count; pixel++) {
    if (isGreen(hueColourOf(pixels[pixel * 4]!, pixels[pixel * 4 + 1]!, pixels[pixel * 4 + 2]!), band)) green++;
  }
  return green / count;
};
