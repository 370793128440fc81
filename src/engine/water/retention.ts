/**
 * How much water a soil holds against a suction, and how it stands in a profile that has drained.
 *
 * θ(h) = θr + (θs − θr) [1 + (α h)^n]^(−m), m = 1 − 1/n             van Genuchten
 * K(Se)/Ks = √Se [1 − (1 − Se^(1/m))^m]²                           Mualem–van Genuchten
 * θr residual and θs saturated water content, m³/m³; α 1/m; n > 1; h suction, m of water (0 or less is saturated).
 * At rest the suction at a point is its height above the free water: a sand root zone over gravel stays saturated at its base, the
 * perched water table.
 * @source van-genuchten-1980
 * @source carsel-parrish-1988
 */
export interface Retention {
  /** θr, m³/m³ */
  readonly residual: number;
  /** θs, m³/m³ */
  readonly porosity: number;
  /** α, 1/m */
  readonly alpha: number;
  /** n, above 1 */
  readonly n: number;
}

/** Effective saturation, 0–1, at a suction of `suction` m. */
export const effectiveSaturation = (soil: Retention, suction: number): number =>
  suction <= 0 ? 1 : (1 + (soil.alpha * suction) ** soil.n) ** (1 / soil.n - 1);

/** m³/m³ at a suction of `suction` m. */
export const waterContentAt = (soil: Retention, suction: number): number =>
  soil.residual + (soil.porosity - soil.residual) * effectiveSaturation(soil, suction);

/** Suction, m, at a water content; infinite at the residual content or below, 0 at saturation. */
export const suctionAt = (soil: Retention, waterContent: number): number => {
  const saturation = (waterContent - soil.residual) / (soil.porosity - soil.residual);
  if (saturation >= 1) return 0;
  if (saturation <= 0) return Infinity;
  return (saturation ** (soil.n / (1 - soil.n)) - 1) ** (1 / soil.n) / soil.alpha;
};

/** Conductivity relative to the saturated one, 0–1. */
export const relativeConductivity = (soil: Retention, waterContent: number): number => {
  const saturation = Math.max(0, Math.min(1, (waterContent - soil.residual) / (soil.porosity - soil.residual)));
  const m = 1 - 1 / soil.n;
  return Math.sqrt(saturation) * (1 - (1 - saturation ** (1 / m)) ** m) ** 2;
};

/** Water content at each height above a base that has a suction of `baseSuction` m, m³/m³. */
export const hydrostaticProfile = (soil: Retention, heights: readonly number[], baseSuction = 0): number[] =>
  heights.map((height) => waterContentAt(soil, height + baseSuction));

/** Mean water content of a slab from `bottom` to `top` m above the base, m³/m³ (composite Simpson, 40 parts). */
export const hydrostaticMean = (soil: Retention, bottom: number, top: number, baseSuction = 0): number => {
  if (top <= bottom) return waterContentAt(soil, bottom + baseSuction);
  const parts = 40;
  const step = (top - bottom) / parts;
  let sum = 0;
  for (let i = 0; i <= parts; i++) {
    const weight = i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * waterContentAt(soil, bottom + i * step + baseSuction);
  }
  return sum / (3 * parts);
};

/** Suction at the permanent wilting point, 1.5 MPa, m of water. */
export const wiltingSuction = 153;
