import type { OperationName, PlanRun, VenueDocument } from '#shared/contract/contract.ts';
import type { ForecastAnswers } from '#shared/vocabulary/answers.ts';
import type { WayOutcome } from '#shared/vocabulary/comparison.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { SodDecision } from '#shared/vocabulary/sod.ts';
import type { Job } from '#shared/contract/job.ts';
import { expect } from 'vitest';
import type { OpenDoor } from '#tests/contract/door.ts';
import { boardFloor, cart, concert, homeDate, limitedVenue, smallVenue } from '#tests/contract/small-venue.ts';

/** The last value of each operation that answered; of long work its result. */
export type Known = Map<OperationName, unknown>;

export interface Step {
  readonly name: OperationName;
  readonly request: (known: Known) => unknown;
  /** More than the shape: what the value must say. */
  readonly then?: (value: unknown, known: Known) => void;
}

const limits = { workforce: limitedVenue.workforce, farms: limitedVenue.farms, rules: limitedVenue.rules };
const ofVenue = { venueId: smallVenue.id };
const asked = { ...ofVenue, fixtureId: homeDate.id };
const idOf = (known: Known, name: OperationName): string => (known.get(name) as { id: string }).id;
const inspectionId = (known: Known): string => (known.get('inspection/add') as { inspection: { id: string } }).inspection.id;
const runIdOf = (known: Known): string => (known.get('learning/assimilate') as { runId: string }).runId;
const ofEvent = { ...ofVenue, bookingId: concert.id };
/** A spot at which nothing was read. */
const nothingRead = {
  cover: null,
  colour: null,
  greenIndex: null,
  moisture: null,
  hardness: null,
  traction: null,
  penetration: null,
  infiltration: null,
  rut: null,
  canopyTemperature: null,
  soilTemperature: null,
};
const heavyHammer = { peak: 92, hammerMass: 2.25, dropHeight: 0.46, dropNumber: 1 };
/** A PNG of sixteen pixels: twelve of leaf, four of straw. */
const fourByFour =
  'iVBORw0KGgoAAAANSUhEUgAAAAQAAAAECAYAAACp8Z5+AAAAT0lEQVR4AQFEALv/ADxaKP88Wij/PFoo/zxaKP8APFoo/zxaKP88Wij/PFoo/wA8Wij/PFoo/zxaKP88Wij/AJaCUP+WglD/loJQ/5aCUP+6CR55oe5uMgAAAABJRU5ErkJggg==';
let lastJob = '';

/**
 * Every operation once, in an order in which each finds what it needs. A new operation is one more entry here: its name, and its
 * request made from what is known by then.
 */
export const steps: readonly Step[] = [
  { name: 'workspace/about', request: () => ({}) },
  { name: 'workspace/copy', request: () => ({}), then: (value) => expect(value).toMatchObject({ reason: 'asked' }) },
  {
    name: 'workspace/copies',
    request: () => ({}),
    then: (value, known) => expect(value).toContainEqual(known.get('workspace/copy')),
  },
  {
    name: 'workspace/compact',
    request: () => ({}),
    then: (value) => expect(value).toMatchObject({ after: { spare: 0 } }),
  },
  {
    name: 'workspace/restore',
    request: () => ({ copy: null }),
    then: (value) => expect(value).toEqual({ restored: false, from: null, putAside: null }),
  },
  { name: 'catalogue/read', request: () => ({}) },
  { name: 'covering/save', request: () => ({ covering: boardFloor }), then: (value) => expect(value).toEqual(boardFloor) },
  { name: 'covering/list', request: () => ({}), then: (value) => expect(value).toContainEqual(boardFloor) },
  { name: 'vehicle/save', request: () => ({ vehicle: cart }), then: (value) => expect(value).toEqual(cart) },
  { name: 'vehicle/list', request: () => ({}), then: (value) => expect(value).toContainEqual(cart) },
  {
    name: 'venue/save',
    request: () => ({ venue: smallVenue }),
    then: (value) => expect(value).toEqual({ ...smallVenue, revision: 1 }),
  },
  {
    name: 'venue/read',
    request: () => ({ id: smallVenue.id }),
    then: (value) => expect(value).toEqual({ ...smallVenue, revision: 1 }),
  },
  {
    name: 'venue/list',
    request: () => ({}),
    then: (value) => expect(value).toContainEqual({ id: smallVenue.id, name: smallVenue.name, revision: 1 }),
  },
  {
    name: 'fixture/save',
    request: () => ({ fixture: homeDate }),
    then: (value) => expect(value).toEqual({ ...homeDate, revision: 1 }),
  },
  { name: 'fixture/list', request: () => ofVenue, then: (value) => expect(value).toEqual([{ ...homeDate, revision: 1 }]) },
  {
    name: 'booking/save',
    request: () => ({ booking: concert }),
    then: (value) => expect(value).toEqual({ ...concert, revision: 1 }),
  },
  {
    name: 'booking/read',
    request: () => ({ id: concert.id }),
    then: (value) => expect(value).toEqual({ ...concert, revision: 1 }),
  },
  {
    name: 'booking/list',
    request: () => ofVenue,
    then: (value) => expect(value).toMatchObject([{ id: concert.id, firstOn: '2027-07-15T08:00', lastOff: '2027-07-18T14:00' }]),
  },
  {
    name: 'venue/export',
    request: () => ({ id: smallVenue.id }),
    then: (value) =>
      expect(value).toMatchObject({ coverings: [boardFloor], vehicles: [cart], bookings: [{ id: concert.id }], fixtures: [{}] }),
  },
  {
    name: 'venue/import',
    request: (known) => {
      const document = known.get('venue/export') as VenueDocument;
      const id = 'small-field-again';
      return {
        document: {
          ...document,
          venue: { ...document.venue, ...limits, id },
          fixtures: document.fixtures.map((fixture) => ({ ...fixture, venueId: id })),
          bookings: document.bookings.map((booking) => ({ ...booking, venueId: id })),
        },
      };
    },
    then: (value) => expect(value).toMatchObject({ id: 'small-field-again', revision: 1, ...limits }),
  },
  {
    name: 'forecast/preview',
    request: () => ({ ...asked, booking: { ...concert, name: 'Only tried' }, cellSize: 2 }),
    then: (value) => expect(value).toMatchObject({ members: 1, seed: 0 }),
  },
  {
    name: 'forecast/run',
    request: () => ({ ...asked, bookingId: concert.id, members: 2, seed: 7 }),
    then: (value) => expect(value).toMatchObject({ ...asked, bookingId: concert.id, seed: 7, result: { members: 2, seed: 7 } }),
  },
  { name: 'job/read', request: () => ({ id: lastJob }), then: (value) => expect(value).toMatchObject({ state: 'done' }) },
  { name: 'job/cancel', request: () => ({ id: lastJob }), then: (value) => expect(value).toMatchObject({ state: 'done' }) },
  {
    name: 'forecast/read',
    request: (known) => ({ id: idOf(known, 'forecast/run') }),
    then: (value, known) => expect(value).toEqual(known.get('forecast/run')),
  },
  {
    name: 'forecast/answers',
    request: (known) => ({ forecastId: idOf(known, 'forecast/run'), trial: null }),
    then: (value, known) => {
      const { forecast, options } = value as ForecastAnswers;
      expect(forecast).toEqual((known.get('forecast/run') as ForecastRun).result);
      expect(options.map((option) => option.kind)).toContain('strike-later');
    },
  },
  {
    name: 'forecast/list',
    request: () => ofVenue,
    then: (value, known) => expect(value).toMatchObject([{ id: idOf(known, 'forecast/run'), members: 2, seed: 7 }]),
  },
  {
    name: 'plan/make',
    request: (known) => ({
      forecastId: idOf(known, 'forecast/run'),
      now: '2027-07-01T08:00',
      locks: [],
      done: [],
      instead: null,
    }),
    then: (value, known) => {
      expect(value).toMatchObject({ forecastId: idOf(known, 'forecast/run'), now: '2027-07-01T08:00' });
      const { zones, orders, works } = (value as PlanRun).plan;
      for (const { chanceInRain } of zones) expect(chanceInRain).toBeGreaterThanOrEqual(0);
      expect(works!.rolls).toHaveLength(orders.flatMap(({ trucks }) => trucks).length);
    },
  },
  {
    name: 'plan/read',
    request: (known) => ({ id: idOf(known, 'plan/make') }),
    then: (value, known) => expect(value).toEqual(known.get('plan/make')),
  },
  {
    name: 'plan/recheck',
    request: (known) => ({
      id: idOf(known, 'plan/make'),
      moves: [{ zone: 'Z', window: 'to-home-date', job: 'spike', start: '2027-07-05T10:00', end: '2027-07-05T12:00' }],
    }),
    then: (value) => expect(value).toMatchObject([{ zone: 'Z', job: 'spike', broken: ['the plan has no such job'] }]),
  },
  {
    name: 'plan/compare',
    request: () => ({
      ...ofVenue,
      ways: [
        { name: 'as booked', fixtureId: homeDate.id, booking: concert },
        {
          name: 'taken away',
          fixtureId: homeDate.id,
          booking: { ...concert, layers: [], crowds: [], traffic: [], incidents: [] },
        },
      ],
      members: 2,
      seed: 7,
      recovery: true,
    }),
    then: (value) => {
      const [booked, empty] = value as readonly WayOutcome[];
      expect(booked!.forecast!.replaceArea.p50).toBeGreaterThanOrEqual(empty!.forecast!.replaceArea.p50);
      expect(empty).toMatchObject({ recovery: null, reason: 'Nothing lies on the turf.' });
    },
  },
  {
    name: 'plan/sod',
    request: (known) => ({ id: idOf(known, 'plan/make') }),
    then: (value, known) => {
      expect(value).toMatchObject({ planId: idOf(known, 'plan/make'), farms: [{ farm: 'near-farm' }, { farm: null }] });
      const { reserves } = value as SodDecision;
      expect(reserves.map(({ cut, missing }) => ({ cut, missing }))).toEqual([
        { cut: 'thin', missing: [] },
        { cut: 'thick', missing: [] },
      ]);
      for (const { best, curve } of reserves) expect(best!.expectedCost).toBe(Math.min(...curve.map((one) => one.expectedCost)));
    },
  },
  {
    name: 'plan/list',
    request: () => ofVenue,
    then: (value, known) => expect(value).toMatchObject([{ id: idOf(known, 'plan/make') }]),
  },
  {
    name: 'report/write',
    request: (known) => ({ planId: idOf(known, 'plan/make'), kind: 'recovery-report', paper: 'a4', units: 'si' }),
    then: (value) => {
      const { fileName, base64 } = value as { fileName: string; base64: string };
      expect(fileName).toMatch(/[.]pdf$/);
      expect(Buffer.from(base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
    },
  },
  {
    name: 'money/set-prices',
    request: () => ({
      book: {
        ...ofVenue,
        revision: 0,
        lines: [{ kind: 'labour', of: null, cut: null, price: 4100, from: '2027-01-01', until: null, origin: 'rate card' }],
      },
    }),
    then: (value) => expect(value).toMatchObject({ ...ofVenue, revision: 1 }),
  },
  {
    name: 'money/terms',
    request: () => ({
      terms: {
        bookingId: concert.id,
        revision: 0,
        payer: 'Promoter of the tests',
        deposit: 500_000,
        cap: 2_000_000,
        excess: 0,
        claimDays: 30,
        lateDays: 45,
        handedBack: null,
        clauses: [{ number: '7.2', words: 'Turf and labour.', kinds: ['sod', 'freight', 'labour'], share: 100 }],
      },
    }),
    then: (value) => expect(value).toMatchObject({ bookingId: concert.id, revision: 1 }),
  },
  {
    name: 'money/enter-actual',
    request: () => ({
      entry: {
        bookingId: concert.id,
        date: '2027-07-20',
        kind: 'labour',
        zone: 'A',
        words: 'Strip and lay',
        quantity: 12.5,
        unit: 'h',
        price: null,
        chargedShare: 100,
        clause: '7.2',
        evidence: 'time sheet',
        corrects: null,
      },
    }),
    // 12.5 h at 41.00 by the price book, all of it charged.
    then: (value) => expect(value).toMatchObject({ account: { total: 51_250, claim: 51_250, depositReturned: 448_750 } }),
  },
  {
    name: 'money/read',
    request: () => ({ bookingId: concert.id }),
    then: (value, known) => expect(value).toEqual(known.get('money/enter-actual')),
  },
  {
    name: 'money/estimate',
    request: (known) => ({ planId: idOf(known, 'plan/make') }),
    then: (value) => {
      const { total, payer, venue } = value as Record<'total' | 'payer' | 'venue', Record<'low' | 'likely' | 'high', number>>;
      for (const one of ['low', 'likely', 'high'] as const) expect(payer[one] + venue[one]).toBe(total[one]);
    },
  },
  {
    name: 'photograph/add',
    request: () => ({
      photograph: {
        ...ofEvent,
        zone: 'B',
        point: 'B1',
        takenAt: '2027-07-18T15:10',
        bearing: 90,
        fileName: 'b1.png',
        words: 'Straight down.',
      },
      base64: fourByFour,
    }),
    then: (value) => expect(value).toMatchObject({ mediaType: 'image/png', width: 4, height: 4, zone: 'B' }),
  },
  {
    name: 'photograph/list',
    request: () => ofEvent,
    then: (value, known) => expect(value).toEqual([known.get('photograph/add')]),
  },
  {
    name: 'photograph/read',
    request: (known) => ({ id: idOf(known, 'photograph/add'), size: 'original' }),
    then: (value) => expect(value).toMatchObject({ mediaType: 'image/png', base64: fourByFour }),
  },
  {
    name: 'photograph/measure',
    request: (known) => ({ of: { id: idOf(known, 'photograph/add') }, frame: null }),
    // Twelve of sixteen pixels are leaf.
    then: (value) => expect(value).toMatchObject({ counted: 16, cover: 0.75 }),
  },
  {
    name: 'inspection/add',
    request: (known) => ({
      inspection: {
        ...ofEvent,
        kind: 'handback',
        at: '2027-07-18T15:00',
        inspector: 'Inspector of the tests',
        weather: 'dry',
        note: '',
        readings: [{ ...nothingRead, zone: 'B', point: 'B1', cover: 0.5, hardness: heavyHammer }],
        defects: [
          {
            zone: 'A',
            kind: 'rut',
            length: 4,
            area: 2,
            depth: 0.03,
            cause: 'production',
            chargeable: true,
            clause: '7.2',
            words: 'Forklift.',
          },
        ],
        spills: [{ zone: 'B', agent: 'drink', volume: 5, area: 3, at: null, treatment: 'flushed' }],
        witnesses: [{ answer: 'declined', party: 'promoter' }],
        photographs: [idOf(known, 'photograph/add')],
        corrects: null,
      },
    }),
    then: (value) => expect(value).toMatchObject({ correctedBy: null, inspection: { kind: 'handback' } }),
  },
  {
    name: 'inspection/list',
    request: () => ofEvent,
    then: (value, known) => expect(value).toEqual([known.get('inspection/add')]),
  },
  {
    name: 'inspection/read',
    request: (known) => ({ id: inspectionId(known) }),
    then: (value, known) => expect(value).toEqual(known.get('inspection/add')),
  },
  {
    name: 'learning/assimilate',
    request: (known) => ({ forecastId: idOf(known, 'forecast/run'), members: 50, inspections: null }),
    then: (value, known) =>
      expect(value).toMatchObject({
        parentId: idOf(known, 'forecast/run'),
        inspections: [inspectionId(known)],
        members: 50,
        seen: [
          { zone: 'A', quantity: 'ruts', seen: 0.03 },
          { zone: 'B', quantity: 'cover', seen: 0.5 },
        ],
      }),
  },
  {
    name: 'learning/read',
    request: (known) => ({ runId: runIdOf(known) }),
    then: (value, known) => expect(value).toEqual(known.get('learning/assimilate')),
  },
  {
    name: 'learning/replay',
    request: (known) => ({ forecastId: runIdOf(known), members: 50, knownAt: '2027-07-17T12:00' }),
    // Nothing had been seen by then: every member counts, and the reading only stands beside.
    then: (value) => {
      const { assimilation } = value as { assimilation: { effectiveSize: number; seen: { used: boolean }[] } };
      expect(assimilation).toMatchObject({ runId: null, inspections: [], replaceArea: {} });
      expect(assimilation.effectiveSize).toBeCloseTo(50, 6);
      expect(assimilation.seen.map(({ used }) => used)).toEqual([false, false]);
    },
  },
  {
    name: 'learning/propose',
    request: () => ({ ...ofVenue, runs: null, members: 50, seed: 3 }),
    then: (value, known) => expect(value).toMatchObject({ ...ofVenue, runs: [runIdOf(known)], readings: 2, decision: null }),
  },
  {
    name: 'learning/refuse',
    request: (known) => ({ id: idOf(known, 'learning/propose'), by: 'Head of the tests', reason: 'one event is too few' }),
    then: (value) => expect(value).toMatchObject({ decision: { answer: 'refused', names: [] } }),
  },
  {
    name: 'learning/list',
    request: () => ofVenue,
    then: (value, known) =>
      expect(value).toEqual({ assimilations: [known.get('learning/assimilate')], proposals: [known.get('learning/refuse')] }),
  },
  {
    name: 'learning/propose',
    request: (known) => ({ ...ofVenue, runs: [runIdOf(known)], members: 50, seed: 3, surety: 1 }),
    then: (value) => expect((value as { changes: unknown[] }).changes.length).toBeGreaterThan(0),
  },
  {
    name: 'learning/accept',
    request: (known) => ({ id: idOf(known, 'learning/propose'), names: null, by: 'Head of the tests', reason: 'tried' }),
    then: (value) => expect(value).toMatchObject({ decision: { answer: 'accepted', by: 'Head of the tests' } }),
  },
  {
    name: 'light/month',
    request: () => ({ ...ofVenue, month: 6 }),
    then: (value) => {
      // No stands: every zone has the light of open ground.
      const { open, zones } = value as { open: number; zones: { mean: number }[] };
      for (const zone of zones) expect(zone.mean).toBeCloseTo(open, 1);
    },
  },
  {
    name: 'light/shadow',
    request: () => ({ ...ofVenue, at: '2027-06-21T13:00' }),
    then: (value) => {
      const { altitude, lit } = value as { altitude: number; lit: number[] };
      expect(altitude).toBeGreaterThan(60);
      expect(lit.every((share) => share === 1)).toBe(true);
    },
  },
  {
    name: 'climate/day',
    request: () => ({ ...ofVenue, date: '2027-07-17', coverings: [boardFloor.id], maximum: 30, minimum: 19, dayOfLying: 1 }),
    then: (value) => expect(value).toMatchObject({ under: [{ covering: boardFloor.id }] }),
  },
  {
    name: 'weather/import',
    request: () => ({
      ...ofVenue,
      format: 'csv',
      fileName: 'two-days.csv',
      text: 'date,maximum (°C),minimum (°C),rain (mm)\n2024-06-01,25,14,0\n2024-06-02,26,15,3\n',
    }),
    then: (value) => expect(value).toMatchObject({ from: '2024-06-01', until: '2024-06-02', days: 2 }),
  },
  {
    name: 'weather/set-days',
    request: () => ({
      ...ofVenue,
      standing: 'expected',
      days: [{ date: '2027-07-12', maximum: 33, minimum: 21, rain: 0, radiation: null, vapourPressure: null, wind: null }],
    }),
    then: (value) => expect(value).toEqual({ days: 1 }),
  },
  {
    name: 'weather/read',
    request: () => ofVenue,
    then: (value) => expect(value).toMatchObject({ observed: [{ days: 2 }], actual: [], expected: [{ date: '2027-07-12' }] }),
  },
  { name: 'draft/keep', request: () => ({ booking: { ...concert, revision: 1, note: 'Not stored yet.' } }) },
  {
    name: 'draft/list',
    request: () => ofVenue,
    then: (value) => expect(value).toMatchObject([{ booking: { id: concert.id, note: 'Not stored yet.' } }]),
  },
  { name: 'draft/drop', request: () => ({ bookingId: concert.id }) },
  { name: 'booking/remove', request: () => ({ id: concert.id, revision: 1 }) },
  { name: 'fixture/remove', request: () => ({ id: homeDate.id, revision: 1 }) },
  // What was learnt was accepted: that is a revision.
  { name: 'venue/remove', request: () => ({ id: smallVenue.id, revision: 2 }) },
];

/** What the other tests begin with. */
export const mainPath: readonly OperationName[] = ['covering/save', 'vehicle/save', 'venue/save', 'fixture/save', 'booking/save'];

/** Waits until long work is done and answers its value. */
export const ended = async (door: OpenDoor, job: Job): Promise<unknown> => {
  lastJob = job.id;
  let now = job;
  while (now.state === 'running') {
    await new Promise((resolve) => setTimeout(resolve, 20));
    const answer = await door.answer('job/read', { id: job.id });
    expect(answer).toMatchObject({ ok: true });
    now = (answer as { value: Job }).value;
  }
  expect(now.failure).toBeUndefined();
  expect(now.state).toBe('done');
  return now.value;
};
