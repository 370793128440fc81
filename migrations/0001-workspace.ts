import { sql, type Kysely } from 'kysely';

/**
 * The first shape of a workspace.
 *
 * Things that are read and written whole (a venue, a booking, a covering) keep their document as JSON text; only what a query
 * selects or orders by stands in columns of its own. Times are wall-clock text at the venue; `created_at` is UTC.
 */
export const up = async (db: Kysely<unknown>): Promise<void> => {
  for (const statement of [
    /* 'FBk1': tells a workspace from any other database. */ 'pragma application_id = 0x46426b31',
    'pragma user_version = 1',
    `create table workspace (
       only_row integer primary key check (only_row = 1),
       started_at text not null
     ) strict`,
    `create table venues (
       id text primary key,
       revision integer not null check (revision >= 1),
       name text not null,
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.id') = id and json_extract(document, '$.revision') = revision)
     ) strict`,
    `create table coverings (
       id text primary key,
       name text not null,
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.id') = id)
     ) strict`,
    `create table vehicles (
       id text primary key,
       name text not null,
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.id') = id)
     ) strict`,
    `create table fixtures (
       id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       revision integer not null check (revision >= 1),
       kind text not null,
       name text not null,
       starts_at_venue_time text not null,
       ends_at_venue_time text not null,
       check (ends_at_venue_time > starts_at_venue_time)
     ) strict`,
    'create index fixtures_by_venue on fixtures (venue_id, starts_at_venue_time)',
    `create table bookings (
       id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       revision integer not null check (revision >= 1),
       name text not null,
       kind text not null,
       stage text not null,
       first_on_venue_time text,
       last_off_venue_time text,
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.id') = id and json_extract(document, '$.revision') = revision),
       check (last_off_venue_time >= first_on_venue_time)
     ) strict`,
    'create index bookings_by_venue on bookings (venue_id, first_on_venue_time)',
    /* A run outlives its booking and its fixture: it is evidence. It goes only with its venue. */
    `create table forecast_runs (
       id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       booking_id text,
       fixture_id text not null,
       created_at text not null,
       members integer not null check (members >= 1),
       seed integer not null check (seed >= 0),
       cell_size_m integer not null,
       engine_version text not null,
       parameter_version text not null,
       input_sha256 text not null check (length(input_sha256) = 64),
       input_gzip blob not null,
       result_gzip blob not null
     ) strict`,
    'create index forecast_runs_by_venue on forecast_runs (venue_id, created_at)',
    `create trigger forecast_runs_are_frozen before update on forecast_runs
     begin select raise(abort, 'a kept run is never changed'); end`,
  ]) {
    await sql.raw(statement).execute(db);
  }
};
