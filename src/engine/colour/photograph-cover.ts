import type { GreenBand } from '#engine/colour/green-pixels.ts';
import { quadratRows, type Corner } from '#engine/colour/quadrat-rows.ts';

/** A decoded picture: red, green, blue, alpha for each pixel, 0–255, row by row from the top left. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray | Uint8Array;
}

/** What is told apart in a picture; our assumptions, brightness and saturation 0–1, hue in degrees. */
export const pixelClasses = {
  /** Darker than this a colour is mostly the camera's noise. */
  dark: 0.12,
  /** Every channel above this: the sensor was full. */
  bright: 0.92,
  /** Straw (43°) and dry sand (45°) lie in this band of hue, with some saturation. */
  straw: { hueLow: 20, hueHigh: 57, saturationLow: 0.15 },
} as const;

export interface CountedCover {
  /** Pixels looked at. */
  readonly counted: number;
  /** Shares of them, 0–1. */
  readonly cover: number;
  readonly coverByOther: number;
  readonly dark: number;
  readonly bright: number;
  readonly straw: number;
  /** Cover if every dark or bright pixel were bare, and if every one were green. */
  readonly least: number;
  readonly most: number;
  /** Mean dark green colour index of green pixels; null where there are none. */
  readonly greenIndex: number | null;
}

/**
 * Green cover inside a quadrat frame: pixels in the band over all pixels, as `isGreen` tells them, with what speaks against the number.
 * One pass without an object per pixel, since a photograph has many millions.
 * @source richardson-2001 for the band, karcher-richardson-2003 for the index
 * @throws RangeError with field `frame` where the frame is none
 */
export const countCover = (
  { width, height, data }: Picture,
  band: GreenBand,
  other: GreenBand,
  frame: readonly Corner[] | null,
): CountedCover => {
  const rows = quadratRows(width, height, frame);
  const { dark: darkest, bright: brightest, straw } = pixelClasses;
  let [counted, green, greenByOther, dark, bright, dead, unsure, unsureGreen, index] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let row = 0; row < height; row++) {
    const end = (row * width + rows[row * 2 + 1]!) * 4;
    for (let at = (row * width + rows[row * 2]!) * 4; at < end; at += 4) {
      const red = data[at]!;
      const grass = data[at + 1]!;
      const blue = data[at + 2]!;
      const most = red > grass ? (red > blue ? red : blue) : grass > blue ? grass : blue;
      const least = red < grass ? (red < blue ? red : blue) : grass < blue ? grass : blue;
      const span = most - least;
      counted++;
      const isDark = most < darkest * 255;
      const isBright = least > brightest * 255;
      if (isDark) dark++;
      else if (isBright) bright++;
      let isGreen = false;
      if (span > 0) {
        const sixth = most === red ? (grass - blue) / span : most === grass ? 2 + (blue - red) / span : 4 + (red - grass) / span;
        const turned = sixth * 60 + 360;
        const hue = turned >= 360 ? turned - 360 : turned;
        const saturation = span / most;
        isGreen =
          hue >= band.hueLow && hue <= band.hueHigh && saturation >= band.saturationLow && saturation <= band.saturationHigh;
        if (
          hue >= other.hueLow &&
          hue <= other.hueHigh &&
          saturation >= other.saturationLow &&
          saturation <= other.saturationHigh
        )
          greenByOther++;
        if (hue >= straw.hueLow && hue < straw.hueHigh && saturation >= straw.saturationLow && !isDark && !isBright) dead++;
        if (isGreen) {
          green++;
          index += ((hue - 60) / 60 + (1 - saturation) + (1 - most / 255)) / 3;
        }
      }
      if (isDark || isBright) {
        unsure++;
        if (isGreen) unsureGreen++;
      }
    }
  }
  if (counted === 0) throw Object.assign(new RangeError('the frame holds no pixel'), { field: 'frame' });
  return {
    counted,
    cover: green / counted,
    coverByOther: greenByOther / counted,
    dark: dark / counted,
    bright: bright / counted,
    straw: dead / counted,
    least: (green - unsureGreen) / counted,
    most: (green - unsureGreen + unsure) / counted,
    greenIndex: green === 0 ? null : index / green,
  };
};
