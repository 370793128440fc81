import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listDrafts: Service<'draft/list'> = ({ store }, { venueId }) =>
  store.read(async (contents) =>
    (await contents.venues.find(venueId)) ? done([...(await contents.drafts.ofVenue(venueId))]) : notFound('venue', venueId),
  );
