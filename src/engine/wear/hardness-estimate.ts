import type { WearValues } from '#shared/parameters/wear.ts';

/**
 * Hardness that a 2.25 kg hammer would be expected to read, from density, water and cover. Our assumption; only its direction is
 * published: hardness rises as water falls on sand and on silt loam.
 *
 *     g = reference + a (BD − usual BD) − b (S − 0.25) − c (cover − 1)
 *
 * BD bulk density (Mg/m³), S share of pores filled (0–1), cover 0–1; a g per Mg/m³, b and c g. Held between 10 and 400 g.
 *
 * @source dickson-2018
 */
export interface HardnessEstimate {
  readonly reference: number;
  readonly perDensity: number;
  readonly perSaturation: number;
  readonly perCover: number;
}

export const hardnessEstimateSettings = (values: WearValues): HardnessEstimate => ({
  reference: values['surface.estimate.reference'],
  perDensity: values['surface.estimate.perDensity'],
  perSaturation: values['surface.estimate.perSaturation'],
  perCover: values['surface.estimate.perCover'],
});

/** g */
export const hardnessEstimate = (
  bulkDensity: number,
  usualDensity: number,
  saturation: number,
  cover: number,
  settings: HardnessEstimate,
): number =>
  Math.min(
    400,
    Math.max(
      10,
      settings.reference +
        settings.perDensity * (bulkDensity - usualDensity) -
        settings.perSaturation * (saturation - 0.25) -
        settings.perCover * (cover - 1),
    ),
  );
