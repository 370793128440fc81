import { notFound, storedAnswer } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

/** Keeps what was agreed about money for a booking. */
export const saveTerms: Service<'money/terms'> = ({ store }, { terms }) =>
  store.write(async (contents) => {
    const booking = await contents.bookings.find(terms.bookingId);
    if (!booking) return notFound('booking', terms.bookingId);
    return storedAnswer(await contents.money.saveTerms(booking.venueId, terms), 'money terms', terms.bookingId, terms.revision);
  });
