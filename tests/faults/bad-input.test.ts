import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import ICAL from 'ical.js';
import { parse } from 'csv-parse/sync';
import { calendarFile } from '#reports/calendar-file.ts';
import { chance } from '#tests/faults/chance.ts';
import { examplePapers } from '#tests/reports/example-papers.ts';
import { openApplication, type Application } from '#application/application.ts';
import { csv } from '#reports/tables.ts';
import { unpacked } from '#store/packed.ts';
import type { InputKind } from '#tests/faults/bad-input-program.ts';
import { concert, smallVenue } from '#tests/contract/small-venue.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { enter, full, tries } from '#tests/faults/tally.ts';
import { tableHash } from '#tests/store/table-hash.ts';

const program = fileURLToPath(new URL('./bad-input-program.ts', import.meta.url));
let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fieldback-input-'));
  file = join(folder, 'workspace.fieldback');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

interface Report {
  readonly asked: number;
  readonly refused: number;
  readonly slowest: number;
  readonly slowestWhat: string;
  readonly longest: number;
  readonly memory: number;
  readonly wrong: readonly string[];
}

const askMany = (kind: InputKind, many: number, seed: number): Promise<Report> =>
  new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      ['--disable-warning=ExperimentalWarning', '--max-old-space-size=256', program, file, kind, String(many), String(seed)],
      { stdio: ['ignore', 'pipe', 'pipe'] },
    );
    let [out, beside] = ['', ''];
    child.stdout.on('data', (part: Buffer) => (out += part.toString()));
    child.stderr.on('data', (part: Buffer) => (beside = (beside + part.toString()).slice(-4000)));
    child.on('close', (code) => {
      if (code === 0) resolve(JSON.parse(out) as Report);
      else reject(new Error(`ended with ${code}: ${beside}`));
    });
  });

const kinds: readonly (readonly [InputKind, number, number])[] = [
  ['requests', 400, 10_000],
  ['venue documents', 150, 10_000],
  ['weather tables (CSV)', 200, 10_000],
  ['weather files (EPW)', 200, 10_000],
  ['photographs', 120, 10_000],
  ['drawings (GeoJSON)', 300, 10_000],
];

describe('spoilt input', () => {
  // Fails when the gate lets a request through that its schema refuses, or when a service throws where it should refuse. Services look
  // before they write, so that the rolling back behind them (`Refused` in `Store.write`) is shown by tests/store/transactions.test.ts.
  test.each(kinds)(
    '%s: no crash, no answer over a second, under 512 MB, nothing written by a refusal, field and reason named',
    async (kind, short, long) => {
      const report = await askMany(kind, tries(short, long), 31);
      expect(report.wrong).toEqual([]);
      expect(report.refused).toBeGreaterThan(report.asked / 4);
      expect(report.memory).toBeLessThan(512);
      // Work of the program itself is what a spoilt file could make endless; the clock also counts what other programs take.
      expect(report.slowest, report.slowestWhat).toBeLessThan(full ? 1000 : 3000);
      expect(report.longest, report.slowestWhat).toBeLessThan(20_000);
      enter({
        kind: `input: ${kind}`,
        tries: report.asked,
        survived: report.asked,
        lost: 0,
        note: `${report.refused} refused, slowest ${report.slowest} ms of work, ${report.memory} MB`,
      });
    },
    tries(120_000, 3_600_000),
  );
});

describe('words made to do harm, in what is written', () => {
  // Fails when a name gets into a calendar or a table as it stands: a line break in it would begin a line of its own.
  test(
    'calendars and tables are read back by other programs as what was meant',
    () => {
      const dice = chance(33);
      const count = tries(60, 10_000);
      const papers = examplePapers(1, 1);
      const [job] = papers.plan.plan.zones[0]!.jobs;
      const [decision] = papers.plan.plan.decisions;
      const few = { ...papers.plan.plan, zones: [{ ...papers.plan.plan.zones[0]!, jobs: [job!] }], fieldJobs: [], orders: [] };
      const harm = [
        'BEGIN:VEVENT',
        'END:VCALENDAR',
        '\r\nATTENDEE:mailto:x@elsewhere.invalid',
        '\n',
        '\r',
        ';',
        ',',
        '\\',
        '"',
        '\\n',
        '\t=1+1',
        '\u2028',
        'é\u0301',
        '🌱',
        'x'.repeat(200),
        ':',
        '\0',
      ];
      for (let time = 0; time < count; time++) {
        const words = (): string => Array.from({ length: 1 + dice.below(6) }, () => dice.pick(harm)).join(dice.pick(['', ' ']));
        const [home, name, zone] = [words(), words(), words()];
        const text = calendarFile(
          {
            ...papers,
            venue: { ...papers.venue, name },
            forecast: {
              ...papers.forecast,
              result: { ...papers.forecast.result, homeDate: { ...papers.forecast.result.homeDate, name: home } },
            },
            plan: { ...papers.plan, plan: { ...few, decisions: [{ ...decision!, name: zone }] } },
          },
          'si',
        );
        for (const line of text.split('\r\n')) {
          if (/[\r\n]/.test(line)) throw new Error(`a line of its own: ${JSON.stringify(line)}`);
          if (Buffer.byteLength(line) > 75) throw new Error(`too long a line: ${JSON.stringify(line)}`);
        }
        const calendar = new ICAL.Component(ICAL.parse(text) as never);
        const events = calendar.getAllSubcomponents();
        if (events.length !== 3 || events.some((event) => event.hasProperty('attendee')))
          throw new Error(`not what was meant: ${JSON.stringify(text)}`);
        const cells = [home, name, zone];
        const [, row] = parse(csv(['a', 'b', 'c'], [cells]), { relax_column_count: true }) as string[][];
        if (row?.length !== 3 || row.some((cell, at) => !cell.endsWith(cells[at]!)))
          throw new Error(`cells: ${JSON.stringify(cells)}`);
      }
      enter({ kind: 'output: calendars (ICS) and tables', tries: count, survived: count, lost: 0 });
    },
    tries(60_000, 900_000),
  );
});

describe('input made to do harm', () => {
  let application: Application;
  beforeEach(async () => {
    application = await openApplication({ file, log: () => undefined });
    expect(await application.ask('venue/import', { document: documentOf('venue-1') })).toMatchObject({ ok: true });
  });
  afterEach(() => application.close());

  /** A PNG that says it is `width` × `height` and holds a stream that unpacks to as much as the largest. */
  const bomb = (width: number, height: number): string => {
    const chunk = (name: string, data: Uint8Array): Buffer => {
      const head = Buffer.alloc(8);
      head.writeUInt32BE(data.length);
      head.write(name, 4, 'latin1');
      return Buffer.concat([head, data, Buffer.alloc(4)]);
    };
    const size = Buffer.alloc(13);
    size.writeUInt32BE(width);
    size.writeUInt32BE(height, 4);
    size.set([8, 6], 8);
    const signature = Buffer.from('89504e470d0a1a0a', 'hex');
    const data = deflateSync(Buffer.alloc(60_000_000), { level: 9 });
    return Buffer.concat([signature, chunk('IHDR', size), chunk('IDAT', data), chunk('IEND', new Uint8Array())]).toString(
      'base64',
    );
  };

  // Fails when `pictureHeader` no longer bounds the pixels before anything is decoded, or when a decoder's failure gets out.
  test('pictures that unpack to more than they should', async () => {
    const before = tableHash(file);
    for (const [width, height] of [
      [60_000, 60_000],
      [16_384, 16_384],
      [1, 4_000_000],
      [0, 0],
    ] as const) {
      const answer = await application.ask('photograph/measure', { of: { base64: bomb(width, height) }, frame: null });
      expect(answer, `${width} × ${height}`).toMatchObject({
        ok: false,
        failure: { kind: 'invalid-request', problems: [{ reason: expect.stringMatching(/./) as string }] },
      });
    }
    // One that says it is small is read as far as it is.
    expect(await application.ask('photograph/measure', { of: { base64: bomb(40, 40) }, frame: null })).toHaveProperty('ok');
    expect(process.memoryUsage().rss).toBeLessThan(1024 * 2 ** 20);
    expect(tableHash(file)).toBe(before);
    enter({ kind: 'input: pictures that swell', tries: 5, survived: 5, lost: 0 });
  }, 120_000);

  // Fails when `unpacked` sets no bound.
  test('a stored run that unpacks without end', async () => {
    const { gzipSync } = await import('node:zlib');
    const packed = gzipSync(Buffer.alloc(600 * 2 ** 20));
    expect(() => unpacked(packed)).toThrow(/larger than|buffer/i);
  }, 60_000);

  test('keys of a prototype, deep nesting and huge numbers', async () => {
    const before = tableHash(file);
    const document = documentOf('venue-2');
    const polluted = JSON.parse(
      JSON.stringify(document).replace('"settings":{}', '"settings":{"__proto__":{"polluted":1}}'),
    ) as object;
    const deep = JSON.parse('['.repeat(100_000) + ']'.repeat(100_000)) as unknown;
    for (const request of [
      { document: polluted },
      { document: deep },
      deep,
      { document: { ...document, venue: { ...document.venue, place: { ...document.venue.place, elevation: 1e300 } } } },
      { document: { ...document, fixtures: Array.from({ length: 5000 }, () => document.fixtures[0]) } },
    ]) {
      const answer = await application.answer('venue/import', request);
      expect(answer).toMatchObject({
        ok: false,
        failure: { kind: expect.stringMatching(/^(invalid-request|out-of-range)$/) as string },
      });
    }
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    expect(tableHash(file)).toBe(before);
    enter({ kind: 'input: prototype keys, nesting, huge numbers', tries: 5, survived: 5, lost: 0 });
  });

  // Fails when an id may hold a stroke or a dot: the names of written papers are made of ids.
  test('names that lead out of a folder', async () => {
    const before = tableHash(file);
    const names = ['../../etc/passwd', '..\\..\\x', '/etc/passwd', 'c:x', '.', '..', 'con.', 'a/b', 'a\0b', '%2e%2e%2f'];
    for (const id of names) {
      for (const request of [
        { booking: { ...concert, id, venueId: 'venue-1' } },
        { booking: { ...concert, id: 'fine', venueId: id } },
      ])
        expect(await application.answer('booking/save', request), id).toMatchObject({
          ok: false,
          failure: { kind: 'invalid-request' },
        });
      expect(await application.answer('venue/save', { venue: { ...smallVenue, id } })).toMatchObject({ ok: false });
      expect(await application.answer('report/write', { planId: id, kind: 'calendar', paper: 'a4', units: 'si' })).toMatchObject({
        ok: false,
      });
      expect(await application.answer('workspace/restore', { copy: id })).toMatchObject({ ok: false });
    }
    expect(tableHash(file)).toBe(before);
    enter({ kind: 'input: names that lead out of a folder', tries: names.length, survived: names.length, lost: 0 });
  });

  // Fails when `plain` of the tables no longer marks what a spreadsheet takes for a formula.
  test('formulas in tables', () => {
    const texts = [
      '=1+1',
      '+1',
      '-1+1',
      '@sum(a1)',
      ' =1',
      '\t=1',
      '\r=1',
      '\n=1',
      '=HYPERLINK("http://elsewhere.invalid")',
      '＝1',
      '\u00a0=1',
      '%0A=1',
      '|x',
    ];
    for (const text of texts) {
      const [, row] = csv(['a', 'b'], [[text, 1]]).split(/\r\n(?="?')/);
      expect(row, JSON.stringify(text)).toMatch(/^"?'/);
    }
    enter({ kind: 'input: formulas in tables', tries: texts.length, survived: texts.length, lost: 0 });
  });
});
