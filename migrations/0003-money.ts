import { sql, type Kysely } from 'kysely';

/**
 * Price books by venue, money terms by booking, and lines of cost, which are only ever added. Terms and lines are evidence: they
 * outlive their booking and go only with their venue.
 */
export const up = async (db: Kysely<unknown>): Promise<void> => {
  for (const statement of [
    'pragma user_version = 3',
    `create table price_books (
       id text primary key references venues (id) on delete cascade,
       revision integer not null check (revision >= 1),
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.venueId') = id and json_extract(document, '$.revision') = revision)
     ) strict`,
    `create table money_terms (
       id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       revision integer not null check (revision >= 1),
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.bookingId') = id and json_extract(document, '$.revision') = revision)
     ) strict`,
    `create table money_entries (
       booking_id text not null,
       number integer not null check (number >= 1),
       venue_id text not null references venues (id) on delete cascade,
       sum_minor integer not null check (sum_minor >= 0),
       document text not null check (json_valid(document)),
       primary key (booking_id, number),
       check (json_extract(document, '$.bookingId') = booking_id and json_extract(document, '$.number') = number
         and json_extract(document, '$.sum') = sum_minor)
     ) strict`,
    `create trigger money_entries_are_kept before update on money_entries
     begin select raise(abort, 'a line of cost is never changed'); end`,
  ]) {
    await sql.raw(statement).execute(db);
  }
};
