import { erf, erfc } from '#engine/heat/error-function.ts';

/**
 * Frost depth by the modified Berggren method, the way design manuals state it: Stefan's depth times a correction λ ≤ 1 for
 * the heat stored in the ground above freezing.
 *
 *     X = λ √(48 k n F / L)      L = 144 γd w/100      C = γd (0.17 + f w/100)
 *     α = v0/vs,  μ = vs C/L,    vs = nF/t
 *
 * Customary units of the manuals: X ft, k Btu/(h ft °F), F °F d, γd lb/ft³, w % of dry weight, L Btu/ft³, C Btu/(ft³ °F).
 * @source ufc-3-130-06, aldrich-paynter-1953
 */

/** L, Btu/ft³. */
export const manualLatentHeat = (dryDensity: number, waterPercent: number): number => (144 * dryDensity * waterPercent) / 100;

/** f of the heat-capacity formula. */
export const waterFactor = { thawed: 1.0, frozen: 0.5, average: 0.75 } as const;

/** C, Btu/(ft³ °F). */
export const manualHeatCapacity = (dryDensity: number, waterPercent: number, state: keyof typeof waterFactor): number =>
  dryDensity * (0.17 + (waterFactor[state] * waterPercent) / 100);

/** α = v0/vs: mean annual temperature above freezing over mean surface temperature below freezing, same unit. */
export const thermalRatio = (aboveFreezing: number, belowFreezing: number): number => aboveFreezing / belowFreezing;

/** μ = vs C / L, dimensionless. */
export const fusionParameter = (belowFreezing: number, heatCapacity: number, latentHeat: number): number =>
  (belowFreezing * heatCapacity) / latentHeat;

/**
 * λ for equal thermal properties above and below freezing, from the two-phase solution:
 *
 *     exp(−g²)/erf(g) − α exp(−g²)/erfc(g) = g √π/μ,    λ = g √(2/μ)
 *
 * α ≥ 0, μ ≥ 0; μ of 0 gives 1 (no stored heat).
 * @throws RangeError for negative input.
 */
export const berggrenLambda = (alpha: number, mu: number): number => {
  if (!(alpha >= 0)) throw new RangeError('alpha: must not be negative');
  if (!(mu >= 0)) throw new RangeError('mu: must not be negative');
  if (mu < 1e-12) return 1;
  let low = 1e-9;
  let high = 5;
  for (let step = 0; step < 200 && high - low > 1e-15; step++) {
    const g = (low + high) / 2;
    const decay = Math.exp(-g * g);
    if (decay / erf(g) - (alpha * decay) / erfc(g) > (g * Math.sqrt(Math.PI)) / mu) low = g;
    else high = g;
  }
  return ((low + high) / 2) * Math.sqrt(2 / mu);
};

/** The short form λ ≈ 1/√(1 + μ(α + 0.5)), some hundredths above the exact one. */
export const berggrenLambdaShort = (alpha: number, mu: number): number => 1 / Math.sqrt(1 + mu * (alpha + 0.5));

/** X, ft, from λ, k in Btu/(h ft °F), the surface freezing index nF in °F d, and L in Btu/ft³. */
export const berggrenDepth = (lambda: number, conductivity: number, surfaceIndex: number, latentHeat: number): number =>
  lambda * Math.sqrt((48 * conductivity * surfaceIndex) / latentHeat);

/** The same depth in SI: X = λ √(2 k nF · 86 400 / L), m; k W/(m K), nF °C d, L J/m³. */
export const berggrenDepthSi = (lambda: number, conductivity: number, surfaceIndex: number, latentHeat: number): number =>
  lambda * Math.sqrt((2 * conductivity * surfaceIndex * 86400) / latentHeat);

/**
 * Surface index from air index, nF: what share of the air's frost (or thaw) a surface feels.
 * `null` where the table gives none. Thaw of bituminous and bare ground is the lower end of its printed range.
 * @source tm-5-852-4 Table 4-1
 */
export const surfaceFactors = {
  snow: { freezing: 1.0, thawing: null },
  concrete: { freezing: 0.75, thawing: 1.5 },
  bituminous: { freezing: 0.7, thawing: 1.6 },
  'bare soil': { freezing: 0.7, thawing: 1.4 },
  shaded: { freezing: 0.9, thawing: 1.0 },
  turf: { freezing: 0.5, thawing: 0.8 },
  trees: { freezing: 0.3, thawing: 0.4 },
} as const;

/** Surface index, in the unit of the air index. */
export const surfaceIndex = (factor: number, airIndex: number): number => factor * airIndex;
