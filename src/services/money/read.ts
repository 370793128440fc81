import { done, notFound } from '#services/answers.ts';
import { moneyOf } from '#services/money/records.ts';
import type { Service } from '#services/needs.ts';

/** Terms, prices and the account of a booking. */
export const readMoney: Service<'money/read'> = ({ store }, { bookingId }) =>
  store.read(async (contents) => {
    const booking = await contents.bookings.find(bookingId);
    if (!booking) return notFound('booking', bookingId);
    const venue = await contents.venues.find(booking.venueId);
    if (!venue) return notFound('venue', booking.venueId);
    return done(await moneyOf(contents, venue, booking));
  });
