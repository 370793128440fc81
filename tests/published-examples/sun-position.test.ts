import { describe, expect, it } from 'vitest';
import { wrapTo180 } from '#engine/sun/degrees.ts';
import { equationOfTime, equationOfTimeByDay } from '#engine/sun/equation-of-time.ts';
import { incidenceFromPosition } from '#engine/sun/incidence.ts';
import { julianDay, julianDayOf } from '#engine/sun/julian-day.ts';
import { dayOfYear } from '#engine/sun/local-day.ts';
import { seasons, sunPosition } from '#engine/sun/position.ts';
import { refractionFromApparent, refractionFromTrue } from '#engine/sun/refraction.ts';
import { altitude, azimuth, declinationByDay, hourAngle, solarHour } from '#engine/sun/solar-angles.ts';
import { siderealTime, solarCoordinates } from '#engine/sun/solar-coordinates.ts';
import { sunPath } from '#engine/sun/sun-path.ts';

const within = (value: number, printed: number, tolerance: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(tolerance);

/** Reda & Andreas 2004, worked example in the appendix: 17 October 2003, 12:30:30 at UTC−7. */
describe('the worked example of the Solar Position Algorithm', () => {
  const golden = { latitude: 39.742476, longitude: -105.1786, elevation: 1830.14 };
  const instant = Date.UTC(2003, 9, 17, 19, 30, 30);
  const air = { pressure: 820, temperature: 11 };
  const day = julianDayOf(instant);

  it('by the full ephemeris', () => {
    const sun = sunPosition(instant, golden, air);
    within(90 - sun.apparentAltitude, 50.11162, 2e-4);
    within(sun.azimuth, 194.34024, 2e-4);
    within(sun.altitude, 39.872046, 2e-4);
    within(sun.declination, -9.316179, 2e-4);
    within(sun.distance, 0.9965422974, 1e-4);
    within(
      incidenceFromPosition(90 - sun.apparentAltitude, sun.azimuth - 180, { slope: 30, azimuthFromSouth: -10 }),
      25.187,
      0.001,
    );
  });
  it('the refraction printed for it', () => within(refractionFromTrue(39.872046, air), 0.016332, 1e-5));
  it('the Julian day, in universal and in dynamical time', () => {
    within(day, 2452930.312847, 1e-6);
    within(day + 67 / 86400, 2452930.313623, 1e-6);
  });
  it('by the short series of the almanac', () => {
    const sun = solarCoordinates(day + 67 / 86400);
    within(sun.apparentLongitude, 204.0085519, 0.01);
    within(sun.rightAscension, 202.227408, 0.01);
    within(sun.declination, -9.31434, 0.01);
    within(sun.distance, 0.9965422974, 1e-4);
    within(siderealTime(day), 318.51191, 0.005);
    within(equationOfTime(day), 14.64, 0.02);
    const angle = wrapTo180(siderealTime(day) + golden.longitude - sun.rightAscension);
    within(angle, 11.105902, 0.02);
    within(90 - altitude(golden.latitude, sun.declination, angle), 90 - 39.872046, 0.02);
    within(azimuth(golden.latitude, sun.declination, angle), 194.34024, 0.02);
  });
  it('by the fast path, between its steps', () => {
    const path = sunPath('2003-10-17', { ...golden, timeZone: 'America/Phoenix' }, 1);
    const at = 12 * 60 + 30;
    within(path.hour[at]!, 12.5 + 30 / 3600, 1e-9);
    within(path.altitude[at]!, 39.872046, 0.02);
    within(path.azimuth[at]!, 194.34024, 0.02);
  });
  it('by the formulas of the day of the year, coarsely: the declination alone is 1.0° off on this day', () => {
    const n = dayOfYear('2003-10-17');
    const hour = solarHour(12 + 30.5 / 60, golden.longitude, -105, equationOfTimeByDay(n));
    within(90 - altitude(golden.latitude, declinationByDay(n), hourAngle(hour)), 50.11162, 1.4);
    within(azimuth(golden.latitude, declinationByDay(n), hourAngle(hour)), 194.34024, 1.4);
  });
  it('the same clock on the next day (test suite of pvlib-python)', () => {
    const sun = sunPosition(instant + 86_400_000, golden, air);
    within(sun.altitude, 39.505196, 2e-4);
    within(90 - sun.apparentAltitude, 50.47826, 2e-4);
    within(sun.azimuth, 194.311132, 3e-4);
  });
});

/** Meeus 1998, as quoted in the open library soniakeys/meeus. */
describe('Astronomical Algorithms', () => {
  it.each([
    [1957, 10, 4.81, 2436116.31],
    [2000, 1, 1.5, 2451545.0],
    [1987, 6, 19.5, 2446966.0],
    [1988, 1, 27.0, 2447187.5],
    [1900, 1, 1.0, 2415020.5],
  ])('Julian day of %i-%i-%d (example 7.a and page 62)', (year, month, day, printed) =>
    expect(julianDay(year, month, day)).toBeCloseTo(printed, 6),
  );
  it('example 25.a: the sun on 13 October 1992', () => {
    const sun = solarCoordinates(2448908.5);
    within(sun.century, -0.072183436, 1e-9);
    within(sun.trueLongitude, 199.90987, 0.001);
    within(sun.meanAnomaly, -2241.00603, 0.001);
    within(sun.eccentricity, 0.016711668, 1e-9);
    within(sun.distance, 0.99766, 1e-5);
    within(sun.apparentLongitude, 199 + 54 / 60 + 32 / 3600, 0.001);
    within(sun.rightAscension, 15 * (13 + 13 / 60 + 31.4 / 3600), 0.001);
    within(sun.declination, -(7 + 47 / 60 + 6 / 3600), 0.001);
  });
  it('example 28.b: the equation of time at the same instant', () => {
    within(equationOfTime(2448908.5) * 60, 13 * 60 + 42.7, 1);
    within((equationOfTime(2448908.5) / 4) * (Math.PI / 180), 0.0598256, 1e-5);
  });
  it('example 16.a: refraction', () => {
    within(60 * refractionFromApparent(0.5), 28.754, 0.001);
    within(60 * refractionFromTrue(33.246 / 60), 24.618, 0.001);
  });
  it('example 27.a: the solstice of June 1962', () => within(seasons(1962).june, 2437837.39245, 1 / 1440));
  const at = (year: number, month: number, day: number, h: number, m: number, s: number) =>
    julianDay(year, month, day + (h + (m + s / 60) / 60) / 24);
  it.each([
    [2000, 'march', at(2000, 3, 20, 7, 36, 19)],
    [2000, 'june', at(2000, 6, 21, 1, 48, 46)],
    [2000, 'september', at(2000, 9, 22, 17, 28, 40)],
    [2000, 'december', at(2000, 12, 21, 13, 38, 30)],
    [2005, 'march', at(2005, 3, 20, 12, 34, 29)],
    [2005, 'june', at(2005, 6, 21, 6, 47, 12)],
    [2005, 'september', at(2005, 9, 22, 22, 24, 14)],
    [2005, 'december', at(2005, 12, 21, 18, 36, 1)],
  ] as const)('table 27: %i %s', (year, season, printed) => within(seasons(year)[season], printed, 1 / 1440));
});

describe('other printed positions', () => {
  it('altitude and azimuth at 32.2 N 111 W, 10 October 2014 08:30 MST (US Naval Observatory)', () => {
    const sun = sunPosition(Date.UTC(2014, 9, 10, 15, 30), { latitude: 32.2, longitude: -111 });
    within(sun.altitude, 24.7, 0.15);
    within(sun.azimuth, 116.3, 0.15);
  });
  it.each([
    [Date.UTC(2015, 0, 2, 7), 0.983289205],
    [Date.UTC(2015, 7, 2, 7), 1.014861464],
  ])('distance of the sun at %i (Solar Position Algorithm, in the tests of pvlib-python)', (instant, printed) => {
    within(solarCoordinates(julianDayOf(instant)).distance, printed, 1e-4);
    within(sunPosition(instant, { latitude: 39.742476, longitude: -105.1786 }).distance, printed, 1e-4);
  });
});
