import { sql, type Kysely } from 'kysely';

/**
 * The home date of every forecast beside its packed result, so that the plans of one year are found without unpacking those of ten. A
 * table of its own: a kept run is never changed.
 */
export const up = async (db: Kysely<unknown>): Promise<void> => {
  for (const statement of [
    'pragma user_version = 6',
    `create table forecast_home_dates (
       forecast_id text primary key references forecast_runs (id) on delete cascade,
       venue_id text not null references venues (id) on delete cascade,
       starts_at_venue_time text not null
     ) strict`,
    'create index forecast_home_dates_by_venue on forecast_home_dates (venue_id, starts_at_venue_time)',
    'create index plan_runs_by_forecast on plan_runs (forecast_id)',
    // `unpacked` is a function of the connection: the text of a frozen run.
    `insert into forecast_home_dates
       select id, venue_id, json_extract(unpacked(result_gzip), '$.homeDate.start') from forecast_runs`,
  ]) {
    await sql.raw(statement).execute(db);
  }
};
