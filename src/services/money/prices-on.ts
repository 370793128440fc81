import type { Farm } from '#shared/vocabulary/resources.ts';
import type { PriceBook, PriceKind } from '#shared/vocabulary/money.ts';
import type { LocalDate } from '#shared/vocabulary/primitives.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';

/** What a price is asked for. */
export interface PricedThing {
  readonly kind: PriceKind;
  /** Farm or covering; null where it does not matter. */
  readonly of: string | null;
  readonly cut: 'thin' | 'thick' | null;
}

export interface KnownPrice {
  readonly price: number;
  /** Where it stands. */
  readonly origin: string;
}

/** The price of a thing on a day: the price book's narrowest line that holds, otherwise what the venue's own record says; null when neither has one. */
export const priceOn = (thing: PricedThing, date: LocalDate, book: PriceBook | null, venue: Venue): KnownPrice | null => {
  const fitting = (book?.lines ?? [])
    .filter(
      (line) =>
        line.kind === thing.kind &&
        (line.of === null || line.of === thing.of) &&
        (line.cut === null || line.cut === thing.cut) &&
        line.from <= date &&
        (line.until === null || date <= line.until),
    )
    .toSorted((a, b) => narrowness(b) - narrowness(a) || (a.from < b.from ? 1 : -1));
  const best = fitting[0];
  if (best) return { price: best.price, origin: `price book from ${best.from}${best.origin === '' ? '' : `: ${best.origin}`}` };
  const own = venuePrice(thing, venue);
  return own === null ? null : { price: own, origin: 'venue' };
};

const narrowness = (line: { readonly of: string | null; readonly cut: string | null }): number =>
  (line.of === null ? 0 : 2) + (line.cut === null ? 0 : 1);

const venuePrice = ({ kind, of, cut }: PricedThing, venue: Venue): number | null => {
  const farm = venue.farms.find((one) => one.id === of) ?? null;
  switch (kind) {
    case 'labour':
      return venue.workforce.hourPrice;
    case 'overtime':
      return venue.workforce.overtimePrice;
    case 'sod':
      return farm === null || cut === null ? null : sodPrice(farm, cut);
    case 'freight':
      return farm?.truckPrice ?? null;
    case 'seed':
    case 'sand':
    case 'feed':
    case 'carpet':
    case 'disposal':
      return venue.prices[kind] ?? null;
    default:
      return null;
  }
};

const sodPrice = (farm: Farm, cut: 'thin' | 'thick'): number | null => (cut === 'thin' ? farm.thinPrice : farm.thickPrice);
