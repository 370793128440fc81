/**
 * Vertical stress under a long uniform strip: a row of panels, a track, a barricade.
 *
 *     σ/q = [α + sin α cos(α + 2δ)]/π,  α = t₁ − t₂,  α + 2δ = t₁ + t₂,
 *     t₁ = atan((x + B/2)/z),  t₂ = atan((x − B/2)/z)
 *
 * B width (m), x distance from the middle line (m), z depth (m), q pressure (kPa). At z = 0: q on the strip, 0 beside it.
 * It is the integral of the line load, and carries q·B through any depth.
 *
 * @source das-2010
 */
export const stripStress = (pressure: number, width: number, x: number, z: number): number => {
  if (!(width > 0)) throw new RangeError('width: must be above 0');
  if (!(z >= 0)) throw new RangeError('depth: must be at least 0');
  const offset = Math.abs(x);
  if (z === 0) return offset < width / 2 ? pressure : offset === width / 2 ? pressure / 2 : 0;
  const first = Math.atan((offset + width / 2) / z);
  const second = Math.atan((offset - width / 2) / z);
  return (pressure * (first - second + Math.sin(first - second) * Math.cos(first + second))) / Math.PI;
};
