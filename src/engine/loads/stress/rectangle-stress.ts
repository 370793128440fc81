/**
 * Vertical stress under a uniform rectangle in elastic ground: mats, pads, strips of panel.
 *
 *     I = (1/4π) { [2mn√V / (V + m²n²)] (V + 1)/V + atan[2mn√V / (V − m²n²)] },  V = m² + n² + 1
 *
 * m = B/z, n = L/z for the corner of a B × L rectangle. The angle lies between 0 and π: where V < m²n² the plain arctangent
 * would jump by π, so the two-argument arctangent is used. Any other point is the signed sum of four corners.
 * Valid for m, n ≥ 0; the limit for a very large rectangle is 1/4.
 *
 * @source newmark-1935
 * @source venkatramaiah-3rd
 */
export const cornerInfluence = (m: number, n: number): number => {
  if (!(m >= 0 && n >= 0)) throw new RangeError('m, n: must be at least 0');
  if (m === 0 || n === 0) return 0;
  const long = Math.min(m, 1e6);
  const wide = Math.min(n, 1e6);
  const v = long * long + wide * wide + 1;
  const product = long * wide;
  const top = 2 * product * Math.sqrt(v);
  return (1 / (4 * Math.PI)) * ((top / (v + product * product)) * ((v + 1) / v) + Math.atan2(top, v - product * product));
};

/** A rectangle with its sides along x and y, m. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly length: number;
}

const quarter = (dx: number, dy: number, z: number): number =>
  Math.sign(dx) * Math.sign(dy) * cornerInfluence(Math.abs(dx) / z, Math.abs(dy) / z);

/** kPa at the point (`x`, `y`, depth `z`), m, under `pressure` kPa on a rectangle whose middle is (`x`, `y`) of `rectangle`. */
export const rectangleStress = (pressure: number, rectangle: Rectangle, x: number, y: number, z: number): number => {
  const right = rectangle.x + rectangle.width / 2 - x;
  const left = rectangle.x - rectangle.width / 2 - x;
  const upper = rectangle.y + rectangle.length / 2 - y;
  const lower = rectangle.y - rectangle.length / 2 - y;
  if (!(z >= 0)) throw new RangeError('depth: must be at least 0');
  if (z === 0) return right >= 0 && left <= 0 && upper >= 0 && lower <= 0 ? pressure : 0;
  return pressure * (quarter(right, upper, z) - quarter(left, upper, z) - quarter(right, lower, z) + quarter(left, lower, z));
};
