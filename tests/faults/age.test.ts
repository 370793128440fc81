import { copyFileSync, cpSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enter, full, tries } from '#tests/faults/tally.ts';
import { beginSample, bookingId, good, growOld, openAged, venueId } from '#tests/faults/ten-seasons.ts';

const age = {
  seasons: 10,
  bookings: tries(80, 400),
  inspections: tries(1000, 5000),
  photographs: tries(400, 2000),
  runs: tries(100, 500),
};

type Measured = Readonly<Record<string, number>>;

/** Times of one round of daily work on a file, ms; `ledgerOf`: the plan whose year the ledger lists, the one just made when null. */
const round = async (file: string, event: string, ledgerOf: string | null): Promise<Measured> => {
  const took: Record<string, number> = {};
  const timed = async <Result>(what: string, work: () => Promise<Result>): Promise<Result> => {
    const begun = performance.now();
    const result = await work();
    took[what] = performance.now() - begun;
    return result;
  };
  const application = await timed('start', () => openAged(file));
  expect(application.trouble).toBeNull();
  const lists = await timed('open the sheet', async () => {
    await good(application, 'venue/read', { id: venueId });
    await good(application, 'booking/list', { venueId });
    await good(application, 'booking/read', { id: bookingId });
    const plans = await good(application, 'plan/list', { venueId });
    return {
      plans,
      fixtures: await good(application, 'fixture/list', { venueId }),
      runs: await good(application, 'forecast/list', { venueId }),
    };
  });
  const { fixtureId } = lists.runs[0]!;
  const asked = { venueId, bookingId, fixtureId, members: 20, seed: 2 };
  // The first calculation of a program brings up its threads.
  const booking = await good(application, 'booking/read', { id: bookingId });
  await good(application, 'forecast/preview', { venueId, fixtureId, booking, cellSize: 4 });
  await timed('preview', () => good(application, 'forecast/preview', { venueId, fixtureId, booking, cellSize: 4 }));
  const run = await timed('forecast', () => good(application, 'forecast/run', asked));
  const plan = await timed('plan', () =>
    good(application, 'plan/make', { forecastId: run.id, now: null, locks: [], done: [], instead: null }),
  );
  await timed('report', () =>
    good(application, 'report/write', { planId: plan.id, kind: 'recovery-report', paper: 'a4', units: 'si' }),
  );
  await timed('season ledger', () =>
    good(application, 'report/write', { planId: ledgerOf ?? plan.id, kind: 'season-ledger', paper: 'a4', units: 'si' }),
  );
  await timed('evidence of an event', async () => {
    await good(application, 'inspection/list', { venueId, bookingId: event });
    await good(application, 'photograph/list', { venueId, bookingId: event });
  });
  await timed('store a booking', () => good(application, 'booking/save', { booking }));
  await application.close();
  return took;
};

/** How many times as long ten seasons may take as one event; `room` is what a machine's own noise may add, ms. */
const allowed: Readonly<Record<string, number>> = {
  // The whole file is read and checked at every start: it grows with the file.
  start: 60,
  'open the sheet': 6,
  preview: 2,
  forecast: 2,
  plan: 2,
  report: 2,
  // It lists the events of its year: those of a year of forty beside one of one.
  'season ledger': 12,
  'evidence of an event': 4,
  'store a booking': 4,
};
const room = 150;

describe('a workspace of ten seasons', () => {
  let folder: string;
  let small: string;
  let old: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'fieldback-age-'));
    small = join(folder, 'small.fieldback');
    old = join(folder, 'old.fieldback');
    await beginSample(small);
    copyFileSync(small, old);
    growOld(old, age);
    for (const name of ['small', 'old']) {
      copyFileSync(join(folder, `${name}.fieldback`), join(folder, `${name}.begun`));
    }
  }, 600_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  // Fails when a list or a question reads whole documents of every event, run or photograph there is: without `bookings.near` a preview
  // reads ten seasons of bookings; without the indices evidence of one event is looked for in all of them.
  test(
    `${age.bookings} bookings, ${age.inspections} inspections, ${age.photographs} photographs, ${age.runs} runs: daily work stays within stated ratios`,
    async () => {
      const rounds = tries(1, 3);
      const times: Record<'small' | 'old', Measured[]> = { small: [], old: [] };
      for (let turn = 0; turn < rounds; turn++)
        for (const name of ['small', 'old'] as const) {
          const file = join(folder, `${name}.fieldback`);
          cpSync(join(folder, `${name}.begun`), file);
          times[name].push(await (name === 'old' ? round(file, 'event-1', 'plan-10') : round(file, bookingId, null)));
        }
      const least = (name: 'small' | 'old', what: string): number => Math.min(...times[name].map((each) => each[what]!));
      for (const [what, most] of Object.entries(allowed)) {
        const [one, ten] = [least('small', what), least('old', what)];
        const ratio = ten / one;
        // A short run stands beside other tests: only what is far off counts.
        if (full)
          expect(ten, `${what}: ${one.toFixed(0)} ms, after ten seasons ${ten.toFixed(0)} ms`).toBeLessThan(most * one + room);
        else expect(ten, what).toBeLessThan(4 * most * one + 10 * room);
        enter({
          kind: `age: ${what}`,
          tries: rounds,
          survived: rounds,
          lost: 0,
          note: `${one.toFixed(0)} → ${ten.toFixed(0)} ms, ${ratio.toFixed(1)} times (at most ${most})`,
        });
      }
      enter({
        kind: 'age: size of the file',
        tries: 1,
        survived: 1,
        lost: 0,
        note: `${(statSync(small).size / 2 ** 20).toFixed(1)} → ${(statSync(old).size / 2 ** 20).toFixed(1)} MB`,
      });
    },
    tries(180_000, 1_200_000),
  );

  // Fails when compacting no longer gives room back, or the workspace no longer says how much lies free.
  test('says how much room lies free inside the file, and gives it back when asked', async () => {
    cpSync(join(folder, 'old.begun'), old);
    const application = await openAged(old);
    const venue = await good(application, 'venue/read', { id: venueId });
    await good(application, 'venue/remove', { id: venueId, revision: venue.revision });
    const { size } = await good(application, 'workspace/about', {});
    expect(size.spare).toBeGreaterThan(size.bytes / 2);
    const { before, after } = await good(application, 'workspace/compact', {});
    expect(after.bytes).toBeLessThan(before.bytes / 2);
    expect(after.spare).toBe(0);
    await application.close();
    expect(statSync(old).size).toBe(after.bytes);
    enter({
      kind: 'age: compacted after a venue went',
      tries: 1,
      survived: 1,
      lost: 0,
      note: `${(before.bytes / 2 ** 20).toFixed(1)} → ${(after.bytes / 2 ** 20).toFixed(1)} MB`,
    });
  }, 120_000);
});
