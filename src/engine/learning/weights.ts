import type { Stream } from '#engine/chance/stream.ts';
import { quantile } from '#engine/forecast/percentiles.ts';
import type { Range } from '#shared/vocabulary/forecast.ts';

/**
 * Weights that add to one, from logarithms of likelihoods, each raised to a power:
 *
 *     w_i = L_i^β / Σ L_j^β
 *
 * The largest is taken out first, so that nothing underflows.
 * @param trust β: 1 gives the readings their full weight, 0 none
 */
export const weightsOf = (logLikelihood: Float64Array, trust = 1): Float64Array => {
  const most = logLikelihood.reduce((best, one) => Math.max(best, one), -Infinity);
  const weights = logLikelihood.map((one) => Math.exp(trust * (one - most)));
  const sum = weights.reduce((total, one) => total + one, 0);
  return weights.map((one) => one / sum);
};

/** Members that still count: (Σw)²/Σw², from 1 to their number. @source kong-1994 */
export const effectiveSize = (weights: Float64Array): number => {
  let [sum, squares] = [0, 0];
  for (const weight of weights) {
    sum += weight;
    squares += weight * weight;
  }
  return (sum * sum) / squares;
};

/**
 * The largest power, at most 1, at which `least` members still count. Lowering the power only ever makes the answer wider.
 * @param least below the number of members
 */
export const trustFor = (logLikelihood: Float64Array, least: number): number => {
  const sizeAt = (trust: number): number => effectiveSize(weightsOf(logLikelihood, trust));
  if (sizeAt(1) >= least) return 1;
  let [low, high] = [0, 1];
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (sizeAt(middle) >= least) low = middle;
    else high = middle;
  }
  return low;
};

/**
 * Draws members in proportion to their weights, as many as wanted: one offset and even steps, so that a member of weight w stands
 * w·count times, rounded down or up. The order is then mixed, so that the first hundred speak for all.
 */
export const resampled = (weights: Float64Array, count: number, stream: Stream): readonly number[] => {
  const drawn: number[] = [];
  const offset = stream();
  let [member, reached] = [0, weights[0]!];
  for (let place = 0; place < count; place++) {
    const at = (place + offset) / count;
    while (reached < at && member < weights.length - 1) reached += weights[++member]!;
    drawn.push(member);
  }
  for (let place = count - 1; place > 0; place--) {
    const other = Math.floor(stream() * (place + 1));
    [drawn[place], drawn[other]] = [drawn[other]!, drawn[place]!];
  }
  return drawn;
};

/** Tenth, middle and ninetieth of weighted values: the value at which the rising sum of weights passes the share. */
export const weightedRange = (values: ArrayLike<number>, weights: Float64Array): Range => {
  const order = Array.from(weights.keys()).sort((one, other) => values[one]! - values[other]!);
  const at = (share: number): number => {
    let reached = 0;
    for (const index of order) {
      reached += weights[index]!;
      if (reached >= share) return values[index]!;
    }
    return values[order.at(-1)!]!;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
};

/** Mean and standard deviation of weighted values. */
export const weightedMoments = (values: ArrayLike<number>, weights: Float64Array): { mean: number; deviation: number } => {
  let mean = 0;
  weights.forEach((weight, index) => (mean += weight * values[index]!));
  let variance = 0;
  weights.forEach((weight, index) => (variance += weight * (values[index]! - mean) ** 2));
  return { mean, deviation: Math.sqrt(variance) };
};

/** Plain range of values that all count alike. */
export const plainRange = (values: ArrayLike<number>): Range => {
  const sorted = Float64Array.from(values).sort();
  return { p10: quantile(sorted, 0.1), p50: quantile(sorted, 0.5), p90: quantile(sorted, 0.9) };
};
