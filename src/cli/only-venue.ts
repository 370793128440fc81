import { misused } from '#cli/command.ts';
import type { Desk } from '#cli/command.ts';

/** The venue named with `--venue`, or the only one there is. */
export const onlyVenue = async (desk: Desk): Promise<string> => {
  const named = desk.options['venue'];
  if (typeof named === 'string') return named;
  const venues = await desk.ask('venue/list', {});
  if (venues.length === 1) return venues[0]!.id;
  throw misused(
    '--venue',
    venues.length === 0 ? 'there is no venue yet' : `is missing; there are ${venues.map((venue) => venue.id).join(', ')}`,
  );
};
