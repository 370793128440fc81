import { expect } from 'vitest';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { Failure } from '#shared/contract/failure.ts';
import type { Job } from '#shared/contract/job.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import type { SmallWorkspace } from '#tests/services/evidence/small-workspace.ts';

export type Made = { readonly plan: PlanRun; readonly failure: null } | { readonly plan: null; readonly failure: Failure };

/** Planning through the program in the small workspace: stores changes of the venue and the concert, foresees, plans. */
export const planningIn = (at: () => SmallWorkspace, usual: Partial<Venue>, now: string) => {
  const foreseen = async (fixtureId = homeDate.id, bookingId = concert.id): Promise<ForecastRun> =>
    at().good('forecast/run', { venueId: smallVenue.id, bookingId, fixtureId, members: 20, seed: 1 });
  const make = async (request: object): Promise<Made> => {
    const answer = await at().application.answer('plan/make', { now, locks: [], done: [], instead: null, ...request });
    if (!answer.ok) return { plan: null, failure: answer.failure };
    let job = answer.value as Job;
    while (job.state === 'running') {
      await new Promise((resolve) => setTimeout(resolve, 30));
      job = await at().good('job/read', { id: job.id });
    }
    return job.failure ? { plan: null, failure: job.failure } : { plan: job.value as PlanRun, failure: null };
  };
  const planned = async (request: object): Promise<PlanRun> => {
    const { plan, failure } = await make(request);
    expect(failure).toBeNull();
    return plan!;
  };
  const withVenue = async (changes: Partial<Venue>): Promise<void> => {
    const { revision } = await at().good('venue/read', { id: smallVenue.id });
    await at().good('venue/save', { venue: { ...smallVenue, ...usual, ...changes, revision } });
  };
  const withBooking = async (changes: Partial<Booking>): Promise<void> => {
    const { revision } = await at().good('booking/read', { id: concert.id });
    await at().good('booking/save', { booking: { ...concert, ...changes, revision } });
  };
  return { foreseen, make, planned, withVenue, withBooking };
};
