/** How fast wet leaf under a covering falls ill. All values are our assumption; the lag is the trade's. */
export interface DiseaseTraits {
  /** h of wet leaf at the best temperature that bring the risk to one half */
  readonly halfHours: number;
  /** °C at which the risk rises fastest, and the spread */
  readonly optimum: number;
  readonly width: number;
  /** d of dry leaf over which the pressure falls to 1/e */
  readonly memory: number;
}

/**
 * Infection pressure after one more day, in hours of wet leaf at the best temperature.
 *
 *     pressure ← pressure · exp(−dry/(24·memory)) + wet · exp(−½((T − To)/w)²)
 *
 * @param wetHours hours of the day in which the leaf is wet, 0–24; clamped @param temperature °C of the canopy
 */
export const diseasePressure = (pressure: number, wetHours: number, temperature: number, traits: DiseaseTraits): number => {
  const wet = Math.min(24, Math.max(0, wetHours));
  const offset = (temperature - traits.optimum) / traits.width;
  return pressure * Math.exp(-(24 - wet) / (24 * traits.memory)) + wet * Math.exp(-0.5 * offset * offset);
};

/** Risk index 0–1 of a pressure: `1 − 2^(−pressure/half)`. An index to rank days by, not a chance of an outbreak. */
export const diseaseRisk = (pressure: number, traits: DiseaseTraits): number =>
  1 - 2 ** (-Math.max(0, pressure) / traits.halfHours);
