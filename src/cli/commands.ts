import type { Command } from '#cli/command.ts';
import { about } from '#cli/commands/about.ts';
import { bookings } from '#cli/commands/bookings.ts';
import { call } from '#cli/commands/call.ts';
import { climate } from '#cli/commands/climate.ts';
import { compact } from '#cli/commands/compact.ts';
import { copies } from '#cli/commands/copies.ts';
import { demo } from '#cli/commands/demo.ts';
import { forecast } from '#cli/commands/forecast.ts';
import { inspect } from '#cli/commands/inspect.ts';
import { learn } from '#cli/commands/learn.ts';
import { light } from '#cli/commands/light.ts';
import { list } from '#cli/commands/list.ts';
import { measure } from '#cli/commands/measure.ts';
import { paper } from '#cli/commands/paper.ts';
import { plan } from '#cli/commands/plan.ts';
import { restore } from '#cli/commands/restore.ts';
import { sod } from '#cli/commands/sod.ts';
import { weather } from '#cli/commands/weather.ts';
import { venues } from '#cli/commands/venues.ts';

/** Every command by the word that is typed. A new one is a file in `commands/` and a line here. */
export const commands: Readonly<Record<string, Command>> = {
  about,
  venues,
  bookings,
  forecast,
  plan,
  sod,
  paper,
  light,
  climate,
  weather,
  inspect,
  measure,
  learn,
  demo,
  copies,
  restore,
  compact,
  list,
  call,
};
