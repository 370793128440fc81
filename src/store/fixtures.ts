import type { Selectable } from 'kysely';
import type { Fixture } from '#shared/vocabulary/venue.ts';
import { refusal, removeRow, standingRevision, type Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';
import type { Tables } from '#store/tables.ts';

const fixtureOf = (row: Selectable<Tables['fixtures']>): Fixture => ({
  id: row.id,
  revision: row.revision,
  venueId: row.venue_id,
  kind: row.kind,
  name: row.name,
  start: row.starts_at_venue_time,
  end: row.ends_at_venue_time,
});

const rowOf = (fixture: Fixture): Selectable<Tables['fixtures']> => ({
  id: fixture.id,
  revision: fixture.revision,
  venue_id: fixture.venueId,
  kind: fixture.kind,
  name: fixture.name,
  starts_at_venue_time: fixture.start,
  ends_at_venue_time: fixture.end,
});

export const fixturesIn = (work: Work): Contents['fixtures'] => ({
  ofVenue: async (venueId) => {
    const rows = work.selectFrom('fixtures').selectAll().where('venue_id', '=', venueId);
    return (await rows.orderBy('starts_at_venue_time').orderBy('id').execute()).map(fixtureOf);
  },

  find: async (id) => {
    const row = await work.selectFrom('fixtures').selectAll().where('id', '=', id).executeTakeFirst();
    return row ? fixtureOf(row) : null;
  },

  save: async (fixture) => {
    const refused = refusal(fixture.revision, await standingRevision(work, 'fixtures', fixture.id));
    if (refused) return refused;
    const next: Fixture = { ...fixture, revision: fixture.revision + 1 };
    await work
      .insertInto('fixtures')
      .values(rowOf(next))
      .onConflict((taken) => taken.column('id').doUpdateSet(rowOf(next)))
      .execute();
    return { outcome: 'stored', value: next };
  },

  remove: (id, revision) => removeRow(work, 'fixtures', id, revision),
});
