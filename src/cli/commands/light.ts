import { figure } from '#shared/units/quantity.ts';
import type { Command } from '#cli/command.ts';
import { onlyVenue } from '#cli/only-venue.ts';
import { textTable } from '#cli/text-table.ts';

export const light: Command = {
  summary: 'Light on the turf by zone on the mean day of a month',
  usage: '--month 1-12 [--venue ID]',
  options: { month: { type: 'string' }, venue: { type: 'string' } },
  run: async (desk) => {
    desk.need('month');
    const month = desk.whole('month', 1, 12, 1);
    const result = await desk.ask('light/month', { venueId: await onlyVenue(desk), month });
    if (desk.json) return desk.printJson(result);
    desk.print(`Open ground ${figure(result.open, 1)} mol/m²/d on the mean day of month ${month}`);
    const rows = result.zones.map((zone) => [
      zone.letter,
      zone.name,
      figure(zone.mean, 1),
      figure(zone.darkest, 1),
      figure(zone.brightest, 1),
      `${Math.round((100 * zone.mean) / result.open)} %`,
    ]);
    for (const line of textTable(['zone', 'name', 'mean mol/m²/d', 'darkest', 'brightest', 'of open'], rows)) desk.print(line);
  },
};
