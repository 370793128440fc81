import type { Booking } from '#shared/vocabulary/booking.ts';
import { ask } from '../transport/ask.ts';
import { change, deskNow, nothingKept, valueOf } from './desk.ts';
import { dropDraft, keepSoon } from './drafting.ts';
import { findKept, followHome, previewSoon } from './previewing.ts';

/** Edits that can be taken back. */
const remembered = 100;

const put = (booking: Booking, others: { before: readonly Booking[]; after: readonly Booking[] }): void => {
  change({ ...nothingKept, ...others, booking, draft: null, trials: [], said: '', failure: null });
  keepSoon();
  followHome();
  previewSoon();
  void findKept();
};

/** Changes the booking on the sheet; the usual season follows. */
export const edit = (booking: Booking): void => {
  const { booking: old, before } = deskNow();
  if (old && booking !== old) put(booking, { before: [...before.slice(1 - remembered), old], after: [] });
};

export const undo = (): void => {
  const { before, after, booking } = deskNow();
  const last = before.at(-1);
  if (last && booking) put(last, { before: before.slice(0, -1), after: [booking, ...after] });
};

export const redo = (): void => {
  const { before, after, booking } = deskNow();
  const [next, ...others] = after;
  if (next && booking) put(next, { before: [...before, booking], after: others });
};

/** Shows a booking while it is dragged, with its consequence; nothing is changed yet. */
export const hold = (draft: Booking): void => {
  change({ draft });
  previewSoon();
};

/** Takes what was dragged as an edit. */
export const drop = (): void => {
  const { draft } = deskNow();
  if (draft) edit(draft);
};

/** Lets go of what was dragged; the booking stands as before. */
export const letGo = (): void => {
  if (!deskNow().draft) return;
  change({ draft: null });
  previewSoon();
};

/** Stores the booking on the sheet. Where somebody else stored it meanwhile, both are shown and the person chooses. */
export const save = async (): Promise<boolean> => {
  const { booking, stored } = deskNow();
  if (!booking) return false;
  const answer = await ask('booking/save', { booking: { ...booking, revision: stored?.revision ?? 0 } });
  if (!answer.ok && answer.failure.kind === 'conflict') {
    const theirs = await ask('booking/read', { id: booking.id });
    change({ failure: answer.failure, theirs: theirs.ok ? theirs.value : null });
    return false;
  }
  const saved = valueOf(answer);
  if (!saved) return false;
  await dropDraft(saved.id);
  await takeStored(saved, `Stored as revision ${saved.revision}.`);
  return true;
};

const takeStored = async (saved: Booking, said: string): Promise<void> => {
  const bookings = await ask('booking/list', { venueId: saved.venueId });
  change({
    booking: saved,
    stored: saved,
    theirs: null,
    failure: null,
    said,
    bookings: bookings.ok ? bookings.value : deskNow().bookings,
  });
};

/** Keeps what stands on the sheet and stores it over what somebody else stored. */
export const keepMine = async (): Promise<void> => {
  const { theirs } = deskNow();
  if (!theirs) return;
  change({ stored: theirs, theirs: null, failure: null });
  await save();
};

/** Takes what somebody else stored; undo brings one's own back. */
export const takeTheirs = (): void => {
  const { theirs, booking, before } = deskNow();
  if (!theirs || !booking) return;
  change({ stored: theirs, theirs: null });
  put(theirs, { before: [...before, booking], after: [] });
  change({ said: `Revision ${theirs.revision} is on the sheet. Undo brings back what you had.` });
};
