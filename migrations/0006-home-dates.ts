import { gunzipSync } from 'node:zlib';
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
  ]) {
    await sql.raw(statement).execute(db);
  }
  const { rows } = await sql<{ id: string; venue_id: string }>`select id, venue_id from forecast_runs`.execute(db);
  for (const { id, venue_id } of rows) {
    const kept = await sql<{ result_gzip: Uint8Array }>`select result_gzip from forecast_runs where id = ${id}`.execute(db);
    const { homeDate } = JSON.parse(gunzipSync(kept.rows[0]!.result_gzip).toString('utf8')) as { homeDate: { start: string } };
    await sql`insert into forecast_home_dates values (${id}, ${venue_id}, ${homeDate.start})`.execute(db);
  }
};
