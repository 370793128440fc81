import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ReplyOf } from '#shared/contract/contract.ts';
import { concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { inspectionOf, smallWorkspace, spot, type SmallWorkspace } from '#tests/services/evidence/small-workspace.ts';

let workspace: SmallWorkspace;
let run: ReplyOf<'forecast/run'>;
beforeAll(async () => {
  workspace = await smallWorkspace();
  const asked = { venueId: smallVenue.id, fixtureId: homeDate.id, bookingId: concert.id, members: 200, seed: 5 };
  run = await workspace.good('forecast/run', asked);
}, 60_000);
afterAll(() => workspace.close());

const zoneA = (one: ReplyOf<'forecast/run'>) => one.result.zones.find(({ letter }) => letter === 'A')!;
const planFrom = (forecastId: string) =>
  workspace.good('plan/make', { forecastId, now: '2027-07-22T08:00', locks: [], done: [], instead: null });

describe('three readings worse than forecast', () => {
  test('with nothing seen there is nothing to learn from', async () => {
    const asked = { forecastId: run.id, inspections: null, members: null };
    expect(await workspace.refused('learning/assimilate', asked)).toMatchObject({ problems: [{ field: 'inspections' }] });
    expect(await workspace.refused('learning/propose', { venueId: smallVenue.id, runs: null })).toMatchObject({
      problems: [{ field: 'runs' }],
    });
  });

  test('forecast, plan and sod order follow what was seen', async () => {
    const day = run.result.days.indexOf('2027-07-18');
    const low = zoneA(run).cover.p10[day]!;
    for (const [kind, at] of [
      ['handback', '2027-07-18T16:00'],
      ['after-24-h', '2027-07-19T15:00'],
      ['after-72-h', '2027-07-21T15:00'],
    ])
      await workspace.good('inspection/add', {
        inspection: inspectionOf({
          kind,
          at,
          readings: [low - 0.1, low - 0.05, low - 0.15].map((cover) => spot('A', { cover })),
        }),
      });
    const weighed = await workspace.good('learning/assimilate', { forecastId: run.id, inspections: null, members: 400 });
    expect(weighed).toMatchObject({ parentId: run.id, members: 400, leftOut: [] });
    expect(weighed.seen).toHaveLength(3);
    expect(weighed.seen.every(({ seen, before, used }) => used && seen < before.p10)).toBe(true);
    const after = await workspace.good('forecast/read', { id: weighed.runId! });
    expect(after.inputHash).not.toBe(run.inputHash);
    expect(zoneA(after).coverHome.p50).toBeLessThan(zoneA(run).coverHome.p50);
    expect(zoneA(after).chanceReady).toBeLessThan(zoneA(run).chanceReady);
    expect(weighed.replaceArea.after.p50).toBeGreaterThan(weighed.replaceArea.before.p50);

    const [before, now] = [await planFrom(run.id), await planFrom(after.id)];
    const wayBack = (plan: typeof now) => plan.plan.zones.find(({ zone }) => zone === 'A')!.programme;
    const sod = (plan: typeof now) => plan.plan.orders.reduce((sum, order) => sum + order.ordered, 0);
    expect(now.forecastId).toBe(after.id);
    expect(now.plan.cost.total).toBeGreaterThan(before.plan.cost.total);
    expect([wayBack(before), wayBack(now)]).toEqual(['leave', 'replace-thick']);
    expect(sod(before)).toBe(0);
    // The stage is 16 m by 7 m of turf; 5 % of sod is waste.
    expect(sod(now)).toBeCloseTo(16 * 7 * 1.05, 6);
  }, 120_000);

  test('the same question, run from the weighed one, gives the same members and result', async () => {
    const asked = { inspections: null, members: 400 };
    const first = await workspace.good('learning/assimilate', { ...asked, forecastId: run.id });
    const second = await workspace.good('learning/assimilate', { ...asked, forecastId: first.runId });
    expect(second.parentId).toBe(run.id);
    const [one, other] = [
      await workspace.good('forecast/read', { id: first.runId! }),
      await workspace.good('forecast/read', { id: second.runId! }),
    ];
    expect(other.inputHash).toBe(one.inputHash);
    expect(JSON.stringify(other.result)).toBe(JSON.stringify(one.result));
  }, 60_000);

  test('an inspection that was put right no longer counts, the one that puts it right does', async () => {
    const lines = await workspace.good('inspection/list', { venueId: smallVenue.id, bookingId: concert.id });
    const wrong = lines[0]!.inspection;
    const { id, enteredAt: _, ...words } = wrong;
    const right = await workspace.good('inspection/add', { inspection: { ...words, corrects: id, note: 'wrong zone' } });
    const asked = { forecastId: run.id, members: 50 };
    expect(await workspace.refused('learning/assimilate', { ...asked, inspections: [id] })).toMatchObject({
      problems: [{ field: 'inspections.0', reason: expect.stringMatching(/put right/) as string }],
    });
    const weighed = await workspace.good('learning/assimilate', { ...asked, inspections: null });
    expect(weighed.inspections).toContain(right.inspection.id);
    expect(weighed.inspections).not.toContain(id);
  }, 60_000);

  test('a replay uses what had been seen by its moment, shows the rest beside, and keeps nothing', async () => {
    const before = await workspace.good('forecast/list', { venueId: smallVenue.id });
    const replayed = await workspace.good('learning/replay', { forecastId: run.id, members: 200, knownAt: '2027-07-19T18:00' });
    expect(replayed.assimilation.runId).toBeNull();
    expect(replayed.assimilation.seen.map(({ at, used }) => [at.slice(0, 10), used])).toEqual([
      ['2027-07-18', true],
      ['2027-07-19', true],
      ['2027-07-21', false],
    ]);
    expect(await workspace.good('forecast/list', { venueId: smallVenue.id })).toEqual(before);
  }, 60_000);
});

describe('numbers of the venue', () => {
  const propose = (request: object = {}) =>
    workspace.good('learning/propose', { venueId: smallVenue.id, runs: null, ...request });

  test('change only when somebody accepts: with reason, day and range, once, and with history', async () => {
    const venue = await workspace.good('venue/read', { id: smallVenue.id });
    const proposal = await propose();
    expect(proposal).toMatchObject({ decision: null, readings: 3 });
    expect(await workspace.good('venue/read', { id: smallVenue.id })).toEqual(venue);
    const change = proposal.changes.find(({ name }) => name === 'reserve.darkDays.cool')!;
    expect(change.after.value).toBeLessThan(change.before.value);
    expect(change.after.high - change.after.low).toBeLessThanOrEqual(change.before.high - change.before.low + 1e-9);

    const accepted = await workspace.good('learning/accept', {
      id: proposal.id,
      names: [change.name],
      by: 'Head of the tests',
      reason: 'Seen three times.',
    });
    expect(accepted.decision).toMatchObject({ answer: 'accepted', names: [change.name], reason: 'Seen three times.' });
    const changed = await workspace.good('venue/read', { id: smallVenue.id });
    expect(changed.revision).toBe(venue.revision + 1);
    expect(changed.settings).toEqual({
      [change.name]: {
        value: change.after.value,
        doubt: change.after.doubt,
        reason: 'Seen three times. Learnt from 3 readings at 1 past event.',
        since: '2027-07-25',
      },
    });
    for (const name of ['learning/accept', 'learning/refuse'] as const)
      expect(
        await workspace.refused(name, {
          id: proposal.id,
          by: 'Somebody else',
          reason: '',
          ...(name === 'learning/accept' ? { names: null } : {}),
        }),
      ).toMatchObject({ kind: 'conflict', what: 'proposal' });
    expect((await workspace.good('learning/list', { venueId: smallVenue.id })).proposals).toEqual([accepted]);
  }, 60_000);

  test('the next proposal starts from what was accepted', async () => {
    const venue = await workspace.good('venue/read', { id: smallVenue.id });
    const next = await propose({ surety: 1 });
    const stood = venue.settings['reserve.darkDays.cool']!;
    const change = next.changes.find(({ name }) => name === 'reserve.darkDays.cool');
    if (change) expect(change.before).toMatchObject({ value: stood.value, doubt: stood.doubt });
    expect(next.changes.length).toBeGreaterThan(0);
    await workspace.good('learning/refuse', { id: next.id, by: 'Head of the tests', reason: 'too sure' });
    expect(await workspace.good('venue/read', { id: smallVenue.id })).toEqual(venue);
    const { proposals } = await workspace.good('learning/list', { venueId: smallVenue.id });
    expect(proposals.map(({ decision }) => decision?.answer).toSorted()).toEqual(['accepted', 'refused']);
  }, 60_000);

  test('one event counts once, and a run that nothing weighed teaches nothing', async () => {
    const { assimilations } = await workspace.good('learning/list', { venueId: smallVenue.id });
    const runs = assimilations.map(({ runId }) => runId!).slice(0, 2);
    expect(await workspace.refused('learning/propose', { venueId: smallVenue.id, runs })).toMatchObject({
      problems: [{ field: 'runs.1', reason: expect.stringMatching(/count twice/) as string }],
    });
    expect(await workspace.refused('learning/propose', { venueId: smallVenue.id, runs: [run.id] })).toMatchObject({
      problems: [{ field: 'runs.0', reason: expect.stringMatching(/no run that was weighed/) as string }],
    });
  });
});
