/**
 * How much faster wear goes on wet soil: 1 up to the end of the medium water class, the soil's full factor F from the start of the wettest
 * class, and between them
 *
 *     1 + (F − 1) · part^curve
 *
 * since most of the step lies at the wet end: the printed rates are 4 : 4/3 : 1 in the wettest, the wet and the drier classes. On silt
 * loam F is 4; on sand there is no such jump (F = 1). Water in m³/m³. Never below 1.
 *
 * @source dickson-2018
 */
export interface WetSettings {
  readonly from: number;
  readonly full: number;
  readonly curve: number;
}

export const wetFactor = (water: number, soilFactor: number, settings: WetSettings): number => {
  if (!(settings.full > settings.from)) throw new RangeError('wettest class: must start above the medium one');
  const part = Math.min(1, Math.max(0, (water - settings.from) / (settings.full - settings.from)));
  return 1 + (Math.max(1, soilFactor) - 1) * part ** settings.curve;
};
