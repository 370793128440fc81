import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listPhotographs: Service<'photograph/list'> = ({ store }, { venueId, bookingId }) =>
  store.read(async (contents) =>
    (await contents.venues.find(venueId))
      ? done([...(await contents.photographs.list(venueId, bookingId))])
      : notFound('venue', venueId),
  );
