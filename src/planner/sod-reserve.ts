import type { ReserveCost } from '#shared/vocabulary/sod.ts';

/**
 * How much sod to order or to hold in reserve before it is known how much is needed.
 *
 * @source arrow-harris-marschak-1951
 */

/** Money per m². All prices non-negative. */
export interface ReserveTerms {
  /** Price of sod ordered now, or taken from the reserve later. */
  readonly price: number;
  /** Fee to hold a m² in reserve; gone whether it is used or not. */
  readonly reserveFee: number;
  /** Price of a m² that is short at the end: rush order with freight, or the cost of not being ready. */
  readonly shortPrice: number;
  /** Share of the price lost when ordered sod is called off: 1 where nothing comes back. */
  readonly cancelShare: number;
  /** Most that can be ordered and reserved together, m². */
  readonly most: number;
}

/** A need with its chance; the chances add to 1. */
export interface NeedMember {
  /** m² */
  readonly need: number;
  readonly chance: number;
}

/** Members of equal chance. */
export const equalMembers = (needs: readonly number[]): readonly NeedMember[] =>
  needs.map((need) => ({ need, chance: 1 / needs.length }));

export interface ReserveAnswer extends ReserveCost {
  /** Best reserve for each amount ordered: cost and chance of being short. */
  readonly curve: readonly ReserveCost[];
}

/**
 * Expected cost of ordering Q and reserving R:
 *
 *     price·Q + fee·R + E[ price·min(R, (S − Q)⁺) + short·(S − Q − R)⁺ − (1 − cancelShare)·price·(Q − S)⁺ ]
 *
 * The reserve is called once the need S is seen (the second stage); called at all only where the price is below that of being short.
 */
export const reserveCost = (
  terms: ReserveTerms,
  members: readonly NeedMember[],
  ordered: number,
  reserved: number,
): ReserveCost => {
  const { price, reserveFee, shortPrice, cancelShare } = terms;
  let cost = price * ordered + reserveFee * reserved;
  let short = 0;
  for (const { need, chance } of members) {
    const beyond = Math.max(0, need - ordered);
    const called = price <= shortPrice ? Math.min(reserved, beyond) : 0;
    const back = (1 - cancelShare) * price * Math.max(0, ordered - need);
    cost += chance * (price * called + shortPrice * (beyond - called) - back);
    if (need > ordered + reserved + 1e-9) short += chance;
  }
  return { ordered, reserved, expectedCost: cost, chanceShort: short };
};

/**
 * The best order and reserve by enumeration: the cost is piecewise linear in Q and Q + R with corners at the needs of the members only,
 * so trying those (and nothing, and all there is) is exact. Ties go to the smaller order, then the smaller reserve.
 * Errors: `RangeError` for no members, negative prices or chances that do not add to 1.
 */
export const bestReserve = (terms: ReserveTerms, members: readonly NeedMember[]): ReserveAnswer => {
  if (members.length === 0) throw new RangeError('members: there must be at least one');
  for (const [field, value] of Object.entries(terms)) {
    if (!(value >= 0)) throw new RangeError(`${field}: must not be negative`);
  }
  if (terms.cancelShare > 1) throw new RangeError('cancelShare: must be at most 1');
  if (Math.abs(members.reduce((sum, { chance }) => sum + chance, 0) - 1) > 1e-6)
    throw new RangeError('members: chances must add to 1');
  const corners = [...new Set([0, terms.most, ...members.map(({ need }) => Math.min(need, terms.most))])].sort(
    (one, other) => one - other,
  );
  const curve = corners.map((ordered) => {
    const all = corners.filter((total) => total >= ordered).map((total) => reserveCost(terms, members, ordered, total - ordered));
    return all.reduce((best, one) => (one.expectedCost < best.expectedCost - 1e-9 ? one : best));
  });
  const best = curve.reduce((least, one) => (one.expectedCost < least.expectedCost - 1e-9 ? one : least));
  return { ...best, curve };
};

/**
 * Share of the needs that a firm order should cover when nothing can be reserved: underage / (underage + overage), with
 * underage = short − price and overage = price − what comes back = cancelShare · price. 0 where being short is cheaper.
 */
export const orderFractile = ({ price, shortPrice, cancelShare }: ReserveTerms): number => {
  const underage = shortPrice - price;
  const overage = cancelShare * price;
  return underage <= 0 ? 0 : underage / (underage + overage);
};

/** The same for a reserve called at `price` once the need is known: (short − price − fee) / (short − price). */
export const reserveFractile = ({ price, reserveFee, shortPrice }: ReserveTerms): number =>
  shortPrice - price <= reserveFee ? 0 : (shortPrice - price - reserveFee) / (shortPrice - price);
