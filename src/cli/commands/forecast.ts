import { readFileSync } from 'node:fs';
import type { RequestOf } from '#shared/contract/contract.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { show, type UnitSystem } from '#shared/units/quantity.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { narrowingLines, optionLines } from '#cli/answers-text.ts';
import { misused } from '#cli/command.ts';
import type { Command, Desk } from '#cli/command.ts';
import { onlyVenue } from '#cli/only-venue.ts';
import { unitsOf } from '#cli/units-option.ts';
import { zoneLines } from '#cli/zone-text.ts';
import { warningText } from '#shared/wording/warnings.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

type Trial = NonNullable<RequestOf<'forecast/answers'>['trial']>;

type Booked = NonNullable<Trial['booking']>;

/** A booking as a file holds it. What is wrong with it is the application's to say, as long as it is an object. */
const bookingOf = (path: string): Booked => {
  let text: string;
  try {
    text = readFileSync(path === '-' ? 0 : calledFrom(path), 'utf8');
  } catch (error) {
    throw misused('--file', `cannot be read (${(error as Error).message})`);
  }
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch (error) {
    throw misused('--file', `is not JSON (${(error as Error).message})`);
  }
  if (typeof read !== 'object' || read === null || Array.isArray(read))
    throw misused('--file', 'holds no booking; it must be one object, as `booking/read` answers it');
  return read as Booked;
};

/** The last moment that a booking names; a file may hold anything. */
const lastMoment = (booking: Booked): string | null => {
  const lists: readonly unknown[] = [booking.layers, booking.crowds, booking.traffic];
  const moments = lists
    .flatMap((list) => (Array.isArray(list) ? (list as readonly Record<string, unknown>[]) : []))
    .flatMap((one) => [one?.['off'], one?.['until'], one?.['at']])
    .filter((moment) => typeof moment === 'string');
  return moments.toSorted().at(-1) ?? null;
};

/** The home date that was named, or the first after the last thing of the booking. */
const homeDateOf = async (desk: Desk, venueId: string, booking: Booked): Promise<string> => {
  const named = desk.options['home-date'];
  if (typeof named === 'string' && named !== '') return named;
  const last = lastMoment(booking);
  const fixtures = last === null ? [] : await desk.ask('fixture/list', { venueId });
  const next = fixtures
    .filter(({ kind, start }) => kind === 'home-date' && start > last!)
    .toSorted((one, other) => (one.start < other.start ? -1 : 1))[0];
  if (!next) throw misused('--home-date', 'is missing, and the venue has no home date after the booking');
  return next.id;
};

const printForecast = (desk: Desk, result: Forecast, name: string, units: UnitSystem): void => {
  const area = (square: number): string => show(square, 'area', units);
  desk.print(`${name}: nothing done until ${result.homeDate.name}, ${result.homeDate.start.replace('T', ' ')}`);
  for (const line of zoneLines(result, units)) desk.print(line);
  desk.print(
    `Chance that every zone is ready: ${percent(result.chanceAllReady)}. To be replaced: ${area(result.replaceArea.p50)} (${area(result.replaceArea.p10)} to ${area(result.replaceArea.p90)}).`,
  );
  for (const warning of result.warnings) desk.print(`Note ${warning.zone}: ${warningText(warning, units)}`);
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

/** The booking file, as a word or behind `--file`; null where a stored booking is named. */
const fileOf = (desk: Desk): string | null => {
  const [word, more] = desk.words;
  const file = desk.options['file'];
  if (more !== undefined) throw misused(more, 'is one word too many; give one booking file');
  if (word !== undefined && file !== undefined) throw misused('--file', 'stands beside another file; give one of them');
  const named = word ?? (typeof file === 'string' ? file : null);
  if (named !== null && desk.options['booking'] !== undefined)
    throw misused('--file', 'stands beside --booking; give one of them');
  return named;
};

export const forecast: Command = {
  summary: 'Foresees a booking on a home date; a stored one is kept as a run, one from a file is not',
  usage: '(--booking ID [--answers] | FILE (- is standard input)) [--home-date ID] [--members N] [--seed N] [--units us|si]',
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
    const file = fileOf(desk);
    const members = desk.whole('members', 1, 1000, 200);
    const seed = desk.whole('seed', 0, 2 ** 31 - 1, 1);
    const units = unitsOf(desk);
    if (file !== null) {
      const read = bookingOf(file);
      const booking = { ...read, venueId: read.venueId ?? (await onlyVenue(desk)) };
      const fixtureId = await homeDateOf(desk, booking.venueId, booking);
      const trial: Trial = { venueId: booking.venueId, fixtureId, booking, members, seed };
      return printAnswers(desk, { forecastId: null, trial }, booking.name, units);
    }
    const bookingId = desk.need('booking');
    const booking = await desk.ask('booking/read', { id: bookingId });
    const { venueId, name } = booking;
    const fixtureId = await homeDateOf(desk, venueId, booking);
    const run = await desk.work('forecast/run', { venueId, fixtureId, bookingId, members, seed });
    if (desk.options['answers'] === true) await printAnswers(desk, { forecastId: run.id, trial: null }, name, units);
    else if (desk.json) return desk.printJson(run);
    else printForecast(desk, run.result, name, units);
    desk.note(`Kept as run ${run.id}; ${members} member${members === 1 ? '' : 's'}, seed ${seed}.`);
  },
};
