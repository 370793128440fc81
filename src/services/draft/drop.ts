import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const dropDraft: Service<'draft/drop'> = ({ store }, { bookingId }) =>
  store.write(async (contents) => {
    await contents.drafts.drop(bookingId);
    return done({});
  });
