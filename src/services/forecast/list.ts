import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listForecasts: Service<'forecast/list'> = ({ store }, { venueId }) =>
  store.read(async (contents) =>
    (await contents.venues.find(venueId)) ? done([...(await contents.runs.linesOfVenue(venueId))]) : notFound('venue', venueId),
  );
