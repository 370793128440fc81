import { causes, type Cause } from '#shared/vocabulary/forecast.ts';

export { causes, type Cause };

/** One number for every cause. */
export type ByCause = Readonly<Record<Cause, number>>;

/** A kept share this small stands for none, so that its logarithm is finite. */
const smallest = 1e-12;

/** Logarithmic loss of a kept share, 0 for nothing lost; never infinite. */
export const logLoss = (kept: number): number => -Math.log(Math.min(1, Math.max(smallest, kept)));

export interface CombinedLoss {
  /** product of the kept shares, 0–1 */
  readonly kept: number;
  /** what each cause took, as a share of what was there; adds to `1 − kept` */
  readonly lost: ByCause;
  /** what each cause took, as a share of the loss; adds to 1, or all 0 where nothing was lost */
  readonly share: ByCause;
}

/** One number for every cause, all 0. */
export const noCauses: ByCause = { light: 0, heat: 0, frost: 0, wear: 0, load: 0, wetness: 0, spill: 0 };

/** One number for every cause, by the cause and its place. */
export const eachCause = (value: (cause: Cause, place: number) => number): ByCause => ({
  light: value('light', 0),
  heat: value('heat', 1),
  frost: value('frost', 2),
  wear: value('wear', 3),
  load: value('load', 4),
  wetness: value('wetness', 5),
  spill: value('spill', 6),
});

/**
 * Shares a loss out to its causes in proportion to the logarithms of what they left.
 *
 *     kept = ∏ k_i;   share_i = ln k_i / Σ ln k_j;   lost_i = (1 − kept) · share_i
 *
 * The order of the causes does not matter and the shares close.
 * @param logLosses −ln of the kept share for each cause, as summed over the days
 */
export const causesOfLogLosses = (logLosses: ByCause): CombinedLoss => {
  const total = causes.reduce((sum, cause) => sum + Math.max(0, logLosses[cause]), 0);
  const kept = total >= -Math.log(smallest) ? 0 : Math.exp(-total);
  if (total === 0) return { kept: 1, lost: noCauses, share: noCauses };
  const share = eachCause((cause) => Math.max(0, logLosses[cause]) / total);
  return { kept, share, lost: eachCause((cause) => share[cause] * (1 - kept)) };
};

/**
 * The same from kept shares; a cause that is not named kept everything.
 * @throws RangeError when a kept share is outside 0–1
 */
export const combineCauses = (kept: Partial<ByCause>): CombinedLoss => {
  for (const cause of causes) {
    const share = kept[cause] ?? 1;
    if (!(share >= 0 && share <= 1)) throw new RangeError(`${cause}: a kept share must lie between 0 and 1, not ${share}`);
  }
  return causesOfLogLosses(eachCause((cause) => logLoss(kept[cause] ?? 1)));
};
