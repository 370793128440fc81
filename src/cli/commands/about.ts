import type { Command } from '#cli/command.ts';
import { muchLiesFree, roomWords } from '#shared/wording/file-room.ts';

export const about: Command = {
  summary: 'Which workspace this is, and the versions of the program, the engine and its numbers',
  usage: '',
  options: {},
  run: async (desk) => {
    const value = await desk.ask('workspace/about', {});
    if (desk.json) return desk.printJson(value);
    desk.print(`Fieldback ${value.version}, engine ${value.engineVersion}, numbers ${value.parameterVersion}`);
    desk.print(`Workspace ${value.file} (schema ${value.schemaVersion}, ${value.venues} venue${value.venues === 1 ? '' : 's'})`);
    desk.print(`${roomWords(value.size.bytes)}, of which ${roomWords(value.size.spare)} lie free.`);
    if (muchLiesFree(value.size)) desk.print('The command compact gives that back to the disk.');
  },
};
