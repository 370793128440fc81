import { calledFrom } from '#platform/folders/called-from.ts';
import type { Command } from '#cli/command.ts';

export const restore: Command = {
  summary: 'Puts the newest good copy, or the named one, in the place of a workspace that cannot be opened',
  usage: '[--copy PATH]',
  options: { copy: { type: 'string' } },
  run: async (desk) => {
    const { copy } = desk.options;
    const answer = await desk.ask('workspace/restore', { copy: typeof copy === 'string' ? calledFrom(copy) : null });
    if (desk.json) return desk.printJson(answer);
    if (!answer.restored) return desk.print('The workspace is whole; nothing was put in its place.');
    desk.print(`The copy ${answer.from} now stands in its place.`);
    if (answer.putAside !== null) desk.print(`What stood there is kept as ${answer.putAside}.`);
  },
};
