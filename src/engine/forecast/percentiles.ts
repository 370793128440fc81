import type { Range, RangeSeries } from '#shared/vocabulary/forecast.ts';

/**
 * The value below which a share of the members lies, straight between neighbours. NaN never enters.
 * @param sorted rising; at least one
 */
export const quantile = (sorted: Float64Array, share: number): number => {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(sorted.length - 1, below + 1);
  return sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!);
};

/** Four decimals are more than any reading has, and keep a kept run small. */
const rounded = (value: number): number => Math.round(value * 1e4) / 1e4;

export const rangeOf = (values: ArrayLike<number>): Range => {
  const sorted = Float64Array.from(values).sort();
  return { p10: rounded(quantile(sorted, 0.1)), p50: rounded(quantile(sorted, 0.5)), p90: rounded(quantile(sorted, 0.9)) };
};

/** Ranges by day of one zone. @param values one a member and day, at [member·days + day] */
export const rangeSeries = (values: Float64Array, members: number, days: number): RangeSeries => {
  const [p10, p50, p90]: [number[], number[], number[]] = [[], [], []];
  const day = new Float64Array(members);
  for (let d = 0; d < days; d++) {
    for (let m = 0; m < members; m++) day[m] = values[m * days + d]!;
    day.sort();
    p10.push(rounded(quantile(day, 0.1)));
    p50.push(rounded(quantile(day, 0.5)));
    p90.push(rounded(quantile(day, 0.9)));
  }
  return { p10, p50, p90 };
};

/** The same where some members never get there: Infinity counts as beyond every number, and is answered with null. */
export const rangeOrNever = (values: ArrayLike<number>): { p10: number | null; p50: number | null; p90: number | null } => {
  const sorted = Float64Array.from(values).sort();
  const at = (share: number): number | null => {
    const value = sorted[Math.min(sorted.length - 1, Math.round(share * (sorted.length - 1)))]!;
    return Number.isFinite(value) ? value : null;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
};
