/**
 * Wet days and their amounts from what a climate table prints: rain of the month and number of wet days.
 *
 * P(wet|dry) = c f, P(wet|wet) = r + P(wet|dry)      f share of wet days; c 0.75, r 0.25
 * β = −2.16 + 1.83 p, α = p/β                        gamma scale, mm, and shape; p mean rain of a wet day, mm
 * β = 1.11 p for p < 3 mm                            the plain rule turns negative below 1.18 mm and its α passes 1 below 2.60 mm
 * Stationary share of wet days P(wet|dry)/(1 − P(wet|wet) + P(wet|dry)) = f when c = 1 − r; the chain's lag-1 correlation is r.
 * Range: f 0–1 (clamped), p ≥ 0.
 * @source geng-1986
 * @source richardson-wright-1984
 */
export interface RainRules {
  readonly wetAfterDry: number;
  readonly persistence: number;
  readonly scaleOffset: number;
  readonly scaleSlope: number;
  /** mm */
  readonly smallMean: number;
  readonly smallScale: number;
}

/** The rules as printed. */
export const gengRules: RainRules = {
  wetAfterDry: 0.75,
  persistence: 0.25,
  scaleOffset: -2.16,
  scaleSlope: 1.83,
  smallMean: 3,
  smallScale: 1.11,
};

/** Chances of a wet day. */
export interface WetDayChain {
  readonly wetAfterDry: number;
  readonly wetAfterWet: number;
}

/** The chain of a month with a share `wetShare` of wet days. */
export const wetDayChain = (wetShare: number, rules: RainRules = gengRules): WetDayChain => {
  const wetAfterDry = Math.min(1, rules.wetAfterDry * Math.max(0, Math.min(1, wetShare)));
  return { wetAfterDry, wetAfterWet: wetAfterDry > 0 ? Math.min(1, rules.persistence + wetAfterDry) : 0 };
};

/** Long-run share of wet days; 1 where neither state is ever left. */
export const stationaryWetShare = (chain: WetDayChain): number => {
  const leaving = 1 - chain.wetAfterWet;
  return leaving + chain.wetAfterDry === 0 ? 1 : chain.wetAfterDry / (leaving + chain.wetAfterDry);
};

/** Mean length of a wet and of a dry spell, d. */
export const meanSpells = (chain: WetDayChain): { readonly wet: number; readonly dry: number } => ({
  wet: 1 / (1 - chain.wetAfterWet),
  dry: 1 / chain.wetAfterDry,
});

/** Variance of the number of wet days in `days` days of a chain in its long-run state, d². */
export const wetDayVariance = (chain: WetDayChain, days: number): number => {
  const share = stationaryWetShare(chain);
  const correlation = chain.wetAfterWet - chain.wetAfterDry;
  let sum = days;
  for (let lag = 1; lag < days; lag++) sum += 2 * (days - lag) * correlation ** lag;
  return share * (1 - share) * sum;
};

/** Gamma distribution of the rain of a wet day. */
export interface RainAmount {
  /** α */
  readonly shape: number;
  /** β, mm */
  readonly scale: number;
}

/** Shape and scale for a mean of `mean` mm on wet days; their product is always the mean. */
export const rainAmount = (mean: number, rules: RainRules = gengRules): RainAmount => {
  if (!(mean > 0)) return { shape: 1 / rules.smallScale, scale: 0 };
  const scale = mean < rules.smallMean ? rules.smallScale * mean : rules.scaleOffset + rules.scaleSlope * mean;
  return { shape: mean / scale, scale };
};
