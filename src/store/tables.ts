import type { Generated } from 'kysely';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Fixture } from '#shared/vocabulary/venue.ts';

/** The tables as the migrations leave them. */
export interface Tables {
  workspace: { only_row: number; started_at: string };
  venues: { id: string; revision: number; name: string; document: string };
  coverings: ClassRow;
  vehicles: ClassRow;
  fixtures: {
    id: string;
    venue_id: string;
    revision: number;
    kind: Fixture['kind'];
    name: string;
    starts_at_venue_time: string;
    ends_at_venue_time: string;
  };
  bookings: {
    id: string;
    venue_id: string;
    revision: number;
    name: string;
    kind: Booking['kind'];
    stage: Booking['stage'];
    first_on_venue_time: string | null;
    last_off_venue_time: string | null;
    document: string;
  };
  drafts: { booking_id: string; venue_id: string; kept_at: string; document: string };
  forecast_runs: {
    id: string;
    venue_id: string;
    booking_id: string | null;
    fixture_id: string;
    created_at: string;
    members: number;
    seed: number;
    cell_size_m: number;
    engine_version: string;
    parameter_version: string;
    input_sha256: string;
    input_gzip: Uint8Array;
    result_gzip: Uint8Array;
  };
  forecast_home_dates: { forecast_id: string; venue_id: string; starts_at_venue_time: string };
  plan_runs: {
    id: string;
    venue_id: string;
    forecast_id: string;
    booking_id: string | null;
    fixture_id: string;
    created_at: string;
    now_venue_time: string;
    jobs: number;
    orders: number;
    total_minor: number;
    input_gzip: Uint8Array;
    result_gzip: Uint8Array;
  };
  price_books: { id: string; revision: number; document: string };
  money_terms: { id: string; venue_id: string; revision: number; document: string };
  money_entries: { booking_id: string; number: number; venue_id: string; sum_minor: number; document: string };
  inspections: {
    id: string;
    venue_id: string;
    booking_id: string | null;
    kind: string;
    at_venue_time: string;
    entered_at: string;
    corrects: string | null;
    document: string;
  };
  photographs: {
    id: string;
    venue_id: string;
    booking_id: string | null;
    taken_at_venue_time: string;
    sha256: string;
    media_type: string;
    document: string;
  };
  thumbnails: { photograph_id: string; venue_id: string; jpeg: Uint8Array };
  assimilations: { run_id: string; venue_id: string; parent_id: string; created_at: string; document_gzip: Uint8Array };
  proposals: { id: string; venue_id: string; created_at: string; document: string };
  proposal_decisions: { proposal_id: string; venue_id: string; document: string };
  weather_readings: {
    id: Generated<number>;
    venue_id: string;
    file_name: string;
    from_date: string;
    until_date: string;
    days: number;
    filled: string;
  };
  weather_days: {
    venue_id: string;
    standing: KeptDayStanding;
    date: string;
    maximum_c: number;
    minimum_c: number;
    rain_mm: number;
    radiation_mj_m2: number | null;
    vapour_pressure_kpa: number | null;
    wind_m_s: number | null;
  };
}

/** Days of observed years, days logged, and days expected next. */
export type KeptDayStanding = 'observed' | 'actual' | 'expected';

interface ClassRow {
  id: string;
  name: string;
  document: string;
}
