/**
 * Pure live seed: `purity · germination`, both 0–1.
 * @throws RangeError outside 0–1
 */
export const pureLiveSeed = (purity: number, germination: number): number => {
  for (const [field, share] of [
    ['purity', purity],
    ['germination', germination],
  ] as const) {
    if (!(share >= 0 && share <= 1)) throw new RangeError(`${field}: must lie between 0 and 1, not ${share}`);
  }
  return purity * germination;
};

/**
 * Seed to buy for a rate of pure live seed, kg: `area · rate/(purity · germination)`.
 * @param area m² @param rate pure live seed, kg/m²
 * @throws RangeError when nothing in the bag is alive
 */
export const seedToBuy = (area: number, rate: number, purity: number, germination: number): number => {
  const live = pureLiveSeed(purity, germination);
  if (live === 0) throw new RangeError('germination: no pure live seed in the bag');
  return (area * rate) / live;
};

/** Seeds per kg: 1.5 million per lb of Kentucky bluegrass, 250,000 per lb of perennial ryegrass. @source cornell-seeding */
export const seedsPerKilogram = {
  'kentucky-bluegrass': 1_500_000 / 0.45359237,
  'perennial-ryegrass': 250_000 / 0.45359237,
} as const;

/** Seeds per m² of a rate in kg/m². */
export const seedsPerArea = (rate: number, perKilogram: number): number => rate * perKilogram;

/**
 * Shares of a blend by number of seeds, from its shares by weight. Weight share is not count share.
 * @param parts share by weight and seeds per kg of each; the shares add to 1
 */
export const sharesByCount = (
  parts: readonly { readonly weightShare: number; readonly perKilogram: number }[],
): readonly number[] => {
  const counts = parts.map((part) => part.weightShare * part.perKilogram);
  const total = counts.reduce((sum, count) => sum + count, 0);
  return counts.map((count) => (total > 0 ? count / total : 0));
};
