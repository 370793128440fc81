import { describe, expect, test } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import type { Incident } from '#shared/vocabulary/booking.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { iceHalfKillDays, keptUnderIce } from '#engine/injury/ice-encasement.ts';
import { asking, homeDate, july, rink } from '#tests/engine/forecast/sample-question.ts';

/*
 * Weeks of recovery after a spill: petrol 3–4 untreated and treated, motor oil, hydraulic fluid and brake fluid, grease, by Johns & Beard
 * (1979) on bermudagrass; see the entries `spill.weeks.…`.
 */

const quiet = { ...july, layers: july.layers.filter(({ zone }) => zone === 'H'), crowds: [], traffic: [] };
/** m² of turf in zone H, on the cells that the questions here use. */
const h = foresee(asking(quiet)).zones.find(({ letter }) => letter === 'H')!.area;
const spill = (change: Partial<Incident> = {}): Incident => ({
  zone: 'H',
  kind: 'hydraulicOil',
  at: '2027-07-17T12:00',
  area: h / 4,
  treatedAfter: null,
  until: null,
  ...change,
});
const covers = (incidents: readonly Incident[], home = '2027-10-23') =>
  foresee(asking({ ...quiet, incidents }, { homeDate: homeDate(home) })).zones.find(({ letter }) => letter === 'H')!;

describe('incidents', () => {
  const without = covers([]);
  const spilt = covers([spill()]);
  const start = foresee(asking({ ...quiet, incidents: [] }, { homeDate: homeDate('2027-10-23') })).days.indexOf('2027-07-17');

  test('a spill takes its share of the zone at once and gives it back in its own weeks', () => {
    const weeks = defaultValues['spill.weeks.hydraulicOil.untreated'];
    const ratio = (after: number): number => spilt.cover.p50[start + after]! / without.cover.p50[start + after]!;
    expect(ratio(0)).toBeCloseTo(0.75, 2);
    expect(ratio(Math.floor((weeks * 7) / 2) - 1)).toBeCloseTo(0.75, 2);
    expect(ratio(Math.ceil(weeks * 7) + 1)).toBeCloseTo(1, 6);
    expect(spilt.causes.spill).toBeCloseTo(-Math.log(0.75), 1);
    expect(without.causes.spill).toBe(0);
  });

  test('a treated spill comes back no later, a larger one takes no less', () => {
    const treated = covers([spill({ kind: 'petrol', treatedAfter: 5 })]);
    const left = covers([spill({ kind: 'petrol' })]);
    treated.cover.p50.forEach((cover, at) => expect(cover).toBeGreaterThanOrEqual(left.cover.p50[at]! - 1e-9));
    const larger = covers([spill({ area: h / 2 })]);
    larger.cover.p50.forEach((cover, at) => expect(cover).toBeLessThanOrEqual(spilt.cover.p50[at]! + 1e-9));
  });

  test('every agent and ice are taken; ice kills as its days under ice say', () => {
    const days = 60;
    const iced = (incidents: readonly Incident[]) =>
      foresee(asking({ ...rink, incidents }, { homeDate: homeDate('2027-04-10') })).zones.find(({ letter }) => letter === 'B')!;
    const ice: Incident = {
      zone: 'B',
      kind: 'ice',
      at: '2026-12-10T00:00',
      until: '2027-02-08T00:00',
      area: 20000,
      treatedAfter: null,
    };
    const [one, other] = [iced([ice]), iced([])];
    const halfKill = rinkHalfKill();
    const kept = keptUnderIce(days, halfKill, defaultValues['ice.steepness']);
    const gone = one.crowns.p50.findIndex((crowns, at) => crowns < other.crowns.p50[at]! - 0.001);
    expect(one.crowns.p50[gone]! / other.crowns.p50[gone]!).toBeCloseTo(kept, 2);
  });
});

const rinkHalfKill = (): number =>
  0.8 * iceHalfKillDays('kentucky-bluegrass', defaultValues) + 0.2 * iceHalfKillDays('perennial-ryegrass', defaultValues);
