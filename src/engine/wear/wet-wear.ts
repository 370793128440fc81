/**
 * How much faster wear goes on wet soil: 1 up to the end of the medium water class, the soil's full factor from the start of the wettest
 * class, straight between. On silt loam the full factor is 4; on sand there is no such jump (factor 1).
 * Water in m³/m³. Never below 1.
 *
 * @source dickson-2018
 */
export interface WetSettings {
  readonly from: number;
  readonly full: number;
}

export const wetFactor = (water: number, soilFactor: number, settings: WetSettings): number => {
  if (!(settings.full > settings.from)) throw new RangeError('wettest class: must start above the medium one');
  const part = Math.min(1, Math.max(0, (water - settings.from) / (settings.full - settings.from)));
  return 1 + (Math.max(1, soilFactor) - 1) * part;
};
