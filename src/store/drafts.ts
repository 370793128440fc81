import { UnfinishedBooking } from '#shared/vocabulary/booking.ts';
import type { Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

export const draftsIn = (work: Work): Contents['drafts'] => ({
  ofVenue: async (venueId) => {
    const rows = await work
      .selectFrom('drafts')
      .selectAll()
      .where('venue_id', '=', venueId)
      .orderBy('kept_at', 'desc')
      .orderBy('booking_id')
      .execute();
    return rows.map((row) => ({ keptAt: row.kept_at, booking: UnfinishedBooking.parse(JSON.parse(row.document)) }));
  },

  keep: async ({ keptAt, booking }) => {
    const row = { booking_id: booking.id, venue_id: booking.venueId, kept_at: keptAt, document: JSON.stringify(booking) };
    await work
      .insertInto('drafts')
      .values(row)
      .onConflict((taken) => taken.column('booking_id').doUpdateSet(row))
      .execute();
  },

  drop: async (bookingId) => {
    await work.deleteFrom('drafts').where('booking_id', '=', bookingId).execute();
  },
});
