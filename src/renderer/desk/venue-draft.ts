import { Venue } from '#shared/vocabulary/venue.ts';
import { change, deskNow, keep, keptIn, onChange } from './desk.ts';

/** What is being entered for a venue and not stored yet, kept beside the page: a closed window loses none of it. */
const key = 'draft-venue';
/** ms without a further edit before it is written. */
const patience = 300;
let waiting: ReturnType<typeof setTimeout> | undefined;
let written = '';

const write = (): void => {
  const { venue, venueDraft } = deskNow();
  if (!venue) return;
  const entered = venueDraft ? JSON.stringify(venueDraft) : '';
  if (entered !== written) keep(key, entered);
  written = entered;
};

/** Begins to keep what is entered. */
export const keepVenueDraft = (): void =>
  onChange(() => {
    clearTimeout(waiting);
    waiting = setTimeout(write, patience);
  });

const entered = (): Venue | null => {
  try {
    return Venue.safeParse(JSON.parse(keptIn(key) || 'null')).data ?? null;
  } catch {
    return null;
  }
};

/** Puts a venue that was being edited back into its page, unless it was stored meanwhile. */
export const restoreVenueDraft = (): void => {
  const venueDraft = entered();
  const { venue } = deskNow();
  if (venueDraft && venue && venueDraft.id === venue.id && venueDraft.revision === venue.revision)
    change({ venueDraft, said: 'What was being entered for the venue is back; it is not stored yet.' });
};
