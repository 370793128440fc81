import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const readVenue: Service<'venue/read'> = async ({ store }, { id }) => {
  const venue = await store.read((contents) => contents.venues.find(id));
  return venue ? done(venue) : notFound('venue', id);
};
