import { done, storedAnswer } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const removeBooking: Service<'booking/remove'> = ({ store }, { id, revision }) =>
  store.write(async (contents) => {
    const removed = storedAnswer(await contents.bookings.remove(id, revision), 'booking', id, revision);
    return removed.ok ? done({}) : removed;
  });
