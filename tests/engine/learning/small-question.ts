import { defaultValues } from '#shared/parameters/catalogue.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';

/** The small invented field with its concert, on the coarsest cells: a member takes some milliseconds. */
export const smallQuestion = (changes: Partial<ForecastQuestion> = {}): ForecastQuestion => ({
  venue: smallVenue,
  homeDate,
  booking: concert,
  others: [],
  fixtures: [],
  coverings: [boardFloor],
  vehicles: [cart],
  parameters: defaultValues,
  members: 200,
  seed: 11,
  cellSize: 4,
  observed: [],
  actual: [],
  expected: [],
  ...changes,
});
