import { Booking } from '#shared/vocabulary/booking.ts';
import { Venue } from '#shared/vocabulary/venue.ts';
import { change, deskNow, isChanged, keep, keptIn, onChange } from './desk.ts';

/**
 * What is on the sheet and not stored yet, kept beside the page: a crash, a power cut or a closed window loses nothing. It comes back when
 * the same booking or venue is opened again, as an edit that can be undone.
 */
const bookingKey = 'draft-booking';
const venueKey = 'draft-venue';

/** ms without a further edit before a draft is written. */
const pause = 300;
let waiting: ReturnType<typeof setTimeout> | undefined;
let written = { booking: '', venue: '' };

const write = (): void => {
  const desk = deskNow();
  if (!desk.venue) return;
  const booking = desk.booking && isChanged(desk) ? JSON.stringify(desk.booking) : '';
  const venue = desk.venueDraft ? JSON.stringify(desk.venueDraft) : '';
  if (booking !== written.booking) keep(bookingKey, booking);
  if (venue !== written.venue) keep(venueKey, venue);
  written = { booking, venue };
};

/** Begins to keep drafts. */
export const keepDrafts = (): void =>
  onChange(() => {
    clearTimeout(waiting);
    waiting = setTimeout(write, pause);
  });

const parsed = <Value>(schema: { safeParse(value: unknown): { success: boolean; data?: Value } }, key: string): Value | null => {
  try {
    const found = schema.safeParse(JSON.parse(keptIn(key) || 'null'));
    return found.success ? (found.data ?? null) : null;
  } catch {
    return null;
  }
};

/** The booking that was on the sheet and not stored when the page ended; null where there was none. */
export const draftedBooking = (venueId: string): Booking | null => {
  const draft = parsed<Booking>(Booking, bookingKey);
  return draft?.venueId === venueId ? draft : null;
};

/** Puts a venue that was being edited back into its page. */
export const restoreVenueDraft = (): void => {
  const draft = parsed<Venue>(Venue, venueKey);
  const { venue } = deskNow();
  if (draft && venue && draft.id === venue.id && draft.revision === venue.revision)
    change({ venueDraft: draft, said: 'What was being entered for the venue is back; it is not stored yet.' });
};
