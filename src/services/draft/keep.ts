import { done, invalid } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

/** A draft may be unfinished: it has the shape of a booking, and nothing else of it is checked until it is stored. */
export const keepDraft: Service<'draft/keep'> = ({ store, now }, { booking }) =>
  store.write(async (contents) => {
    if (!(await contents.venues.find(booking.venueId)))
      return invalid([{ field: 'booking.venueId', reason: `there is no venue "${booking.venueId}" in this workspace` }]);
    const keptAt = new Date(now()).toISOString();
    await contents.drafts.keep({ keptAt, booking });
    return done({ keptAt });
  });
