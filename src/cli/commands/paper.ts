import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { paperKinds } from '#shared/contract/contract.ts';
import { misused, type Command } from '#cli/command.ts';
import { unitsOf } from '#cli/units-option.ts';
import { calledFrom } from '#platform/folders/called-from.ts';

const sizes = ['letter', 'a4'] as const;

export const paper: Command = {
  summary: 'Writes a paper of a kept plan: report, meeting sheet, sod order, forms, calendar, tables',
  usage: `--plan PLAN --kind ${paperKinds.join('|')} [--beside PLAN,PLAN] [--to FOLDER] [--size letter|a4] [--units us|si]`,
  options: {
    plan: { type: 'string' },
    kind: { type: 'string' },
    beside: { type: 'string' },
    to: { type: 'string' },
    size: { type: 'string' },
    units: { type: 'string' },
  },
  run: async (desk) => {
    const planId = desk.need('plan');
    const wanted = desk.need('kind');
    const kind = paperKinds.find((one) => one === wanted);
    if (kind === undefined) throw misused('--kind', `must be one of ${paperKinds.join(', ')}, not "${wanted}"`);
    const size = sizes.find((one) => one === (desk.options['size'] ?? 'letter'));
    if (size === undefined) throw misused('--size', 'must be letter or a4');
    const { beside } = desk.options;
    const alternatives = typeof beside === 'string' ? beside.split(',').filter((id) => id !== '') : [];
    const file = await desk.ask('report/write', { planId, kind, paper: size, units: unitsOf(desk), alternatives });
    const folder = desk.options['to'];
    const path = join(calledFrom(typeof folder === 'string' ? folder : '.'), file.fileName);
    writeFileSync(path, Buffer.from(file.base64, 'base64'));
    if (desk.json) return desk.printJson({ path, mediaType: file.mediaType });
    desk.print(path);
  },
};
