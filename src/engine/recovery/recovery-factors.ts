/**
 * Share of the best recovery that the light allows: `min(1, L/need)`. Zero in the dark.
 * @param light useful daily light, mol/m²/d @param need daily light for acceptable turf, mol/m²/d, above 0
 * @source gelernter-stowell-2008 (needs by species in the catalogue); the straight line is our assumption
 */
export const lightFactor = (light: number, need: number): number => Math.min(1, Math.max(0, light) / need);

/**
 * Share of the best spread that the nitrogen on hand allows, from `unfed` without any to 1 at `full`. Our assumption.
 * @param nitrogen g/m² on hand
 */
export const nitrogenFactor = (nitrogen: number, unfed: number, full: number): number =>
  unfed + (1 - unfed) * Math.min(1, Math.max(0, nitrogen) / full);

/**
 * Share of the best spread that the ground allows: 1 up to `free`, a straight line down to `least` at `stop`. Our assumption.
 * @param bulkDensity Mg/m³ of the top 75 mm @param free @param stop Mg/m³, free below stop
 */
export const compactionFactor = (bulkDensity: number, free: number, stop: number, least: number): number =>
  1 - (1 - least) * Math.min(1, Math.max(0, (bulkDensity - free) / (stop - free)));
