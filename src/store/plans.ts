import { PlanRun } from '#shared/contract/contract.ts';
import { packed, unpacked } from '#store/packed.ts';
import type { Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

export const plansIn = (work: Work): Contents['plans'] => ({
  find: async (id) => {
    const row = await work.selectFrom('plan_runs').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) return null;
    return PlanRun.parse({
      id: row.id,
      forecastId: row.forecast_id,
      venueId: row.venue_id,
      bookingId: row.booking_id,
      fixtureId: row.fixture_id,
      createdAt: row.created_at,
      now: row.now_venue_time,
      plan: JSON.parse(unpacked(row.result_gzip)),
    });
  },

  inputOf: async (id) => {
    const row = await work.selectFrom('plan_runs').select('input_gzip').where('id', '=', id).executeTakeFirst();
    return row ? unpacked(row.input_gzip) : null;
  },

  linesOfVenue: async (venueId) => {
    const rows = await work
      .selectFrom('plan_runs')
      .select(['id', 'forecast_id', 'booking_id', 'fixture_id', 'created_at', 'jobs', 'orders', 'total_minor'])
      .where('venue_id', '=', venueId)
      .orderBy('created_at', 'desc')
      .orderBy('id')
      .execute();
    return rows.map((row) => ({
      id: row.id,
      forecastId: row.forecast_id,
      bookingId: row.booking_id,
      fixtureId: row.fixture_id,
      createdAt: row.created_at,
      jobs: row.jobs,
      orders: row.orders,
      total: row.total_minor,
    }));
  },

  newestOfYear: async (venueId, year, until) => {
    const rows = await work
      .selectFrom('forecast_home_dates as home')
      .innerJoin('plan_runs as plan', 'plan.forecast_id', 'home.forecast_id')
      .select(['plan.id as id', 'plan.booking_id as bookingId'])
      .where('home.venue_id', '=', venueId)
      .where('home.starts_at_venue_time', '>=', `${year}-01-01`)
      .where('home.starts_at_venue_time', '<', `${Number(year) + 1}-01-01`)
      .where('plan.created_at', '<=', until)
      .orderBy('plan.created_at', 'desc')
      .orderBy('plan.id')
      .execute();
    const newest = new Map<string, string>();
    for (const { id, bookingId } of rows) if (bookingId !== null && !newest.has(bookingId)) newest.set(bookingId, id);
    return [...newest].map(([bookingId, id]) => ({ id, bookingId }));
  },

  keep: async (run, input) => {
    await work
      .insertInto('plan_runs')
      .values({
        id: run.id,
        venue_id: run.venueId,
        forecast_id: run.forecastId,
        booking_id: run.bookingId,
        fixture_id: run.fixtureId,
        created_at: run.createdAt,
        now_venue_time: run.now,
        jobs: run.plan.zones.reduce((sum, zone) => sum + zone.jobs.length, run.plan.fieldJobs.length),
        orders: run.plan.orders.length,
        total_minor: run.plan.cost.total,
        input_gzip: packed(input),
        result_gzip: packed(JSON.stringify(run.plan)),
      })
      .execute();
  },
});
