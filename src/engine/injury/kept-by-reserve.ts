/** Where leaf and crowns give way as the reserve empties. */
export interface StarvationTraits {
  /** reserve at which half the leaf is still green, and the spread */
  readonly halfLeaf: number;
  readonly leafSpread: number;
  /** reserve at which half the crowns are alive, and the spread */
  readonly halfCrowns: number;
  readonly crownsSpread: number;
}

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/**
 * What is still green at a reserve: `leafKept = logistic((reserve − 0.45)/0.09)` with the start values.
 * Rises with the reserve; 0.998 at a full one. Our assumption.
 */
export const leafKept = (reserve: number, traits: StarvationTraits): number =>
  logistic((reserve - traits.halfLeaf) / traits.leafSpread);

/** What is still alive: `crownsKept = logistic((reserve − 0.22)/0.06)` with the start values. Our assumption. */
export const crownsKept = (reserve: number, traits: StarvationTraits): number =>
  logistic((reserve - traits.halfCrowns) / traits.crownsSpread);

/**
 * Share of leaf kept while the reserve moves from one level to another: the ratio of `leafKept`, never above 1.
 * The ratios of a long fall cut into steps multiply to the ratio of the whole, so that splitting a covering changes nothing, and a
 * reserve that does not fall costs nothing.
 */
export const leafKeptBetween = (before: number, after: number, traits: StarvationTraits): number =>
  after >= before ? 1 : leafKept(after, traits) / leafKept(before, traits);

/** The same for crowns. */
export const crownsKeptBetween = (before: number, after: number, traits: StarvationTraits): number =>
  after >= before ? 1 : crownsKept(after, traits) / crownsKept(before, traits);
