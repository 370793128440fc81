import type { Problem } from '#shared/contract/failure.ts';

/** What a check found, by the kind of failure it makes. Both empty: nothing is wrong. */
export interface Findings {
  readonly invalid: readonly Problem[];
  readonly outOfRange: readonly Problem[];
}

/** The problem with each item whose key stands earlier in the list too. */
export const duplicates = <Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string,
  fieldOf: (index: number) => string,
  what: string,
): readonly Problem[] =>
  items.flatMap((item, index) => {
    const first = items.findIndex((other) => keyOf(other) === keyOf(item));
    return first === index
      ? []
      : [{ field: fieldOf(index), reason: `is the same ${what} "${keyOf(item)}" as number ${first} of the list` }];
  });
