/**
 * How dense soil is after it has carried a mean stress p once.
 *
 *     v = particle density / bulk density
 *     along κ (elastic) up to the yield line      v = N − λ m − λ ln p
 *     along κ′ up to the virgin line              v = N − λ ln p
 *     along the virgin line beyond; back along κ to p = 1 kPa
 *
 * Stresses in kPa, densities in Mg/m³, the rest without unit. Below the yield line the density is returned unchanged. Soil that
 * already lies above a line at 1 kPa starts on the next one. Valid for p ≥ 1 kPa; below, no change.
 *
 * @source osullivan-robertson-1996
 */
export interface CompactionLines {
  /** N, specific volume of the virgin line at 1 kPa */
  readonly virgin: number;
  readonly lambda: number;
  readonly kappa: number;
  /** κ′, between yield and virgin line */
  readonly recompression: number;
  /** m, distance of the yield line below the virgin line in ln p */
  readonly separation: number;
}

export const densityAfterStress = (
  stress: number,
  bulkDensity: number,
  particleDensity: number,
  lines: CompactionLines,
): number => {
  checkLines(bulkDensity, particleDensity, lines);
  if (!(stress > 1)) return bulkDensity;
  const logStress = Math.log(stress);
  const start = particleDensity / bulkDensity;
  const logYield = Math.max(0, yieldLog(start, lines));
  if (logStress <= logYield) return bulkDensity;
  const atYield = start - lines.kappa * logYield;
  const along = atYield - lines.recompression * (logStress - logYield);
  const virgin = lines.virgin - lines.lambda * logStress;
  return particleDensity / (Math.min(along, virgin) + lines.kappa * logStress);
};

/** Stress at which the soil starts to yield, kPa. */
export const yieldStress = (bulkDensity: number, particleDensity: number, lines: CompactionLines): number => {
  checkLines(bulkDensity, particleDensity, lines);
  return Math.exp(Math.max(0, yieldLog(particleDensity / bulkDensity, lines)));
};

/** The lines moved so that soil of that density yields at `stress` kPa: for a soil of known precompression stress. */
export const linesForYield = (
  stress: number,
  bulkDensity: number,
  particleDensity: number,
  lines: CompactionLines,
): CompactionLines => ({
  ...lines,
  virgin:
    particleDensity / bulkDensity +
    lines.lambda * lines.separation +
    (lines.lambda - lines.kappa) * Math.log(Math.max(1, stress)),
});

const yieldLog = (start: number, lines: CompactionLines): number =>
  (lines.virgin - lines.lambda * lines.separation - start) / (lines.lambda - lines.kappa);

const checkLines = (bulkDensity: number, particleDensity: number, lines: CompactionLines): void => {
  if (!(bulkDensity > 0 && bulkDensity < particleDensity))
    throw new RangeError('bulk density: must be above 0 and below the particle density');
  if (!(lines.lambda > lines.recompression && lines.recompression >= lines.kappa))
    throw new RangeError('compaction lines: must keep λ > κ′ ≥ κ');
};

/** Parameters of a sandy loam from its water content (% by mass). @source osullivan-1999 */
export const sandyLoamLines = (water: number): { readonly virgin: number; readonly lambda: number; readonly kappa: number } => {
  const virgin = 2.43 - 0.0055 * (water - 11.2) ** 2;
  const lambda = (virgin - 1.572) / 17;
  return { virgin, lambda, kappa: lambda * (0.119 - (0.082 * water) / 17) };
};

/** Parameters of structured topsoils from the initial specific volume. @source keller-arvidsson-2007 */
export const structuredSoilLines = (
  specificVolume: number,
): { readonly virgin: number; readonly lambda: number; readonly kappa: number } => ({
  virgin: -0.007 + 1.196 * specificVolume,
  lambda: -0.182 + 0.212 * specificVolume,
  kappa: 0.042,
});
