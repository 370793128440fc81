import { addDays } from '#shared/calendar/local-time.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { jobLibrary } from '#shared/parameters/jobs.ts';
import { planSettings } from '#planner/plan-settings.ts';
import { programmesFor } from '#planner/programmes.ts';
import { shiftsBetween } from '#planner/shift-calendar.ts';
import type { Readiness, RecoveryProblem, RecoveryZone } from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';

/*
 * A problem of the size of a real concert, of our own invention: zones A to J of a bluegrass field after a July concert, a home
 * date four weeks later. Readiness tables are invented too: what a concert of that kind leaves behind, roughly.
 */

export const nearFarm: Farm = {
  id: 'near-farm',
  name: 'Near Farm',
  grass: 'kentucky-bluegrass',
  sandShare: 0.92,
  thinCut: 0.013,
  thickCut: 0.035,
  stock: 9000,
  harvestPerDay: 3000,
  notice: 48,
  haul: 5,
  payload: 20400,
  trucksPerDay: 8,
  rollWidth: 1.22,
  rollLength: 10,
  closedMonths: [1, 2, 12],
  blockedDays: [],
  thinPrice: 520,
  thickPrice: 1450,
  truckPrice: 95000,
  cancelShare: 0.4,
  reservePrice: 90,
  rushPrice: 2600,
};

/** t of sand, kg of seed and of fertiliser for a m²; invented like the rest. */
export const someAmounts = { sand: 0.00508, seed: 0.045, feed: 0.0122 };

export const farFarm: Farm = {
  ...nearFarm,
  id: 'far-farm',
  name: 'Far Farm',
  notice: 24,
  haul: 14,
  thinPrice: 430,
  thickPrice: 1280,
  truckPrice: 210000,
  trucksPerDay: 6,
};

export interface ProblemShape {
  readonly zones?: number;
  /** d between the floor coming off and the home date */
  readonly days?: number;
  readonly start?: string;
  /** Chance that rows fall when they end late, per day. */
  readonly farms?: readonly Farm[];
  readonly timeZone?: string;
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const letterOf = (index: number): string => (index < 26 ? letters[index]! : `${letters[index - 26]}2`);

/** How badly a zone is hit, 0–1: the first ones lay under the stage, the last ones were not covered. */
const hitOf = (index: number, count: number): number => Math.max(0, 1 - (1.25 * index) / count);

const readinessOf = (zone: string, window: string, firstDay: string, days: number, hit: number): readonly Readiness[] => {
  const rows = (programme: Readiness['programme'], ready: (left: number) => number, best: number): Readiness => {
    const chance = Array.from({ length: days + 1 }, (_, day) => Math.max(0, Math.min(1, ready(days - day))));
    const shortfall = chance.map((one) => Math.round((1 - one) * (1 - best) * 1000) / 1000 + 0.01);
    return {
      zone,
      window,
      programme,
      after: null,
      firstDay,
      chance: chance.map((one) => Math.round(one * 1000) / 1000),
      shortfall,
    };
  };
  return [
    rows('leave', () => 1 - 1.6 * hit, 0.5),
    rows('recover', (left) => (hit > 0.75 ? 0.2 : 0.55 + left / 30 - 0.4 * hit), 0.7),
    rows('replace-thin', (left) => 0.3 + left / 25, 0.8),
    rows('replace-thick', (left) => 0.88 + left / 50, 0.9),
  ];
};

/** A concert and the home date after it. */
export const sampleProblem = (shape: ProblemShape = {}): RecoveryProblem => {
  const count = shape.zones ?? 10;
  const days = shape.days ?? 28;
  const start = shape.start ?? '2027-07-18';
  const home = `${addDays(start, days)}T19:00`;
  const zones = Array.from({ length: count }, (_, index): RecoveryZone => ({
    letter: letterOf(index),
    area: [780, 620, 300, 540, 900, 1100, 1400, 450, 700, 1500][index % 10]! * (count > 10 ? 10 / count : 1),
    weight: 1,
    neighbours: [index - 1, index + 1].filter((one) => one >= 0 && one < count).map(letterOf),
    route: index === 1 ? ['A'] : [],
    boarded: true,
  }));
  return {
    construction: 'sand-over-gravel',
    timeZone: shape.timeZone ?? 'America/Chicago',
    now: `${addDays(start, -3)}T12:00`,
    shifts: shiftsBetween(addDays(start, -4), addDays(start, days + 1), (day, night) => ({
      rainChance: Number(day.slice(8)) % 6 === 0 ? 0.7 : 0.2,
      frozen: false,
      windy: false,
      saturated: false,
      hot: !night && Number(day.slice(8)) % 9 === 0,
    })),
    blocks: [
      {
        kind: 'practice',
        name: 'Practice',
        from: `${addDays(start, 9)}T14:00`,
        until: `${addDays(start, 9)}T18:00`,
        zones: null,
      },
      {
        kind: 'event',
        name: 'Stadium run',
        from: `${addDays(start, 13)}T06:00`,
        until: `${addDays(start, 14)}T06:00`,
        zones: null,
      },
    ],
    zones,
    windows: [
      {
        id: 'august-home',
        name: 'Home date after the concert',
        homeDate: home,
        zones: zones.map(({ letter }, index) => ({ letter, from: index < 3 ? `${addDays(start, 1)}T23:00` : `${start}T12:00` })),
      },
    ],
    workforce: {
      dayCrew: 7,
      nightCrew: 4,
      overtimeCrew: 3,
      hourPrice: 3200,
      overtimePrice: 4800,
      machines: {
        aerator: 1,
        topdresser: 1,
        seeder: 1,
        sprayer: 1,
        mower: 2,
        stripper: 1,
        'sod-installer': 1,
        roller: 1,
        grader: 1,
        'light-rig': 2,
        'growth-cover': 4,
        loader: 1,
      },
      curfew: { from: '23:00', until: '06:00' },
    },
    farms: shape.farms ?? [nearFarm, farFarm],
    rules: {
      coverNeeded: 0.7,
      rutAllowed: 0.01,
      chanceNeeded: 0.9,
      certifyLead: 48,
      paint: 24,
      settle: 24,
      rest: 6,
      contingency: 24,
      groundPressure: 80,
      sodWaste: 0.05,
      currency: 'USD',
    },
    jobs: jobLibrary(defaultValues, someAmounts),
    programmes: programmesFor('sand-over-gravel'),
    prices: { seed: 450, sand: 4200, feed: 180, carpet: 6500, disposal: 2800 },
    readiness: zones.flatMap(({ letter }, index) => readinessOf(letter, 'august-home', start, days, hitOf(index, count))),
    settings: planSettings(defaultValues),
    sequences: [],
    locks: [],
    done: [],
    released: [],
    before: [],
  };
};
