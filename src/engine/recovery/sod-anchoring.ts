/** How new sod comes to hold. */
export interface SodTraits {
  /** m of soil up to which weight holds nothing, and from which it holds all by itself */
  readonly thin: number;
  readonly thick: number;
  /** d after laying before sod held by weight alone is played on */
  readonly thickPlayDays: number;
  /** °C d at 50 mm to nine tenths of full anchorage of a thin cut */
  readonly rooting: number;
  /** °C below which roots do not grow */
  readonly rootBase: number;
  /** anchorage at which sod counts as held */
  readonly anchored: number;
  /** wear on the day of laying as a multiple of old turf, and d until it wears like old turf */
  readonly wearFirst: number;
  readonly wearDays: number;
}

/** −ln(1 − 0.9): nine tenths of the anchorage at the rooting thermal time. */
const ninetyPercent = Math.LN10;

/**
 * Anchorage by roots, 0–1: `1 − exp(−ln 10 · (θ/θ90)²)`, where a thick cut needs a longer thermal time in proportion to its soil.
 * @param thermalTime °C d at 50 mm since laying @param thickness m of soil
 * @source sportsturf-2013-03 (thin roots sooner, thick slowly; the curve is our assumption)
 */
export const rootedShare = (thermalTime: number, thickness: number, traits: SodTraits): number => {
  const needed = traits.rooting * Math.max(1, thickness / traits.thin);
  const done = Math.max(0, thermalTime) / needed;
  return 1 - Math.exp(-ninetyPercent * done * done);
};

/**
 * Hold by weight, 0–1: rises from the day of laying to the play day of thick sod, times how thick the cut is between thin and thick.
 * @param age d since laying
 */
export const heldByWeight = (age: number, thickness: number, traits: SodTraits): number => {
  const heavy = Math.min(1, Math.max(0, (thickness - traits.thin) / (traits.thick - traits.thin)));
  return heavy * Math.min(1, Math.max(0, age) / traits.thickPlayDays);
};

/** Anchorage, 0–1, from roots and weight together: what neither holds is loose. */
export const anchorage = (age: number, thermalTime: number, thickness: number, traits: SodTraits): number =>
  1 - (1 - rootedShare(thermalTime, thickness, traits)) * (1 - heldByWeight(age, thickness, traits));

/** Whether sod counts as held. */
export const isAnchored = (anchored: number, traits: SodTraits): boolean => anchored >= traits.anchored - 1e-12;

/**
 * First day, counted from laying, on which sod counts as held at a constant soil temperature; null when it never does within a year.
 * @param temperature °C at 50 mm
 */
export const playableDay = (temperature: number, thickness: number, traits: SodTraits): number | null => {
  const daily = Math.max(0, temperature - traits.rootBase);
  for (let day = 0; day <= 366; day++) if (isAnchored(anchorage(day, day * daily, thickness, traits), traits)) return day;
  return null;
};

/** Wear of young sod as a multiple of old turf; falls in a straight line to 1. Young sod is a different, weaker turf. */
export const youngSodWear = (age: number, traits: SodTraits): number =>
  1 + (traits.wearFirst - 1) * Math.max(0, 1 - Math.max(0, age) / traits.wearDays);
