import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addHours } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { Job } from '#shared/contract/job.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { NotPossible } from '#shared/vocabulary/plan.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import { concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { planningIn } from '#tests/services/plan/planning.ts';
import { smallWorkspace, type SmallWorkspace } from '#tests/services/evidence/small-workspace.ts';

/*
 * The planning through the program itself: venue, event and home date are stored, the season is foreseen, the work is planned. A venue
 * that asks for nearly full cover, so that sod is needed.
 */

const strict: Partial<Venue> = { rules: { ...smallVenue.rules, coverNeeded: 0.95 } };
const now = '2027-07-10T08:00';
let workspace: SmallWorkspace;
beforeAll(async () => {
  workspace = await smallWorkspace();
}, 120_000);
afterAll(async () => workspace.close());

const { foreseen, make, planned, withVenue, withBooking } = planningIn(() => workspace, strict, now);

/** The concert with every floor coming off some hours later. */
const later = (hours: number): Partial<Booking> => ({
  layers: concert.layers.map((layer) => ({ ...layer, off: addHours(layer.off, hours, smallVenue.place.timeZone) })),
});

/** A fixture as it is removed: by id and revision. */
const revised = async (id: string): Promise<{ readonly id: string; readonly revision: number }> => {
  const all = (await workspace.good('fixture/list', { venueId: smallVenue.id })) as readonly Fixture[];
  return { id, revision: all.find((one) => one.id === id)!.revision };
};

/** A changed plan, or a reason by name with mends that make a plan possible once they are agreed on. */
const changedOrMended = async (request: { readonly forecastId: string }, usual: PlanRun): Promise<'changed' | NotPossible> => {
  const { plan, failure } = await make(request);
  if (plan) {
    expect(plan.plan.zones).not.toEqual(usual.plan.zones);
    return 'changed';
  }
  if (failure.kind !== 'no-plan') throw new Error(failure.message);
  expect(failure.message).toMatch(/^Not possible because /);
  const { because } = failure;
  expect(because.mends.length).toBeGreaterThan(0);
  for (const { mend } of because.mends) {
    const mended = await make({ ...request, mends: [mend] });
    expect(mended.failure, JSON.stringify(mend)).toBeNull();
  }
  return because;
};

describe('planning through the program', { timeout: 300_000 }, () => {
  let run: ForecastRun;
  let usual: PlanRun;
  beforeAll(async () => {
    await withVenue({});
    await withBooking({});
    run = await foreseen();
    usual = await planned({ forecastId: run.id });
  }, 300_000);

  it('orders sod for the usual case, within half a per cent of the least', () => {
    expect(usual.plan.orders).toHaveLength(1);
    expect(usual.plan.proven).toBe(true);
    expect(usual.plan.zones.map(({ zone }) => zone)).toEqual(['A', 'B']);
  });

  it('a farm that wants more notice than there is: named, with mends that work', async () => {
    await withVenue({ farms: [{ ...smallVenue.farms[0]!, notice: 900 }] });
    const because = await changedOrMended({ forecastId: run.id }, usual);
    if (because === 'changed') throw new Error('possible after all');
    expect(because.reasons[0]).toContain('Near farm needs 900 h of notice');
    expect(because.reasons.join()).not.toContain('undefined');
    expect(because.mends.some(({ mend }) => mend.kind === 'shorter-notice')).toBe(true);
    await withVenue({});
  });

  it('two people away: a changed plan or mends that work', async () => {
    await withVenue({ workforce: { ...smallVenue.workforce, dayCrew: 2 } });
    const because = await changedOrMended({ forecastId: run.id }, usual);
    if (because !== 'changed') expect(because.reasons[0]).toMatch(/it takes \d people and there are 4/);
    await withVenue({});
  });

  it('a strike 14 h late, and a second night: a changed plan or mends that work', async () => {
    await withBooking(later(14));
    await changedOrMended({ forecastId: (await foreseen()).id }, usual);
    await withBooking({
      ...later(24),
      crowds: [...concert.crowds, { ...concert.crowds[0]!, from: '2027-07-18T18:00', until: '2027-07-18T23:00' }],
    });
    await changedOrMended({ forecastId: (await foreseen()).id }, usual);
    await withBooking({});
  });

  it('the night the clocks go back, counted in real hours', async () => {
    const autumn: Fixture = { ...homeDate, id: 'autumn', name: 'Autumn', start: '2027-11-09T07:00', end: '2027-11-09T09:00' };
    await workspace.good('fixture/save', { fixture: autumn });
    await withVenue({ rules: { ...smallVenue.rules, coverNeeded: 0.3, rutAllowed: 0.1 } });
    const days = 24 * 103;
    await withBooking({
      ...later(days),
      layers: later(days).layers!.map((layer) => ({
        ...layer,
        on: addHours(layer.on, days, smallVenue.place.timeZone),
        care: [],
      })),
      crowds: [],
      traffic: [],
      incidents: [],
    });
    const late = await foreseen(autumn.id);
    const plan = await planned({
      forecastId: late.id,
      now: '2027-10-20T08:00',
      locks: [{ zone: 'B', window: 'to-home-date', programme: 'recover', farm: null }],
    });
    // 24 h to the test, 12 h to paint and 24 h in hand: 60 real hours over a night of 13 h begin at 20:00, not at 19:00.
    for (const zone of plan.plan.zones) expect(zone.latestFinish).toBe('2027-11-06T20:00');
    const jobs = plan.plan.zones.find(({ zone }) => zone === 'B')!.jobs;
    expect(jobs.length).toBeGreaterThan(0);
    expect(plan.plan.fieldJobs.find(({ job }) => job === 'certify')!.start).toBe('2027-11-08T07:00');
    await withBooking({});
    await withVenue({});
  });

  it('keeps noisy work out of a curfew across midnight, and uses the hours up to it', async () => {
    const closed = Array.from({ length: 13 }, (_, day): Fixture => ({
      ...homeDate,
      id: `closed-${19 + day}`,
      kind: 'blackout',
      name: 'Closed',
      start: `2027-07-${19 + day}T09:00`,
      end: `2027-07-${19 + day}T21:00`,
    }));
    for (const fixture of closed) await workspace.good('fixture/save', { fixture });
    const crews = { ...smallVenue.workforce, dayCrew: 6, nightCrew: 6 };
    const locks = ['A', 'B'].map((zone) => ({ zone, window: 'to-home-date', programme: 'replace-thick', farm: null }));
    /** The noisy jobs, and the most hours that one of them is worked at in one night. */
    const noisy = async (curfew: Venue['workforce']['curfew']) => {
      await withVenue({ workforce: { ...crews, curfew } });
      const { id } = await foreseen();
      const { plan } = await planned({ forecastId: id, locks });
      const jobs = plan.zones.flatMap((zone) => zone.jobs).filter(({ job }) => ['strip', 'grade', 'lay'].includes(job));
      expect(jobs.length).toBe(6);
      // From 21:00 to 06:00 a job that begins and ends within one night lies wholly in it.
      const night = jobs.filter(({ start, end }) => start.slice(11) >= '21:00' || end.slice(11) <= '06:00');
      return { jobs, night };
    };
    const inside = (clock: string): boolean => clock < '06:00' || clock >= '22:00';
    const kept = await noisy({ from: '22:00', until: '06:00' });
    for (const { start, end } of kept.jobs) {
      expect(inside(start.slice(11)), start).toBe(false);
      expect(end.slice(11) === '22:00' || !inside(end.slice(11)), end).toBe(true);
    }
    // Without it the same work goes on through the night.
    const free = await noisy(null);
    expect(free.night.some(({ start, end }) => inside(start.slice(11)) || inside(end.slice(11)))).toBe(true);
    for (const { id } of closed) await workspace.good('fixture/remove', await revised(id));
    await withVenue({});
  });

  it('a home date on the last allowed hour: possible to the hour, and not one hour later', async () => {
    const locks = ['A', 'B'].map((zone) => ({ zone, window: 'to-home-date', programme: 'replace-thick', farm: null }));
    const sooner: Fixture = { ...homeDate, id: 'sooner', start: '2027-08-04T19:00', end: '2027-08-04T21:00' };
    await workspace.good('fixture/save', { fixture: sooner });
    const { id } = await foreseen(sooner.id);
    const early = await planned({ forecastId: id, locks });
    const slack = Math.min(...early.plan.zones.map((zone) => zone.slack));
    const inHand = async (hours: number): Promise<void> => {
      const { contingency, certifyLead, paint } = smallVenue.rules;
      const more = [240 - contingency, 240 - certifyLead, 96 - paint].reduce<number[]>(
        (taken, room) => [...taken, Math.min(room, hours - taken.reduce((sum, one) => sum + one, 0))],
        [],
      );
      expect(more.reduce((sum, one) => sum + one, 0)).toBeCloseTo(hours, 9);
      const rules = {
        ...strict.rules!,
        contingency: contingency + more[0]!,
        certifyLead: certifyLead + more[1]!,
        paint: paint + more[2]!,
      };
      await withVenue({ rules });
    };
    await inHand(slack);
    const last = await planned({ forecastId: id, locks });
    expect(Math.min(...last.plan.zones.map((zone) => zone.slack))).toBeCloseTo(0, 6);
    await inHand(slack + 1);
    const { failure } = await make({ forecastId: id, locks });
    expect(failure?.kind).toBe('no-plan');
    await workspace.good('fixture/remove', await revised(sooner.id));
    await withVenue({});
  });

  it('nonsense is refused by name before anything is planned', async () => {
    const farm = smallVenue.farms[0]!;
    await withVenue({ farms: [{ ...farm, trucksPerDay: 0 }] });
    const idle = await make({ forecastId: run.id });
    expect(idle.failure).toMatchObject({
      kind: 'invalid-request',
      problems: [{ field: 'farms.0.trucksPerDay', reason: 'Near farm has no trucks' }],
    });
    await withVenue({});
    const { revision } = await workspace.good('venue/read', { id: smallVenue.id });
    const negative = await workspace.application.answer('venue/save', {
      venue: { ...smallVenue, farms: [{ ...farm, stock: -5 }], revision },
    });
    expect(negative).toMatchObject({ ok: false, failure: { problems: [{ field: 'venue.farms.0.stock' }] } });
    const soon: Fixture = { ...homeDate, id: 'soon', name: 'Soon', start: '2027-07-18T20:00', end: '2027-07-18T22:00' };
    await workspace.good('fixture/save', { fixture: soon });
    const { failure } = await make({ forecastId: (await foreseen(soon.id)).id });
    expect(failure).toMatchObject({
      kind: 'invalid-request',
      problems: [{ field: 'windows.0', reason: expect.stringMatching(/paint takes 8 h, longer than the whole window of 6 h/) }],
    });
    await workspace.good('fixture/remove', await revised(soon.id));
  });

  it('a mend for a farm that nobody knows is refused by name', async () => {
    const { failure } = await make({ forecastId: run.id, mends: [{ kind: 'more-trucks', farm: 'no-farm', perDay: 1 }] });
    expect(failure).toMatchObject({ kind: 'invalid-request', problems: [{ field: 'mends.0.farm' }] });
  });

  it('replans with done jobs where they are, the sod on its way and nothing else moved', async () => {
    const jobs = usual.plan.zones.flatMap((zone) => zone.jobs);
    const strip = jobs.filter(({ job }) => job === 'strip').map(({ end }) => end);
    const moment = strip.toSorted().at(-1)!;
    const done = jobs
      .filter(({ start }) => start < moment)
      .map(({ zone, window, job, start, end }) => ({ zone, window, job, start, end }));
    const [order] = usual.plan.orders;
    const request = { forecastId: run.id, now: moment, done, instead: usual.id };
    const again = await planned({ ...request, released: [{ window: order!.window, farm: order!.farm, at: order!.releaseBy }] });
    for (const one of done) {
      const kept = again.plan.zones.find(({ zone }) => zone === one.zone)!.jobs.find(({ job }) => job === one.job);
      expect(kept).toMatchObject({ start: one.start, end: one.end, done: true });
    }
    expect(again.plan.moved).toEqual([]);
    // Sod that is not yet released cannot come within the farm's notice: the laying has to wait.
    const fresh = await make(request);
    expect(fresh.plan === null || fresh.plan.plan.moved.length > 0).toBe(true);
  });

  it('holds a job to hours to come, with its sod ordered for them and what comes before it still to do', async () => {
    const zone = usual.plan.zones.find(({ farm }) => farm !== null)!;
    const lay = zone.jobs.find(({ job }) => job === 'lay')!;
    const [start, end] = [lay.start, lay.end].map((moment) => addHours(moment, 24, smallVenue.place.timeZone)) as [
      string,
      string,
    ];
    const held = { zone: zone.zone, window: zone.window, job: lay.job, start, end };
    const again = await planned({ forecastId: run.id, done: [held], instead: usual.id });
    const mine = again.plan.zones.find((one) => one.zone === zone.zone)!;
    expect(mine.jobs.map(({ job }) => job)).toEqual(zone.jobs.map(({ job }) => job));
    expect(mine.jobs.find(({ job }) => job === 'lay')).toMatchObject({ start, done: false });
    const ordered = (plan: typeof again.plan) => plan.orders.flatMap(({ zones }) => zones).toSorted();
    expect(ordered(again.plan)).toEqual(ordered(usual.plan));
  });

  it('carries what is done for one home date to the next of the season', async () => {
    const second: Fixture = {
      ...homeDate,
      id: 'second-home-date',
      name: 'Second home date',
      start: '2027-08-28T19:00',
      end: '2027-08-28T21:00',
    };
    await workspace.good('fixture/save', { fixture: second });
    const next = await foreseen(second.id);
    const both = await planned({ forecastId: run.id, further: [next.id] });
    expect(both.plan.zones.map(({ zone, window }) => `${zone} ${window}`)).toEqual([
      'A to-home-date',
      'B to-home-date',
      'A second-home-date',
      'B second-home-date',
    ]);
    for (const zone of both.plan.zones.filter(({ window }) => window === second.id)) {
      expect(zone.chanceReady).toBeGreaterThanOrEqual(smallVenue.rules.chanceNeeded);
      for (const { start } of zone.jobs) expect(start >= homeDate.end).toBe(true);
    }
    for (const kind of ['recovery-report', 'sod-order', 'recovery-chart', 'job-table'] as const)
      await workspace.good('report/write', { planId: both.id, kind, paper: 'a4', units: 'si' });
    const turned = await make({ forecastId: next.id, further: [run.id] });
    expect(turned.failure).toMatchObject({ kind: 'invalid-request', problems: [{ field: 'further.0' }] });
  });

  it('is stopped on request and keeps nothing', async () => {
    const before = await workspace.good('plan/list', { venueId: smallVenue.id });
    const answer = await workspace.application.answer('plan/make', {
      forecastId: run.id,
      now,
      locks: [],
      done: [],
      instead: null,
    });
    if (!answer.ok) throw new Error(answer.failure.message);
    const stopped = await workspace.application.answer('job/cancel', { id: (answer.value as Job).id });
    expect(stopped).toMatchObject({ ok: true, value: { failure: { kind: 'cancelled' } } });
    expect(await workspace.good('plan/list', { venueId: smallVenue.id })).toEqual(before);
  });
});
