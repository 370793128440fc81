import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { PaperKind } from '#shared/contract/contract.ts';
import type { UnitSystem } from '#shared/units/quantity.ts';
import { openApplication } from '#application/application.ts';
import { shippedContent } from '#application/shipped-content.ts';
import { pngOf } from '#platform/photographs/codecs.ts';
import { leaf, painted, straw } from '#tests/platform/photographs/synthetic-pictures.ts';
import { goodAnswers, spot } from '#tests/services/evidence/small-workspace.ts';

/** The shipped sample whose July concert is over: what was foreseen, what was seen at handback and after, and what was paid. */
const sample = { venueId: 'sample-bowl', bookingId: 'july-concert' };

export const openSample = async () => {
  let at = Date.parse('2027-07-20T12:00:00Z');
  const folder = mkdtempSync(join(tmpdir(), 'fieldback-sample-'));
  const application = await openApplication({
    file: join(folder, 'workspace.fieldback'),
    firstContent: shippedContent,
    // A second later at every look: plans and runs follow one another.
    clock: { now: () => (at += 1000) },
    log: () => undefined,
  });
  const good = goodAnswers(application);
  /** Letter in the units of its country, unless asked otherwise. */
  const paper = async (
    planId: string,
    kind: PaperKind,
    size: 'letter' | 'a4' = 'a4',
    alternatives: string[] = [],
    units: UnitSystem = size === 'letter' ? 'us' : 'si',
  ) => {
    const file = await good('report/write', { planId, kind, paper: size, units, alternatives });
    return { name: file.fileName, bytes: Buffer.from(file.base64, 'base64') };
  };
  const close = async (): Promise<void> => {
    await application.close();
    rmSync(folder, { recursive: true, force: true });
  };
  return { good, paper, close };
};
export type OpenSample = Awaited<ReturnType<typeof openSample>>;

const inspected = (kind: string, at: string, changes: object) => ({
  ...sample,
  kind,
  at,
  inspector: 'R. Okafor-Lindqvist',
  weather: 'dry, 27 °C, light wind',
  note: '',
  readings: [],
  defects: [],
  spills: [],
  witnesses: [],
  photographs: [],
  corrects: null,
  ...changes,
});

/** Forecast and plan of the July concert with a small crowd, whose front floor lies for one night only: it may stay. */
export const foreseen = async ({ good }: OpenSample, members = 200) => {
  const stored = await good('booking/read', { id: sample.bookingId });
  const oneNight = { on: '2027-07-17T06:00', off: '2027-07-18T02:00' };
  const layers = stored.layers.map((layer) => (['D', 'G'].includes(layer.zone) ? { ...layer, ...oneNight } : layer));
  const crowds = stored.crowds.map((crowd) => ({ ...crowd, density: crowd.density * 0.1 }));
  await good('booking/save', { booking: { ...stored, layers, crowds } });
  const run = await good('forecast/run', { ...sample, fixtureId: 'home-2027-07-31', members, seed: 1 });
  const plan = await good('plan/make', { forecastId: run.id, now: '2027-07-18T08:00', locks: [], done: [], instead: null });
  return { run, plan };
};

/** The three spots of the front floor as they were handed back, far below what was foreseen, beside a seated floor that is as foreseen. */
export const handedBackCover = [0.58, 0.62, 0.6] as const;

/** What was done in fact before the handback: the mix position came off two hours late, its first jobs later and longer than planned. */
const inFact = {
  offE: '2027-07-18T16:00',
  jobs: [
    { zone: 'E', window: 'to-home-date', job: 'litter-and-magnet', start: '2027-07-18T16:30', end: '2027-07-18T17:15' },
    { zone: 'E', window: 'to-home-date', job: 'strip', start: '2027-07-19T06:00', end: '2027-07-19T06:20' },
  ],
} as const;

/**
 * The handback with the hours in fact, the forecast from those hours weighed by what was read, and the plan that goes on from the jobs
 * that are over.
 */
export const handBack = async ({ good }: OpenSample, { run, plan }: Awaited<ReturnType<typeof foreseen>>) => {
  const day = run.result.days.indexOf('2027-07-19');
  const seated = run.result.zones.find((zone) => zone.letter === 'H')!.cover.p50[day]!;
  await good('inspection/add', {
    inspection: inspected('baseline', '2027-07-12T05:10', {
      readings: ['G', 'H'].map((zone) => spot(zone, { point: `${zone}1`, cover: 0.96, moisture: 0.2 })),
      witnesses: [{ answer: 'named', party: 'Promoter', name: 'M. Vantongeren' }],
    }),
  });
  const photograph = await good('photograph/add', {
    photograph: {
      ...sample,
      zone: 'G',
      point: 'G1',
      takenAt: '2027-07-19T15:20',
      bearing: 14,
      fileName: 'g1-handback.png',
      words: 'Barricade line, north edge',
    },
    base64: Buffer.from(await pngOf(painted(600, 400, (x, y) => ((x * 7 + y * 13) % 100 < 30 ? leaf : straw)))).toString(
      'base64',
    ),
  });
  await good('inspection/add', {
    inspection: inspected('handback', '2027-07-19T15:30', {
      readings: [
        ...handedBackCover.map((cover, index) => spot('G', { point: `G${index + 1}`, cover, moisture: 0.24 })),
        spot('H', { point: 'H1', cover: Math.round(100 * seated) / 100, moisture: 0.22 }),
      ],
      defects: [
        {
          zone: 'G',
          kind: 'pad-mark',
          length: 3,
          area: 9,
          depth: 0.03,
          cause: 'production',
          chargeable: true,
          clause: null,
          words: 'Outrigger pad sunk at its north edge',
        },
      ],
      spills: [
        {
          zone: 'E',
          agent: 'hydraulicOil',
          volume: 4,
          area: 2,
          at: '2027-07-19T04:00',
          treatment: 'Detergent within 20 minutes, then flushed to the collecting tray',
        },
      ],
      witnesses: [{ answer: 'declined', party: 'Promoter' }],
      photographs: [photograph.id],
    }),
  });
  const booked = await good('booking/read', { id: sample.bookingId });
  const layers = booked.layers.map((layer) => (layer.zone === 'E' ? { ...layer, off: inFact.offE } : layer));
  await good('booking/save', { booking: { ...booked, stage: 'handed-back', layers } });
  const fact = await good('forecast/run', {
    ...sample,
    fixtureId: 'home-2027-07-31',
    members: run.result.members,
    seed: 1,
  });
  const weighed = await good('learning/assimilate', { forecastId: fact.id, inspections: null, members: 400 });
  const after = await good('forecast/read', { id: weighed.runId! });
  const next = await good('plan/make', {
    forecastId: after.id,
    now: '2027-07-19T18:00',
    locks: [],
    done: inFact.jobs,
    instead: plan.id,
  });
  return { weighed, after, next };
};

/** What was agreed and paid: four lines, one of them without proof and one the venue's own. */
export const settle = async ({ good }: OpenSample) => {
  const bookingId = sample.bookingId;
  const { terms } = await good('money/read', { bookingId });
  const clause = { number: 'F3', words: 'Turf replaced after the event, with freight and labour', share: 80 };
  await good('money/terms', {
    terms: {
      bookingId,
      revision: terms?.revision ?? 0,
      payer: 'Promoter of the sample',
      deposit: 20_000_00,
      cap: 60_000_00,
      excess: 500_00,
      claimDays: 30,
      lateDays: 45,
      handedBack: '2027-07-19T15:30',
      clauses: [{ ...clause, kinds: ['sod', 'freight', 'labour', 'floor-hire', 'other'] }],
    },
  });
  const lines = [
    ['2027-07-21', 'sod', 'Thick sod, all trucks', 3000, 'm²', 1450, 80, 'F3', 'delivery notes 1–14'],
    ['2027-07-21', 'freight', 'Freight of the sod', 14, 'truck', 412_35, 80, 'F3', 'invoice of the carrier'],
    ['2027-07-22', 'labour', 'Overtime of the crew', 61.5, 'h', 38_45, 50, 'F3', ''],
    ['2027-07-23', 'other', 'Crew meals', 1, '', 310_07, 0, null, ''],
    ['2027-08-25', 'other', 'Disease patches found late in E', 1, 'job', 1_234_56, 100, 'F3', 'laboratory note'],
  ] as const;
  for (const [date, kind, words, quantity, unit, price, chargedShare, by, evidence] of lines)
    await good('money/enter-actual', {
      entry: {
        bookingId,
        date,
        kind,
        zone: null,
        words,
        quantity,
        unit: unit === '' ? 'lot' : unit,
        price,
        chargedShare,
        clause: by,
        evidence,
        corrects: null,
      },
    });
  return good('money/read', { bookingId });
};
