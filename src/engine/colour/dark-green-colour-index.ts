import type { HueColour } from '#engine/colour/hue-saturation-brightness.ts';

/**
 * Dark green colour index.
 *
 *     DGCI = ((H − 60)/60 + (1 − S) + (1 − B))/3,   H in degrees, not cut to 60–120; S and B 0–1
 *
 * @returns null for a grey, which has no hue
 * @source karcher-richardson-2003
 */
export const darkGreenColourIndex = (colour: HueColour): number | null =>
  colour.hue === null ? null : ((colour.hue - 60) / 60 + (1 - colour.saturation) + (1 - colour.brightness)) / 3;
