import Database from 'better-sqlite3';
import { openApplication, type Application } from '#application/application.ts';
import type { FirstContent } from '#application/first-content.ts';
import { shippedContent } from '#application/shipped-content.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import type { OperationName, ReplyOf } from '#shared/contract/contract.ts';
import { addDays } from '#shared/calendar/local-time.ts';
import type { Job } from '#shared/contract/job.ts';
import { pngOf } from '#platform/photographs/codecs.ts';
import { packed, unpacked } from '#store/packed.ts';
import { chance } from '#tests/faults/chance.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { full } from '#tests/faults/tally.ts';

/** How much a workspace holds. */
export interface Age {
  readonly seasons: number;
  readonly bookings: number;
  readonly inspections: number;
  readonly photographs: number;
  readonly runs: number;
}

/** The shipped sample in the full form; a small field, whose plan takes a moment, where all else is tested too. */
const content: FirstContent = full ? shippedContent : { coverings: [], vehicles: [], documents: [documentOf('small')] };
/** The event that every measured operation is about. */
export const [venueId, bookingId] = full ? ['sample-bowl', 'july-concert'] : ['small', 'small-one'];

export const openAged = (file: string): Promise<Application> =>
  openApplication({ file, firstContent: content, clock: fixedClock('2027-06-01T12:00:00Z'), log: () => undefined });

/** The value of a good answer; of long work, once it is done. */
export const good = async <Name extends OperationName>(
  application: Application,
  name: Name,
  request: unknown,
): Promise<ReplyOf<Name>> => {
  let answer = await application.answer(name, request);
  while (answer.ok && (answer.value as Job | null)?.state === 'running') {
    await new Promise((resolve) => setTimeout(resolve, 5));
    answer = await application.answer('job/read', { id: (answer.value as Job).id });
  }
  if (!answer.ok) throw new Error(`${name}: ${answer.failure.message}`);
  const job = answer.value as Job | null;
  if (job?.failure) throw new Error(`${name}: ${job.failure.message}`);
  return (job?.state === 'done' ? job.value : job) as ReplyOf<Name>;
};

const nothingRead = {
  ...{ colour: null, greenIndex: null, moisture: null, hardness: null, traction: null, penetration: null, infiltration: null },
  ...{ rut: null, canopyTemperature: null, soilTemperature: null },
};

/** A picture of noise, so that its small picture is as large as a real one's. */
const picture = async (): Promise<string> => {
  const dice = chance(7);
  const [width, height] = [640, 480];
  const data = Uint8ClampedArray.from({ length: width * height * 4 }, (_, at) => (at % 4 === 3 ? 255 : dice.below(256)));
  return Buffer.from(await pngOf({ data, width, height })).toString('base64');
};

/** The shipped sample with one run, one plan, one inspection and one photograph: the small workspace, and the seed of the old one. */
export const beginSample = async (file: string): Promise<void> => {
  const application = await openAged(file);
  const fixtures = await good(application, 'fixture/list', { venueId });
  const booking = await good(application, 'booking/read', { id: bookingId });
  const over = booking.layers
    .map(({ off }) => off)
    .toSorted()
    .at(-1)!;
  const home = fixtures.find(({ kind, start }) => kind === 'home-date' && start > over)!;
  const run = await good(application, 'forecast/run', { venueId, bookingId, fixtureId: home.id, members: 20, seed: 1 });
  await good(application, 'plan/make', { forecastId: run.id, now: null, locks: [], done: [], instead: null });
  const ofEvent = { venueId, bookingId };
  const zone = booking.zones[0]!.letter;
  const photograph = {
    ...ofEvent,
    ...{ zone, point: null, takenAt: over, bearing: null, fileName: 'a.png', words: 'Invented.' },
  };
  await good(application, 'photograph/add', { photograph, base64: await picture() });
  const inspection = {
    ...ofEvent,
    ...{ kind: 'handback', at: over, inspector: 'Nobody', weather: 'dry', note: 'Invented.', defects: [], spills: [] },
    readings: [{ ...nothingRead, zone, point: null, cover: 0.6 }],
    ...{ photographs: [], corrects: null, witnesses: [] },
  };
  await good(application, 'inspection/add', { inspection });
  await application.close();
};

/** Every date in a text, so many days later. */
const later = (text: string, days: number): string => text.replace(/\b\d{4}-\d\d-\d\d(?=[T"])/g, (date) => addDays(date, days));

/**
 * Makes ten seasons of a workspace out of one: the same rows again under other ids, spread over the years. What the application never
 * writes twice is written straight into the tables, since two thousand photographs would take an hour to add one by one.
 */
export const growOld = (file: string, age: Age): void => {
  const database = new Database(file);
  const one = (table: string): Record<string, unknown> =>
    database
      .prepare(`select * from ${table} where ${table === 'thumbnails' ? '1' : `venue_id = '${venueId}'`} limit 1`)
      .get() as never;
  const concert = database.prepare('select * from bookings where id = ?').get(bookingId) as Record<string, unknown>;
  const [inspection, photograph, thumbnail] = [one('inspections'), one('photographs'), one('thumbnails')];
  const [run, plan] = [one('forecast_runs'), one('plan_runs')];
  const insert = (table: string, row: Record<string, unknown>): void => {
    const names = Object.keys(row);
    database
      .prepare(`insert into ${table} (${names.join(', ')}) values (${names.map(() => '?').join(', ')})`)
      .run(Object.values(row));
  };
  /** Where in the years the piece `at` of `many` falls; never into the season of the concert itself. */
  const daysAt = (at: number, many: number): number => -Math.round(400 + (at * age.seasons * 365) / many);
  const document = (row: Record<string, unknown>, days: number, changed: object): string =>
    JSON.stringify({ ...(JSON.parse(later(String(row['document']), days)) as object), ...changed });
  const eventAt = (at: number): string => `event-${at % age.bookings}`;

  const foreseen = unpacked(run['result_gzip'] as Uint8Array);

  database.exec('begin');
  for (let at = 0; at < age.bookings; at++) {
    const days = daysAt(at, age.bookings);
    const id = `event-${at}`;
    const time = (name: string): string => later(`${String(concert[name])}"`, days).slice(0, -1);
    const told = document(concert, days, { id, revision: 1, name: `Event ${at}`, stage: 'hold' });
    const span = { first_on_venue_time: time('first_on_venue_time'), last_off_venue_time: time('last_off_venue_time') };
    insert('bookings', { ...concert, id, revision: 1, name: `Event ${at}`, stage: 'hold', ...span, document: told });
  }
  for (let at = 0; at < age.inspections; at++) {
    const days = daysAt(at, age.inspections);
    const told = document(inspection, days, { id: `seen-${at}`, bookingId: eventAt(at) });
    const { at: moment } = JSON.parse(told) as { at: string };
    insert('inspections', { ...inspection, id: `seen-${at}`, booking_id: eventAt(at), at_venue_time: moment, document: told });
  }
  for (let at = 0; at < age.photographs; at++) {
    const days = daysAt(at, age.photographs);
    const told = document(photograph, days, { id: `picture-${at}`, bookingId: eventAt(at) });
    const { takenAt } = JSON.parse(told) as { takenAt: string };
    insert('photographs', {
      ...photograph,
      id: `picture-${at}`,
      booking_id: eventAt(at),
      taken_at_venue_time: takenAt,
      document: told,
    });
    insert('thumbnails', { ...thumbnail, photograph_id: `picture-${at}` });
  }
  for (let at = 0; at < age.runs; at++) {
    const days = daysAt(at, age.runs);
    const made = new Date(Date.parse(String(run['created_at'])) + days * 86_400_000).toISOString();
    const result = later(foreseen, days);
    const { homeDate } = JSON.parse(result) as { homeDate: { start: string } };
    const ofRun = { id: `run-${at}`, booking_id: eventAt(at), created_at: made };
    insert('forecast_runs', { ...run, ...ofRun, result_gzip: packed(result) });
    insert('forecast_home_dates', { forecast_id: ofRun.id, venue_id: venueId, starts_at_venue_time: homeDate.start });
    insert('plan_runs', { ...plan, id: `plan-${at}`, forecast_id: `run-${at}`, booking_id: eventAt(at), created_at: made });
  }
  database.exec('commit');
  database.close();
};
