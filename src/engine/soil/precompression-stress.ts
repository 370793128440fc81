/**
 * Precompression stress: the load above which soil starts to compact for good, kPa.
 *
 *     sand, pF 1.8   438.10 BD − 0.0008 φ³ − 3.14 PWP − 0.11 AWC² − 465.60        Lebert & Horn
 *     sand, pF 2.5   410.75 BD − 0.0007 φ³ − 3.41 PWP − 0.35 AWC² − 384.71
 *     clay > 35 %, pF 1.8   4.59 BD − 1.02 OM − 16.43 Ks^0.33 + 0.31 PWP − 1.57 AWC + 3.55 C + 1.18 φ − 18.03   Horn & Fleige
 *     coarse         −220 + 191 BD + 2.77 w                                        Saffih-Hdadi et al.
 *     any            (−26.51 + 25.57 BD − 20.40 clay + 10.26 clay pF)²             Schjønning & Lamandé
 *
 * BD dry bulk density (Mg/m³), φ friction angle (degrees), PWP water at the wilting point and AWC available water (%), OM organic
 * matter (%), Ks saturated conductivity as the paper gives it, C cohesion (kPa), w water content (%), clay share (0–1), pF the
 * decimal logarithm of suction in hPa. A regression that falls below zero for very loose soil is returned as 0.
 *
 * @source lebert-horn-1991
 * @source horn-fleige-2003
 * @source saffih-hdadi-2009
 * @source schjonning-lamande-2018
 */
export interface SandState {
  readonly bulkDensity: number;
  readonly frictionAngle: number;
  readonly wiltingPoint: number;
  readonly availableWater: number;
}

export const lebertHornSand = (soil: SandState, pF: 1.8 | 2.5): number =>
  Math.max(
    0,
    pF === 1.8
      ? 438.1 * soil.bulkDensity -
          0.0008 * soil.frictionAngle ** 3 -
          3.14 * soil.wiltingPoint -
          0.11 * soil.availableWater ** 2 -
          465.6
      : 410.75 * soil.bulkDensity -
          0.0007 * soil.frictionAngle ** 3 -
          3.41 * soil.wiltingPoint -
          0.35 * soil.availableWater ** 2 -
          384.71,
  );

export interface ClayState extends SandState {
  readonly organicMatter: number;
  readonly conductivity: number;
  readonly cohesion: number;
}

export const hornFleigeClay = (soil: ClayState): number =>
  Math.max(
    0,
    4.59 * soil.bulkDensity -
      1.02 * soil.organicMatter -
      16.43 * soil.conductivity ** 0.33 +
      0.31 * soil.wiltingPoint -
      1.57 * soil.availableWater +
      3.55 * soil.cohesion +
      1.18 * soil.frictionAngle -
      18.03,
  );

export const saffihHdadiCoarse = (bulkDensity: number, water: number): number =>
  Math.max(0, -220 + 191 * bulkDensity + 2.77 * water);

export const schjonningLamande = (bulkDensity: number, clay: number, pF: number): number =>
  Math.max(0, -26.51 + 25.57 * bulkDensity - 20.4 * clay + 10.26 * clay * pF) ** 2;
