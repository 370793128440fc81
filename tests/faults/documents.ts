import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';

/** A venue with its classes, home date and two bookings: rows that come together or not at all. */
export const documentOf = (id: string) => ({
  format: 'fieldback-venue' as const,
  version: 1 as const,
  venue: { ...smallVenue, id },
  coverings: [boardFloor],
  vehicles: [cart],
  fixtures: [{ ...homeDate, id: `${id}-home`, venueId: id }],
  bookings: [
    { ...concert, id: `${id}-one`, venueId: id, note: 'x'.repeat(3000) },
    // Held, not sure: two sure events cannot lie on one spot.
    { ...concert, id: `${id}-two`, venueId: id, stage: 'hold' as const, note: 'y'.repeat(3000) },
  ],
});
