import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestReserve, equalMembers, orderFractile, reserveCost, reserveFractile } from '#planner/sod-reserve.ts';

/*
 * The critical fractile of one-period inventory (Arrow, Harris & Marschak 1951, Econometrica 19(3):250-272): order up to the smallest
 * amount whose chance of covering the need reaches underage / (underage + overage).
 */
const quantile = (needs: readonly number[], share: number): number => {
  const sorted = [...needs].sort((one, other) => one - other);
  return share <= 0 ? 0 : sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length - 1e-9) - 1)]!;
};

const needs = fc.array(fc.integer({ min: 1, max: 9000 }), { minLength: 1, maxLength: 25 });

describe('the sod reserve', () => {
  it('meets the fractile of the textbook case', () => {
    // Price 5, short 20, nothing back: fractile 15/20 = 0.75; of 4 equal needs the third smallest.
    const terms = { price: 5, reserveFee: 99, shortPrice: 20, cancelShare: 1, most: 1e6 };
    expect(orderFractile(terms)).toBe(0.75);
    const answer = bestReserve(terms, equalMembers([100, 400, 200, 300]));
    expect(answer.ordered).toBe(300);
    expect(answer.reserved).toBe(0);
    expect(answer.chanceShort).toBe(0.25);
    // 300 · 5 + 100 · 20 / 4
    expect(answer.expectedCost).toBe(2000);
  });

  it('orders what the fractile says when nothing can be reserved', () => {
    fc.assert(
      fc.property(
        needs,
        fc.integer({ min: 1, max: 50 }),
        fc.integer({ min: 0, max: 200 }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        (members, price, more, cancelShare) => {
          const terms = { price, reserveFee: 1e6, shortPrice: price + more, cancelShare, most: 1e6 };
          const answer = bestReserve(terms, equalMembers(members));
          const textbook = reserveCost(terms, equalMembers(members), quantile(members, orderFractile(terms)), 0);
          expect(answer.expectedCost).toBeCloseTo(textbook.expectedCost, 6);
        },
      ),
    );
  });

  it('reserves what the fractile says when everything ordered would be lost', () => {
    fc.assert(
      fc.property(
        needs,
        fc.integer({ min: 1, max: 50 }),
        fc.integer({ min: 1, max: 200 }),
        fc.integer({ min: 0, max: 60 }),
        (members, price, more, fee) => {
          const terms = { price, reserveFee: fee, shortPrice: price + more, cancelShare: 1, most: 1e6 };
          const share = reserveFractile(terms);
          const all = equalMembers(members);
          const best = [0, ...members].map((reserved) => reserveCost(terms, all, 0, reserved).expectedCost);
          expect(reserveCost(terms, all, 0, quantile(members, share)).expectedCost).toBeCloseTo(Math.min(...best), 6);
        },
      ),
    );
  });

  it('is exact: no order and reserve on a fine grid is cheaper', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 6 }),
        fc.record({
          price: fc.integer({ min: 0, max: 20 }),
          reserveFee: fc.integer({ min: 0, max: 10 }),
          shortPrice: fc.integer({ min: 0, max: 60 }),
          cancelShare: fc.double({ min: 0, max: 1, noNaN: true }),
        }),
        fc.integer({ min: 0, max: 40 }),
        (members, prices, most) => {
          const terms = { ...prices, most };
          const all = equalMembers(members);
          const { expectedCost } = bestReserve(terms, all);
          for (let ordered = 0; ordered <= most; ordered += 1) {
            for (let total = ordered; total <= most; total += 1) {
              expect(expectedCost).toBeLessThanOrEqual(reserveCost(terms, all, ordered, total - ordered).expectedCost + 1e-6);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('never costs more when the reserve is cheaper, and is short less often as more is ordered', () => {
    const members = equalMembers([500, 900, 1200, 2000, 2600]);
    const terms = { price: 12, reserveFee: 2, shortPrice: 30, cancelShare: 0.5, most: 5000 };
    const cheap = bestReserve({ ...terms, reserveFee: 1 }, members);
    const dear = bestReserve(terms, members);
    expect(cheap.expectedCost).toBeLessThanOrEqual(dear.expectedCost);
    const short = dear.curve.map(({ ordered }) => reserveCost(terms, members, ordered, 0).chanceShort);
    expect(short).toEqual([...short].sort((one, other) => other - one));
    expect(dear.curve.at(-1)!.chanceShort).toBe(0);
  });

  it('refuses what makes no sense, by name', () => {
    const terms = { price: 12, reserveFee: 2, shortPrice: 30, cancelShare: 0.5, most: 5000 };
    expect(() => bestReserve(terms, [])).toThrow(/members/);
    expect(() => bestReserve({ ...terms, price: -1 }, equalMembers([1]))).toThrow(/price/);
    expect(() => bestReserve({ ...terms, cancelShare: 1.5 }, equalMembers([1]))).toThrow(/cancelShare/);
    expect(() => bestReserve(terms, [{ need: 3, chance: 0.4 }])).toThrow(/chances/);
  });
});
