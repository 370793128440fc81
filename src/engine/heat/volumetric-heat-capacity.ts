/** One part of a mixture: its share of the volume and its own heat capacity, MJ/(m³ K). */
export interface Constituent {
  readonly share: number;
  readonly heatCapacity: number;
}

/**
 * Heat stored by a moist soil is the sum of what its parts store, which is why a wet pitch warms more slowly than a dry one.
 *
 *     C = Σ x_i C_i
 *
 * C and C_i in one unit, MJ/(m³ K); x_i shares of the volume, 0–1 (air may be left out: 0.0012 MJ/(m³ K)).
 * @throws RangeError when the shares are negative or add to more than one.
 * @source moene-van-dam-2014
 */
export const volumetricHeatCapacity = (parts: readonly Constituent[]): number => {
  let sum = 0;
  let filled = 0;
  for (const part of parts) {
    if (!(part.share >= 0)) throw new RangeError('share: must not be negative');
    filled += part.share;
    sum += part.share * part.heatCapacity;
  }
  if (filled > 1 + 1e-9) throw new RangeError('share: the parts fill more than the whole volume');
  return sum;
};

/** Volumetric heat capacities of soil constituents, MJ/(m³ K). @source moene-van-dam-2014 Table 2.2 */
export const constituentHeatCapacity = {
  quartz: 2.13,
  clayMineral: 2.39,
  organic: 2.47,
  water: 4.18,
  ice: 1.88,
  air: 0.0012,
} as const;
