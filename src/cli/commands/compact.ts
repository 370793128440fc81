import type { Command } from '#cli/command.ts';
import { kilobytes } from '#cli/kilobytes.ts';

export const compact: Command = {
  summary: 'Gives free room inside the workspace file back to the disk',
  usage: '',
  options: {},
  run: async (desk) => {
    const { before, after } = await desk.ask('workspace/compact', {});
    if (desk.json) return desk.printJson({ before, after });
    desk.print(
      `${kilobytes(before.bytes)} before, of which ${kilobytes(before.spare)} were free; ${kilobytes(after.bytes)} now.`,
    );
  },
};
