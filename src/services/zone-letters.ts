import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';

/** Letters of the event's zones, of the venue's, and of the rest of the turf, as a forecast names them. */
export const zoneLetters = (venue: Venue, booking: Booking | null): ReadonlySet<string> => {
  const taken = new Set(booking?.zones.map((zone) => zone.letter));
  for (const letter of [...venue.zones.map((zone) => zone.letter), 'R']) {
    let free = letter;
    for (let number = 1; taken.has(free); number++) free = `${letter[0]!}${number}`;
    taken.add(free);
  }
  return taken;
};
