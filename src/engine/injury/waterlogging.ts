/** How roots suffer without air. All values are our assumption. */
export interface WaterloggingTraits {
  /** h in saturated, sealed soil at 20 °C after which half the leaf, and half the crowns, are lost */
  readonly halfHoursLeaf: number;
  readonly halfHoursCrowns: number;
  readonly steepness: number;
  /** rate in saturated soil with nothing on it, as a share of the sealed rate */
  readonly openShare: number;
  /** m³/m³ of air-filled pores above which roots are not short of oxygen */
  readonly airLimit: number;
  /** factor per 10 °C */
  readonly q10: number;
}

/**
 * Oxygen debt of some hours, in hours of saturated, sealed soil at 20 °C.
 *
 *     debt = hours · shortage · (open + (1 − open) · seal) · Q10^((T − 20)/10)
 *     shortage = 1 − air/airLimit, from 0 to 1
 *
 * Zero while the pores hold enough air. Rises with hours, wetness, seal and warmth.
 * @param airFilled air-filled pore space of the root zone, m³/m³ @param seal 0 open … 1 sealed @param temperature °C of the soil
 */
export const oxygenDebt = (
  hours: number,
  airFilled: number,
  seal: number,
  temperature: number,
  traits: WaterloggingTraits,
): number => {
  const shortage = Math.min(1, Math.max(0, 1 - airFilled / traits.airLimit));
  const closed = traits.openShare + (1 - traits.openShare) * Math.min(1, Math.max(0, seal));
  return hours * shortage * closed * traits.q10 ** ((temperature - 20) / 10);
};

/** Share kept after a debt: `1/(1 + (debt/half)^steepness)`. */
const keptAfter = (debt: number, half: number, steepness: number): number => 1 / (1 + (Math.max(0, debt) / half) ** steepness);

/** Leaf kept after an oxygen debt, h. Multiply by the ratio of two calls for a step of a longer wet spell. */
export const leafKeptWet = (debt: number, traits: WaterloggingTraits): number =>
  keptAfter(debt, traits.halfHoursLeaf, traits.steepness);

/** Crowns kept after an oxygen debt, h. */
export const crownsKeptWet = (debt: number, traits: WaterloggingTraits): number =>
  keptAfter(debt, traits.halfHoursCrowns, traits.steepness);
