import { sql, type Kysely } from 'kysely';

/**
 * What a person changes on a booking before storing it, so that a crash takes none of it; and indices for the evidence, runs and plans of
 * one event among ten seasons of them.
 */
export const up = async (db: Kysely<unknown>): Promise<void> => {
  for (const statement of [
    'pragma user_version = 5',
    /* A draft may be of a booking that is not stored yet: only its venue must be there. */
    `create table drafts (
       booking_id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       kept_at text not null,
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.id') = booking_id and json_extract(document, '$.venueId') = venue_id)
     ) strict`,
    'create index drafts_by_venue on drafts (venue_id, kept_at)',
    'create index inspections_by_booking on inspections (booking_id, at_venue_time)',
    'create index photographs_by_booking on photographs (booking_id, taken_at_venue_time)',
  ]) {
    await sql.raw(statement).execute(db);
  }
};
