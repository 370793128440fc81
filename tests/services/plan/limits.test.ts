import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addHours } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import { concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { planningIn } from '#tests/services/plan/planning.ts';
import { smallWorkspace, type SmallWorkspace } from '#tests/services/evidence/small-workspace.ts';

/*
 * The limits of a venue through the program itself: entered at the venue, kept by the plan, named where they cannot be kept.
 */

const strict: Partial<Venue> = { rules: { ...smallVenue.rules, coverNeeded: 0.95 } };
const now = '2027-07-10T08:00';
let workspace: SmallWorkspace;
beforeAll(async () => {
  workspace = await smallWorkspace();
}, 120_000);
afterAll(async () => workspace.close());
const { foreseen, make, planned, withVenue } = planningIn(() => workspace, strict, now);

const rulesOf = (changes: Partial<Venue['rules']>): Partial<Venue> => ({ rules: { ...strict.rules!, ...changes } });
const lock = (zone: string, programme: string) => ({ zone, window: 'to-home-date', programme, farm: null });
const thick = ['A', 'B'].map((zone) => lock(zone, 'replace-thick'));
const jobOf = ({ plan }: PlanRun, letter: string, kind: string) =>
  plan.zones.find(({ zone }) => zone === letter)!.jobs.find(({ job }) => job === kind)!;

describe('limits of a venue', { timeout: 300_000 }, () => {
  let id: string;
  beforeAll(async () => {
    await withVenue({});
    ({ id } = await foreseen());
  }, 300_000);

  const refusedFor = async (changes: Partial<Venue>, locks: readonly object[]): Promise<string> => {
    await withVenue(changes);
    const { failure } = await make({ forecastId: id, locks });
    if (failure?.kind !== 'no-plan') throw new Error(JSON.stringify(failure));
    return [...failure.because.reasons, ...failure.because.mends.map(({ words }) => words)].join(' | ');
  };

  it('sod must match the root zone: by the catalogue’s difference, or by the venue’s own', async () => {
    await withVenue({});
    await planned({ forecastId: id, locks: thick });
    const clay = { ...smallVenue.farms[0]!, sandShare: 0.5 };
    expect(await refusedFor({ farms: [clay] }, thick)).toContain('sod of Near farm grows on 50 % sand, the root zone has 92 %');
    await withVenue({ farms: [clay], ...rulesOf({ sandGap: 0.45 }) });
    await planned({ forecastId: id, locks: thick });
  });

  it('work that asks for a skill waits for those who may do it', async () => {
    const workforce = { ...smallVenue.workforce, skills: { 'sod-machines': 0 } };
    expect(await refusedFor({ workforce }, thick)).toMatch(/it takes 1 who may drive sod installers and there are none/);
    await withVenue({ workforce: { ...workforce, skills: { 'sod-machines': 1 } } });
    await planned({ forecastId: id, locks: thick });
  });

  it('light rigs: as many as there are, and no more than the supply feeds', async () => {
    const rigs = (count: number, lightPower: number): Partial<Venue> => ({
      ...rulesOf({ coverNeeded: 0.5 }),
      workforce: { ...smallVenue.workforce, machines: { ...smallVenue.workforce.machines, 'light-rig': count }, lightPower },
    });
    const locks = [lock('B', 'recover-under-lights')];
    expect(await refusedFor(rigs(5, 1000), locks)).toMatch(/it takes \d+ light rigs and there are 5/);
    expect(await refusedFor(rigs(40, 60), locks)).toMatch(/light rigs draw \d+ kW and the supply gives 60 kW/);
  });

  it('trucks come in the hours of the gate', async () => {
    await withVenue(rulesOf({ gateHours: { from: '06:00', until: '06:30' }, gateTrucksPerHour: 4 }));
    const { plan } = await planned({ forecastId: id, locks: thick });
    const arrivals = plan.orders.flatMap(({ trucks }) => trucks.map(({ arrive }) => arrive.slice(11)));
    expect(arrivals.length).toBeGreaterThan(0);
    for (const clock of arrivals) expect(clock >= '06:00' && clock <= '06:30', clock).toBe(true);
  });

  it('the half away from the gate is laid before the half at the gate is opened', async () => {
    for (const [gateAt, first, second] of [
      [[0, 20], 'B', 'A'],
      [[0, -20], 'A', 'B'],
    ] as const) {
      await withVenue(rulesOf({ halves: 'sides', gateAt }));
      const made = await planned({ forecastId: id, locks: thick });
      expect(jobOf(made, second, 'strip').start >= jobOf(made, first, 'lay').end).toBe(true);
    }
  });

  it('without boards machines cross only ground that is lost, and boards are what mends it', async () => {
    // From the west the stage touches the apron and the floor lies behind it.
    const west: Partial<Venue> = rulesOf({ gateAt: [-20, 0], boards: false });
    await withVenue(west);
    const made = await planned({ forecastId: id, locks: thick });
    for (const kind of ['strip', 'grade', 'lay']) expect(jobOf(made, 'B', kind).end <= jobOf(made, 'A', 'lay').start).toBe(true);
    const words = await refusedFor({ rules: { ...west.rules!, coverNeeded: 0.5, chanceNeeded: 0.5 } }, [
      lock('A', 'leave'),
      lock('B', 'replace-thick'),
    ]);
    expect(words).toContain('boards for heavy machines over live turf');
    const mended = await make({
      forecastId: id,
      locks: [lock('A', 'leave'), lock('B', 'replace-thick')],
      mends: [{ kind: 'boards' }],
    });
    expect(mended.failure).toBeNull();
  });

  it('the need for sod is that of every home date planned for', async () => {
    await withVenue({});
    const days = 24 * 40;
    const later = (time: string): string => addHours(time, days, smallVenue.place.timeZone);
    const second: Booking = {
      ...concert,
      id: 'second-concert',
      layers: concert.layers.map((layer) => ({ ...layer, on: later(layer.on), off: later(layer.off), care: [] })),
      crowds: concert.crowds.map((crowd) => ({ ...crowd, from: later(crowd.from), until: later(crowd.until) })),
      traffic: concert.traffic.map((traffic) => ({ ...traffic, at: later(traffic.at) })),
      incidents: [],
    };
    const next: Fixture = { ...homeDate, id: 'next', name: 'Next', start: later(homeDate.start), end: later(homeDate.end) };
    await workspace.good('booking/save', { booking: second });
    await workspace.good('fixture/save', { fixture: next });
    const further = (await foreseen(next.id, second.id)).id;
    const one = await planned({ forecastId: id });
    const both = await planned({ forecastId: id, further: [further] });
    const needOf = async (plan: PlanRun) => (await workspace.good('plan/sod', { id: plan.id })).need;
    const [first, together] = [await needOf(one), await needOf(both)];
    const sum = ({ p10, p50, p90 }: { p10: number; p50: number; p90: number }): number => p10 + p50 + p90;
    expect(sum(first)).toBeGreaterThan(0);
    expect(sum(together)).toBeGreaterThan(sum(first));
  });
});
