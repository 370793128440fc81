import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listInspections: Service<'inspection/list'> = ({ store }, { venueId, bookingId }) =>
  store.read(async (contents) =>
    (await contents.venues.find(venueId))
      ? done([...(await contents.inspections.list(venueId, bookingId))])
      : notFound('venue', venueId),
  );
