import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore, type Opening, type OpeningWishes, type OpenStore } from '#store/open-store.ts';

/** A folder of its own with a space and letters beyond ASCII in its path. */
export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'fieldback störe '));

export const noon = Date.parse('2027-06-01T12:00:00Z');
export const dayMs = 86_400_000;

export const tryToOpen = (file: string, wishes: Partial<OpeningWishes> = {}): Promise<Opening> =>
  openStore({
    file,
    now: () => noon,
    waitMs: 200,
    fill: () => Promise.resolve(),
    copies: { everyMs: dayMs, keep: 3 },
    log: () => undefined,
    ...wishes,
  });

export const openWell = async (file: string, wishes: Partial<OpeningWishes> = {}): Promise<OpenStore> => {
  const opening = await tryToOpen(file, wishes);
  if (!opening.ok) throw new Error(`not opened: ${opening.trouble.kind}: ${opening.trouble.message}`);
  return opening.store;
};
