import { terzaghiCapacity, terzaghiFactors } from '#engine/soil/terzaghi-capacity.ts';

/**
 * Strength of a root zone as it dries or wets.
 *
 * Suction holds grains together as an apparent cohesion, suction × effective saturation × tan φ. With the retention curve of
 * van Genuchten, suction = (S^(−1/m) − 1)^(1/n)/α, m = 1 − 1/n:
 *
 *     c_a = S (S^(−1/m) − 1)^(1/n) tan φ/α, at most a cap
 *
 * For sand (n > 2) it vanishes when dry and when saturated and peaks between: moist sand is strongest. For finer soil (n ≤ 2) it
 * falls steadily with water. Roots add a cohesion of their own. A cohesive soil near saturation cannot drain under a wheel: its
 * friction falls by up to `undrainedLoss` from S = 0.5 to 0.9 (our assumption, as is the cap).
 * S effective saturation 0–1 (clamped), 1/α in kPa, φ in degrees, cohesions in kPa, unit weight in kN/m³, width in m.
 *
 * @source henderson-2005-soil
 */
export interface RootZoneMechanics {
  /** degrees */
  readonly frictionAngle: number;
  /** kPa of true cohesion */
  readonly cohesion: number;
  /** kPa from roots of a full stand */
  readonly rootCohesion: number;
  /** 1/α, kPa */
  readonly suctionScale: number;
  /** n of van Genuchten, above 1 */
  readonly suctionExponent: number;
  /** kPa */
  readonly cohesionCap: number;
  /** Share of tan φ lost when a cohesive soil is saturated. */
  readonly undrainedLoss: number;
  /** kN/m³ */
  readonly unitWeight: number;
}

/** kPa */
export const suctionAt = (saturation: number, soil: Pick<RootZoneMechanics, 'suctionScale' | 'suctionExponent'>): number => {
  const s = Math.min(1, Math.max(1e-6, saturation));
  const m = 1 - 1 / soil.suctionExponent;
  return soil.suctionScale * (s ** (-1 / m) - 1) ** (1 / soil.suctionExponent);
};

export const apparentCohesion = (saturation: number, soil: RootZoneMechanics): number => {
  const s = Math.min(1, Math.max(1e-6, saturation));
  return Math.min(soil.cohesionCap, s * suctionAt(s, soil) * Math.tan((soil.frictionAngle * Math.PI) / 180));
};

export interface Strength {
  /** kPa, all kinds together */
  readonly cohesion: number;
  /** degrees */
  readonly frictionAngle: number;
}

/** `roots` is the share of a full stand of living roots, 0–1. */
export const strengthAt = (saturation: number, roots: number, soil: RootZoneMechanics): Strength => {
  const wet = Math.min(1, Math.max(0, (saturation - 0.5) / 0.4));
  const tangent = Math.tan((soil.frictionAngle * Math.PI) / 180) * (1 - soil.undrainedLoss * wet);
  return {
    cohesion: soil.cohesion + soil.rootCohesion * Math.min(1, Math.max(0, roots)) + apparentCohesion(saturation, soil),
    frictionAngle: (Math.atan(tangent) * 180) / Math.PI,
  };
};

/** Bearing strength at the surface under a round patch of `diameter` m, kPa. */
export const bearingStrength = (saturation: number, roots: number, diameter: number, soil: RootZoneMechanics): number => {
  const { cohesion, frictionAngle } = strengthAt(saturation, roots, soil);
  return terzaghiCapacity(
    cohesion,
    soil.unitWeight,
    { shape: 'circle', width: diameter, depth: 0 },
    terzaghiFactors(Math.min(45, frictionAngle)),
  );
};
