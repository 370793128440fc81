import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const readBooking: Service<'booking/read'> = async ({ store }, { id }) => {
  const booking = await store.read((contents) => contents.bookings.find(id));
  return booking ? done(booking) : notFound('booking', id);
};
