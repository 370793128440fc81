import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

/** What was learnt at a venue: weighed runs, and proposals with what became of them; newest first. */
export const listLearning: Service<'learning/list'> = ({ store }, { venueId }) =>
  store.read(async (contents) => {
    if (!(await contents.venues.find(venueId))) return notFound('venue', venueId);
    return done({
      assimilations: await contents.learning.assimilations(venueId),
      proposals: await contents.learning.proposals(venueId),
    });
  });
