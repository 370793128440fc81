import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { toEpoch } from '#shared/calendar/local-time.ts';
import { calendarFile } from '#reports/calendar-file.ts';
import { costTable, csv, jobTable, sodTable, zoneTable } from '#reports/tables.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import type { SodWatering } from '#shared/vocabulary/plan.ts';
import { exampleEntry, examplePapers, exampleTerms, moneyWith } from '#tests/reports/example-papers.ts';

const papers = examplePapers(40, 60);
/** As an independent parser reads it. */
const eventsOf = (text: string) => {
  const calendar = new ICAL.Component(ICAL.parse(text) as never);
  return { calendar, events: calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one)) };
};
const byId = (text: string) => new Map(eventsOf(text).events.map((event) => [event.uid, event]));

describe('the calendar file, read by an independent parser (RFC 5545)', () => {
  const text = calendarFile(papers, 'si');
  const { calendar, events } = eventsOf(text);

  it('keeps to the lines, the version and the properties that every event must have', () => {
    // 3.1: lines end in CRLF and hold at most 75 octets.
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBeTruthy();
    for (const { component } of events) {
      for (const once of ['uid', 'dtstamp', 'dtstart', 'sequence']) expect(component.getAllProperties(once)).toHaveLength(1);
      const [start, end] = [component.getFirstPropertyValue('dtstart'), component.getFirstPropertyValue('dtend')];
      // 3.6.1: an end, where there is one, is later than the start.
      if (end !== null) expect((end as ICAL.Time).compare(start as ICAL.Time)).toBe(1);
    }
  });

  it('holds every job, truck and decision and the home date, once, at its instant', () => {
    const { plan } = papers.plan;
    const jobs = [...plan.zones.flatMap((zone) => zone.jobs), ...plan.fieldJobs];
    const trucks = plan.orders.flatMap((order) => order.trucks);
    expect(events).toHaveLength(jobs.length + trucks.length + plan.decisions.length + 1);
    expect(new Set(events.map((event) => event.uid)).size).toBe(events.length);
    const starts = (times: readonly number[]) => times.toSorted((a, b) => a - b);
    const { timeZone } = papers.venue.place;
    expect(starts(events.map((event) => event.startDate.toJSDate().getTime()))).toEqual(
      starts(
        [
          ...jobs.map((job) => job.start),
          ...trucks.map((truck) => truck.arrive),
          ...plan.decisions.map((decision) => decision.at),
          papers.forecast.result.homeDate.start,
        ].map((time) => toEpoch(time, timeZone)),
      ),
    );
  });

  it('tells the load of a truck in the reader’s units', () => {
    const [first] = papers.plan.plan.orders[0]!.trucks;
    const loads = (units: 'si' | 'us') =>
      eventsOf(calendarFile(papers, units))
        .events.map(({ summary }) => summary)
        .filter((summary) => summary.startsWith('Truck 1:'));
    // 10.7639 ft² to the m².
    expect(loads('us')[0]).toContain(`${Math.round(first!.area * 10.7639).toLocaleString('en-US')} ft² for`);
    expect(loads('si')[0]).toContain(`${Math.round(first!.area).toLocaleString('en-US')} m² for`);
  });

  it('rings a day and two hours before a decision, and at nothing else', () => {
    for (const { summary, component } of events) {
      const alarms = component.getAllSubcomponents('valarm').map((alarm) => ({
        action: alarm.getFirstPropertyValue('action'),
        ahead: (alarm.getFirstPropertyValue('trigger') as ICAL.Duration).toSeconds() / 3600,
      }));
      expect(alarms).toEqual(
        summary.startsWith('Last hour')
          ? [
              { action: 'DISPLAY', ahead: -24 },
              { action: 'DISPLAY', ahead: -2 },
            ]
          : [],
      );
    }
  });

  it('a later plan updates: same ids, higher sequence, and what fell away is cancelled', () => {
    const fewer = examplePapers(40, 58);
    const later = {
      ...fewer,
      plan: { ...fewer.plan, id: 'later', createdAt: '2027-07-02T12:00:00.000Z' },
      earlier: [papers.plan],
    };
    const [old, next] = [byId(text), byId(calendarFile(later, 'si'))];
    expect([...next.keys()].toSorted()).toEqual([...old.keys()].toSorted());
    for (const [uid, event] of next) expect(event.sequence).toBeGreaterThan(old.get(uid)!.sequence);
    const cancelled = [...next.values()].filter((event) => event.component.getFirstPropertyValue('status') === 'CANCELLED');
    expect(cancelled.map((event) => event.summary.replace(/:.*/, ''))).toEqual(['Truck 59', 'Truck 60']);
    expect(cancelled.every((event) => event.component.getAllSubcomponents('valarm').length === 0)).toBe(true);
  });

  it('the same plan gives the same bytes, and names with commas, breaks and colons come back whole', () => {
    expect(calendarFile(papers, 'si')).toBe(text);
    const name = 'Home, sweet; "home":\nsecond line \\ and a long tail that must be folded over several lines of the file, ää';
    const homeDate = { ...papers.forecast.result.homeDate, name };
    const forecast = { ...papers.forecast, result: { ...papers.forecast.result, homeDate } };
    expect(eventsOf(calendarFile({ ...papers, forecast }, 'si')).events.map((event) => event.summary)).toContain(name);
  });
});

/** The papers with waterings of the sod in zones A and B, in the order a plan keeps them: zone by zone. */
const watered = (waterings: readonly SodWatering[]): RecoveryPapers => {
  const works = { quantities: [], waterings, rolls: [], cautions: [] };
  const few = examplePapers();
  return { ...few, plan: { ...few.plan, plan: { ...few.plan.plan, works } } };
};
const water = (zone: string, at: string, depth = 3): SodWatering => ({
  zone,
  window: 'to-home-date',
  at,
  depth,
  volume: depth / 10,
});

describe('the waterings of young sod in the calendar', () => {
  const papers = watered([
    water('A', '2027-07-21T13:30', 12),
    water('A', '2027-07-22T06:00', 2.4),
    water('B', '2027-07-22T06:00'),
    water('B', '2027-07-22T10:00'),
  ]);
  const { timeZone } = papers.venue.place;
  const entriesOf = (text: string) => eventsOf(text).events.filter(({ uid }) => uid.includes('.water-new-sod.'));
  const first = entriesOf(calendarFile(papers, 'si'));

  it('stand once an hour with every zone that is due, at their instant, without an end and without ringing', () => {
    expect(first.map(({ summary }) => summary)).toEqual(['A: water new sod', 'A, B: water new sod', 'B: water new sod']);
    expect(first.map((event) => event.startDate.toJSDate().getTime())).toEqual(
      ['2027-07-21T13:30', '2027-07-22T06:00', '2027-07-22T10:00'].map((time) => toEpoch(time, timeZone)),
    );
    expect(first[1]!.description).toBe('A: 2.4 mm, 0.2 m³\nB: 3.0 mm, 0.3 m³');
    // 2.4 mm ÷ 25.4 mm to the inch, 3.0 mm likewise; on 100 m² these are 240 and 300 l, at 3.785 l to the gallon.
    expect(entriesOf(calendarFile(papers, 'us'))[1]!.description).toBe('A: 0.09 in, 63 gal\nB: 0.12 in, 79 gal');
    for (const { component } of first) {
      expect(component.getFirstPropertyValue('dtend')).toBeNull();
      expect(component.getAllSubcomponents('valarm')).toEqual([]);
    }
    expect(new Set(eventsOf(calendarFile(papers, 'si')).events.map(({ uid }) => uid)).size).toBe(
      eventsOf(calendarFile(papers, 'si')).events.length,
    );
  });

  it('keep the wall clock of the venue over the night on which the clocks change', () => {
    // The zone of the sample changes from UTC−5 to UTC−6 in the night to 7 November 2027.
    expect(timeZone).toBe('America/Chicago');
    const over = entriesOf(calendarFile(watered([water('A', '2027-11-06T06:00'), water('A', '2027-11-07T06:00')]), 'si'));
    expect(over.map((event) => event.startDate.toJSDate().toISOString())).toEqual([
      '2027-11-06T11:00:00.000Z',
      '2027-11-07T12:00:00.000Z',
    ]);
  });

  it('are updated by a later plan under the same ids, and cancelled where nothing is watered any more', () => {
    const later = watered([water('A', '2027-07-22T06:00', 5), water('B', '2027-07-23T06:00')]);
    const next = entriesOf(
      calendarFile(
        {
          ...later,
          plan: { ...later.plan, id: 'later', createdAt: '2027-07-02T12:00:00.000Z' },
          earlier: [papers.plan],
        },
        'si',
      ),
    );
    const state = (event: ICAL.Event) => event.component.getFirstPropertyValue('status');
    expect(next.map((event) => [event.summary, state(event)])).toEqual([
      ['A: water new sod', 'CONFIRMED'],
      ['B: water new sod', 'CONFIRMED'],
      ['A: water new sod', 'CANCELLED'],
      ['B: water new sod', 'CANCELLED'],
    ]);
    expect(next[0]!.uid).toBe(first[1]!.uid);
    expect([next[2]!.uid, next[3]!.uid]).toEqual([first[0]!.uid, first[2]!.uid]);
    for (const event of next) expect(event.sequence).toBeGreaterThan(first[0]!.sequence);
  });
});

describe('tables as CSV, read by a parser', () => {
  const read = (text: string): string[][] => parse(text, { bom: true });

  it('are rectangular, with a mark for UTF-8 and line ends of RFC 4180', () => {
    const money = moneyWith(exampleTerms, [exampleEntry(1), exampleEntry(2, { evidence: '' })]);
    const rows = {
      zone: 40,
      job: papers.plan.plan.zones.flatMap((zone) => zone.jobs).length + papers.plan.plan.fieldJobs.length,
      sod: 60,
      cost: 2,
    };
    for (const [text, count] of [
      [zoneTable(papers), rows.zone],
      [jobTable(papers), rows.job],
      [sodTable(papers), rows.sod],
      [costTable({ ...papers, money }), rows.cost],
    ] as const) {
      expect(text.charCodeAt(0)).toBe(0xfeff);
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      const [head, ...lines] = read(text);
      expect(lines).toHaveLength(count);
      for (const line of lines) expect(line).toHaveLength(head!.length);
    }
  });

  it('the jobs hold the waterings of young sod with their water, among the jobs by their hour', () => {
    const papers = watered([water('A', '2027-07-22T06:00', 2.4), water('B', '2027-07-22T06:00')]);
    const [head, ...lines] = read(jobTable(papers));
    expect(head!.slice(-2)).toEqual(['water_mm', 'water_m3']);
    expect(lines.filter(([, job]) => job === 'water-new-sod')).toEqual([
      ['A', 'water-new-sod', '2027-07-22T06:00', '', '', '', '', '2.4', '0.24'],
      ['B', 'water-new-sod', '2027-07-22T06:00', '', '', '', '', '3', '0.3'],
    ]);
    expect(lines).toHaveLength(read(jobTable(examplePapers())).length - 1 + 2);
    const starts = lines.map((line) => line[2]!);
    expect(starts).toEqual(starts.toSorted());
  });

  it('no cell that a person wrote begins a formula', () => {
    const attacks = [
      '=1+1',
      '+1',
      '-1+2',
      '@SUM(A1)',
      '\t=1',
      '\r=1',
      ' =1',
      '|cmd',
      '%0',
      '\u{FF1D}1',
      '\uFEFF=1',
      '=HYPERLINK("x","y")',
    ];
    for (const words of attacks) {
      const money = moneyWith(exampleTerms, [exampleEntry(1, { words, evidence: words, unit: words })]);
      const cells = read(costTable({ ...papers, money })).flat();
      expect(
        cells.filter((cell) => /^[\s\uFEFF]*[=+\-@|%\u{FF1D}]/u.test(cell)),
        words,
      ).toEqual([]);
      expect(cells).toContain(`'${words}`);
    }
  });

  it('quotes, commas, breaks and numbers come back as they were; a number stays a number, below nothing too', () => {
    const words = 'a "quoted", word\r\nand a second line';
    expect(read(csv(['a', 'b', 'c'], [[words, -1.5, null]]))).toEqual([
      ['a', 'b', 'c'],
      [words, '-1.5', ''],
    ]);
  });
});
