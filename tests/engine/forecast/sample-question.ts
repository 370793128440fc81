import sample from '../../../resources/sample/sample-venue.json' with { type: 'json' };
import { VenueDocument } from '#shared/contract/contract.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { vehicles } from '#shared/parameters/vehicles.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';

const document = VenueDocument.parse(sample);
export const sampleVenue = document.venue;
export const july = document.bookings.find((booking) => booking.id === 'july-concert')!;
export const rink = document.bookings.find((booking) => booking.id === 'december-rink')!;
export const homeDate = (date: string) => document.fixtures.find((fixture) => fixture.id === `home-${date}`)!;

/** A question about the invented sample venue: the usual season on coarse cells unless told otherwise. */
export const asking = (booking: Booking | null, changes: Partial<ForecastQuestion> = {}): ForecastQuestion => ({
  venue: sampleVenue,
  homeDate: homeDate('2027-07-31'),
  booking,
  others: [],
  fixtures: [],
  coverings: startingCoverings,
  vehicles,
  parameters: defaultValues,
  members: 1,
  seed: 1,
  cellSize: 4,
  observed: [],
  actual: [],
  expected: [],
  ...changes,
});
