/** Thermal time of one species. */
export interface GerminationTraits {
  /** °C d to half germination in the laboratory (θ50) */
  readonly thermalTime: number;
  /** °C below which it does not germinate (Tb) */
  readonly base: number;
}

/** °C at constant temperature over which the thermal times were measured. */
export const germinationRange = { low: 8, high: 24 } as const;

export type GerminationDays =
  | { readonly germinates: false; readonly reason: 'does not germinate' }
  | { readonly germinates: true; readonly days: number; readonly extrapolated: boolean };

/**
 * Days to half germination in the laboratory at a constant temperature: `t50 = θ50/(T − Tb)`. Not emergence.
 * At or below the base temperature it does not germinate; outside 8–24 °C the answer is extrapolated.
 * @source larsen-bibby-2005
 */
export const daysToGermination = (temperature: number, traits: GerminationTraits): GerminationDays =>
  temperature <= traits.base
    ? { germinates: false, reason: 'does not germinate' }
    : {
        germinates: true,
        days: traits.thermalTime / (temperature - traits.base),
        extrapolated: temperature < germinationRange.low || temperature > germinationRange.high,
      };

/** Days to half emergence in the field: those of germination times a field factor of about 2. */
export const daysToEmergence = (temperature: number, traits: GerminationTraits, fieldFactor: number): GerminationDays => {
  const laboratory = daysToGermination(temperature, traits);
  return laboratory.germinates ? { ...laboratory, days: laboratory.days * fieldFactor } : laboratory;
};

/** Thermal time of one day, °C d; days below the base add nothing. */
export const thermalTimeOfDay = (temperature: number, base: number): number => Math.max(0, temperature - base);

/** Course of emergence around its half time. */
export interface EmergenceShape {
  /** share of the thermal time to half emergence before the first seedling, 0 ≤ lag < 1 */
  readonly lag: number;
  /** Weibull shape */
  readonly shape: number;
}

/**
 * Share of the seed that has emerged after a thermal time: a Weibull course through one half at `half`.
 *
 *     E = 1 − 2^(−((θ − lag·half)/((1 − lag)·half))^shape)
 *
 * @param thermalTime °C d so far @param half °C d to half emergence (θ50 · field factor)
 * @source larsen-bibby-2005 (thermal time follows a Weibull; its shape here is our assumption)
 */
export const emergedShare = (thermalTime: number, half: number, shape: EmergenceShape): number => {
  const beyond = (thermalTime - shape.lag * half) / ((1 - shape.lag) * half);
  return beyond <= 0 ? 0 : 1 - 2 ** -(beyond ** shape.shape);
};

/** First day a straight rise of temperature reaches a target: `(target − from)/((to − from)/days)`; 0 where it starts above. */
export const dayRiseReaches = (from: number, to: number, days: number, target: number): number | null => {
  if (from >= target) return 0;
  if (to <= from || to < target) return null;
  return ((target - from) * days) / (to - from);
};
