/**
 * Published order of grasses by kind of traffic, best first; grasses on one line did alike.
 *
 * Wheel: wear of a wheel. Foot: a sled that scuffs like feet, by verdure left. The tolerance factors of the parameters must keep this
 * order for the grasses they name.
 *
 * @source shearman-beard-1975
 */
export const speciesRank = {
  wheel: [
    ['perennial-ryegrass'],
    ['tall-fescue', 'kentucky-bluegrass'],
    ['red-fescue', 'italian-ryegrass'],
    ['chewings-fescue', 'rough-bluegrass'],
  ],
  foot: [['kentucky-bluegrass'], ['perennial-ryegrass'], ['tall-fescue'], ['chewings-fescue', 'rough-bluegrass']],
} as const;

/** Place of a grass from 1 (best); null where the trial did not have it. */
export const rankOf = (grass: string, traffic: keyof typeof speciesRank): number | null => {
  const row = speciesRank[traffic].findIndex((alike) => (alike as readonly string[]).includes(grass));
  return row < 0 ? null : row + 1;
};
