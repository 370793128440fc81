import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listPlans: Service<'plan/list'> = ({ store }, { venueId }) =>
  store.read(async (contents) =>
    (await contents.venues.find(venueId)) ? done([...(await contents.plans.linesOfVenue(venueId))]) : notFound('venue', venueId),
  );
