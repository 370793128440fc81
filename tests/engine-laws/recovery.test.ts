import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { grasses } from '#shared/vocabulary/turf.ts';
import { causes, type Cause } from '#engine/injury/causes.ts';
import { recoveryRate } from '#engine/recovery/regrowth.ts';
import { anchorage, youngSodWear } from '#engine/recovery/sod-anchoring.ts';
import { greenCover, seedlingCover, standOf, type Stand } from '#engine/recovery/stand.ts';
import { noActions, openDay, stepDay, type DayDrivers } from '#engine/recovery/step-day.ts';
import { applyJob } from '#engine/recovery/jobs.ts';
import { turfTraitsOf } from '#engine/recovery/turf-traits.ts';
import { judgeFeed } from '#engine/recovery/nitrogen-feed.ts';
import { piecesFor, sodOrder } from '#engine/works/sod-quantity.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const grass = fc.constantFrom(...grasses);
const temperature = fc.double({ min: -5, max: 38, noNaN: true });
const day: fc.Arbitrary<DayDrivers> = fc
  .record({ T: temperature, L: fc.double({ min: 0, max: 55, noNaN: true }), covered: fc.boolean(), seal: share })
  .map(({ T, L, covered, seal }) => ({ ...openDay(T, covered ? L * 0.1 : L), covered, seal: covered ? seal : 0 }));
const days = fc.array(day, { minLength: 1, maxLength: 40 });
const stand = fc
  .record({ crowns: share, leaf: share, reserve: share })
  .map(({ crowns, leaf, reserve }) => standOf({ crowns, cover: crowns * leaf, reserve }, 1.5, 1.2));
const traitsOf = Object.fromEntries(grasses.map((one) => [one, turfTraitsOf(defaultValues, one)])) as Record<
  (typeof grasses)[number],
  ReturnType<typeof turfTraitsOf>
>;
const run = (from: Stand, course: readonly DayDrivers[], one: (typeof grasses)[number]): Stand =>
  course.reduce((now, drivers) => stepDay(now, drivers, noActions, traitsOf[one]), from);
const tiny = 1e-9;

describe('growing back', () => {
  it('stands still at a growth potential of 0.10 or less and never exceeds 0.459 a day', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3, noNaN: true }), share, share, (best, growth, factor) => {
        const rate = recoveryRate(best, growth, factor, 0.1, 0.459);
        expect(rate).toBeGreaterThanOrEqual(0);
        expect(rate).toBeLessThanOrEqual(0.459);
        if (growth <= 0.1) expect(rate).toBe(0);
      }),
    );
  });
  it('in one day no gap closes by more than 0.459, and nothing grows when it is too cold', () => {
    fc.assert(
      fc.property(grass, stand, day, (one, before, drivers) => {
        const after = stepDay(before, drivers, noActions, traitsOf[one]);
        expect(after.cover - before.cover).toBeLessThanOrEqual(0.459 * (before.crowns - before.cover) + tiny);
        const cold = stepDay(before, { ...drivers, temperature: -8 }, noActions, traitsOf[one]);
        expect(cold.cover).toBeLessThanOrEqual(before.cover + tiny);
        expect(cold.crowns).toBeLessThanOrEqual(before.crowns + tiny);
      }),
    );
  });
  it('stays within bounds: leaf never above crowns, all shares between 0 and 1', () => {
    fc.assert(
      fc.property(grass, stand, days, (one, before, course) => {
        const after = run(before, course, one);
        for (const number of [after.cover, after.crowns, after.reserve]) {
          expect(number).toBeGreaterThanOrEqual(0);
          expect(number).toBeLessThanOrEqual(1);
        }
        expect(after.cover).toBeLessThanOrEqual(after.crowns + tiny);
        expect(after.nitrogen).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('ground without crowns stays bare', () => {
    fc.assert(
      fc.property(grass, days, (one, course) => {
        expect(run(standOf({ cover: 0, crowns: 0, reserve: 1 }, 1.5, 2), course, one)).toMatchObject({ cover: 0, crowns: 0 });
      }),
    );
  });
});

describe('never better', () => {
  it('less light at the same temperatures', () => {
    fc.assert(
      fc.property(grass, stand, days, share, (one, before, course, factor) => {
        const bright = run(before, course, one);
        const dim = run(
          before,
          course.map((drivers) => ({ ...drivers, light: drivers.light * factor })),
          one,
        );
        for (const part of ['cover', 'crowns', 'reserve'] as const) expect(dim[part]).toBeLessThanOrEqual(bright[part] + tiny);
      }),
    );
  });
  it('a better sealed covering', () => {
    fc.assert(
      fc.property(grass, stand, days, (one, before, course) => {
        const open = run(
          before,
          course.map((drivers) => ({ ...drivers, seal: 0 })),
          one,
        );
        const sealed = run(before, course, one);
        for (const part of ['cover', 'crowns', 'reserve'] as const) expect(sealed[part]).toBeLessThanOrEqual(open[part] + tiny);
      }),
    );
  });
  it('covering again before it has recovered, against covering a fresh stand', () => {
    fc.assert(
      fc.property(
        grass,
        fc.integer({ min: 1, max: 14 }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 1, max: 14 }),
        fc.double({ min: 10, max: 32, noNaN: true }),
        share,
        (one, first, pause, second, T, seal) => {
          const covered = (count: number) =>
            Array.from({ length: count }, (): DayDrivers => ({ ...openDay(T, 0), covered: true, seal }));
          const open = (count: number) => Array.from({ length: count }, () => openDay(T, 30));
          const full = standOf({ cover: 1, crowns: 1, reserve: 1 }, 1.5, 1.2);
          const again = run(full, [...covered(first), ...open(pause), ...covered(second), ...open(5)], one);
          const fresh = run(full, [...open(first + pause), ...covered(second), ...open(5)], one);
          for (const part of ['cover', 'crowns', 'reserve'] as const) expect(again[part]).toBeLessThanOrEqual(fresh[part] + tiny);
        },
      ),
    );
  });
  it('a wavering light in weather too cold to grow, and wear before a second covering', () => {
    const wear = { jobs: [], injuries: [{ cause: 'wear' as const, leafKept: 0.5, crownsKept: 0.8 }] };
    fc.assert(
      fc.property(grass, days, days, days, share, (one, first, between, second, factor) => {
        const full = standOf({ cover: 1, crowns: 1, reserve: 1 }, 1.5, 1.2);
        const course = (light: number) => {
          const dimmed = (part: readonly DayDrivers[]) => part.map((drivers) => ({ ...drivers, light: drivers.light * light }));
          const worn = stepDay(run(full, dimmed(first), one), openDay(4, 10), wear, traitsOf[one]);
          return run(worn, [...dimmed(between), ...second], one);
        };
        const bright = course(1);
        const dim = course(factor);
        for (const part of ['cover', 'crowns', 'reserve'] as const) expect(dim[part]).toBeLessThanOrEqual(bright[part] + tiny);
      }),
    );
  });
  it('one more covered day', () => {
    fc.assert(
      fc.property(
        grass,
        fc.integer({ min: 0, max: 12 }),
        fc.double({ min: 10, max: 32, noNaN: true }),
        share,
        (one, count, T, seal) => {
          const course = (covered: number) => [
            ...Array.from({ length: covered }, (): DayDrivers => ({ ...openDay(T, 0), covered: true, seal })),
            ...Array.from({ length: 30 - covered }, () => openDay(T, 32)),
          ];
          const full = standOf({ cover: 1, crowns: 1, reserve: 1 }, 1.5, 1.2);
          const less = run(full, course(count), one);
          const more = run(full, course(count + 1), one);
          expect(more.cover).toBeLessThanOrEqual(less.cover + tiny);
          expect(more.crowns).toBeLessThanOrEqual(less.crowns + tiny);
        },
      ),
    );
  });
  it('younger or colder sod holds no better and wears no less', () => {
    const traits = traitsOf['kentucky-bluegrass'].sod;
    const age = fc.double({ min: 0, max: 200, noNaN: true });
    fc.assert(
      fc.property(
        age,
        age,
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0.005, max: 0.06, noNaN: true }),
        (a, b, daily, thickness) => {
          const [young, old] = [Math.min(a, b), Math.max(a, b)];
          expect(anchorage(young, young * daily, thickness, traits)).toBeLessThanOrEqual(
            anchorage(old, old * daily, thickness, traits) + tiny,
          );
          expect(anchorage(old, (old * daily) / 2, thickness, traits)).toBeLessThanOrEqual(
            anchorage(old, old * daily, thickness, traits) + tiny,
          );
          expect(youngSodWear(young, traits)).toBeGreaterThanOrEqual(youngSodWear(old, traits));
        },
      ),
    );
  });
  it('a harder injury of any cause', () => {
    fc.assert(
      fc.property(
        grass,
        stand,
        days,
        fc.constantFrom(...causes),
        share,
        share,
        share,
        (one, before, course, cause: Cause, leaf, crowns, worse) => {
          const after = (factor: number) => {
            const injuries = [{ cause, leafKept: leaf * factor, crownsKept: crowns * factor }];
            return run(stepDay(before, openDay(18, 20), { jobs: [], injuries }, traitsOf[one]), course, one);
          };
          const mild = after(1);
          const hard = after(worse);
          expect(hard.cover).toBeLessThanOrEqual(mild.cover + tiny);
          expect(hard.crowns).toBeLessThanOrEqual(mild.crowns + tiny);
        },
      ),
    );
  });
});

describe('zero and splitting', () => {
  it('no injury and no job leave the course of the untouched stand', () => {
    fc.assert(
      fc.property(grass, stand, days, (one, before, course) => {
        const nothing = causes.map((cause) => ({ cause, leafKept: 1, crownsKept: 1 }));
        const touched = course.reduce(
          (now, drivers) => stepDay(now, drivers, { jobs: [], injuries: nothing }, traitsOf[one]),
          before,
        );
        expect(touched).toEqual(run(before, course, one));
      }),
    );
  });
  it('the losses by cause close with what is left when nothing grows', () => {
    fc.assert(
      fc.property(
        grass,
        fc.array(
          fc.record({
            cause: fc.constantFrom(...causes),
            leafKept: fc.double({ min: 0.05, max: 1, noNaN: true }),
            crownsKept: fc.double({ min: 0.05, max: 1, noNaN: true }),
          }),
          { maxLength: 8 },
        ),
        fc.integer({ min: 1, max: 10 }),
        (one, injuries, count) => {
          const dark: DayDrivers = { ...openDay(24, 0), covered: true, seal: 1 };
          let now = stepDay(standOf({ cover: 1, crowns: 1, reserve: 1 }, 1.5, 1), dark, { jobs: [], injuries }, traitsOf[one]);
          for (let more = 1; more < count; more++) now = stepDay(now, dark, noActions, traitsOf[one]);
          const leaf = causes.reduce((sum, cause) => sum + now.leafLost[cause], 0);
          const crowns = causes.reduce((sum, cause) => sum + now.crownsLost[cause], 0);
          expect(Math.abs(Math.exp(-leaf) - now.cover)).toBeLessThanOrEqual(1e-9);
          expect(Math.abs(Math.exp(-crowns) - now.crowns)).toBeLessThanOrEqual(1e-9);
        },
      ),
    );
  });
});

describe('seedlings', () => {
  it('never cover more ground than there is, and more seed is never slower', () => {
    fc.assert(
      fc.property(
        grass,
        stand,
        days,
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (one, before, course, rate, more) => {
          const after = (amount: number) =>
            run(applyJob(before, { kind: 'seed', grass: one, rate: amount }, traitsOf[one]), course, one);
          const usual = after(rate);
          expect(usual.cover + seedlingCover(usual)).toBeLessThanOrEqual(1 + tiny);
          expect(greenCover(after(rate * more))).toBeGreaterThanOrEqual(greenCover(usual) - tiny);
        },
      ),
    );
  });
});

describe('quantities', () => {
  it('counts of pieces cover the area with its waste, and never by a whole piece too many', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 20_000, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: 0.2, max: 60, noNaN: true }),
        (area, waste, piece) => {
          const count = piecesFor(area, waste, piece);
          expect(count * piece).toBeGreaterThanOrEqual(area * (1 + waste) * (1 - 1e-8));
          expect((count - 1) * piece).toBeLessThan(area * (1 + waste));
        },
      ),
    );
  });
  it('no truck is above its payload and all rolls are carried', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 10_000, noNaN: true }),
        fc.double({ min: 0.006, max: 0.06, noNaN: true }),
        fc.double({ min: 8000, max: 30_000, noNaN: true }),
        (area, thickness, payload) => {
          const order = sodOrder(area, 0.05, { thickness, density: 1842, rollWidth: 1.2192, rollLength: 9.144 }, payload);
          expect(order.loads).toHaveLength(order.trucks);
          expect(order.loads.reduce((sum, rolls) => sum + rolls, 0)).toBe(order.rolls);
          for (const rolls of order.loads) expect(rolls * order.rollMass).toBeLessThanOrEqual(payload * (1 + 1e-8));
        },
      ),
    );
  });
  it('nitrogen above the cap is always refused', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 20, noNaN: true }), (rate) => {
        expect(judgeFeed(rate, null, { cap: 4.88, interval: 14 }).allowed).toBe(rate <= 4.88 + 1e-9);
      }),
    );
  });
});
