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

/** Moves the `rank`-th smallest of `values[from…until)` to its place, smaller ones before it, larger ones behind (Hoare's selection). */
const select = (values: Float64Array, rank: number, from: number, until: number): number => {
  let [low, high] = [from, until - 1];
  while (low < high) {
    const pivot = values[(low + high) >> 1]!;
    let [left, right] = [low, high];
    while (left <= right) {
      while (values[left]! < pivot) left++;
      while (values[right]! > pivot) right--;
      if (left > right) break;
      const held = values[left]!;
      values[left++] = values[right]!;
      values[right--] = held;
    }
    if (rank <= right) high = right;
    else if (rank >= left) low = left;
    else break;
  }
  return values[rank]!;
};

/** The same as `quantile` of the sorted values, without sorting them all; shares must be asked for in rising order. */
const quantileOf = (values: Float64Array, share: number, from: number): { readonly value: number; readonly from: number } => {
  const place = share * (values.length - 1);
  const below = Math.floor(place);
  const low = select(values, below, from, values.length);
  if (below + 1 >= values.length) return { value: low, from: below };
  return { value: low + (place - below) * (select(values, below + 1, below + 1, values.length) - low), from: below };
};

/** Ranges by day of one zone. @param values one a member and day, at [member·days + day] */
export const rangeSeries = (values: Float64Array, members: number, days: number): RangeSeries => {
  const [p10, p50, p90]: [number[], number[], number[]] = [[], [], []];
  const day = new Float64Array(members);
  for (let d = 0; d < days; d++) {
    const first = values[d]!;
    let same = true;
    for (let m = 0; m < members; m++) {
      const value = (day[m] = values[m * days + d]!);
      if (value !== first) same = false;
    }
    // Before anything lies there, and where no machine goes, all members agree.
    if (same) {
      for (const series of [p10, p50, p90]) series.push(rounded(first));
      continue;
    }
    const low = quantileOf(day, 0.1, 0);
    const middle = quantileOf(day, 0.5, low.from);
    p10.push(rounded(low.value));
    p50.push(rounded(middle.value));
    p90.push(rounded(quantileOf(day, 0.9, middle.from).value));
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

const tenths = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9] as const;

/** Lowest tenth to highest tenth in steps of ten. */
export const decilesOf = (values: ArrayLike<number>): number[] => {
  const sorted = Float64Array.from(values).sort();
  return tenths.map((share) => rounded(quantile(sorted, share)));
};

/** The same where Infinity stands for never, answered with null. */
export const decilesOrNever = (values: ArrayLike<number>): (number | null)[] => {
  const sorted = Float64Array.from(values).sort();
  return tenths.map((share) => {
    const value = sorted[Math.round(share * (sorted.length - 1))]!;
    return Number.isFinite(value) ? value : null;
  });
};
