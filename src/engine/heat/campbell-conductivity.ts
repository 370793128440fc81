/**
 * Conductivity from bulk density, clay and water: a check on Johansen's route and the one to use where quartz is unknown.
 *
 *     k = A + B θ − (A − D) exp(−(C θ)⁴)
 *     A = 0.65 − 0.78 ρ + 0.60 ρ²,  B = 1.06 ρ,  C = 1 + 2.6/√clay,  D = 0.03 + 0.1 ρ²
 *
 * ρ bulk density, Mg/m³ (0.8–2.0); clay share of the solids by mass, 0–1; θ water, m³/m³. k in W/(m K).
 * @throws RangeError for clay of zero or less, where C has no value.
 * @source campbell-1985 eq. 4.20
 */
export const campbellConductivity = (bulkDensity: number, clay: number, water: number): number => {
  if (!(clay > 0)) throw new RangeError('clay: must be more than 0');
  const a = 0.65 - 0.78 * bulkDensity + 0.6 * bulkDensity ** 2;
  const b = 1.06 * bulkDensity;
  const c = 1 + 2.6 / Math.sqrt(clay);
  const d = 0.03 + 0.1 * bulkDensity ** 2;
  return a + b * water - (a - d) * Math.exp(-((c * water) ** 4));
};
