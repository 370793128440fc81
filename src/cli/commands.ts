import type { Command } from '#cli/command.ts';
import { about } from '#cli/commands/about.ts';
import { bookings } from '#cli/commands/bookings.ts';
import { call } from '#cli/commands/call.ts';
import { forecast } from '#cli/commands/forecast.ts';
import { list } from '#cli/commands/list.ts';
import { venues } from '#cli/commands/venues.ts';

/** Every command by the word that is typed. A new one is a file in `commands/` and a line here. */
export const commands: Readonly<Record<string, Command>> = { about, venues, bookings, forecast, list, call };
