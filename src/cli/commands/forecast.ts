import { readFileSync } from 'node:fs';
import type { RequestOf } from '#shared/contract/contract.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { UnitSystem } from '#shared/units/quantity.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { narrowingLines, optionLines } from '#cli/answers-text.ts';
import { misused } from '#cli/command.ts';
import type { Command, Desk } from '#cli/command.ts';
import { unitsOf } from '#cli/units-option.ts';
import { zoneLines } from '#cli/zone-text.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

type Trial = NonNullable<RequestOf<'forecast/answers'>['trial']>;

/** A booking as a file holds it. What is wrong with it is the application's to say. */
const bookingOf = (path: string): NonNullable<Trial['booking']> => {
  let text: string;
  try {
    text = readFileSync(path === '-' ? 0 : calledFrom(path), 'utf8');
  } catch (error) {
    throw misused('--file', `cannot be read (${(error as Error).message})`);
  }
  try {
    return JSON.parse(text) as NonNullable<Trial['booking']>;
  } catch (error) {
    throw misused('--file', `is not JSON (${(error as Error).message})`);
  }
};

const printForecast = (desk: Desk, result: Forecast, name: string, units: UnitSystem): void => {
  desk.print(`${name}: nothing done until ${result.homeDate.name}, ${result.homeDate.start.replace('T', ' ')}`);
  for (const line of zoneLines(result, units)) desk.print(line);
  desk.print(
    `Chance that every zone is ready: ${percent(result.chanceAllReady)}. To be replaced: ${Math.round(result.replaceArea.p50)} m² (${Math.round(result.replaceArea.p10)} to ${Math.round(result.replaceArea.p90)}).`,
  );
  for (const warning of result.warnings) desk.print(`Note ${warning.zone}: ${warning.detail}`);
};

/** Everything that can be asked, of a booking file or of a kept run. */
const printAnswers = async (
  desk: Desk,
  request: RequestOf<'forecast/answers'>,
  name: string,
  units: UnitSystem,
): Promise<void> => {
  const answers = await desk.work('forecast/answers', request);
  if (desk.json) return desk.printJson(answers);
  printForecast(desk, answers.forecast, name, units);
  for (const line of optionLines(answers, units)) desk.print(line);
  for (const line of narrowingLines(answers)) desk.print(line);
};

export const forecast: Command = {
  summary: 'Foresees a booking on a home date; a stored one is kept as a run, one from a file is not',
  usage: '(--booking ID [--answers] | --file PATH (- is standard input)) --home-date ID [--members N] [--seed N] [--units us|si]',
  options: {
    booking: { type: 'string' },
    file: { type: 'string' },
    answers: { type: 'boolean' },
    'home-date': { type: 'string' },
    members: { type: 'string' },
    seed: { type: 'string' },
    units: { type: 'string' },
  },
  run: async (desk) => {
    const { file } = desk.options;
    if (file !== undefined && desk.options['booking'] !== undefined)
      throw misused('--file', 'stands beside --booking; give one of them');
    const bookingId = file === undefined ? desk.need('booking') : null;
    const fixtureId = desk.need('home-date');
    const members = desk.whole('members', 1, 1000, 200);
    const seed = desk.whole('seed', 0, 2 ** 31 - 1, 1);
    const units = unitsOf(desk);
    if (bookingId === null) {
      const booking = bookingOf(desk.need('file'));
      const trial: Trial = { venueId: booking.venueId, fixtureId, booking, members, seed };
      return printAnswers(desk, { forecastId: null, trial }, booking.name, units);
    }
    const { venueId, name } = await desk.ask('booking/read', { id: bookingId });
    const run = await desk.work('forecast/run', { venueId, fixtureId, bookingId, members, seed });
    if (desk.options['answers'] === true) await printAnswers(desk, { forecastId: run.id, trial: null }, name, units);
    else if (desk.json) return desk.printJson(run);
    else printForecast(desk, run.result, name, units);
    desk.note(`Kept as run ${run.id}; ${members} member${members === 1 ? '' : 's'}, seed ${seed}.`);
  },
};
