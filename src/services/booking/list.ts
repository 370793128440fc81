import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listBookings: Service<'booking/list'> = ({ store }, { venueId }) =>
  store.read(async (contents) =>
    (await contents.venues.find(venueId))
      ? done([...(await contents.bookings.linesOfVenue(venueId))])
      : notFound('venue', venueId),
  );
