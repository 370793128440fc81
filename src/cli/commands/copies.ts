import { textTable } from '#cli/text-table.ts';
import type { Command } from '#cli/command.ts';

export const copies: Command = {
  summary: 'Lists the copies beside the workspace; --now makes one first',
  usage: '[--now]',
  options: { now: { type: 'boolean' } },
  run: async (desk) => {
    if (desk.options['now'] === true) await desk.ask('workspace/copy', {});
    const lines = await desk.ask('workspace/copies', {});
    if (desk.json) return desk.printJson(lines);
    if (lines.length === 0) return desk.print('There is no copy yet.');
    for (const line of textTable(
      ['made (UTC)', 'why', 'kB', 'path'],
      lines.map(({ madeAt, reason, bytes, path }) => [madeAt, reason, String(Math.ceil(bytes / 1024)), path]),
    ))
      desk.print(line);
  },
};
