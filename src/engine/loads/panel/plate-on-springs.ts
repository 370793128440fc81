import { kei, kerSlopeTimes } from '#engine/loads/panel/kelvin.ts';

/**
 * A panel as a thin plate on springs.
 *
 *     D = E h³/[12(1 − μ²)],  l = (D/k)^(1/4)
 *     interior point   w(r) = −(P/(2π k l²)) kei(r/l),  w₀ = P/(8 k l²)
 *     interior circle  w₀ = P/(8 k l²) {1 + (1/2π)[ln(a/2l) − 0.673](a/l)²}
 *     edge circle      w = 0.431 P/(k l²) [1 − 0.82 a/l]                 (μ 0.15; general μ below)
 *     corner circle    w = P/(k l²)[1.1 − 0.88 a√2/l]                    Westergaard
 *                      w = P/(k l²)[1.205 − 0.69 c/l], c = 1.772 a       Ioannides
 *     soil pressure    p = k w
 *
 * Any consistent units; the engine uses E kPa, h m, k kN/m³, P kN. a is the radius of the loaded circle. The circle formulas
 * hold for a/l up to about 0.5.
 *
 * @source westergaard-1926
 * @source huang-2004
 * @source ioannides-1985
 */
export interface PlateOnSprings {
  /** E */
  readonly modulus: number;
  /** h */
  readonly thickness: number;
  /** μ */
  readonly poisson: number;
  /** k, force per area and settlement */
  readonly springs: number;
}

export const plateStiffness = (plate: PlateOnSprings): number =>
  (plate.modulus * plate.thickness ** 3) / (12 * (1 - plate.poisson ** 2));

/** l, the radius of relative stiffness. */
export const relativeRadius = (plate: PlateOnSprings): number => {
  if (!(plate.springs > 0)) throw new RangeError('springs: must be above 0');
  return (plateStiffness(plate) / plate.springs) ** 0.25;
};

/** w at distance `r` from a point load on a wide plate. */
export const interiorSettlement = (plate: PlateOnSprings, load: number, r: number): number => {
  const l = relativeRadius(plate);
  return (-load / (2 * Math.PI * plate.springs * l * l)) * kei(r / l);
};

/** w under the middle of a loaded circle of radius `a`, series of Westergaard. */
export const interiorCircleSettlement = (plate: PlateOnSprings, load: number, a: number): number => {
  const l = relativeRadius(plate);
  const s = a / l;
  return (load / (8 * plate.springs * l * l)) * (1 + (s * s * (Math.log(s / 2) - 0.673)) / (2 * Math.PI));
};

/**
 * Share of a point load that the ground takes within `r`: 1 + x ker′(x), x = r/l. Above 1 where the plate lifts further out.
 * By reciprocity it is also k w₀/q in the middle of a circle of radius r under the pressure q, exactly.
 *
 * @source abramowitz-stegun-1964
 */
export const loadWithin = (radiusOverL: number): number => 1 + kerSlopeTimes(radiusOverL);

/** b, the radius of the resisting section: √(1.6a² + h²) − 0.675h for a < 1.724h, else a. @source nptel-lecture-29 */
export const resistingRadius = (a: number, thickness: number): number =>
  a < 1.724 * thickness ? Math.sqrt(1.6 * a * a + thickness * thickness) - 0.675 * thickness : a;

/** Bending stress under an interior circle: 3(1+μ)P/(2πh²) [ln(l/b) + 0.6159]; with μ 0.15, 0.316 P/h² [4 log₁₀(l/b) + 1.069]. */
export const interiorStress = (plate: PlateOnSprings, load: number, a: number): number => {
  const l = relativeRadius(plate);
  const b = resistingRadius(a, plate.thickness);
  return ((0.316 * (1 + plate.poisson)) / 1.15) * (load / plate.thickness ** 2) * (4 * Math.log10(l / b) + 1.069);
};

/** w at a free edge under a circle that touches it: P √(2 + 1.2μ)/√(E h³ k) [1 − (0.76 + 0.4μ) a/l]. */
export const edgeSettlement = (plate: PlateOnSprings, load: number, a: number): number => {
  const l = relativeRadius(plate);
  const factor = Math.sqrt((2 + 1.2 * plate.poisson) / (12 * (1 - plate.poisson ** 2)));
  return ((load * factor) / (plate.springs * l * l)) * (1 - (0.76 + 0.4 * plate.poisson) * (a / l));
};

/** Bending stress at a free edge, μ 0.15: 0.803 P/h² [4 log₁₀(l/a) + 0.666 a/l − 0.034]. */
export const edgeStress = (plate: PlateOnSprings, load: number, a: number): number => {
  const l = relativeRadius(plate);
  return ((0.803 * load) / plate.thickness ** 2) * (4 * Math.log10(l / a) + (0.666 * a) / l - 0.034);
};

/** w and bending stress at a free corner under a circle that touches both sides, after Westergaard. @source ct4860-pavements */
export const cornerWestergaard = (
  plate: PlateOnSprings,
  load: number,
  a: number,
): { readonly settlement: number; readonly stress: number } => {
  const l = relativeRadius(plate);
  const s = (a * Math.SQRT2) / l;
  return {
    settlement: (load / (plate.springs * l * l)) * (1.1 - 0.88 * s),
    stress: ((3 * load) / plate.thickness ** 2) * (1 - s ** 0.6),
  };
};

/** The same after Ioannides, Thompson & Barenberg. */
export const cornerIoannides = (
  plate: PlateOnSprings,
  load: number,
  a: number,
): { readonly settlement: number; readonly stress: number } => {
  const l = relativeRadius(plate);
  const s = (1.772 * a) / l;
  return {
    settlement: (load / (plate.springs * l * l)) * (1.205 - 0.69 * s),
    stress: ((3 * load) / plate.thickness ** 2) * (1 - s ** 0.72),
  };
};
