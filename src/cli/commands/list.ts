import { contract } from '#shared/contract/contract.ts';
import type { Command } from '#cli/command.ts';
import { textTable } from '#cli/text-table.ts';

export const list: Command = {
  summary: 'Every operation that can be called',
  usage: '',
  options: {},
  run: async (desk) => {
    const operations = Object.entries(contract).map(([name, { summary, long, writes }]) => ({ name, summary, long, writes }));
    if (desk.json) return desk.printJson(operations);
    const rows = operations.map(({ name, summary, long, writes }) => [
      name,
      long ? 'long' : writes ? 'changes' : 'asks',
      summary,
    ]);
    for (const line of textTable(['operation', 'kind', 'what it does'], rows)) desk.print(line);
  },
};
