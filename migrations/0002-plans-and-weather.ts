import { sql, type Kysely } from 'kysely';

/** Plans made from kept forecasts, and the weather a venue has read, logged or expects. */
export const up = async (db: Kysely<unknown>): Promise<void> => {
  for (const statement of [
    'pragma user_version = 2',
    /* A plan is evidence like the run it was made from: it goes only with its venue. */
    `create table plan_runs (
       id text primary key,
       venue_id text not null references venues (id) on delete cascade,
       forecast_id text not null references forecast_runs (id) on delete cascade,
       booking_id text,
       fixture_id text not null,
       created_at text not null,
       now_venue_time text not null,
       jobs integer not null,
       orders integer not null,
       total_minor real not null,
       input_gzip blob not null,
       result_gzip blob not null
     ) strict`,
    'create index plan_runs_by_venue on plan_runs (venue_id, created_at)',
    `create trigger plan_runs_are_frozen before update on plan_runs
     begin select raise(abort, 'a kept plan is never changed'); end`,
    `create table weather_readings (
       id integer primary key,
       venue_id text not null references venues (id) on delete cascade,
       file_name text not null,
       from_date text not null,
       until_date text not null,
       days integer not null check (days >= 1),
       filled text not null check (json_valid(filled))
     ) strict`,
    `create table weather_days (
       venue_id text not null references venues (id) on delete cascade,
       standing text not null check (standing in ('observed', 'actual', 'expected')),
       date text not null,
       maximum_c real not null,
       minimum_c real not null,
       rain_mm real not null check (rain_mm >= 0),
       radiation_mj_m2 real,
       vapour_pressure_kpa real,
       wind_m_s real,
       primary key (venue_id, standing, date),
       check (maximum_c >= minimum_c)
     ) strict, without rowid`,
  ]) {
    await sql.raw(statement).execute(db);
  }
};
