/**
 * Bearing capacity of shallow pads after Terzaghi.
 *
 *     Nq = e^(2(3π/4 − φ/2) tan φ)/(2 cos²(45 + φ/2)),  Nc = (Nq − 1) cot φ (5.71 at φ = 0)
 *     q_u = 1.3 c Nc + γ D Nq + s γ B Nγ,  s = 0.4 square, 0.3 circle (B the diameter)
 *     q_u = c Nc + γ D Nq + 0.5 γ B Nγ     strip
 *
 * Nγ has no closed form: his tabled values are interpolated between 0 and 45°, on the logarithm of Nγ above 10° and straight
 * below. c cohesion (kPa), φ friction angle (degrees, 0–45; outside RangeError), γ unit weight (kN/m³), D depth and B width (m).
 * Local shear (loose ground that gives way little by little) takes two thirds of c and of tan φ.
 *
 * @source terzaghi-1943
 * @source bowles-1996
 */
export interface BearingFactors {
  readonly nc: number;
  readonly nq: number;
  readonly ngamma: number;
}

const angles = [0, 10, 20, 25, 30, 34, 35, 40, 45] as const;
const weights = [0, 1.2, 5, 9.7, 19.7, 36, 42.4, 100.4, 297.5] as const;
const radians = Math.PI / 180;

const tabledWeight = (phi: number): number => {
  let i = 1;
  while (i < angles.length - 1 && phi > angles[i]!) i++;
  const part = (phi - angles[i - 1]!) / (angles[i]! - angles[i - 1]!);
  const [low, high] = [weights[i - 1]!, weights[i]!];
  return low === 0 || part === 0 || part === 1 ? low + part * (high - low) : low * (high / low) ** part;
};

export const terzaghiFactors = (phi: number): BearingFactors => {
  if (!(phi >= 0 && phi <= 45)) throw new RangeError('friction angle: must be between 0 and 45 degrees');
  const tangent = Math.tan(phi * radians);
  const nq = Math.exp(2 * ((3 * Math.PI) / 4 - (phi * radians) / 2) * tangent) / (2 * Math.cos((45 + phi / 2) * radians) ** 2);
  return { nc: phi < 1e-6 ? 1 + 1.5 * Math.PI : (nq - 1) / tangent, nq, ngamma: tabledWeight(phi) };
};

export interface Footing {
  readonly shape: 'strip' | 'square' | 'circle';
  /** m; side, or diameter of a circle */
  readonly width: number;
  /** m below the surface */
  readonly depth: number;
}

/** q_u, kPa. */
export const terzaghiCapacity = (cohesion: number, unitWeight: number, footing: Footing, factors: BearingFactors): number => {
  const onCohesion = footing.shape === 'strip' ? 1 : 1.3;
  const onWeight = { strip: 0.5, square: 0.4, circle: 0.3 }[footing.shape];
  return (
    onCohesion * cohesion * factors.nc +
    unitWeight * footing.depth * factors.nq +
    onWeight * unitWeight * footing.width * factors.ngamma
  );
};

/** Cohesion and friction angle that loose ground can bring, two thirds of c and of tan φ. */
export const localShear = (cohesion: number, phi: number): { readonly cohesion: number; readonly phi: number } => ({
  cohesion: (2 * cohesion) / 3,
  phi: Math.atan((2 / 3) * Math.tan(phi * radians)) / radians,
});
