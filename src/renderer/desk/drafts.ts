import type { Booking } from '#shared/vocabulary/booking.ts';
import { ask } from '../transport/ask.ts';
import { change, deskNow, isChanged, valueOf } from './desk.ts';

/*
 * What is changed on the sheet lies in the workspace a moment later, without being stored: a crash, a closed window or a look at another
 * booking takes none of it.
 */

/** ms after the last change until it is kept. */
const patience = 600;
let waiting: ReturnType<typeof setTimeout> | null = null;

const keepDraft = async (): Promise<void> => {
  const desk = deskNow();
  const { booking, stored } = desk;
  if (!booking) return;
  if (isChanged(desk)) valueOf(await ask('draft/keep', { booking: { ...booking, revision: stored?.revision ?? 0 } }));
  else await dropDraft(booking.id);
};

/** Keeps the change on the sheet once no other follows. */
export const keepSoon = (): void => {
  if (waiting !== null) clearTimeout(waiting);
  waiting = setTimeout(() => {
    waiting = null;
    void keepDraft();
  }, patience);
};

/** Keeps at once what still waits: the sheet is about to show something else. */
export const keepNow = async (): Promise<void> => {
  if (waiting === null) return;
  clearTimeout(waiting);
  waiting = null;
  await keepDraft();
};

/** What was changed on a booking is stored, or nobody wants it. */
export const dropDraft = async (bookingId: string): Promise<void> => {
  if (waiting !== null) clearTimeout(waiting);
  waiting = null;
  valueOf(await ask('draft/drop', { bookingId }));
};

export interface Draft {
  readonly keptAt: string;
  readonly booking: Booking;
}

/** What was changed at a venue and not stored, newest first. */
export const draftsAt = async (venueId: string): Promise<readonly Draft[]> => valueOf(await ask('draft/list', { venueId })) ?? [];

/** Says that a change is on the sheet again; where the booking was stored meanwhile, the person chooses as in any conflict. */
export const sayRecovered = ({ keptAt, booking }: Draft, stored: Booking | null): void =>
  change({
    said: `What you changed until ${new Date(keptAt).toLocaleString()} and did not store is on the sheet again.`,
    ...(stored === null
      ? {}
      : { before: [{ booking: stored, ground: null }], theirs: stored.revision === booking.revision ? null : stored }),
  });
