/** How one season group of grasses uses and refills its stored carbohydrate. */
export interface ReserveTraits {
  /** d of darkness at 20 °C that empty a full reserve (D20) */
  readonly darkDays: number;
  /** factor of loss per 10 °C */
  readonly q10: number;
  /** extra loss under a fully sealed covering: above `sealTemperature`, and at or below it */
  readonly sealLossWarm: number;
  readonly sealLossCold: number;
  /** °C */
  readonly sealTemperature: number;
  /** mol/m²/d at which the stand just holds at its optimum temperature (Lc) */
  readonly holdLight: number;
  /** mol/m²/d at half of the greatest gain (K) */
  readonly halfLight: number;
  /** °C of the greatest gain (To) and its spread (w) */
  readonly optimum: number;
  readonly width: number;
  /** °C below which the stand goes dormant, and °C further down at which it is fully dormant */
  readonly growthBase: number;
  readonly dormantSpan: number;
  /** share of the loss that full dormancy leaves; 1 switches dormancy off */
  readonly dormantShare: number;
}

/**
 * Reserve used in a day, as a share of a full reserve.
 *
 *     loss = m · Q10^((T − 20)/10) · (1 + s · seal) · dormancy(T),   m = 1/D20
 *     s = sealLossWarm above the seal temperature, sealLossCold at or below it: poor gas exchange burns more
 *     dormancy = 1 above the growth base, falling in a straight line to `dormantShare` at base − span
 *
 * Never falls as T rises, so warmer is never slower. Without the dormancy factor an uncovered stand would starve in an ordinary winter.
 * @param temperature °C of the crowns @param seal 0 open … 1 sealed; clamped
 * @returns 1/d
 * @source nebraska-tall-fescue-dark-1982 (bounds of D20 only; the equation is our assumption)
 */
export const reserveLoss = (temperature: number, seal: number, traits: ReserveTraits): number => {
  const sealed =
    Math.min(1, Math.max(0, seal)) * (temperature > traits.sealTemperature ? traits.sealLossWarm : traits.sealLossCold);
  const awake = Math.min(1, Math.max(0, 1 + (temperature - traits.growthBase) / traits.dormantSpan));
  const dormancy = traits.dormantShare + (1 - traits.dormantShare) * awake;
  return (traits.q10 ** ((temperature - 20) / 10) * (1 + sealed) * dormancy) / traits.darkDays;
};

/**
 * Reserve gained in a day, as a share of a full reserve.
 *
 *     gain = m · Q10^((To − 20)/10) · [L/(L + K)] / [Lc/(Lc + K)] · exp(−½((T − To)/w)²)
 *
 * The factor Q10^((To − 20)/10) makes Lc the light at which the stand just holds at its own optimum; it is 1 for cool-season grasses,
 * whose optimum is 20 °C.
 * @param light useful daily light L, mol/m²/d; below 0 counts as 0 @param temperature °C
 * @returns 1/d
 * @source gelernter-stowell-2008 (Lc; the equation is our assumption)
 */
export const reserveGain = (light: number, temperature: number, traits: ReserveTraits): number => {
  const useful = Math.max(0, light);
  const share = (useful / (useful + traits.halfLight)) * ((traits.holdLight + traits.halfLight) / traits.holdLight);
  const offset = (temperature - traits.optimum) / traits.width;
  return (traits.q10 ** ((traits.optimum - 20) / 10) * share * Math.exp(-0.5 * offset * offset)) / traits.darkDays;
};

/**
 * Reserve after some hours of one temperature, one light and one seal: `clamp(reserve + (gain − loss) · hours/24, 0, 1)`.
 * @param hours length of the step @param light useful light of the whole day, mol/m²/d: hours of one day share it evenly
 */
export const reserveAfterHours = (
  reserve: number,
  hours: number,
  temperature: number,
  light: number,
  seal: number,
  traits: ReserveTraits,
): number => {
  const change = reserveGain(light, temperature, traits) - reserveLoss(temperature, seal, traits);
  return Math.min(1, Math.max(0, reserve + (change * hours) / 24));
};

/** Reserve after one day at its mean temperature. */
export const reserveAfterDay = (
  reserve: number,
  temperature: number,
  light: number,
  seal: number,
  traits: ReserveTraits,
): number => reserveAfterHours(reserve, 24, temperature, light, seal, traits);

/**
 * Net change of the reserve summed over the hours of a covered day without clamping, 1/d; for a caller that steps whole days.
 * @param temperatures °C of the crowns, one for each hour @param from @param count first hour and number of hours
 */
export const reserveChangeOverHours = (
  temperatures: Float64Array,
  from: number,
  count: number,
  light: number,
  seal: number,
  traits: ReserveTraits,
): number => {
  let change = 0;
  for (let hour = from; hour < from + count; hour++) {
    change += reserveGain(light, temperatures[hour]!, traits) - reserveLoss(temperatures[hour]!, seal, traits);
  }
  return change / 24;
};
