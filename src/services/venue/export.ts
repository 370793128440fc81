import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

/** Only the covering and machine classes that its bookings name go along. */
export const exportVenue: Service<'venue/export'> = ({ store }, { id }) =>
  store.read(async (contents) => {
    const venue = await contents.venues.find(id);
    if (!venue) return notFound('venue', id);
    const bookings = await contents.bookings.ofVenue(id);
    const coverings = new Set(bookings.flatMap((booking) => booking.layers.map((layer) => layer.covering)));
    const vehicles = new Set(bookings.flatMap((booking) => booking.traffic.map((pass) => pass.vehicle)));
    return done({
      format: 'fieldback-venue' as const,
      version: 1 as const,
      venue,
      coverings: (await contents.coverings.list()).filter((covering) => coverings.has(covering.id)),
      vehicles: (await contents.vehicles.list()).filter((vehicle) => vehicles.has(vehicle.id)),
      fixtures: await contents.fixtures.ofVenue(id),
      bookings,
    });
  });
