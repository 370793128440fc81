import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { causes, causesOfLogLosses, combineCauses, type ByCause, type Cause } from '#engine/injury/causes.ts';
import { darkClockCovered } from '#engine/injury/dark-clock.ts';
import {
  darkClockTraitsOf,
  reserveTraitsOf,
  starvationTraitsOf,
  symptomLagsOf,
  waterloggingTraitsOf,
} from '#engine/injury/injury-traits.ts';
import { crownsKeptBetween, leafKept, leafKeptBetween } from '#engine/injury/kept-by-reserve.ts';
import { reserveAfterDay, reserveAfterHours, reserveGain, reserveLoss } from '#engine/injury/reserve-balance.ts';
import { seenOn, type TurfDay } from '#engine/injury/symptoms.ts';
import { leafKeptWet, oxygenDebt } from '#engine/injury/waterlogging.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const temperature = fc.double({ min: -15, max: 45, noNaN: true });
const light = fc.double({ min: 0, max: 65, noNaN: true });
const season = fc.constantFrom('cool' as const, 'warm' as const);
const kept: fc.Arbitrary<ByCause> = fc.record(
  Object.fromEntries(causes.map((cause) => [cause, share])) as Record<Cause, fc.Arbitrary<number>>,
);
const starvation = starvationTraitsOf(defaultValues);

describe('the dark clock', () => {
  const traits = darkClockTraitsOf(defaultValues, 'cool');
  it('never runs backwards under a covering, and is never slower warmer or darker', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        temperature,
        fc.double({ min: 0, max: 20, noNaN: true }),
        light,
        (clock, T, warmer, L) => {
          const now = darkClockCovered(clock, 6, T, L, traits);
          expect(now).toBeGreaterThanOrEqual(clock);
          expect(darkClockCovered(clock, 6, T + warmer, L, traits)).toBeGreaterThanOrEqual(now);
          expect(darkClockCovered(clock, 6, T, L / 2, traits)).toBeGreaterThanOrEqual(now);
        },
      ),
    );
  });
});

describe('the reserve', () => {
  it('is used no slower when warmer or better sealed', () => {
    fc.assert(
      fc.property(
        season,
        temperature,
        fc.double({ min: 0, max: 20, noNaN: true }),
        share,
        share,
        (group, T, warmer, one, other) => {
          const traits = reserveTraitsOf(defaultValues, group);
          const loss = reserveLoss(T, Math.min(one, other), traits);
          expect(reserveLoss(T + warmer, Math.min(one, other), traits)).toBeGreaterThanOrEqual(loss * (1 - 1e-12));
          expect(reserveLoss(T, Math.max(one, other), traits)).toBeGreaterThanOrEqual(loss);
        },
      ),
    );
  });
  it('gains no less from more light at the same temperature', () => {
    fc.assert(
      fc.property(season, temperature, light, light, (group, T, one, other) => {
        const traits = reserveTraitsOf(defaultValues, group);
        expect(reserveGain(Math.max(one, other), T, traits)).toBeGreaterThanOrEqual(reserveGain(Math.min(one, other), T, traits));
      }),
    );
  });
  it('same days and light, warmer from 5 to 30 °C in the dark: never better', () => {
    fc.assert(
      fc.property(
        season,
        fc.integer({ min: 1, max: 20 }),
        fc.double({ min: 5, max: 30, noNaN: true }),
        fc.double({ min: 5, max: 30, noNaN: true }),
        share,
        (group, days, a, b, seal) => {
          const traits = reserveTraitsOf(defaultValues, group);
          const after = (T: number) => reserveAfterHours(1, days * 24, T, 0, seal, traits);
          expect(after(Math.max(a, b))).toBeLessThanOrEqual(after(Math.min(a, b)));
        },
      ),
    );
  });
  it('more days and less light under a covering are never better', () => {
    fc.assert(
      fc.property(season, temperature, share, share, fc.integer({ min: 0, max: 25 }), (group, T, tau, darker, days) => {
        const traits = reserveTraitsOf(defaultValues, group);
        const run = (count: number, passed: number) => {
          let reserve = 1;
          let leaf = 1;
          for (let day = 0; day < count; day++) {
            const next = reserveAfterDay(reserve, T, 40 * passed, 0.5, traits);
            leaf *= leafKeptBetween(reserve, next, starvation);
            reserve = next;
          }
          return leaf;
        };
        expect(run(days + 1, tau)).toBeLessThanOrEqual(run(days, tau));
        expect(run(days, tau * darker)).toBeLessThanOrEqual(run(days, tau) + 1e-12);
      }),
    );
  });
  it('split anywhere gives the same kept leaf and crowns', () => {
    fc.assert(
      fc.property(share, share, share, (a, b, c) => {
        const [high, middle, low] = [a, b, c].toSorted((x, y) => y - x) as [number, number, number];
        for (const between of [leafKeptBetween, crownsKeptBetween]) {
          const whole = between(high, low, starvation);
          expect(Math.abs(between(high, middle, starvation) * between(middle, low, starvation) - whole)).toBeLessThanOrEqual(
            1e-12,
          );
        }
        expect(leafKept(high, starvation)).toBeGreaterThanOrEqual(leafKept(low, starvation));
      }),
    );
  });
});

describe('causes', () => {
  it('close: what they took adds to the loss, in any order', () => {
    fc.assert(
      fc.property(kept, (all) => {
        const combined = combineCauses(all);
        const sum = causes.reduce((total, cause) => total + combined.lost[cause], 0);
        expect(Math.abs(sum - (1 - combined.kept))).toBeLessThanOrEqual(1e-9);
        expect(Math.abs(combined.kept - causes.reduce((product, cause) => product * all[cause], 1))).toBeLessThanOrEqual(1e-9);
        for (const cause of causes) expect(combined.lost[cause]).toBeGreaterThanOrEqual(0);
        const mirrored = combineCauses(Object.fromEntries(Object.entries(all).toReversed()) as ByCause);
        expect(mirrored).toEqual(combined);
      }),
    );
  });
  it('nothing lost, nothing shared out', () => {
    fc.assert(
      fc.property(fc.constantFrom(...causes), (cause) => {
        const none = causesOfLogLosses({ ...combineCauses({}).lost, [cause]: 0 });
        expect(none.kept).toBe(1);
        expect(none.lost[cause]).toBe(0);
      }),
    );
  });
});

describe('waterlogging', () => {
  const traits = waterloggingTraitsOf(defaultValues);
  it('longer, wetter, better sealed, warmer: never better', () => {
    const hours = fc.double({ min: 0, max: 400, noNaN: true });
    fc.assert(
      fc.property(hours, hours, share, share, share, share, temperature, (h, more, air, wetter, seal, tighter, T) => {
        const leaf = (time: number, pores: number, closed: number, warmth: number) =>
          leafKeptWet(oxygenDebt(time, pores * 0.3, closed, warmth, traits), traits);
        const usual = leaf(h, air, seal, T);
        expect(leaf(h + more, air, seal, T)).toBeLessThanOrEqual(usual + 1e-12);
        expect(leaf(h, air * wetter, seal, T)).toBeLessThanOrEqual(usual + 1e-12);
        expect(leaf(h, air, Math.max(seal, tighter), T)).toBeLessThanOrEqual(usual + 1e-12);
        expect(leaf(h, air, seal, T + 3)).toBeLessThanOrEqual(usual + 1e-12);
      }),
    );
  });
});

describe('what is seen', () => {
  const lags = symptomLagsOf(defaultValues);
  const turfDay: fc.Arbitrary<TurfDay> = fc.record({
    covered: fc.boolean(),
    cover: share,
    lost: kept.map((all) => Object.fromEntries(causes.map((cause) => [cause, all[cause] * 0.1])) as ByCause),
    ruts: fc.double({ min: 0, max: 0.1, noNaN: true }),
    compaction: share,
    diseaseRisk: share,
    growth: share,
    darkDays: fc.double({ min: 0, max: 20, noNaN: true }),
    wet: share,
  });
  it('never looks worse than it is, nothing shows under a covering, severities stay between 0 and 1', () => {
    fc.assert(
      fc.property(fc.array(turfDay, { minLength: 1, maxLength: 15 }), (history) => {
        for (let day = 0; day < history.length; day++) {
          const seen = seenOn(history, day, lags);
          if (history[day]!.covered) expect(seen.cover).toBeNull();
          else expect(seen.cover!).toBeGreaterThanOrEqual(history[day]!.cover - 1e-12);
          for (const symptom of [...seen.symptoms, ...seen.hidden]) {
            expect(symptom.severity).toBeGreaterThan(0);
            expect(symptom.severity).toBeLessThanOrEqual(1);
          }
        }
      }),
      { numRuns: 50 },
    );
  });
});
