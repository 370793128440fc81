/**
 * Rate of recovery in a day: `best · GP · factors`, nothing at or below the growth potential `stop`, never above `limit`.
 * @param best 1/d in best growth @param growth GP, 0–1 @param factor product of the other factors, 0–1
 * @param stop GP at which nothing grows back (0.10) @param limit fastest rate ever measured (0.459 /d)
 * @source gelernter-stowell-notes (stop), coring-horttechnology-2022 (limit)
 */
export const recoveryRate = (best: number, growth: number, factor: number, stop: number, limit: number): number =>
  growth <= stop ? 0 : Math.min(limit, best * growth * factor);

/**
 * Leaf growing back towards what the living crowns and the reserve can carry, one day: `cover + rate · (ceiling − cover)`.
 * Never lowers the cover; the ceiling is the living crowns, times what a low reserve can keep green.
 * @param rate 1/d, at most 1
 */
export const regrownCover = (cover: number, ceiling: number, rate: number): number => cover + rate * Math.max(0, ceiling - cover);

/**
 * Crowns spreading into bare ground, one day: `crowns + rate · crowns · (1 − crowns)`. Ground without a crown left stays bare until it
 * is seeded or sodded.
 * @source sportsturf-2013-09 (rates of bermudagrass)
 */
export const spreadCrowns = (crowns: number, rate: number): number => crowns + rate * crowns * (1 - crowns);

/**
 * Rate at which a gap closes if `1 − cover` shrinks by the same share every day: `ln((1 − c0)/(1 − c1))/days`.
 * @throws RangeError unless 0 ≤ c0 ≤ c1 < 1 and days > 0
 */
export const gapClosureRate = (before: number, after: number, days: number): number => {
  if (!(before >= 0 && after >= before && after < 1)) throw new RangeError('cover: must rise from 0 or more to less than 1');
  if (!(days > 0)) throw new RangeError('days: must be above 0');
  return Math.log((1 - before) / (1 - after)) / days;
};

/** Cover after some days of gap closure at a constant rate, in closed form. */
export const closedGap = (before: number, rate: number, days: number): number => 1 - (1 - before) * Math.exp(-rate * days);

/**
 * Rate of `C′ = r C (1 − C)` between two covers: `(logit c1 − logit c0)/days`.
 * @throws RangeError unless both covers lie strictly between 0 and 1 and days > 0
 */
export const logisticRate = (before: number, after: number, days: number): number => {
  if (!(before > 0 && before < 1 && after > 0 && after < 1)) throw new RangeError('cover: must lie between 0 and 1');
  if (!(days > 0)) throw new RangeError('days: must be above 0');
  return (Math.log(after / (1 - after)) - Math.log(before / (1 - before))) / days;
};

/** Cover after some days of logistic growth at a constant rate, in closed form. */
export const logisticCover = (before: number, rate: number, days: number): number =>
  before <= 0 ? 0 : 1 / (1 + ((1 - before) / before) * Math.exp(-rate * days));
