import type { Contents } from '#store/store.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { BookingMoney } from '#shared/vocabulary/money.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { accountOf } from '#services/money/account.ts';

/** When the last covering comes off as booked; null where nothing lies on the turf. */
export const lastOffOf = (booking: Booking): string | null =>
  booking.layers
    .map((layer) => layer.off)
    .toSorted()
    .at(-1) ?? null;

/** Everything about the money of a booking as one transaction sees it. */
export const moneyOf = async (contents: Contents, venue: Venue, booking: Booking): Promise<BookingMoney> => {
  const [terms, prices, entries] = [
    await contents.money.terms(booking.id),
    await contents.money.priceBook(venue.id),
    await contents.money.entries(booking.id),
  ];
  const { currency } = venue.rules;
  return { bookingId: booking.id, currency, terms, prices, account: accountOf(currency, terms, entries, lastOffOf(booking)) };
};
