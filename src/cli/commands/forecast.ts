import type { Command } from '#cli/command.ts';
import { unitsOf } from '#cli/units-option.ts';
import { zoneLines } from '#cli/zone-text.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

export const forecast: Command = {
  summary: 'Foresees a booking on a home date, keeps the run, and prints the zones',
  usage: '--booking ID --home-date ID [--members N] [--seed N] [--units us|si]',
  options: {
    booking: { type: 'string' },
    'home-date': { type: 'string' },
    members: { type: 'string' },
    seed: { type: 'string' },
    units: { type: 'string' },
  },
  run: async (desk) => {
    const bookingId = desk.need('booking');
    const fixtureId = desk.need('home-date');
    const members = desk.whole('members', 1, 1000, 200);
    const seed = desk.whole('seed', 0, 2 ** 31 - 1, 1);
    const units = unitsOf(desk);
    const { venueId, name } = await desk.ask('booking/read', { id: bookingId });
    const run = await desk.work('forecast/run', { venueId, fixtureId, bookingId, members, seed });
    if (desk.json) return desk.printJson(run);
    const { result } = run;
    desk.print(`${name}: nothing done until ${result.homeDate.name}, ${result.homeDate.start.replace('T', ' ')}`);
    for (const line of zoneLines(result, units)) desk.print(line);
    desk.print(
      `Chance that every zone is ready: ${percent(result.chanceAllReady)}. To be replaced: ${Math.round(result.replaceArea.p50)} m² (${Math.round(result.replaceArea.p10)} to ${Math.round(result.replaceArea.p90)}).`,
    );
    for (const warning of result.warnings) desk.print(`Note ${warning.zone}: ${warning.detail}`);
    desk.note(`Kept as run ${run.id}; ${members} member${members === 1 ? '' : 's'}, seed ${seed}.`);
  },
};
