import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PaperKind } from '#shared/contract/contract.ts';
import type { Command } from '#cli/command.ts';
import { planLines } from '#cli/plan-text.ts';
import { unitsOf } from '#cli/units-option.ts';
import { zoneLines } from '#cli/zone-text.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { warningText } from '#shared/wording/warnings.ts';

const sample = { venueId: 'sample-bowl', bookingId: 'july-concert', fixtureId: 'home-2027-07-31' };

/** The papers a newcomer looks at first; "paper" writes all kinds. */
const shown: readonly PaperKind[] = [
  'recovery-report',
  'meeting-sheet',
  'sod-order',
  'calendar',
  'zone-table',
  'job-table',
  'sod-table',
];

export const demo: Command = {
  summary: 'Does the main job on the invented sample: a booked concert, its damage, the recovery, the sod order, the papers',
  usage: '[--to FOLDER] [--members N] [--units us|si]',
  options: { to: { type: 'string' }, members: { type: 'string' }, units: { type: 'string' } },
  run: async (desk) => {
    const units = unitsOf(desk);
    const folder = calledFrom(typeof desk.options['to'] === 'string' ? desk.options['to'] : 'demo-output');
    const venue = await desk.ask('venue/read', { id: sample.venueId });
    const booking = await desk.ask('booking/read', { id: sample.bookingId });
    const run = await desk.work('forecast/run', { ...sample, members: desk.whole('members', 1, 1000, 200), seed: 1 });
    // Planned as if it were the Monday before the first truck.
    const plan = await desk.work('plan/make', {
      forecastId: run.id,
      now: '2027-07-05T08:00',
      locks: [],
      done: [],
      instead: null,
    });
    mkdirSync(folder, { recursive: true });
    const files: string[] = [];
    for (const kind of shown) {
      const file = await desk.ask('report/write', { planId: plan.id, kind, paper: 'letter', units });
      const path = join(folder, file.fileName);
      writeFileSync(path, Buffer.from(file.base64, 'base64'));
      files.push(path);
    }
    if (desk.json) return desk.printJson({ forecast: run, plan, files });
    desk.print(
      `${venue.name}. ${booking.name}, ${booking.layers
        .map((layer) => layer.on)
        .toSorted()[0]!
        .replace('T', ' ')} to ${booking.layers
        .map((layer) => layer.off)
        .toSorted()
        .at(-1)!
        .replace('T', ' ')}.`,
    );
    desk.print('Venue, town, farms, prices and booking are invented.');
    desk.print('');
    desk.print(`What it does by ${run.result.homeDate.name}, ${run.result.homeDate.start.replace('T', ' ')}, with nothing done:`);
    for (const line of zoneLines(run.result, units)) desk.print(line);
    for (const warning of run.result.warnings) desk.print(`Note ${warning.zone}: ${warningText(warning, units)}`);
    desk.print('');
    desk.print('The recovery:');
    for (const line of planLines(plan, venue, units)) desk.print(line);
    desk.print('');
    for (const file of files) desk.print(`Written: ${file}`);
    desk.print('This forecasts turf; readiness is decided by measured tests and the competition’s own rules.');
  },
};
