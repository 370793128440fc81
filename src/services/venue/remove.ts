import { done, storedAnswer } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const removeVenue: Service<'venue/remove'> = ({ store }, { id, revision }) =>
  store.write(async (contents) => {
    const removed = storedAnswer(await contents.venues.remove(id, revision), 'venue', id, revision);
    return removed.ok ? done({}) : removed;
  });
