import type { Command } from '#cli/command.ts';
import { textTable } from '#cli/text-table.ts';

export const venues: Command = {
  summary: 'All venues',
  usage: '',
  options: {},
  run: async (desk) => {
    const value = await desk.ask('venue/list', {});
    if (desk.json) return desk.printJson(value);
    const rows = value.map((venue) => [venue.id, venue.name]);
    for (const line of textTable(['id', 'name'], rows)) desk.print(line);
  },
};
