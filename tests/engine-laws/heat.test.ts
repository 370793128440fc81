import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { climateUnder } from '#engine/heat/climate-under.ts';
import { openClimate, profileOf, startClimate, straightProfile } from '#engine/heat/climate-column.ts';
import { runClimate, storedHeat, heatReceived } from '#engine/heat/climate.ts';
import type { HourlyWeather } from '#engine/heat/climate-column.ts';
import { layOut, uncovered } from '#engine/heat/floor.ts';
import type { FloorCare, FloorPlan } from '#engine/heat/floor.ts';
import { growingCells, groundOf } from '#engine/heat/ground.ts';
import { groundAt, settings } from '#tests/engine/heat/pitch.ts';

const hours = 72;
const runs = { numRuns: 60 };

/** Random but possible weather: a daily wave with noise on all of it. */
const weathers: fc.Arbitrary<HourlyWeather> = fc
  .record({
    mean: fc.double({ min: -18, max: 34, noNaN: true }),
    swing: fc.double({ min: 0, max: 12, noNaN: true }),
    sun: fc.double({ min: 0, max: 1000, noNaN: true }),
    wind: fc.double({ min: 0, max: 10, noNaN: true }),
    humidity: fc.double({ min: 0.2, max: 1, noNaN: true }),
    cloud: fc.double({ min: 0, max: 1, noNaN: true }),
    noise: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: hours, maxLength: hours }),
  })
  .map(({ mean, swing, sun, wind, humidity, cloud, noise }) => {
    const wave = (hour: number): number => Math.sin(((hour - 9) * Math.PI) / 12);
    const air = Float64Array.from(noise, (n, hour) => mean + swing * wave(hour) + 2 * n);
    return {
      air,
      sun: Float64Array.from(noise, (n, hour) =>
        Math.max(0, sun * Math.sin(((hour - 6) * Math.PI) / 12) * (1 - 0.3 * Math.abs(n))),
      ),
      wind: Float64Array.from(noise, (n) => Math.max(0, wind * (1 + n))),
      vapour: air.map((t) => humidity * 0.6108 * Math.exp((17.27 * (t - 1)) / (t + 236.3))),
      cloud: new Float64Array(hours).fill(cloud),
    };
  });

const coverings = fc.constantFrom(...startingCoverings);
const share = fc.double({ min: 0, max: 1, noNaN: true });
const cares: fc.Arbitrary<FloorCare[]> = fc.array(
  fc
    .record({
      kind: fc.constantFrom('lift', 'prop', 'mist', 'sub-surface-air', 'soil-heating', 'plant-off' as const),
      from: fc.integer({ min: 0, max: hours - 1 }),
      length: fc.integer({ min: 1, max: 20 }),
      share,
    })
    .map(({ kind, from, length, share }): FloorCare => ({ kind, from, until: from + length, share, power: 80 })),
  { maxLength: 4 },
);
const plans: fc.Arbitrary<FloorPlan> = fc.record({
  stack: fc.array(coverings, { maxLength: 3 }),
  loading: fc.constantFrom('open', 'chairs', 'stage', 'deck', 'plant', 'fill' as const),
  cleanliness: share,
  iceTemperature: fc.option(fc.double({ min: -12, max: -1, noNaN: true }), { nil: null, freq: 5 }),
  care: cares,
  steps: fc.constant(hours),
  skyView: share,
});

const crownUnder = (plan: FloorPlan, weather: HourlyWeather, ground = groundAt(12), from = 12): Float64Array =>
  climateUnder({
    ground,
    settings,
    weather,
    start: straightProfile(ground, from, 12),
    spells: [{ from: 0, until: hours, plan }],
    wetness: 0.8,
  }).crown;
const one = (covering: (typeof startingCoverings)[number]): FloorPlan => ({ ...uncovered, stack: [covering], steps: hours });

test('energy closes to 1e-6 on any floor, care, ground and weather, frost included', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(plans, fc.integer({ min: 1, max: 30 })), { minLength: 1, maxLength: 3 }),
      weathers,
      (parts, weather) => {
        let at = 0;
        const spells = parts.flatMap(([plan, length]) => {
          const from = at;
          at = Math.min(hours, at + length);
          return from < at ? [{ from, until: at, plan }] : [];
        });
        const ground = groundAt(9);
        const result = climateUnder({ ground, settings, weather, start: straightProfile(ground, 4, 9), spells, wetness: 0.7 });
        expect(Math.abs(result.stored - result.received)).toBeLessThanOrEqual(1e-6 * Math.max(result.moved, 1));
        for (let hour = 0; hour < at; hour++) expect(Number.isFinite(result.crown[hour])).toBe(true);
      },
    ),
    { numRuns: 150 },
  );
});

test('hotter air never cools the crowns', () => {
  fc.assert(
    fc.property(plans, weathers, fc.double({ min: 0, max: 8, noNaN: true }), (plan, weather, more) => {
      const usual = crownUnder(plan, weather);
      const hotter = crownUnder(plan, { ...weather, air: weather.air.map((t) => t + more) });
      for (let hour = 0; hour < hours; hour++) expect(hotter[hour]! - usual[hour]!).toBeGreaterThan(-2e-3);
    }),
    runs,
  );
});

test('more sun never cools the crowns', () => {
  fc.assert(
    fc.property(plans, weathers, fc.double({ min: 0, max: 0.5, noNaN: true }), (plan, weather, more) => {
      const usual = crownUnder(plan, weather);
      const sunnier = crownUnder(plan, { ...weather, sun: weather.sun.map((sun) => sun * (1 + more)) });
      for (let hour = 0; hour < hours; hour++) expect(sunnier[hour]! - usual[hour]!).toBeGreaterThan(-2e-3);
    }),
    runs,
  );
});

test('a covering of no thickness that passes all sun, without gap or seal, is no covering', () => {
  fc.assert(
    fc.property(coverings, weathers, fc.double({ min: 0, max: 200, noNaN: true }), (covering, weather, ventilation) => {
      const nothing = { ...covering, thickness: 0, solarTransmission: 1, absorptance: 0, gapResistance: 0, seal: 0, ventilation };
      const bare = crownUnder({ ...uncovered, steps: hours }, weather);
      expect(crownUnder({ ...uncovered, stack: [nothing], steps: hours }, weather)).toEqual(bare);
    }),
    runs,
  );
});

test('a darker covering never cools the crowns beneath it', () => {
  fc.assert(
    fc.property(
      coverings.filter(({ solarTransmission }) => solarTransmission === 0),
      weathers,
      share,
      (covering, weather, absorptance) => {
        const darker = { ...covering, absorptance: covering.absorptance + (1 - covering.absorptance) * absorptance };
        const usual = crownUnder(one(covering), weather);
        const found = crownUnder({ ...uncovered, stack: [darker], steps: hours }, weather);
        for (let hour = 0; hour < hours; hour++) expect(found[hour]! - usual[hour]!).toBeGreaterThan(-2e-3);
      },
    ),
    runs,
  );
});

test('cutting a spell in two changes nothing', () => {
  fc.assert(
    fc.property(coverings, weathers, fc.integer({ min: 1, max: hours - 1 }), (covering, weather, cut) => {
      const ground = groundAt(12);
      const request = { ground, settings, weather, start: straightProfile(ground, 12, 12), wetness: 1 };
      const plan = one(covering);
      const whole = climateUnder({ ...request, spells: [{ from: 0, until: hours, plan }] });
      const parts = climateUnder({
        ...request,
        spells: [
          { from: 0, until: cut, plan },
          { from: cut, until: hours, plan },
        ],
      });
      expect(parts.crown).toEqual(whole.crown);
      expect(parts.profile).toEqual(whole.profile);
    }),
    runs,
  );
});

test('the same question gives the same bytes, whatever ran on the column before', () => {
  fc.assert(
    fc.property(plans, plans, weathers, (before, plan, weather) => {
      const ground = groundAt(12);
      const climate = openClimate(ground, settings);
      const crown = new Float64Array(hours);
      const answer = (asked: FloorPlan): Float64Array => {
        startClimate(climate, straightProfile(ground, 12, 12));
        runClimate(climate, layOut(asked, ground, settings), weather, 0, hours, crown, 1);
        return Float64Array.from([...crown, ...profileOf(climate)]);
      };
      const first = answer(plan);
      answer(before);
      expect(answer(plan)).toEqual(first);
    }),
    { numRuns: 30 },
  );
});

describe('finer cells', () => {
  const soil = {
    thickness: 3,
    thawedConductivity: 2.1,
    frozenConductivity: 3,
    thawedHeatCapacity: 2.1e6,
    frozenHeatCapacity: 1.8e6,
    latentHeat: 6e7,
  };
  const cut = (first: number, growth: number, largest: number) =>
    groundOf({
      layers: [soil],
      cells: growingCells(1, first, growth, largest),
      freezing: 0,
      interval: 1,
      deepTemperature: 12,
      deepDistance: 2,
    });
  const fine = cut(0.004, 1.15, 0.05);
  const grids = [cut(0.02, 1.5, 0.25), cut(0.01, 1.5, 0.25), cut(0.006, 1.25, 0.1)];

  test('converge', () => {
    fc.assert(
      fc.property(coverings, weathers, (covering, weather) => {
        const best = crownUnder(one(covering), weather, fine);
        const apart = grids.map((grid) => {
          const found = crownUnder(one(covering), weather, grid);
          let sum = 0;
          for (let hour = 0; hour < hours; hour++) sum += Math.abs(found[hour]! - best[hour]!);
          return sum / hours;
        });
        expect(apart[2]).toBeLessThan(0.1 + 0.5 * apart[0]!);
        expect(apart[1]).toBeLessThan(0.5);
      }),
      { numRuns: 25 },
    );
  });
});

test('the account of a column adds up over many members', () => {
  const ground = groundAt(12);
  const climate = openClimate(ground, settings);
  const crown = new Float64Array(hours);
  fc.assert(
    fc.property(weathers, coverings, (weather, covering) => {
      const floor = layOut(one(covering), ground, settings);
      startClimate(climate, straightProfile(ground, 12, 12));
      runClimate(climate, floor, weather, 0, 1, crown, 1);
      const before = storedHeat(climate, floor) - heatReceived(climate).received;
      runClimate(climate, floor, weather, 1, hours, crown, 1, 1);
      const { received, moved } = heatReceived(climate);
      expect(Math.abs(storedHeat(climate, floor) - received - before)).toBeLessThanOrEqual(1e-6 * moved);
    }),
    runs,
  );
});
