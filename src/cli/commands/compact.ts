import type { Command } from '#cli/command.ts';

const inKilobytes = (bytes: number): string => `${Math.ceil(bytes / 1024)} kB`;

export const compact: Command = {
  summary: 'Gives free room inside the workspace file back to the disk',
  usage: '',
  options: {},
  run: async (desk) => {
    const { before, after } = await desk.ask('workspace/compact', {});
    if (desk.json) return desk.printJson({ before, after });
    desk.print(
      `${inKilobytes(before.bytes)} before, of which ${inKilobytes(before.spare)} were free; ${inKilobytes(after.bytes)} now.`,
    );
  },
};
