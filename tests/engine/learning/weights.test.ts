import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { streamFor } from '#engine/chance/stream.ts';
import { effectiveSize, resampled, trustFor, weightedMoments, weightedRange, weightsOf } from '#engine/learning/weights.ts';

const logs = fc
  .array(fc.double({ min: -500, max: 0, noNaN: true }), { minLength: 2, maxLength: 200 })
  .map((all) => Float64Array.from(all));

describe('weights of members', () => {
  test('add to one, whatever the likelihoods, and favour who agrees', () => {
    fc.assert(
      fc.property(logs, (log) => {
        const weights = weightsOf(log);
        expect(weights.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
        const best = log.indexOf(Math.max(...log));
        expect(weights[best]).toBe(Math.max(...weights));
      }),
    );
  });

  // Kong, Liu & Wong 1994: n equal weights count as n, one weight of all as 1; (2/3, 1/3) gives 1/(4/9 + 1/9) = 9/5.
  test('the effective size is that of its definition', () => {
    expect(effectiveSize(new Float64Array(40).fill(1 / 40))).toBeCloseTo(40, 9);
    expect(effectiveSize(Float64Array.from([0, 1, 0]))).toBe(1);
    expect(effectiveSize(Float64Array.from([2 / 3, 1 / 3]))).toBeCloseTo(1.8, 12);
  });

  test('trust is full where enough count, else just as much as leaves enough', () => {
    fc.assert(
      fc.property(logs, fc.double({ min: 0.05, max: 0.9, noNaN: true }), (log, share) => {
        const least = Math.max(1, share * log.length);
        const trust = trustFor(log, least);
        const size = effectiveSize(weightsOf(log, trust));
        expect(size).toBeGreaterThanOrEqual(least * (1 - 1e-6));
        if (trust < 1) expect(effectiveSize(weightsOf(log, 1))).toBeLessThan(least);
      }),
    );
  });

  test('members drawn anew stand as often as they weigh, to the next whole number', () => {
    fc.assert(
      fc.property(logs, fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 1000 }), (log, count, seed) => {
        const weights = weightsOf(log);
        const drawn = resampled(weights, count, streamFor(seed, 'test'));
        expect(drawn).toHaveLength(count);
        weights.forEach((weight, member) => {
          const times = drawn.filter((one) => one === member).length;
          expect(Math.abs(times - weight * count)).toBeLessThan(1 + 1e-6);
        });
        expect(resampled(weights, count, streamFor(seed, 'test'))).toEqual(drawn);
      }),
    );
  });

  test('with even weights ranges and moments are the plain ones', () => {
    const values = Float64Array.from({ length: 1001 }, (_, at) => (at * 7919) % 1001);
    const even = new Float64Array(1001).fill(1 / 1001);
    const { p10, p50, p90 } = weightedRange(values, even);
    expect(p10).toBeCloseTo(100, -0.5);
    expect(p50).toBeCloseTo(500, 3);
    expect(p90).toBeCloseTo(900, -0.5);
    const { mean, deviation } = weightedMoments(values, even);
    expect(mean).toBeCloseTo(500, 9);
    expect(deviation).toBeCloseTo(Math.sqrt((1001 ** 2 - 1) / 12), 6);
  });

  test('all weight on one value is that value', () => {
    expect(weightedRange([3, 1, 2], Float64Array.from([0, 0, 1]))).toEqual({ p10: 2, p50: 2, p90: 2 });
  });
});
