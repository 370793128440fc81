import { erf, erfc } from '#engine/heat/error-function.ts';

/**
 * Freezing of a moist half-space whose surface is suddenly held below freezing: the two-phase solution that judges the
 * latent heat of the numerical column, and the one-phase root of Stefan's problem.
 *
 *     exp(−g²)/erf(g) − (k2/k1)√(a1/a2) ((T0−Tf)/(Tf−Ts)) exp(−g² a1/a2)/erfc(g√(a1/a2)) = g √π L / (C1 (Tf−Ts))
 *     X = 2 g √(a1 t)
 *
 * 1 frozen, 2 thawed; k W/(m K), C J/(m³ K), a = k/C m²/s, L J/(m³), T °C, t s, X m.
 * @source jumikis-1966, lunardini-1981, bonan-2019
 */
export interface FreezingCase {
  /** °C: ground at the start, surface from then on, freezing point. */
  readonly initial: number;
  readonly surface: number;
  readonly freezing: number;
  readonly frozenConductivity: number;
  readonly thawedConductivity: number;
  readonly frozenHeatCapacity: number;
  readonly thawedHeatCapacity: number;
  /** J/m³ of ground */
  readonly latentHeat: number;
}

/** Root of a falling function on (low, high) by bisection down to the last bit. */
const rootOf = (falling: (x: number) => number, low: number, high: number): number => {
  let below = low;
  let above = high;
  for (let step = 0; step < 200 && above - below > 1e-15 * above; step++) {
    const middle = (below + above) / 2;
    if (falling(middle) > 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
};

/**
 * The root g of the two-phase case.
 * @throws RangeError unless surface < freezing ≤ initial.
 */
export const freezingRoot = (ground: FreezingCase): number => {
  const { initial, surface, freezing } = ground;
  if (!(surface < freezing)) throw new RangeError('surface: must be below the freezing point');
  if (!(initial >= freezing)) throw new RangeError('initial: must not be below the freezing point');
  const frozen = ground.frozenConductivity / ground.frozenHeatCapacity;
  const thawed = ground.thawedConductivity / ground.thawedHeatCapacity;
  const ratio = frozen / thawed;
  const warm =
    (ground.thawedConductivity / ground.frozenConductivity) * Math.sqrt(ratio) * ((initial - freezing) / (freezing - surface));
  const latent = (Math.sqrt(Math.PI) * ground.latentHeat) / (ground.frozenHeatCapacity * (freezing - surface));
  return rootOf(
    (g) => Math.exp(-g * g) / erf(g) - (warm * Math.exp(-g * g * ratio)) / erfc(g * Math.sqrt(ratio)) - latent * g,
    1e-9,
    5 / Math.sqrt(Math.max(1, ratio)),
  );
};

/** X = 2 g √(a1 t), m. */
export const frontDepth = (root: number, frozenDiffusivity: number, time: number): number =>
  2 * root * Math.sqrt(frozenDiffusivity * time);

export interface FreezingProfile {
  readonly initial: number;
  readonly surface: number;
  readonly freezing: number;
  /** m²/s */
  readonly frozenDiffusivity: number;
  readonly thawedDiffusivity: number;
  readonly root: number;
}

/**
 * Temperature at depth z (m) and time t (s):
 *
 *     frozen  Ts + (Tf−Ts) erf(z/2√(a1 t))/erf(g)
 *     thawed  T0 − (T0−Tf) erfc(z/2√(a2 t))/erfc(g√(a1/a2))
 */
export const freezingTemperature = (profile: FreezingProfile, depth: number, time: number): number => {
  const { initial, surface, freezing, frozenDiffusivity, thawedDiffusivity, root } = profile;
  if (depth <= frontDepth(root, frozenDiffusivity, time))
    return surface + ((freezing - surface) * erf(depth / (2 * Math.sqrt(frozenDiffusivity * time)))) / erf(root);
  return (
    initial -
    ((initial - freezing) * erfc(depth / (2 * Math.sqrt(thawedDiffusivity * time)))) /
      erfc(root * Math.sqrt(frozenDiffusivity / thawedDiffusivity))
  );
};

/** Front without any sensible heat, X = √(2 k ΔT t / L), m: the bound that overstates. */
export const stefanDepth = (conductivity: number, degrees: number, time: number, latentHeat: number): number =>
  Math.sqrt((2 * conductivity * degrees * time) / latentHeat);

/**
 * One-phase root λ of √π λ exp(λ²) erf(λ) = St, with St = C ΔT / L (all in one set of units) and X = 2λ√(αt).
 * St of 0 gives 0; a negative St is refused.
 * @source carslaw-jaeger-1959 section 11.2
 */
export const stefanRoot = (stefanNumber: number): number => {
  if (!(stefanNumber >= 0)) throw new RangeError('stefanNumber: must not be negative');
  if (stefanNumber === 0) return 0;
  return rootOf((x) => stefanNumber - Math.sqrt(Math.PI) * x * Math.exp(x * x) * erf(x), 1e-12, 10);
};
