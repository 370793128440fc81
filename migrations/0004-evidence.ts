import { sql, type Kysely } from 'kysely';

/**
 * Inspections, photographs, and what was learnt from them. All of it is evidence: rows are only ever added, never changed, and go only
 * with their venue. Bytes of photographs lie in a folder beside the file under their hash; only a small picture is kept here.
 */
export const up = async (db: Kysely<unknown>): Promise<void> => {
  const kept = (table: string, words: string): readonly string[] => [
    `create trigger ${table}_are_not_changed before update on ${table}
     begin select raise(abort, '${words} is never changed'); end`,
    `create trigger ${table}_are_kept before delete on ${table}
     when exists (select 1 from venues where id = old.venue_id)
     begin select raise(abort, '${words} goes only with its venue'); end`,
  ];
  for (const statement of [
    'pragma user_version = 4',
    `create table inspections (
       id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       booking_id text,
       kind text not null,
       at_venue_time text not null,
       entered_at text not null,
       corrects text unique references inspections (id) on delete cascade,
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.id') = id and json_extract(document, '$.venueId') = venue_id),
       check (corrects is not id)
     ) strict`,
    'create index inspections_by_venue on inspections (venue_id, at_venue_time)',
    ...kept('inspections', 'an inspection'),
    `create table photographs (
       id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       booking_id text,
       taken_at_venue_time text not null,
       sha256 text not null check (length(sha256) = 64),
       media_type text not null,
       document text not null check (json_valid(document)),
       check (json_extract(document, '$.id') = id and json_extract(document, '$.sha256') = sha256)
     ) strict`,
    'create index photographs_by_venue on photographs (venue_id, taken_at_venue_time)',
    ...kept('photographs', 'a photograph'),
    /* In a table of its own, so that a list of photographs reads none of them. */
    `create table thumbnails (
       photograph_id text primary key references photographs (id) on delete cascade,
       venue_id text not null,
       jpeg blob not null
     ) strict`,
    ...kept('thumbnails', 'a small picture'),
    `create table assimilations (
       run_id text primary key references forecast_runs (id) on delete cascade,
       venue_id text not null references venues (id) on delete cascade,
       parent_id text not null,
       created_at text not null,
       document_gzip blob not null
     ) strict`,
    'create index assimilations_by_venue on assimilations (venue_id, created_at)',
    ...kept('assimilations', 'what was learnt'),
    `create table proposals (
       id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       created_at text not null,
       document text not null check (json_valid(document))
     ) strict`,
    'create index proposals_by_venue on proposals (venue_id, created_at)',
    ...kept('proposals', 'a proposal'),
    /* The primary key lets a proposal be decided once. */
    `create table proposal_decisions (
       proposal_id text primary key references proposals (id) on delete cascade,
       venue_id text not null,
       document text not null check (json_valid(document))
     ) strict`,
    ...kept('proposal_decisions', 'a decision'),
  ]) {
    await sql.raw(statement).execute(db);
  }
};
