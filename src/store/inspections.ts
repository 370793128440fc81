import { sql } from 'kysely';
import { Inspection } from '#shared/vocabulary/inspection.ts';
import type { Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

export const inspectionsIn = (work: Work): Contents['inspections'] => {
  const lines = () =>
    work
      .selectFrom('inspections as kept')
      .leftJoin('inspections as later', 'later.corrects', 'kept.id')
      .select(['kept.document as document', 'later.id as later']);
  const lineOf = (row: { document: string; later: string | null }) => ({
    inspection: Inspection.parse(JSON.parse(row.document)),
    correctedBy: row.later,
  });

  return {
    find: async (id) => {
      const row = await lines().where('kept.id', '=', id).executeTakeFirst();
      return row ? lineOf(row) : null;
    },

    list: async (venueId, bookingId) => {
      let asked = lines().where('kept.venue_id', '=', venueId);
      if (bookingId !== null) asked = asked.where('kept.booking_id', '=', bookingId);
      const rows = asked.orderBy('kept.at_venue_time').orderBy(sql`kept.rowid`);
      return (await rows.execute()).map(lineOf);
    },

    add: async (inspection) => {
      await work
        .insertInto('inspections')
        .values({
          id: inspection.id,
          venue_id: inspection.venueId,
          booking_id: inspection.bookingId,
          kind: inspection.kind,
          at_venue_time: inspection.at,
          entered_at: inspection.enteredAt,
          corrects: inspection.corrects,
          document: JSON.stringify(inspection),
        })
        .execute();
    },
  };
};
