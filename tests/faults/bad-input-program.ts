/**
 * Asks a workspace many spoilt questions of one kind, in a process that is given little memory: `bad-input-program.ts <file> <kind> <how
 * many> <seed>`. Prints one line of JSON: how many were asked, the slowest answer (ms of work, and by
 * the clock), the most memory, and everything that should not be.
 */
import Database from 'better-sqlite3';
import { openApplication } from '#application/application.ts';
import { TaskCancelled } from '#platform/workers/pool.ts';
import { jpegOf, pngOf } from '#platform/photographs/codecs.ts';
import { thumbnailOf } from '#platform/photographs/thumbnail.ts';
import type { Compute } from '#services/needs.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { fromGeoJson, toGeoJson } from '#shared/geometry/geojson.ts';
import { contract, operationNames, type OperationName } from '#shared/contract/contract.ts';
import { Failure, type Answer } from '#shared/contract/failure.ts';
import { chance } from '#tests/faults/chance.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { spoilBytes, spoilRequest, spoilText } from '#tests/faults/spoil.ts';
import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { forecastOf } from '#tests/contract/fake-engine.ts';
import { epwText } from '#tests/faults/epw-text.ts';
import { steps } from '#tests/contract/steps.ts';

export const inputKinds = [
  'requests',
  'venue documents',
  'weather tables (CSV)',
  'weather files (EPW)',
  'photographs',
  'drawings (GeoJSON)',
] as const;
export type InputKind = (typeof inputKinds)[number];

const [file = '', kind = 'requests', many = '10', seed = '1'] = process.argv.slice(2) as [string, InputKind, string, string];
const photographs = kind === 'photographs';
/** What comes after the checks is not asked here: forecasts say nothing, other calculations stop at once. */
const empty = (async (task: string, input: unknown) => {
  if (task === 'foresee') return forecastOf(input as ForecastQuestion);
  if (task === 'thumbnail') return thumbnailOf(input as { bytes: Uint8Array });
  throw new TaskCancelled(task);
}) as Compute;
// Only photographs need the real threads: their decoders run there.
const application = await openApplication({ file, log: () => undefined, ...(photographs ? {} : { compute: empty }) });
const dice = chance(Number(seed));
const wrong: string[] = [];
const note = (what: string): void => void (wrong.length < 20 && wrong.push(what));

await application.ask('covering/save', { covering: boardFloor });
await application.ask('vehicle/save', { vehicle: cart });
await application.ask('venue/save', { venue: smallVenue });
await application.ask('fixture/save', { fixture: homeDate });
await application.ask('booking/save', { booking: concert });

/** A good request of every operation; where one needs the result of another, ids that are not there. */
const goodRequests = new Map<OperationName, unknown>();
for (const step of steps)
  try {
    goodRequests.set(step.name, step.request(new Map()));
  } catch {
    goodRequests.set(step.name, { id: 'nowhere', planId: 'nowhere', venueId: smallVenue.id });
  }
const revised = { venue: 'venue/save', booking: 'booking/save', fixture: 'fixture/save' } as const;
for (const [thing, name] of Object.entries(revised)) {
  const request = structuredClone(goodRequests.get(name)) as Record<string, { revision: number }>;
  request[thing]!.revision = 1;
  goodRequests.set(name, request);
}
const csvLines = ['date,maximum (°C),minimum (°C),rain (mm)'];
for (let day = 1; day <= 28; day++)
  csvLines.push(`2024-06-${String(day).padStart(2, '0')},${20 + (day % 9)},${9 + (day % 5)},${day % 4}`);
const csvText = csvLines.join('\n');
const epw = epwText();
/** A small picture: half grass, half sand. */
const grass = (): { data: Uint8ClampedArray; width: number; height: number } => {
  const [width, height] = [48, 32];
  const data = new Uint8ClampedArray(width * height * 4);
  for (let pixel = 0; pixel < width * height; pixel++)
    data.set(pixel % width < width / 2 ? [60, 130 + (pixel % 40), 50, 255] : [190, 170 + (pixel % 30), 130, 255], pixel * 4);
  return { data, width, height };
};
const pictures = photographs ? [await pngOf(grass()), await jpegOf(grass(), 80)] : [];

const ask = (number: number): readonly [string, unknown] => {
  switch (kind) {
    case 'requests': {
      const name = dice.pick(operationNames);
      if (name === 'workspace/copy' || name === 'workspace/compact') return ['venue/list', spoilRequest({}, dice)];
      return [dice.below(50) === 0 ? `${name}/../${name}` : name, spoilRequest(goodRequests.get(name) ?? {}, dice)];
    }
    case 'venue documents':
      return ['venue/import', { document: spoilRequest(documentOf(`venue-${number}`), dice) }];
    case 'weather tables (CSV)':
      return [
        'weather/import',
        { venueId: smallVenue.id, format: 'csv', fileName: 'spoilt.csv', text: spoilText(csvText, dice) },
      ];
    case 'weather files (EPW)':
      return ['weather/import', { venueId: smallVenue.id, format: 'epw', fileName: 'spoilt.epw', text: spoilText(epw, dice) }];
    case 'drawings (GeoJSON)':
      throw new Error('drawings are no questions');
    case 'photographs': {
      const base64 = Buffer.from(spoilBytes(dice.pick(pictures), dice)).toString('base64');
      return ['photograph/measure', { of: { base64 }, frame: null }];
    }
  }
};

const frame = { place: smallVenue.place, bearing: smallVenue.field.bearing };
const drawing = (['earth', 'field'] as const).map((coordinates) =>
  JSON.stringify(
    toGeoJson(
      concert.zones.map(({ letter, name, use, outline }) => ({ part: 'footprint', letter, name, use, outline })),
      frame,
      coordinates,
    ),
  ),
);
/** Drawings are read on the page, without a question: what was left out is named, and what is taken in is a shape. */
const readDrawing = (): Answer<unknown> => {
  const text = dice.pick(drawing);
  const spoilt = dice.below(2) === 0 ? spoilText(text, dice) : spoiltValues(text);
  const { shapes, problems } = fromGeoJson(spoilt, frame, dice.pick([null, 'earth', 'field'] as const));
  for (const { outline, name, letter } of shapes)
    if (
      outline.length < 3 ||
      outline.length > 400 ||
      !outline.flat().every((value) => Number.isFinite(value) && Math.abs(value) < 1e4) ||
      typeof name !== 'string' ||
      (letter !== null && typeof letter !== 'string')
    )
      note(`a drawing was taken in that is no shape: ${spoilt.slice(0, 200)}`);
  if (problems.length === 0) return { ok: true, value: null };
  const [reason] = problems;
  return {
    ok: false,
    failure: { kind: 'invalid-request', message: reason!, problems: [{ field: 'drawing', reason: reason! }] },
  };
};
/** JSON knows no such numbers; a file could not hold them. */
const plain = (_key: string, value: unknown): unknown => (typeof value === 'bigint' ? String(value) : value);
/** A drawing spoilt in its values; one nested deeper than anybody's writer goes is nested as text. */
const spoiltValues = (text: string): string => {
  try {
    return JSON.stringify(spoilRequest(JSON.parse(text), dice), plain) ?? '';
  } catch {
    return text.replace(/\[/, '['.repeat(100_000));
  }
};

/** Another connection sees at once whether anything was written. */
const witness = new Database(file, { readonly: true });
const version = (): number => witness.pragma('data_version', { simple: true }) as number;

// Every thread brings its decoders up with its first picture; that is no spoilt file's doing.
if (photographs) {
  const base64 = Buffer.from(pictures[1]!).toString('base64');
  const asked = Array.from({ length: 8 }, () => application.answer('photograph/measure', { of: { base64 }, frame: null }));
  for (const answer of await Promise.all(asked)) if (!answer.ok) note(`a good picture was refused: ${answer.failure.message}`);
}

let [slowest, slowestWhat, longest, memory, refused] = [0, '', 0, 0, 0];
for (let number = 0; number < Number(many); number++) {
  const drawn = kind === 'drawings (GeoJSON)';
  const [name, request] = drawn ? [kind, null] : ask(number);
  const before = version();
  const [begun, worked] = [performance.now(), process.cpuUsage()];
  const answer: Answer<unknown> = drawn ? readDrawing() : await application.answer(name, request);
  // What the program itself worked: a machine that is busy with other things makes nothing hang.
  const { user, system } = process.cpuUsage(worked);
  const took = (user + system) / 1000;
  longest = Math.max(longest, performance.now() - begun);
  const where = `${name}, number ${number} of seed ${seed}`;
  if (took > slowest && number > 0) [slowest, slowestWhat] = [took, where];
  memory = Math.max(memory, process.memoryUsage().rss);
  if (answer.ok) {
    if (!drawn && contract[name as OperationName].long)
      await application.answer('job/cancel', { id: (answer.value as { id: string }).id });
    continue;
  }
  refused += 1;
  const { failure } = answer;
  if (!Failure.safeParse(failure).success) note(`${where}: no failure of the contract`);
  if (failure.kind === 'unexpected') note(`${where}: ${failure.message}`);
  if (failure.kind === 'invalid-request' || failure.kind === 'out-of-range') {
    const [first] = failure.problems;
    if (!first || first.field === '' || first.reason === '' || !failure.message.includes(first.reason))
      note(`${where}: names no field and reason: ${failure.message.slice(0, 200)}`);
  }
  if (version() !== before) note(`${where}: refused, and yet something was written`);
}
witness.close();
if (({} as Record<string, unknown>)['polluted'] !== undefined) note('a prototype was changed');
await application.close();
const after = new Database(file, { readonly: true });
if (after.pragma('integrity_check', { simple: true }) !== 'ok') note('the file is damaged');
after.close();
process.stdout.write(
  `${JSON.stringify({ asked: Number(many), refused, slowest: Math.round(slowest), slowestWhat, longest: Math.round(longest), memory: Math.round(memory / 2 ** 20), wrong })}\n`,
);
