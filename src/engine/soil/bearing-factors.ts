/**
 * Bearing capacity factors of a strip on the ground, from the friction angle φ (degrees).
 *
 *     Nq = e^(π tan φ) tan²(45 + φ/2),  Nc = (Nq − 1) cot φ (π + 2 at φ = 0)          Prandtl–Reissner
 *     Nγ = 2(Nq + 1) tan φ                                                             Vesić
 *     Nγ = (Nq − 1) tan(1.4 φ)                                                         Meyerhof
 *     Nγ = 1.5(Nq − 1) tan φ                                                           Hansen
 *     load inclined by δ: Nq = cos δ (cos δ + √(sin²φ − sin²δ))/(1 − sin φ) · e^((π − Δ − δ) tan φ), sin Δ = sin δ/sin φ
 *
 * Valid for 0 ≤ φ ≤ 50° and 0 ≤ δ < φ; outside RangeError.
 *
 * @source vesic-1973
 * @source meyerhof-1963
 * @source sp-22-2016
 */
const radians = Math.PI / 180;

const checkAngle = (phi: number): void => {
  if (!(phi >= 0 && phi <= 50)) throw new RangeError('friction angle: must be between 0 and 50 degrees');
};

export const prandtlReissner = (phi: number): { readonly nq: number; readonly nc: number } => {
  checkAngle(phi);
  const tangent = Math.tan(phi * radians);
  const nq = Math.exp(Math.PI * tangent) * Math.tan((45 + phi / 2) * radians) ** 2;
  return { nq, nc: phi < 1e-6 ? Math.PI + 2 : (nq - 1) / tangent };
};

/** Nq and Nc when the load leans `delta` degrees from the vertical. */
export const inclinedFactors = (phi: number, delta: number): { readonly nq: number; readonly nc: number } => {
  checkAngle(phi);
  if (!(delta >= 0 && (delta < phi || delta === 0)))
    throw new RangeError('inclination: must be at least 0 and below the friction angle');
  if (delta === 0) return prandtlReissner(phi);
  const [sinPhi, sinDelta, cosDelta] = [Math.sin(phi * radians), Math.sin(delta * radians), Math.cos(delta * radians)];
  const tangent = Math.tan(phi * radians);
  const turn = Math.PI - Math.asin(sinDelta / sinPhi) - delta * radians;
  const nq = ((cosDelta * (cosDelta + Math.sqrt(sinPhi ** 2 - sinDelta ** 2))) / (1 - sinPhi)) * Math.exp(turn * tangent);
  return { nq, nc: (nq - 1) / tangent };
};

export type WeightFactor = 'vesic' | 'meyerhof' | 'hansen';

/** Nγ by the named author. */
export const weightFactor = (phi: number, author: WeightFactor): number => {
  const { nq } = prandtlReissner(phi);
  const tangent = Math.tan(phi * radians);
  if (author === 'vesic') return 2 * (nq + 1) * tangent;
  if (author === 'meyerhof') return (nq - 1) * Math.tan(1.4 * phi * radians);
  return 1.5 * (nq - 1) * tangent;
};
