import { readFileSync, statSync } from 'node:fs';
import { basename, extname } from 'node:path';
import type { Dialog } from 'electron';
import { requestLimit } from '#application/request-size.ts';
import type { Bridge } from '#shared/contract/bridge.ts';

/** The ending of a venue that Fieldback wrote out; the packages tell the system that it is ours. */
const ending = '.fieldback-venue';

/** The venue file among the words a program was started with; null where there is none. */
export const venueFileIn = (words: readonly string[]): string | null =>
  words.slice(1).find((word) => !word.startsWith('-') && extname(word) === ending) ?? null;

/** The document in a file, or why it is not taken. */
const documentIn = (file: string): { readonly document: unknown } | { readonly refused: string } => {
  try {
    if (statSync(file).size > requestLimit) return { refused: `It is larger than ${requestLimit / 2 ** 20} MB.` };
    return { document: JSON.parse(readFileSync(file, 'utf8')) as unknown };
  } catch (error) {
    return { refused: error instanceof SyntaxError ? 'It is not a venue that Fieldback wrote.' : 'It cannot be read.' };
  }
};

/**
 * Offers to take in a venue that the person opened from outside. Whoever sent the file decides nothing: it is taken in only when the
 * person says so, and checked like any import.
 */
export const offerVenue = async (dialog: Dialog, application: Bridge, file: string): Promise<void> => {
  const name = basename(file);
  const tell = (message: string, detail: string) => dialog.showMessageBox({ message, detail, buttons: ['Close'], noLink: true });
  const found = documentIn(file);
  if ('refused' in found) return void (await tell(`${name} was not taken in`, found.refused));
  const { response } = await dialog.showMessageBox({
    type: 'question',
    message: `Take in the venue from ${name}?`,
    detail: 'It is added to the open workspace with its home dates and bookings.',
    buttons: ['Take in', 'Cancel'],
    defaultId: 1,
    cancelId: 1,
    noLink: true,
  });
  if (response !== 0) return;
  const answer = await application.answer('venue/import', { document: found.document });
  if (answer.ok) await tell(`${name} was taken in`, 'Choose the venue on the sheet.');
  else await tell(`${name} was not taken in`, answer.failure.message);
};
