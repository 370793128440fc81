/** A unit price with the year it was true in; null where no quotation was entered. */
export interface UnitPrice {
  /** in the venue's currency per unit of the quantity */
  readonly price: number | null;
  readonly year: number | null;
}

export type CostLine =
  | { readonly known: true; readonly amount: number; readonly year: number | null }
  | { readonly known: false; readonly words: 'no price' };

/** Quantity times price with its year. A blank price gives "no price", never zero. @throws RangeError for a negative quantity or price */
export const costOf = (quantity: number, unit: UnitPrice): CostLine => {
  if (!(quantity >= 0)) throw new RangeError(`quantity: must not be negative, not ${quantity}`);
  if (unit.price === null) return { known: false, words: 'no price' };
  if (!(unit.price >= 0)) throw new RangeError(`price: must not be negative, not ${unit.price}`);
  return { known: true, amount: quantity * unit.price, year: unit.year };
};
