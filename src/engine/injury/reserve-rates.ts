import type { ReserveTraits } from '#engine/injury/reserve-balance.ts';

/**
 * The reserve's gain and loss (see `reserve-balance.ts`) with everything that does not change from hour to hour worked out once, for the
 * hours of many members:
 *
 *     loss = exp(w (T − 20)) · (1 + s · seal) · dormancy(T) · m,   w = ln Q10/10
 *     gain = G · L/(L + K) · exp(−½((T − To)/w_T)²),               G = m Q10^((To − 20)/10) (Lc + K)/Lc
 */
export interface ReserveRates {
  readonly traits: ReserveTraits;
  /** 1/K */
  readonly warmth: number;
  /** 1/d */
  readonly daily: number;
  /** 1/d */
  readonly gainScale: number;
}

export const reserveRates = (traits: ReserveTraits): ReserveRates => {
  const warmth = Math.log(traits.q10) / 10;
  return {
    traits,
    warmth,
    daily: 1 / traits.darkDays,
    gainScale:
      (Math.exp(warmth * (traits.optimum - 20)) * (traits.holdLight + traits.halfLight)) / (traits.holdLight * traits.darkDays),
  };
};

/** Loss of a day at a temperature, 1/d. @param seal 0–1 */
export const lossAt = ({ traits, warmth, daily }: ReserveRates, temperature: number, seal: number): number => {
  const sealed = 1 + seal * (temperature > traits.sealTemperature ? traits.sealLossWarm : traits.sealLossCold);
  let loss = Math.exp(warmth * (temperature - 20)) * sealed * daily;
  if (temperature < traits.growthBase) {
    const awake = Math.max(0, 1 + (temperature - traits.growthBase) / traits.dormantSpan);
    loss *= traits.dormantShare + (1 - traits.dormantShare) * awake;
  }
  return loss;
};

/** Share of the greatest gain that a temperature allows, 0–1. */
export const gainWarmth = ({ traits }: ReserveRates, temperature: number): number => {
  const offset = (temperature - traits.optimum) / traits.width;
  return Math.exp(-0.5 * offset * offset);
};

/** Gain of a day at the best temperature from its useful light, 1/d. @param light mol/m²/d, 0 or more */
export const gainFromLight = ({ traits, gainScale }: ReserveRates, light: number): number =>
  (gainScale * light) / (light + traits.halfLight);
