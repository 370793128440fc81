/** What Johansen's formula needs to know of a soil. */
export interface JohansenSoil {
  /** Pore space as a share of the volume, 0–1. */
  readonly porosity: number;
  /** Share of quartz in the solids, 0–1. */
  readonly quartz: number;
  /** Coarse soils (sands) conduct at lower saturation than fine ones. */
  readonly texture: 'coarse' | 'fine';
}

const solidDensity = 2700;
const quartzConductivity = 7.7;
const otherMineralConductivity = 2.0;
const waterConductivity = 0.57;
const iceConductivity = 2.29;

/** Dry soil, W/(m K): (0.135 ρb + 64.7)/(2700 − 0.947 ρb), ρb = 2700 (1 − porosity) in kg/m³. */
export const johansenDry = (porosity: number): number => {
  const bulkDensity = solidDensity * (1 - porosity);
  return (0.135 * bulkDensity + 64.7) / (solidDensity - 0.947 * bulkDensity);
};

/** Saturated soil, W/(m K): ks^(1−p) · 0.57^p with ks = 7.7^q · 2.0^(1−q); 2.29 in place of 0.57 when the pores hold ice. */
export const johansenSaturated = (soil: JohansenSoil, frozen: boolean): number => {
  const solids = quartzConductivity ** soil.quartz * otherMineralConductivity ** (1 - soil.quartz);
  const pores = frozen ? iceConductivity : waterConductivity;
  return solids ** (1 - soil.porosity) * pores ** soil.porosity;
};

/**
 * Conductivity of a soil between dry and saturated.
 *
 *     k = dry + (saturated − dry) Ke
 *     Ke = 1 + 0.7 log10 S  (thawed, coarse, S ≥ 0.05),  1 + log10 S  (thawed, fine, S ≥ 0.1),  S  (frozen)
 *
 * S: water (or ice) in the pores as a share of the pores, clamped to 0–1; below the lower limit Ke of the limit holds.
 * k in W/(m K).
 * @source johansen-1975 as coded in bonan-2019
 */
export const johansenConductivity = (soil: JohansenSoil, saturation: number, frozen: boolean): number => {
  const s = Math.min(1, Math.max(0, saturation));
  const dry = johansenDry(soil.porosity);
  const kersten = frozen
    ? s
    : soil.texture === 'coarse'
      ? 1 + 0.7 * Math.log10(Math.max(s, 0.05))
      : 1 + Math.log10(Math.max(s, 0.1));
  return dry + (johansenSaturated(soil, frozen) - dry) * kersten;
};

/** Heat capacities behind the benchmark, J/(m³ K) for solids, J/(kg K) for water and ice. @source bonan-2019 */
const solidsHeatCapacity = 1.926e6;
const waterSpecificHeat = 4188;
const iceSpecificHeat = 2117.27;

/**
 * Heat capacity of the same soil, J/(m³ K): solids, and water or the same mass of ice.
 * `water` is the volume share of liquid water before freezing (1000 kg/m³).
 * @source bonan-2019
 */
export const moistSoilHeatCapacity = (porosity: number, water: number, frozen: boolean): number =>
  solidsHeatCapacity * (1 - porosity) + 1000 * water * (frozen ? iceSpecificHeat : waterSpecificHeat);
