import type { Booking } from '#shared/vocabulary/booking.ts';
import { ask } from '../transport/ask.ts';
import { oneAtATime } from '../transport/turns.ts';
import { change, deskNow, nothingKept, valueOf, type Edited } from './desk.ts';
import { dropDraft, keepSoon } from './drafts.ts';
import type { Ground } from './ground.ts';
import { findKept, followHome, preview, previewSoon } from './previewing.ts';

/** Edits that can be taken back. */
const remembered = 100;

const put = (edited: Edited, others: { before: readonly Edited[]; after: readonly Edited[] }): void => {
  const sameBooking = edited.booking === deskNow().booking;
  const stale = sameBooking ? {} : { ...nothingKept, trials: [] };
  change({ ...stale, ...others, ...edited, draft: null, heldGround: null, said: '', failure: null });
  if (sameBooking) return;
  keepSoon();
  followHome();
  previewSoon();
  void findKept();
};

const now = (): Edited => {
  const { booking, ground } = deskNow();
  return { booking, ground };
};

const take = (edited: Edited): void => put(edited, { before: [...deskNow().before.slice(1 - remembered), now()], after: [] });

/** Changes the booking on the sheet; the usual season follows. */
export const edit = (booking: Booking): void => {
  const { booking: old, ground } = deskNow();
  if (old && booking !== old) take({ booking, ground });
};

/** Changes the ground of the venue on the sheet. It counts once it is stored. */
export const editGround = (ground: Ground): void => take({ booking: deskNow().booking, ground });

export const undo = (): void => {
  const { before, after } = deskNow();
  const last = before.at(-1);
  if (last) put(last, { before: before.slice(0, -1), after: [now(), ...after] });
};

export const redo = (): void => {
  const { before, after } = deskNow();
  const [next, ...others] = after;
  if (next) put(next, { before: [...before, now()], after: others });
};

/** Shows a booking while it is dragged, with its consequence; nothing is changed yet. */
export const hold = (draft: Booking): void => {
  change({ draft });
  void preview();
};

/** Shows the venue's ground while it is dragged. */
export const holdGround = (heldGround: Ground): void => change({ heldGround });

/** Takes what was dragged as an edit. */
export const drop = (): void => {
  const { draft, heldGround } = deskNow();
  if (draft) edit(draft);
  if (heldGround) editGround(heldGround);
};

/** Lets go of what was dragged; the booking stands as before. */
export const letGo = (): void => {
  const { draft, heldGround } = deskNow();
  if (!draft && !heldGround) return;
  change({ draft: null, heldGround: null });
  if (draft) previewSoon();
};

/** Stores the booking on the sheet. Where somebody else stored it meanwhile, both are shown and the person chooses. */
export const save = oneAtATime(async (): Promise<boolean> => {
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
  await takeStored(saved, booking, `Stored as revision ${saved.revision}.`);
  return true;
});

/** What is stored now is on the sheet, but for what was changed since it was sent. */
const takeStored = async (saved: Booking, sent: Booking, said: string): Promise<void> => {
  const bookings = await ask('booking/list', { venueId: saved.venueId });
  const { booking } = deskNow();
  if (booking?.id !== saved.id) return;
  change({
    booking: booking === sent ? saved : { ...booking, revision: saved.revision },
    stored: saved,
    theirs: null,
    failure: null,
    said,
    bookings: bookings.ok ? bookings.value : deskNow().bookings,
  });
  if (booking !== sent) keepSoon();
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
  const { theirs, booking, ground } = deskNow();
  if (!theirs || !booking) return;
  change({ stored: theirs, theirs: null });
  take({ booking: theirs, ground });
  change({ said: `Revision ${theirs.revision} is on the sheet. Undo brings back what you had.` });
};
