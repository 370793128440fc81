import { addHours } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { vehicles } from '#shared/parameters/vehicles.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Forecast, ForecastRun, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import type { BookingMoney, MoneyEntry, MoneyTerms } from '#shared/vocabulary/money.ts';
import type { JobKind, PlannedJob, RecoveryPlan, Truck } from '#shared/vocabulary/plan.ts';
import { typeface } from '#platform/fonts/typeface.ts';
import type { PrintWishes } from '#reports/print-sheet.ts';
import { nothingSeen, type RecoveryPapers } from '#reports/recovery-papers.ts';
import { accountOf } from '#services/money/account.ts';
import { estimateOf } from '#services/money/estimate.ts';
import { july, sampleVenue } from '#tests/engine/forecast/sample-question.ts';

/** A forecast and a plan put together by hand: every number is invented, so that a paper can be held to it word by word. */

const timeZone = sampleVenue.place.timeZone;
const homeDate = '2027-07-31T15:00';
const days = Array.from({ length: 31 }, (_, day) => `2027-07-${String(day + 1).padStart(2, '0')}`);
const noCauses = { light: 0, heat: 0, frost: 0, wear: 0, load: 0, wetness: 0, spill: 0 };
const flat = (value: number) => ({ p10: value, p50: value, p90: value });
const series = (last: number, pace: number) => {
  const values = days.map((_, day) => Math.max(0, last - pace * (days.length - 1 - day)));
  return { p10: values, p50: values, p90: values };
};

/** A square of 9 m on a grid of eight columns. */
const squareAt = (index: number): ZoneForecast['outlines'] => {
  const [x, y] = [-36 + 9 * (index % 8), -54 + 9 * Math.floor(index / 8)];
  return [
    [
      [x, y],
      [x + 9, y],
      [x + 9, y + 9],
      [x, y + 9],
    ],
  ];
};

const letterOf = (index: number): string =>
  index < 26 ? String.fromCharCode(65 + index) : `A${String.fromCharCode(65 + index - 26)}`;

const zoneOf = (index: number, verdict: ZoneForecast['verdict']): ZoneForecast => {
  const home = verdict === 'play' ? 0.96 : verdict === 'patch' ? 0.8 : 0.02;
  return {
    letter: letterOf(index),
    name: `Part ${index + 1} of the field`,
    origin: 'event',
    use: 'seating',
    outlines: squareAt(index),
    area: 81,
    hoursCovered: 96,
    hoursDark: verdict === 'replace' ? 96 : 0,
    coverings: ['solid-panel'],
    firstOn: '2027-07-12T06:00',
    lastOff: '2027-07-18T12:00',
    crownTemperature: { mean: 27, highest: 38 },
    light: { open: 40, covered: 0 },
    pressure: 20,
    footfalls: 100,
    cover: series(home, verdict === 'patch' ? 0.01 : 0),
    crowns: series(0.9, 0),
    reserve: series(0.7, 0),
    ruts: series(0, 0),
    coverBefore: flat(0.97),
    coverAfter: flat(home),
    coverHome: flat(home),
    causes: { ...noCauses, ...(verdict === 'replace' ? { light: 3, wear: 0.1 } : { light: 0.05, wear: 0.2 }) },
    chanceReady: verdict === 'play' ? 1 : 0,
    daysToReady: { p10: null, p50: verdict === 'play' ? 0 : null, p90: null },
    verdict,
    seen: [],
  };
};

const cellsOf = (count: number): Forecast['cells'] => {
  const cells: { x: number; y: number; zone: number }[] = [];
  for (let row = 0; row < 26; row++)
    for (let column = 0; column < 36; column++) {
      const [x, y] = [-35 + 2 * column, -53 + 2 * row];
      const zone = Math.floor((x + 36) / 9) + 8 * Math.floor((y + 54) / 9);
      if (zone < count) cells.push({ x, y, zone });
    }
  return {
    size: 2,
    x: cells.map((cell) => cell.x),
    y: cells.map((cell) => cell.y),
    area: cells.map(() => 4),
    zone: cells.map((cell) => cell.zone),
    group: cells.map((cell) => cell.zone),
    coverAfter: Array.from({ length: count }, (_, zone) => (zone % 3) / 2),
    coverHome: Array.from({ length: count }, (_, zone) => (zone % 3) / 2),
  };
};

const verdicts = ['replace', 'patch', 'play'] as const;

const forecastOf = (zones: number): ForecastRun => ({
  id: 'run-of-the-tests',
  bookingId: july.id,
  venueId: sampleVenue.id,
  fixtureId: 'home-2027-07-31',
  createdAt: '2027-06-30T12:00:00.000Z',
  engineVersion: '1.0.0',
  parameterVersion: 'tests',
  seed: 1,
  inputHash: '0'.repeat(64),
  result: {
    days,
    homeDate: { name: 'Home date 6', start: homeDate },
    members: 200,
    seed: 1,
    engineVersion: '1.0.0',
    zones: Array.from({ length: zones }, (_, index) => zoneOf(index, verdicts[index % 3]!)),
    cells: cellsOf(zones),
    replaceArea: { p10: 100, p50: 200, p90: 400 },
    chanceAllReady: 0,
    weather: {
      maximum: days.map(() => 29),
      minimum: days.map(() => 18),
      rain: days.map(() => 2),
      radiation: days.map(() => 20),
      growthPotential: days.map(() => 0.7),
    },
    warnings: [{ kind: 'wheel-load', zone: 'A', subject: 'A crane of the tests', value: 210, limit: 30 }],
    assumptions: ['Wind is the usual default.'],
  },
});

const chain: readonly JobKind[] = ['litter-and-magnet', 'strip', 'grade', 'lay', 'roll-and-seam'];

const jobsOf = (zone: string, index: number): PlannedJob[] =>
  chain.map((job, step) => {
    const start = addHours('2027-07-18T12:00', 24 * step + (index % 6), timeZone);
    return {
      zone,
      window: 'to-home-date',
      job,
      start,
      end: addHours(start, 1.5, timeZone),
      crew: 4,
      machine: job === 'lay' ? 'sod-installer' : null,
      work: [{ shift: step, hours: 1.5 }],
      done: false,
    };
  });

const truckOf = (number: number): Truck => ({
  number,
  cut: '2027-07-20T22:00',
  leave: '2027-07-20T23:00',
  arrive: addHours('2027-07-21T06:00', number, timeZone),
  begin: addHours('2027-07-21T06:00', number, timeZone),
  down: addHours('2027-07-21T08:00', number, timeZone),
  rolls: 27,
  area: 20,
  weight: 1200,
  hoursInRoll: 8.25,
  zones: ['A'],
});

const planOf = (zones: number, trucks: number): RecoveryPlan => ({
  zones: Array.from({ length: zones }, (_, index) => ({
    zone: letterOf(index),
    window: 'to-home-date',
    programme: index % 3 === 2 ? 'leave' : 'replace-thick',
    farm: index % 3 === 2 ? null : 'marsh-road',
    jobs: jobsOf(letterOf(index), index),
    dailyHours: 0.3,
    finish: '2027-07-23T08:00',
    latestFinish: '2027-07-27T03:00',
    slack: 91,
    chanceReady: 0.95,
    shortfall: 0,
  })),
  fieldJobs: [
    {
      zone: null,
      window: 'to-home-date',
      job: 'paint',
      start: '2027-07-29T03:00',
      end: '2027-07-29T12:00',
      crew: 3,
      machine: null,
      work: [{ shift: 20, hours: 8 }],
      done: false,
    },
  ],
  orders: [
    {
      window: 'to-home-date',
      farm: 'marsh-road',
      cut: 'thick',
      zones: ['A', 'B'],
      area: 200,
      ordered: 210,
      rolls: 17,
      weight: 12600,
      trucks: Array.from({ length: trucks }, (_, index) => truckOf(index + 1)),
      releaseBy: '2027-07-19T12:00',
      terms: [
        { name: 'First roll on the field', hours: 0, at: '2027-07-21T06:00' },
        { name: 'Notice of the farm', hours: 36, at: '2027-07-19T12:00' },
      ],
      slack: 300,
      price: 304500,
      freight: 98000 * trucks,
      cancelFee: 152250,
    },
  ],
  cost: {
    lines: [
      { kind: 'labour', quantity: 100.5, unit: 'h', price: 3400, sum: 341700, note: '' },
      { kind: 'sod', quantity: 210, unit: 'm²', price: 1450, sum: 304500, note: '' },
      { kind: 'freight', quantity: trucks, unit: 'trucks', price: 98000, sum: 98000 * trucks, note: '' },
      { kind: 'disposal', quantity: 6, unit: 'm³', price: 2900, sum: 17400, note: '' },
    ],
    total: 341700 + 304500 + 98000 * trucks + 17400,
    unpriced: [],
  },
  decisions: [
    {
      name: 'Release of the thick sod',
      window: 'to-home-date',
      at: '2027-07-19T12:00',
      slack: 300,
      terms: [{ name: 'Notice of the farm', hours: 36, at: '2027-07-19T12:00' }],
    },
  ],
  aim: 'least-cost',
  value: 1,
  bound: 1,
  gap: 0,
  proven: true,
  stoppedByTime: false,
  moved: [],
  cautions: [],
});

export const planRun = (plan: RecoveryPlan, changes: Partial<PlanRun> = {}): PlanRun => ({
  id: 'plan-of-the-tests',
  forecastId: 'run-of-the-tests',
  venueId: sampleVenue.id,
  bookingId: july.id,
  fixtureId: 'home-2027-07-31',
  createdAt: '2027-07-01T12:00:00.000Z',
  now: '2027-07-05T08:00',
  plan,
  ...changes,
});

export const exampleTerms: MoneyTerms = {
  bookingId: july.id,
  revision: 1,
  payer: 'the promoter',
  deposit: 100_000,
  cap: 500_000,
  excess: 0,
  claimDays: 30,
  lateDays: 45,
  handedBack: null,
  clauses: [{ number: '7.2', words: 'Turf to be replaced.', kinds: ['sod', 'freight', 'labour'], share: 100 }],
};

export const exampleEntry = (number: number, changes: Partial<MoneyEntry> = {}): MoneyEntry => ({
  bookingId: july.id,
  number,
  enteredAt: '2027-07-25T12:00:00.000Z',
  currency: 'USD',
  date: '2027-07-22',
  kind: 'sod',
  zone: 'A',
  words: 'Thick cut as delivered',
  quantity: 210,
  unit: 'm²',
  price: 1450,
  sum: 304_500,
  chargedShare: 100,
  clause: '7.2',
  evidence: 'invoice 4471',
  corrects: null,
  ...changes,
});

export const moneyWith = (terms: MoneyTerms | null, entries: readonly MoneyEntry[]): BookingMoney => ({
  bookingId: july.id,
  currency: 'USD',
  terms,
  prices: null,
  account: accountOf('USD', terms, entries, '2027-07-18T12:00'),
});

/** The papers of a field in so many zones, five jobs each, with so many trucks. */
export const examplePapers = (zones = 6, trucks = 3, changes: Partial<RecoveryPapers> = {}): RecoveryPapers => {
  const forecast = forecastOf(zones);
  const plan = planRun(planOf(zones, trucks));
  const booking: Booking = {
    ...july,
    zones: forecast.result.zones.map(({ letter, name, outlines }) => ({ letter, name, use: 'seating', outline: outlines[0]! })),
    layers: forecast.result.zones.map(({ letter }) => ({
      ...july.layers[0]!,
      zone: letter,
      covering: 'solid-panel',
      on: '2027-07-12T06:00',
      off: '2027-07-18T12:00',
      care: [],
    })),
    traffic: [],
    crowds: [],
  };
  const parts = { venue: sampleVenue, booking, forecast: forecast.result, plan, prices: null };
  const money = changes.money ?? moneyWith(null, []);
  const estimate = estimateOf({ ...parts, terms: money.terms });
  return {
    venue: sampleVenue,
    booking,
    forecast,
    plan,
    estimate,
    coverings: startingCoverings,
    vehicles,
    fixtures: [],
    others: [],
    money,
    alternatives: [],
    earlier: [],
    season: [{ kept: { booking, forecast, plan, estimate }, money }],
    evidence: nothingSeen,
    ...changes,
  };
};

export const wishes: PrintWishes = { paper: 'letter', units: 'si', typeface: typeface() };
