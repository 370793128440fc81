import { Venue } from '#shared/vocabulary/venue.ts';
import { documentReader } from '#store/documents.ts';
import { refusal, removeRow, standingRevision, type Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

const venueOf = documentReader(Venue);

export const venuesIn = (work: Work): Contents['venues'] => ({
  list: () => work.selectFrom('venues').select(['id', 'name', 'revision']).orderBy('name').orderBy('id').execute(),

  find: async (id) => {
    const row = await work.selectFrom('venues').select('document').where('id', '=', id).executeTakeFirst();
    return row ? venueOf(row.document) : null;
  },

  save: async (venue) => {
    const refused = refusal(venue.revision, await standingRevision(work, 'venues', venue.id));
    if (refused) return refused;
    const next: Venue = { ...venue, revision: venue.revision + 1 };
    const row = { id: next.id, revision: next.revision, name: next.name, document: JSON.stringify(next) };
    await work
      .insertInto('venues')
      .values(row)
      .onConflict((taken) => taken.column('id').doUpdateSet(row))
      .execute();
    return { outcome: 'stored', value: next };
  },

  remove: (id, revision) => removeRow(work, 'venues', id, revision),
});
