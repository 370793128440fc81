/** Where one group of grasses grows best, °C or °F: both numbers in the same unit. */
export interface GrowthCurve {
  readonly optimum: number;
  readonly spread: number;
  /** growth held at its greatest at and above the optimum (the modified warm-season form) */
  readonly plateau: boolean;
}

/**
 * Growth potential, 0–1.
 *
 *     GP(T) = exp(−½((T − To)/s)²);   with the plateau 1 at and above To
 *
 * T is the mean air temperature of the day or month, in the unit of the curve. Any temperature is valid; far away GP goes to 0.
 * @source gelernter-stowell-2005, woods-2014, gelernter-stowell-notes (plateau)
 */
export const growthPotential = (temperature: number, curve: GrowthCurve): number => {
  if (curve.plateau && temperature >= curve.optimum) return 1;
  const offset = (temperature - curve.optimum) / curve.spread;
  return Math.exp(-0.5 * offset * offset);
};

/** The printed curves. The Fahrenheit ones are the definition; the Celsius ones are rounded and never mix with them. */
export const fahrenheitCurves = {
  cool: { optimum: 68, spread: 10, plateau: false },
  warm: { optimum: 88, spread: 12, plateau: false },
  warmModified: { optimum: 88, spread: 12, plateau: true },
} as const satisfies Record<string, GrowthCurve>;
export const celsiusCurves = {
  cool: { optimum: 20, spread: 5.5, plateau: false },
  warm: { optimum: 31, spread: 7, plateau: false },
  warmModified: { optimum: 31, spread: 7, plateau: true },
} as const satisfies Record<string, GrowthCurve>;

/**
 * The temperatures at which a curve takes a level, lower and upper; the upper is null on a plateau.
 * @param level 0 < level ≤ 1
 * @throws RangeError outside that
 */
export const temperaturesAt = (level: number, curve: GrowthCurve): { readonly lower: number; readonly upper: number | null } => {
  if (!(level > 0 && level <= 1)) throw new RangeError(`level: must lie above 0 and up to 1, not ${level}`);
  const reach = curve.spread * Math.sqrt(-2 * Math.log(level));
  return { lower: curve.optimum - reach, upper: curve.plateau ? null : curve.optimum + reach };
};

/** How a growth potential reads. @source gelernter-stowell-notes */
export const readGrowth = (growth: number, good = 0.5, stop = 0.1): 'good' | 'slow' | 'hardly grows' =>
  growth >= good ? 'good' : growth > stop ? 'slow' : 'hardly grows';

/** Whether a stressful event or aeration is well timed: growth above `good` and rising. @source gelernter-stowell-notes */
export const goodTimeForStress = (growthBefore: number, growthNow: number, good = 0.5): boolean =>
  growthNow > good && growthNow > growthBefore;
