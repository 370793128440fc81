/** Laws of water on random root zones, weathers and schedules. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import { constructions, soils, type RootZone } from '#shared/vocabulary/turf.ts';
import { combinationEquation } from '#engine/water/reference-evapotranspiration.ts';
import { drainedState, flow, flows, stepRootZone, topWaterContent, waterHeld } from '#engine/water/root-zone.ts';
import { rootZoneCourse } from '#engine/water/root-zone-course.ts';
import { rootZoneProfile } from '#engine/water/root-zone-profile.ts';
import { seriesFrom } from '#engine/weather/weather-day.ts';

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;

const zones: fc.Arbitrary<RootZone> = fc.record({
  construction: fc.constantFrom(...constructions),
  soil: fc.constantFrom(...soils),
  sandShare: fc.double({ min: 0, max: 1, noNaN: true }),
  depth: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
  gravelDepth: fc.constantFrom(0, 0, 0.1, 0.4),
  drainSpacing: fc.constantFrom(0, 3, 5, 20),
  conductivity: fc.double({ min: 0.1, max: 2000, noNaN: true }),
});
const days = 40;
const rains = fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0, max: 120, noNaN: true })), {
  minLength: days,
  maxLength: days,
});
const demands = fc.array(fc.double({ min: 0, max: 14, noNaN: true }), { minLength: days, maxLength: days });
const schedules = fc.oneof(
  fc.constant({ kind: 'none' } as const),
  fc.record({
    kind: fc.constant('refill' as const),
    target: fc.double({ min: 0, max: 1, noNaN: true }),
    limit: fc.double({ min: 0, max: 20, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant('fixed' as const),
    depth: fc.double({ min: 0, max: 30, noNaN: true }),
    every: fc.integer({ min: 1, max: 9 }),
  }),
);
const covers = fc.record({
  from: fc.integer({ min: 0, max: days }),
  to: fc.integer({ min: 0, max: days }),
  rainThrough: fc.double({ min: 0, max: 1, noNaN: true }),
  evaporation: fc.double({ min: 0, max: 1, noNaN: true }),
});
const plain = { maximum: 25, minimum: 15, radiation: 20, vapourPressure: 1.5, wind: 2 };
const seriesOf = (rain: readonly number[]) =>
  seriesFrom(
    '2027-06-01',
    rain.map((mm) => ({ ...plain, rain: mm })),
  );

describe('water in the root zone', () => {
  it('closes to 1e-9 mm every day and stays between residual content and porosity', () => {
    fc.assert(
      fc.property(zones, rains, demands, schedules, covers, (zone, rain, demand, schedule, cover) => {
        const profile = rootZoneProfile(zone, 'cool', values);
        const lying = (day: number) =>
          day >= cover.from && day < cover.to
            ? { share: 1, rainThrough: cover.rainThrough, evaporation: cover.evaporation }
            : null;
        const course = rootZoneCourse(profile, seriesOf(rain), Float64Array.from(demand), schedule, lying);
        let [arrived, left] = [0, 0];
        for (let i = 0; i < days; i++) {
          arrived += rain[i]! - course.shed[i]! + course.irrigation[i]!;
          left += course.evapotranspiration[i]! + course.drainage[i]! + course.runoff[i]!;
          expect(course.pond[i]!).toBeGreaterThanOrEqual(0);
          expect(course.evapotranspiration[i]!).toBeLessThanOrEqual(demand[i]! + 1e-9);
        }
        const held = waterHeld(profile, course.end) - waterHeld(profile, drainedState(profile));
        expect(Math.abs(held - (arrived - left))).toBeLessThan(1e-9);
        for (let i = 0; i < profile.layers; i++) {
          expect(course.end[i]!).toBeGreaterThanOrEqual(profile.residual[i]! - 1e-9);
          expect(course.end[i]!).toBeLessThanOrEqual(profile.saturated[i]! + 1e-9);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('closes every single step, from any state', () => {
    fc.assert(
      fc.property(
        zones,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 30, maxLength: 30 }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 14, noNaN: true }),
        (zone, fill, rain, demand) => {
          const profile = rootZoneProfile(zone, 'warm', values);
          const water = new Float64Array(profile.layers + 1);
          for (let i = 0; i < profile.layers; i++) {
            water[i] = profile.residual[i]! + fill[i % 30]! * (profile.saturated[i]! - profile.residual[i]!);
          }
          water[profile.layers] = fill[29]! * profile.pondDepth;
          const before = waterHeld(profile, water);
          const out = new Float64Array(flows);
          stepRootZone(profile, water, 0, rain, demand, 3, 0.8, 10, out);
          const change = rain + out[flow.irrigation]! - out[flow.evapotranspiration]! - out[flow.drainage]! - out[flow.runoff]!;
          expect(Math.abs(waterHeld(profile, water) - before - change)).toBeLessThan(1e-9);
          for (const each of out) expect(each).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('more rain never leaves any layer drier, on any later day', () => {
    fc.assert(
      fc.property(zones, rains, rains, demands, schedules, (zone, rain, more, demand, schedule) => {
        const profile = rootZoneProfile(zone, 'cool', values);
        const wetter = rain.map((mm, i) => mm + 0.3 * more[i]!);
        const demandOf = Float64Array.from(demand);
        const dry = rootZoneCourse(profile, seriesOf(rain), demandOf, schedule);
        const wet = rootZoneCourse(profile, seriesOf(wetter), demandOf, schedule);
        for (let i = 0; i < days; i++) {
          expect(wet.top[i]!).toBeGreaterThanOrEqual(dry.top[i]! - 1e-9);
          expect(wet.rootZone[i]!).toBeGreaterThanOrEqual(dry.rootZone[i]! - 1e-9);
          expect(wet.pond[i]!).toBeGreaterThanOrEqual(dry.pond[i]! - 1e-9);
        }
        for (let i = 0; i <= profile.layers; i++) expect(wet.end[i]!).toBeGreaterThanOrEqual(dry.end[i]! - 1e-9);
      }),
      { numRuns: 150 },
    );
  });

  it('a greater demand never leaves the soil wetter', () => {
    fc.assert(
      fc.property(zones, rains, demands, (zone, rain, demand) => {
        const profile = rootZoneProfile(zone, 'cool', values);
        const mild = rootZoneCourse(profile, seriesOf(rain), Float64Array.from(demand), { kind: 'none' });
        const harsh = rootZoneCourse(
          profile,
          seriesOf(rain),
          Float64Array.from(demand, (mm) => mm * 1.2),
          { kind: 'none' },
        );
        for (let i = 0; i < days; i++) expect(harsh.rootZone[i]!).toBeLessThanOrEqual(mild.rootZone[i]! + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it('a covering of full transmission equals no covering, and the same days give the same bytes', () => {
    fc.assert(
      fc.property(zones, rains, demands, (zone, rain, demand) => {
        const profile = rootZoneProfile(zone, 'cool', values);
        const demandOf = Float64Array.from(demand);
        const open = rootZoneCourse(profile, seriesOf(rain), demandOf, { kind: 'none' });
        const clear = rootZoneCourse(profile, seriesOf(rain), demandOf, { kind: 'none' }, () => ({
          share: 1,
          rainThrough: 1,
          evaporation: 1,
        }));
        expect(clear).toEqual(open);
        expect(topWaterContent(profile, open.end)).toBe(open.top[days - 1]);
      }),
      { numRuns: 30 },
    );
  });
});

describe('reference evapotranspiration: what the equation itself promises', () => {
  const positive = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });

  it('rises with the vapour pressure deficit at fixed net radiation', () => {
    fc.assert(
      fc.property(
        positive(0.03, 0.4),
        positive(0.04, 0.07),
        positive(0, 20),
        positive(-5, 40),
        positive(0, 10),
        positive(0, 3),
        positive(0, 2),
        (slope, gamma, net, t, u, deficit, more) => {
          const low = combinationEquation(slope, gamma, net, t, u, deficit);
          expect(combinationEquation(slope, gamma, net, t, u, deficit + more)).toBeGreaterThanOrEqual(low);
        },
      ),
    );
  });

  it('without wind is the radiation term alone', () => {
    fc.assert(
      fc.property(
        positive(0.03, 0.4),
        positive(0.04, 0.07),
        positive(0, 20),
        positive(-5, 40),
        positive(0, 3),
        (slope, gamma, net, t, deficit) => {
          expect(combinationEquation(slope, gamma, net, t, 0, deficit)).toBeCloseTo((0.408 * slope * net) / (slope + gamma), 10);
        },
      ),
    );
  });
});
