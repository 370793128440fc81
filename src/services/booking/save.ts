import { invalid, storedAnswer } from '#services/answers.ts';
import { checkBooking, spanOf } from '#services/checks/booking.ts';
import { clashProblems, isSure } from '#services/checks/clashes.ts';
import type { Service } from '#services/needs.ts';

export const saveBooking: Service<'booking/save'> = ({ store }, { booking }) =>
  store.write(async (contents) => {
    const venue = await contents.venues.find(booking.venueId);
    if (!venue)
      return invalid([{ field: 'booking.venueId', reason: `there is no venue "${booking.venueId}" in this workspace` }]);
    const coverings = new Set((await contents.coverings.list()).map((covering) => covering.id));
    const vehicles = new Set((await contents.vehicles.list()).map((vehicle) => vehicle.id));
    const span = isSure(booking) ? spanOf(booking) : null;
    const near = span ? await contents.bookings.near(venue.id, span.first, span.last) : [];
    const others = near.filter((other) => other.id !== booking.id && isSure(other));
    const problems = [
      ...checkBooking(booking, { venue, coverings, vehicles }, 'booking'),
      ...clashProblems(booking, others, 'booking'),
    ];
    if (problems.length > 0) return invalid(problems);
    return storedAnswer(await contents.bookings.save(booking), 'booking', booking.id, booking.revision);
  });
