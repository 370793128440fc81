import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { misused, type Command } from '#cli/command.ts';
import { onlyVenue } from '#cli/only-venue.ts';
import { textOf } from '#platform/weather-files/weather-text.ts';
import { calledFrom } from '#platform/folders/called-from.ts';

export const weather: Command = {
  summary: 'Takes in observed years from a weather file (CSV or EPW), or tells what weather is known',
  usage: '[FILE] [--format csv|epw] [--venue ID]',
  options: { format: { type: 'string' }, venue: { type: 'string' } },
  run: async (desk) => {
    const venueId = await onlyVenue(desk);
    const [file] = desk.words;
    if (file === undefined) {
      const known = await desk.ask('weather/read', { venueId });
      if (desk.json) return desk.printJson(known);
      for (const reading of known.observed)
        desk.print(`${reading.fileName}: ${reading.from} to ${reading.until}, ${reading.days} days`);
      desk.print(`${known.actual.length} days logged, ${known.expected.length} days expected.`);
      return;
    }
    const format = desk.options['format'] ?? (file.toLowerCase().endsWith('.epw') ? 'epw' : 'csv');
    if (format !== 'csv' && format !== 'epw') throw misused('--format', 'must be csv or epw');
    const read = textOf(readFileSync(calledFrom(file)));
    if ('problem' in read) throw misused(basename(file), read.problem);
    const reading = await desk.ask('weather/import', { venueId, format, fileName: basename(file), text: read.text });
    if (desk.json) return desk.printJson(reading);
    desk.print(`Taken in: ${reading.from} to ${reading.until}, ${reading.days} days.`);
    for (const { line, quantity, how } of reading.filled) desk.print(`  line ${line}, ${quantity}: ${how}`);
  },
};
