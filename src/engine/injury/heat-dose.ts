/**
 * Heat kills by temperature and time together: a few degrees more and the same harm is done in a tenth of the time.
 *
 *     t50(T) = 96 h · 10^((T50 − T)/z),   dose = Σ Δt / t50(T),   kept = 1/(1 + dose^s)
 *
 * T crown temperature °C; T50 kills half in four days, °C; z K for a tenfold change of time; s steepness. A dose of one kills
 * half. Cool crowns add practically nothing; the sum has no recovery term, so it is meant for one covering of days, not for
 * a summer.
 * @source sod-stack-2001 (T50 of Kentucky bluegrass); z and s are our assumption
 */
export interface HeatTolerance {
  readonly halfKill: number;
  readonly decade: number;
  readonly steepness: number;
}

/** h at a steady temperature that kill half. */
export const halfKillTime = (temperature: number, tolerance: HeatTolerance): number =>
  96 * 10 ** ((tolerance.halfKill - temperature) / tolerance.decade);

/** Dose of one stay of some hours at a temperature. */
export const heatDoseOf = (temperature: number, hours: number, tolerance: HeatTolerance): number =>
  hours / halfKillTime(temperature, tolerance);

/** Dose of a series of crown temperatures from step `from` to `until` (not included), each `hours` long. Allocates nothing. */
export const heatDose = (crown: Float64Array, from: number, until: number, tolerance: HeatTolerance, hours = 1): number => {
  const rate = Math.LN10 / tolerance.decade;
  let sum = 0;
  for (let i = from; i < until; i++) sum += Math.exp((crown[i]! - tolerance.halfKill) * rate);
  return (sum * hours) / 96;
};

/** Share of crowns alive after a dose. */
export const keptAfterHeat = (dose: number, tolerance: HeatTolerance): number =>
  dose <= 0 ? 1 : 1 / (1 + dose ** tolerance.steepness);
