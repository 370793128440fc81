import { Booking } from '#shared/vocabulary/booking.ts';
import { documentReader } from '#store/documents.ts';
import { refusal, removeRow, standingRevision, type Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

/** The first hour anything lies on the turf and the last; null when nothing does. Wall-clock text sorts as time. */
const coveredSpan = (booking: Booking): { readonly firstOn: string | null; readonly lastOff: string | null } => ({
  firstOn: booking.layers.map((layer) => layer.on).toSorted()[0] ?? null,
  lastOff:
    booking.layers
      .map((layer) => layer.off)
      .toSorted()
      .at(-1) ?? null,
});

const bookingOf = documentReader(Booking);

export const bookingsIn = (work: Work): Contents['bookings'] => {
  const inOrder = (venueId: string) =>
    work
      .selectFrom('bookings')
      .where('venue_id', '=', venueId)
      .orderBy('first_on_venue_time', (order) => order.asc().nullsLast())
      .orderBy('name')
      .orderBy('id');

  return {
    linesOfVenue: async (venueId) =>
      (await inOrder(venueId).selectAll().execute()).map((row) => ({
        id: row.id,
        venueId: row.venue_id,
        name: row.name,
        kind: row.kind,
        stage: row.stage,
        firstOn: row.first_on_venue_time,
        lastOff: row.last_off_venue_time,
        revision: row.revision,
      })),

    ofVenue: async (venueId) => (await inOrder(venueId).select('document').execute()).map((row) => bookingOf(row.document)),

    near: async (venueId, from, until) => {
      const rows = await inOrder(venueId)
        .select('document')
        .where(({ or, and, eb }) =>
          or([
            eb('first_on_venue_time', 'is', null),
            and([eb('first_on_venue_time', '<=', until), eb('last_off_venue_time', '>=', from)]),
          ]),
        )
        .execute();
      return rows.map((row) => bookingOf(row.document));
    },

    find: async (id) => {
      const row = await work.selectFrom('bookings').select('document').where('id', '=', id).executeTakeFirst();
      return row ? bookingOf(row.document) : null;
    },

    save: async (booking) => {
      const refused = refusal(booking.revision, await standingRevision(work, 'bookings', booking.id));
      if (refused) return refused;
      const next: Booking = { ...booking, revision: booking.revision + 1 };
      const span = coveredSpan(next);
      const row = {
        id: next.id,
        venue_id: next.venueId,
        revision: next.revision,
        name: next.name,
        kind: next.kind,
        stage: next.stage,
        first_on_venue_time: span.firstOn,
        last_off_venue_time: span.lastOff,
        document: JSON.stringify(next),
      };
      await work
        .insertInto('bookings')
        .values(row)
        .onConflict((taken) => taken.column('id').doUpdateSet(row))
        .execute();
      return { outcome: 'stored', value: next };
    },

    remove: (id, revision) => removeRow(work, 'bookings', id, revision),
  };
};
