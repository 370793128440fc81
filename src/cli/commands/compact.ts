import type { Command } from '#cli/command.ts';
import { roomWords } from '#shared/wording/file-room.ts';

export const compact: Command = {
  summary: 'Gives free room inside the workspace file back to the disk',
  usage: '',
  options: {},
  run: async (desk) => {
    const { before, after } = await desk.ask('workspace/compact', {});
    if (desk.json) return desk.printJson({ before, after });
    desk.print(
      `${roomWords(before.bytes)} before, of which ${roomWords(before.spare)} were free; ${roomWords(after.bytes)} now.`,
    );
  },
};
