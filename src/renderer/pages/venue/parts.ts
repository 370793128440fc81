import type { Venue } from '#shared/vocabulary/venue.ts';

/** What every part of the venue page is given: the venue as it is edited, as it is stored, and how to change it. */
export interface VenuePart {
  readonly venue: Venue;
  readonly stored: Venue;
  readonly set: (venue: Venue) => void;
}

/** A list with one of its entries changed. */
export const withAt = <Thing>(all: readonly Thing[], index: number, changed: Partial<Thing>): readonly Thing[] =>
  all.map((one, at) => (at === index ? { ...one, ...changed } : one));

/** A key with a number that nothing in the list has yet. */
export const freeKey = (stem: string, taken: readonly string[]): string => {
  let number = taken.length + 1;
  while (taken.includes(`${stem}-${number}`)) number++;
  return `${stem}-${number}`;
};
