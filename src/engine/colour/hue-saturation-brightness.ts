/** A colour by hue in degrees 0–360 (null for a grey, which has none), saturation and brightness 0–1. */
export interface HueColour {
  readonly hue: number | null;
  readonly saturation: number;
  readonly brightness: number;
}

/**
 * Standard RGB to hue, saturation, brightness. Yellow is 60°, green 120°.
 * @param red @param green @param blue 0–255
 */
export const hueColourOf = (red: number, green: number, blue: number): HueColour => {
  const most = Math.max(red, green, blue);
  const span = most - Math.min(red, green, blue);
  const brightness = most / 255;
  if (span === 0) return { hue: null, saturation: 0, brightness };
  const saturation = span / most;
  let sixth: number;
  if (most === red) sixth = (green - blue) / span;
  else if (most === green) sixth = 2 + (blue - red) / span;
  else sixth = 4 + (red - green) / span;
  return { hue: (sixth * 60 + 360) % 360, saturation, brightness };
};
