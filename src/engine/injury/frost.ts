import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Grass } from '#shared/vocabulary/turf.ts';

/**
 * Frost kills by how cold and by how long. Survival is a logistic in crown temperature, and the temperature that kills half
 * rises with the logarithm of the time spent there:
 *
 *     LT50(t) = LT50 + b ln(1 + t/τ)
 *     survival = 1/(1 + O),   ln O = k (LT50(t) − T) = k (LT50 − T) + k b ln(1 + t/τ)
 *
 * T and LT50 °C, k 1/K, b K, t and τ h. Where the temperature changes, the odds of death already reached are read as the
 * time that would have reached them at the new temperature, and time runs on from there; at a steady temperature this is
 * the formula itself, and cutting a stay in two changes nothing. No harm is counted at 0 °C and above.
 * @source anderson-2003 (survival of a tender bermudagrass at −5.4 °C: 89, 67, 30, 11 % after 0, 2, 24, 72 h)
 */
export interface FrostTolerance {
  /** 1/K */
  readonly slope: number;
  /** K */
  readonly gain: number;
  /** h */
  readonly onset: number;
}

export const frostTolerance = (values: ParameterValues): FrostTolerance => ({
  slope: values['frost.slope'],
  gain: values['frost.duration.gain'],
  onset: values['frost.duration.onset'],
});

/** Temperature that kills half after some hours there, °C. */
export const halfKillAfter = (hours: number, halfKill: number, tolerance: FrostTolerance): number =>
  halfKill + tolerance.gain * Math.log(1 + hours / tolerance.onset);

/** Odds of death after `hours` more at a temperature, from the odds before (0 at the start). Never falls. */
export const frostOdds = (
  before: number,
  temperature: number,
  hours: number,
  halfKill: number,
  tolerance: FrostTolerance,
): number => {
  if (temperature >= 0) return before;
  const atOnce = Math.exp(tolerance.slope * (halfKill - temperature));
  const power = tolerance.slope * tolerance.gain;
  if (power <= 0) return Math.max(before, atOnce);
  const folds = before > atOnce ? Math.log(before / atOnce) / power : 0;
  // So far behind what is already done that no stay would be felt.
  if (folds > 500) return before;
  const passed = Math.expm1(folds) * tolerance.onset;
  const after = atOnce * (1 + (passed + hours) / tolerance.onset) ** power;
  return after > before ? after : before;
};

/** Share alive at given odds of death. */
export const keptAfterFrost = (odds: number): number => 1 / (1 + odds);

/** Odds of death after a series of crown temperatures, each `hours` long; allocates nothing. */
export const frostOddsOver = (
  crown: Float64Array,
  from: number,
  until: number,
  halfKill: number,
  tolerance: FrostTolerance,
  before = 0,
  hours = 1,
): number => {
  let odds = before;
  for (let i = from; i < until; i++) odds = frostOdds(odds, crown[i]!, hours, halfKill, tolerance);
  return odds;
};

const grassName = {
  'kentucky-bluegrass': 'kentuckyBluegrass',
  'perennial-ryegrass': 'perennialRyegrass',
  'tall-fescue': 'tallFescue',
  'bermudagrass-common': 'bermudagrassCommon',
  'bermudagrass-hybrid': 'bermudagrassHybrid',
  zoysiagrass: 'zoysiagrass',
  'seashore-paspalum': 'seashorePaspalum',
} as const satisfies Record<Grass, string>;

/** Temperature that kills half at once, °C, between tender (hardening 0) and hardened (1). */
export const halfKillTemperature = (grass: Grass, hardening: number, values: ParameterValues): number => {
  const tender = values[`frost.halfKill.tender.${grassName[grass]}`];
  const hardened = values[`frost.halfKill.hardened.${grassName[grass]}`];
  return tender + (hardened - tender) * Math.min(1, Math.max(0, hardening));
};

/** How far a stand is hardened, 0–1, and how long the soil has been too warm for it without a break, h. */
export interface Hardening {
  readonly level: number;
  readonly warmHours: number;
}

/** The hardening a steady soil temperature leads to, 0–1. */
export const hardeningAt = (soil: number, values: ParameterValues): number => {
  const full = values['frost.hardening.full'];
  const none = values['frost.hardening.none'];
  return Math.min(1, Math.max(0, (none - soil) / (none - full)));
};

/**
 * Hardening after some hours (a day or less) at a soil temperature. It is gained slowly while the soil is colder than the
 * level asks for, and lost fast once the soil has stayed above 8 °C for 48 h.
 * @source tompkins-2000 (trigger), dalmannsdottir-2017 (levels)
 */
export const hardeningAfter = (before: Hardening, soil: number, hours: number, values: ParameterValues): Hardening => {
  const target = hardeningAt(soil, values);
  const warm = soil > values['frost.dehardening.soil'];
  const warmHours = warm ? before.warmHours + hours : 0;
  if (target > before.level) {
    const share = -Math.expm1(-hours / (24 * values['frost.hardening.days']));
    return { level: before.level + (target - before.level) * share, warmHours };
  }
  const losing = Math.min(hours, Math.max(0, warmHours - values['frost.dehardening.wait']));
  const share = -Math.expm1(-losing / (24 * values['frost.dehardening.days']));
  return { level: before.level + (target - before.level) * share, warmHours };
};
