import { describe, expect, it } from 'vitest';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import type { RootZone } from '#shared/vocabulary/turf.ts';
import { hydrostaticMean } from '#engine/water/retention.ts';
import {
  baseOutflow,
  drainedState,
  flow,
  flows,
  lacksOxygen,
  rootZoneWaterContent,
  stepRootZone,
  topWaterContent,
  waterHeld,
} from '#engine/water/root-zone.ts';
import { evaporationUnderCovering, rootZoneCourse, underCover } from '#engine/water/root-zone-course.ts';
import { retentionOf, rootZoneProfile } from '#engine/water/root-zone-profile.ts';
import { drainDownTime } from '#engine/water/drain-spacing.ts';
import { seriesFrom } from '#engine/weather/weather-day.ts';

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;

const sandOverGravel: RootZone = {
  construction: 'sand-over-gravel',
  soil: 'sand',
  sandShare: 0.93,
  depth: 0.3,
  gravelDepth: 0.1,
  drainSpacing: 5,
  conductivity: 300,
};
const loam: RootZone = {
  construction: 'native-soil',
  soil: 'silt-loam',
  sandShare: 0.2,
  depth: 0.3,
  gravelDepth: 0,
  drainSpacing: 0,
  conductivity: 8,
};
const plain = { maximum: 25, minimum: 15, radiation: 20, vapourPressure: 1.5, wind: 2 };
const series = (rain: readonly number[]) =>
  seriesFrom(
    '2027-07-01',
    rain.map((mm) => ({ ...plain, rain: mm })),
  );
const demandOf = (days: number, mm: number) => new Float64Array(days).fill(mm);
const off = { kind: 'none' } as const;

describe('the profile', () => {
  it('sand over gravel drains to the hydrostatic profile with its perched water: the base is wet, the top is not', () => {
    const profile = rootZoneProfile(sandOverGravel, 'cool', values);
    const sand = retentionOf('sand', values);
    const water = drainedState(profile);
    expect(rootZoneWaterContent(profile, water)).toBeCloseTo(hydrostaticMean(sand, 0, 0.3), 4);
    expect(topWaterContent(profile, water)).toBeCloseTo(hydrostaticMean(sand, 0.225, 0.3), 4);
    const base = water[profile.layers - 1]! / profile.thickness[profile.layers - 1]!;
    expect(base).toBeGreaterThan(2.5 * topWaterContent(profile, water));
    expect(profile.thickness.reduce((sum, slab) => sum + slab, 0)).toBeCloseTo(300, 9);
    expect(profile.roots.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('loam without drains holds more at the surface than sand, and a stitched hybrid is its sand', () => {
    const sand = rootZoneProfile(sandOverGravel, 'cool', values);
    const native = rootZoneProfile(loam, 'cool', values);
    expect(topWaterContent(native, drainedState(native))).toBeGreaterThan(2 * topWaterContent(sand, drainedState(sand)));
    expect(rootZoneProfile({ ...sandOverGravel, construction: 'stitched-hybrid' }, 'cool', values)).toEqual(sand);
  });

  it('a root zone thinner than 75 mm is all top', () => {
    const thin = rootZoneProfile({ ...sandOverGravel, depth: 0.06 }, 'cool', values);
    expect(thin.layers).toBe(3);
    expect(topWaterContent(thin, drainedState(thin))).toBeCloseTo(rootZoneWaterContent(thin, drainedState(thin)), 12);
  });
});

describe('a day of water', () => {
  it('a soaked sand profile over gravel is back to its drained water in a day', () => {
    const profile = rootZoneProfile(sandOverGravel, 'cool', values);
    const water = new Float64Array([...profile.saturated, 0]);
    stepRootZone(profile, water, 0, 0, 0, 0, -1, 0, new Float64Array(flows));
    expect(rootZoneWaterContent(profile, water)).toBeCloseTo(rootZoneWaterContent(profile, drainedState(profile)), 6);
  });

  it('loam over slow subsoil ponds and lacks air after heavy rain; sand does not', () => {
    const storm = series([60, 60, 60, 0]);
    const slow = { ...values, 'water.subsoil.conductivity': 0.2 };
    const on = (zone: RootZone) => rootZoneCourse(rootZoneProfile(zone, 'cool', slow), storm, demandOf(4, 1), off);
    const native = on({ ...loam, conductivity: 2 });
    const sand = on(sandOverGravel);
    expect(native.airless[2]).toBe(1);
    expect(native.runoff[2]).toBeGreaterThan(0);
    expect([...sand.airless]).toEqual([0, 0, 0, 0]);
    expect(sand.runoff.every((mm) => mm === 0)).toBe(true);
  });

  it('after 38 mm on one day loam is wetter than drained for days, sand for a day', () => {
    const rain = series([38, 0, 0, 0]);
    const excess = (zone: RootZone, day: number) => {
      const profile = rootZoneProfile(zone, 'cool', values);
      const course = rootZoneCourse(profile, rain, demandOf(4, 0), off);
      return course.top[day]! - topWaterContent(profile, drainedState(profile));
    };
    expect(excess(loam, 0)).toBeGreaterThan(0.05);
    expect(excess(loam, 2)).toBeGreaterThan(0.01);
    expect(excess(loam, 2)).toBeLessThan(excess(loam, 0));
    expect(Math.abs(excess(sandOverGravel, 0))).toBeLessThan(0.001);
  });

  it('pipe drains under sand let free water go as the falling water table says', () => {
    const profile = rootZoneProfile({ ...sandOverGravel, gravelDepth: 0, depth: 0.6 }, 'cool', {
      ...values,
      'water.drain.depthBelow': 0,
    });
    expect(profile.base.kind).toBe('falling-table');
    if (profile.base.kind !== 'falling-table') return;
    const ground = { conductivityAbove: 7.2, conductivityBelow: 0, depthBelow: 0, radius: 0.05 };
    // Free water of 0.4 m of table; the height it has after a day, found by asking how long the fall takes.
    const drainable = Math.sqrt((4 * 7.2) / 25 / (1000 * profile.base.square));
    const left = 400 * drainable - baseOutflow(profile.base, 400 * drainable);
    expect(drainDownTime(ground, 5, drainable, 0.4, left / (1000 * drainable))).toBeCloseTo(1, 9);
  });

  it('roots take all the demand from wet soil and less and less from dry, never past wilting', () => {
    const profile = rootZoneProfile(sandOverGravel, 'cool', values);
    const course = rootZoneCourse(profile, series(new Array<number>(60).fill(0)), demandOf(60, 5), off);
    expect(course.evapotranspiration[0]).toBeCloseTo(5, 9);
    expect(course.evapotranspiration[59]).toBeLessThan(0.5);
    course.end.slice(0, profile.layers).forEach((mm, i) => expect(mm).toBeGreaterThanOrEqual(profile.residual[i]! - 1e-9));
    for (let i = 1; i < 60; i++) expect(course.rootZone[i]!).toBeLessThanOrEqual(course.rootZone[i - 1]! + 1e-12);
  });

  it('daily watering holds the set share of the plant water and stops under a covering', () => {
    const profile = rootZoneProfile(sandOverGravel, 'cool', values);
    const dry = series(new Array<number>(30).fill(0));
    const schedule = { kind: 'refill', target: 0.85, limit: 12 } as const;
    const open = rootZoneCourse(profile, dry, demandOf(30, 5), schedule);
    expect(open.irrigation[20]).toBeCloseTo(5, 1);
    expect(open.top[29]).toBeCloseTo(open.top[20]!, 3);
    const covered = rootZoneCourse(profile, dry, demandOf(30, 5), schedule, (day) =>
      day >= 10 && day < 15 ? { share: 1, rainThrough: 1, evaporation: 0.2 } : null,
    );
    expect([...covered.irrigation.slice(10, 15)]).toEqual([0, 0, 0, 0, 0]);
    expect(covered.evapotranspiration[12]).toBeCloseTo(1, 9);
    expect(covered.irrigation[15]).toBeGreaterThan(0);
  });

  it('a fixed schedule waters on its days', () => {
    const profile = rootZoneProfile(loam, 'cool', values);
    const course = rootZoneCourse(profile, series(new Array<number>(7).fill(0)), demandOf(7, 3), {
      kind: 'fixed',
      depth: 10,
      every: 3,
      first: 1,
    });
    expect([...course.irrigation]).toEqual([0, 10, 0, 0, 10, 0, 0]);
  });

  it('a covering sheds its share of rain and slows evaporation; none changes nothing', () => {
    expect(underCover(20, 4, { share: 1, rainThrough: 0.25, evaporation: 0.1 })).toEqual({
      rain: 5,
      demand: 0.3999999999999999,
      shed: 15,
    });
    expect(underCover(20, 4, { share: 0.5, rainThrough: 0, evaporation: 0 })).toEqual({ rain: 10, demand: 2, shed: 10 });
    expect(underCover(20, 4, null)).toEqual({ rain: 20, demand: 4, shed: 0 });
    expect(evaporationUnderCovering({ seal: 0, solarTransmission: 1 }, 0.2)).toBe(1);
    expect(evaporationUnderCovering({ seal: 1, solarTransmission: 0.85 }, 0.2)).toBe(0);
    expect(evaporationUnderCovering({ seal: 0.3, solarTransmission: 0.35 }, 0.2)).toBeCloseTo(0.7 * 0.48, 12);
  });

  it('states side by side in one array do not touch one another', () => {
    const profile = rootZoneProfile(sandOverGravel, 'cool', values);
    const length = profile.layers + 1;
    const water = new Float64Array(3 * length).fill(NaN);
    water.set(drainedState(profile), length);
    const out = new Float64Array(flows);
    stepRootZone(profile, water, length, 12, 4, 0, -1, 0, out);
    expect([...water.slice(0, length), ...water.slice(2 * length)].every(Number.isNaN)).toBe(true);
    expect(waterHeld(profile, water, length)).toBeCloseTo(
      waterHeld(profile, drainedState(profile)) + 12 - out[flow.evapotranspiration]! - out[flow.drainage]! - out[flow.runoff]!,
      9,
    );
    expect(lacksOxygen(profile, water, length)).toBe(false);
  });
});
