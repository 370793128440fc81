/** Chance that comes out the same for the same seed. */
export interface Chance {
  /** From 0 up to 1. */
  next(): number;
  /** A whole number from 0 up to below `limit`. */
  below(limit: number): number;
  pick<Value>(from: readonly Value[]): Value;
}

/** Mulberry32, a 32-bit generator of G. Tommy Ettinger (public domain), written out anew: enough to spread faults about. */
export const chance = (seed: number): Chance => {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return { next, below, pick: (from) => from[below(from.length)]! };
};
