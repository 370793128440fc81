import type { Command } from '#cli/command.ts';
import { onlyVenue } from '#cli/only-venue.ts';
import { textTable } from '#cli/text-table.ts';

export const bookings: Command = {
  summary: 'The bookings and home dates of a venue, in the order they begin',
  usage: '[--venue ID]',
  options: { venue: { type: 'string' } },
  run: async (desk) => {
    const venueId = await onlyVenue(desk);
    const found = await desk.ask('booking/list', { venueId });
    const fixtures = await desk.ask('fixture/list', { venueId });
    if (desk.json) return desk.printJson({ bookings: found, fixtures });
    const rows = [
      ...found.map((booking) => [
        booking.firstOn ?? '–',
        booking.lastOff ?? '–',
        booking.kind,
        booking.id,
        booking.name,
        booking.stage,
      ]),
      ...fixtures.map((fixture) => [fixture.start, fixture.end, fixture.kind, fixture.id, fixture.name, '']),
    ].sort((one, other) => (one[0]! < other[0]! ? -1 : 1));
    for (const line of textTable(['from', 'until', 'kind', 'id', 'name', 'stage'], rows)) desk.print(line);
  },
};
