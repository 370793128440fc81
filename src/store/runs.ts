import { ForecastRun } from '#shared/vocabulary/forecast.ts';
import { packed, unpacked } from '#store/packed.ts';
import type { Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

export const runsIn = (work: Work): Contents['runs'] => ({
  find: async (id) => {
    const row = await work.selectFrom('forecast_runs').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) return null;
    return ForecastRun.parse({
      id: row.id,
      bookingId: row.booking_id,
      venueId: row.venue_id,
      fixtureId: row.fixture_id,
      createdAt: row.created_at,
      engineVersion: row.engine_version,
      parameterVersion: row.parameter_version,
      seed: row.seed,
      inputHash: row.input_sha256,
      result: JSON.parse(unpacked(row.result_gzip)),
    });
  },

  inputOf: async (id) => {
    const row = await work.selectFrom('forecast_runs').select('input_gzip').where('id', '=', id).executeTakeFirst();
    return row ? unpacked(row.input_gzip) : null;
  },

  linesOfVenue: async (venueId) => {
    const rows = await work
      .selectFrom('forecast_runs')
      .select(['id', 'booking_id', 'venue_id', 'fixture_id', 'created_at', 'members', 'seed'])
      .where('venue_id', '=', venueId)
      .orderBy('created_at', 'desc')
      .orderBy('id')
      .execute();
    return rows.map((row) => ({
      id: row.id,
      bookingId: row.booking_id,
      venueId: row.venue_id,
      fixtureId: row.fixture_id,
      createdAt: row.created_at,
      members: row.members,
      seed: row.seed,
    }));
  },

  keep: async ({ run, members, cellSize, input }) => {
    await work
      .insertInto('forecast_runs')
      .values({
        id: run.id,
        venue_id: run.venueId,
        booking_id: run.bookingId,
        fixture_id: run.fixtureId,
        created_at: run.createdAt,
        members,
        seed: run.seed,
        cell_size_m: cellSize,
        engine_version: run.engineVersion,
        parameter_version: run.parameterVersion,
        input_sha256: run.inputHash,
        input_gzip: packed(input),
        result_gzip: packed(JSON.stringify(run.result)),
      })
      .execute();
    await work
      .insertInto('forecast_home_dates')
      .values({ forecast_id: run.id, venue_id: run.venueId, starts_at_venue_time: run.result.homeDate.start })
      .execute();
  },
});
