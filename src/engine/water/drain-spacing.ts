/**
 * Steady flow of rain to parallel drains: how far apart they may lie, how high the water stands between them, and how long it
 * takes to go down. Any consistent units; here m and d.
 *
 * q L² = 8 K2 d h + 4 K1 h²          Hooghoudt
 * L spacing, q discharge per area, h height of the water table above the drains midway, K1 and K2 conductivity above and below the
 * drains, d thickness of the equivalent layer that stands for D metres below drains of radius r:
 *   exact  d = (πL/8)/[ln(L/(πr)) + F(x)], x = 2πD/L, F = Σ 4 e^(−2nx)/(n (1 − e^(−2nx))), n = 1, 3, 5 …;
 *          F = π²/(4x) + ln(x/2π) for x < 0.5
 *   Moody  d = D/[1 + (D/L)((8/π) ln(D/r) − 3.4)] for D/L ≤ 0.3, else L/[(8/π)(ln(L/r) − 1.15)]
 * The two differ by up to 5 %. d is held in 0–D; D = 0 is an impermeable base, where d = 0.
 * Out of range (any length, conductivity or discharge not above 0 where it must be): RangeError.
 * @source van-der-molen-wesseling-1991
 * @source moody-1966
 * @source ritzema-1994
 */

export type EquivalentDepthForm = 'exact' | 'moody';

/** A pair of drains and the ground around them. */
export interface DrainedGround {
  /** Conductivity above the drains, m/d. */
  readonly conductivityAbove: number;
  /** Conductivity below the drains, m/d. */
  readonly conductivityBelow: number;
  /** From the drains down to the impermeable layer, m; 0 when they lie on it. */
  readonly depthBelow: number;
  /** Outer radius of a drain, m. */
  readonly radius: number;
  readonly form?: EquivalentDepthForm;
}

const positive = (field: string, value: number): void => {
  if (!(value > 0)) throw new RangeError(`${field}: ${value} must be above 0`);
};

const seriesOf = (x: number): number => {
  if (x < 0.5) return Math.PI ** 2 / (4 * x) + Math.log(x / (2 * Math.PI));
  let sum = 0;
  for (let n = 1; n < 200; n += 2) {
    const fall = Math.exp(-2 * n * x);
    const term = (4 * fall) / (n * (1 - fall));
    sum += term;
    if (term < 1e-15) break;
  }
  return sum;
};

/** Thickness of the equivalent layer by the exact series, m. */
export const equivalentDepthExact = (spacing: number, depthBelow: number, radius: number): number => {
  if (depthBelow <= 0) return 0;
  positive('spacing', spacing);
  positive('radius', radius);
  const resistance = Math.log(spacing / (Math.PI * radius)) + seriesOf((2 * Math.PI * depthBelow) / spacing);
  return resistance > 0 ? Math.min(depthBelow, (Math.PI * spacing) / 8 / resistance) : depthBelow;
};

/** Thickness of the equivalent layer by the fitted form, m. */
export const equivalentDepthMoody = (spacing: number, depthBelow: number, radius: number): number => {
  if (depthBelow <= 0) return 0;
  positive('spacing', spacing);
  positive('radius', radius);
  const ratio = depthBelow / spacing;
  const divisor =
    ratio <= 0.3
      ? (1 + ratio * ((8 / Math.PI) * Math.log(depthBelow / radius) - 3.4)) / depthBelow
      : ((8 / Math.PI) * (Math.log(spacing / radius) - 1.15)) / spacing;
  return divisor > 0 ? Math.min(depthBelow, 1 / divisor) : depthBelow;
};

/** Thickness of the equivalent layer under drains at a spacing, m. */
export const equivalentDepth = (ground: DrainedGround, spacing: number): number =>
  (ground.form === 'moody' ? equivalentDepthMoody : equivalentDepthExact)(spacing, ground.depthBelow, ground.radius);

/** Discharge that keeps the water table at height h midway, m/d. */
export const steadyDischarge = (ground: DrainedGround, spacing: number, height: number): number => {
  positive('spacing', spacing);
  const h = Math.max(0, height);
  const below = 8 * ground.conductivityBelow * equivalentDepth(ground, spacing) * h;
  return (below + 4 * ground.conductivityAbove * h * h) / (spacing * spacing);
};

/** Spacing that holds the water table at `height` m under a steady discharge of `discharge` m/d, m. */
export const drainSpacing = (ground: DrainedGround, discharge: number, height: number): number => {
  positive('discharge', discharge);
  positive('height', height);
  positive('conductivityAbove', ground.conductivityAbove);
  let low = 2 * height * Math.sqrt(ground.conductivityAbove / discharge);
  if (ground.depthBelow <= 0) return low;
  let high = Math.sqrt((8 * ground.conductivityBelow * ground.depthBelow * height) / discharge + low * low);
  for (let i = 0; i < 200 && high - low > 1e-12 * high; i++) {
    const middle = (low + high) / 2;
    if (steadyDischarge(ground, middle, height) > discharge) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

/** Height of the water table midway between drains under a steady discharge, m. */
export const steadyHeight = (ground: DrainedGround, spacing: number, discharge: number): number => {
  positive('spacing', spacing);
  positive('conductivityAbove', ground.conductivityAbove);
  const a = 4 * ground.conductivityAbove;
  const b = 8 * ground.conductivityBelow * equivalentDepth(ground, spacing);
  const c = Math.max(0, discharge) * spacing * spacing;
  return c === 0 ? 0 : (2 * c) / (b + Math.sqrt(b * b + 4 * a * c));
};

/**
 * Days for the water table to fall from one height to another with no more rain: the steady formula taken as a chain of steady
 * states, μ dh/dt = −(b h + a h²), with a = 4 K1/L² and b = 8 K2 d/L².
 * @param drainablePorosity μ, share of the volume that drains, 0–1
 */
export const drainDownTime = (
  ground: DrainedGround,
  spacing: number,
  drainablePorosity: number,
  from: number,
  to: number,
): number => {
  positive('spacing', spacing);
  positive('drainablePorosity', drainablePorosity);
  positive('to', to);
  if (to >= from) return 0;
  const a = (4 * ground.conductivityAbove) / (spacing * spacing);
  const b = (8 * ground.conductivityBelow * equivalentDepth(ground, spacing)) / (spacing * spacing);
  if (b < 1e-12 * a * to) return (drainablePorosity / a) * (1 / to - 1 / from);
  return (drainablePorosity / b) * Math.log((from * (b + a * to)) / (to * (b + a * from)));
};
