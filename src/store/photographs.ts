import { Photograph } from '#shared/vocabulary/photograph.ts';
import type { Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

export const photographsIn = (work: Work): Contents['photographs'] => ({
  find: async (id) => {
    const row = await work.selectFrom('photographs').select('document').where('id', '=', id).executeTakeFirst();
    return row ? Photograph.parse(JSON.parse(row.document)) : null;
  },

  list: async (venueId, bookingId) => {
    let asked = work.selectFrom('photographs').select('document').where('venue_id', '=', venueId);
    if (bookingId !== null) asked = asked.where('booking_id', '=', bookingId);
    const rows = await asked.orderBy('taken_at_venue_time').orderBy('id').execute();
    return rows.map((row) => Photograph.parse(JSON.parse(row.document)));
  },

  thumbnail: async (id) => {
    const row = await work.selectFrom('thumbnails').select('jpeg').where('photograph_id', '=', id).executeTakeFirst();
    return row?.jpeg ?? null;
  },

  add: async (photograph, thumbnail) => {
    await work
      .insertInto('photographs')
      .values({
        id: photograph.id,
        venue_id: photograph.venueId,
        booking_id: photograph.bookingId,
        taken_at_venue_time: photograph.takenAt,
        sha256: photograph.sha256,
        media_type: photograph.mediaType,
        document: JSON.stringify(photograph),
      })
      .execute();
    await work
      .insertInto('thumbnails')
      .values({ photograph_id: photograph.id, venue_id: photograph.venueId, jpeg: thumbnail })
      .execute();
  },
});
