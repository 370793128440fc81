import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { RequestOf } from '#shared/contract/contract.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { misused, type Command, type Desk } from '#cli/command.ts';
import { onlyVenue } from '#cli/only-venue.ts';
import { textTable } from '#cli/text-table.ts';

const documentOf = (file: string): unknown => {
  try {
    return JSON.parse(readFileSync(calledFrom(file), 'utf8')) as unknown;
  } catch (error) {
    throw misused(basename(file), `cannot be read as JSON (${(error as Error).message})`);
  }
};

const add = async (desk: Desk, file: string): Promise<void> => {
  // The application looks at the shape, and names what is wrong in the words of every door.
  const inspection = documentOf(file) as RequestOf<'inspection/add'>['inspection'];
  const kept = await desk.ask('inspection/add', { inspection });
  if (desk.json) return desk.printJson(kept);
  desk.print(`Kept as ${kept.inspection.id}. It is never changed; a correction is another inspection that names it.`);
};

/** A mean of those that were read; a dash where none was. */
const mean = (values: readonly (number | null)[], digits: number, scale = 1): string => {
  const read = values.filter((value) => value !== null);
  if (read.length === 0) return '–';
  return ((scale * read.reduce((sum, value) => sum + value, 0)) / read.length).toFixed(digits);
};

/** Keeps an inspection from a file, or lists those that are kept. */
export const inspect: Command = {
  summary: 'Keeps an inspection from a JSON file, or lists the inspections of a venue or an event',
  usage: '[FILE.json] [--venue ID] [--booking ID]',
  options: { venue: { type: 'string' }, booking: { type: 'string' } },
  run: async (desk) => {
    const [file] = desk.words;
    if (file !== undefined) return add(desk, file);
    const booking = desk.options['booking'];
    const bookingId = typeof booking === 'string' ? booking : null;
    const venueId = bookingId === null ? await onlyVenue(desk) : (await desk.ask('booking/read', { id: bookingId })).venueId;
    const lines = await desk.ask('inspection/list', { venueId, bookingId });
    if (desk.json) return desk.printJson(lines);
    if (lines.length === 0) return desk.print('No inspection is kept yet.');
    const rows = lines.map(({ inspection, correctedBy }) => [
      inspection.at.replace('T', ' '),
      inspection.kind,
      inspection.id,
      String(inspection.readings.length),
      mean(
        inspection.readings.map((spot) => spot.cover),
        0,
        100,
      ),
      String(inspection.defects.length),
      String(inspection.photographs.length),
      correctedBy === null ? 'stands' : `put right by ${correctedBy}`,
    ]);
    for (const line of textTable(['at', 'kind', 'id', 'spots', 'cover %', 'defects', 'photographs', ''], rows)) desk.print(line);
  },
};
