import { describe, expect, it } from 'vitest';
import { sunDay } from '#engine/sun/day-events.ts';
import { localClock } from '#engine/sun/local-day.ts';
import { sunPosition } from '#engine/sun/position.ts';

/** Seconds after local midnight. */
const clock = (text: string): number => {
  const [h, m, s = 0] = text.split(':').map(Number) as [number, number, number?];
  return h * 3600 + m * 60 + s;
};
const secondsOf = (instant: number | null, zone: string): number => 3600 * localClock(instant ?? NaN, zone).hour;
const within = (value: number, printed: number, tolerance: number) =>
  expect(Math.abs(value - printed), `${value} s against ${printed} s`).toBeLessThanOrEqual(tolerance);

const greenwich = { latitude: 35, longitude: 0, timeZone: 'UTC' };
// Phoenix keeps mountain standard time all year, the clock of the printed tables.
const golden = { latitude: 39.742476, longitude: -105.1786, timeZone: 'America/Phoenix' };
const prairie = { latitude: 39, longitude: -105, timeZone: 'America/Phoenix' };
const beijing = { latitude: 39.917, longitude: 116.383, timeZone: 'Asia/Shanghai' };
const chicago = { latitude: 41.995, longitude: -87.934, timeZone: 'America/Chicago' };

/**
 * Reda & Andreas 2004 (comparison with the Astronomical Almanac); NREL calculator and US Naval Observatory tables as quoted
 * in the tests of pvlib-python; US National Weather Service daily climate report. Tolerance 1 min.
 */
describe('printed rise and set', () => {
  it.each([
    ['35 N 0 E, almanac', greenwich, '1994-01-02', '07:08:12', '16:59:55'],
    ['Golden, NREL', golden, '2015-01-02', '07:21:55', '16:47:43'],
    ['Golden, USNO', golden, '2015-01-01', '07:22', '16:47'],
    ['Golden, USNO', golden, '2015-01-02', '07:22', '16:48'],
    ['Golden, USNO', golden, '2015-01-03', '07:22', '16:49'],
    ['Golden, USNO', golden, '2015-08-02', '05:00', '19:13'],
    ['39 N 105 W, USNO', prairie, '2015-01-02', '07:19', '16:49'],
    ['39 N 105 W, USNO', prairie, '2015-04-02', '05:43', '18:24'],
    ['39 N 105 W, USNO', prairie, '2015-08-02', '05:01', '19:10'],
    ['39 N 105 W, USNO', prairie, '2015-12-02', '07:01', '16:38'],
    ['Beijing, USNO', beijing, '2015-01-02', '07:36', '17:00'],
    ['Beijing, USNO', beijing, '2015-04-02', '05:58', '18:39'],
    ['Beijing, USNO', beijing, '2015-08-02', '05:13', '19:28'],
    ['Beijing, USNO', beijing, '2015-12-02', '07:17', '16:50'],
    ['Chicago O’Hare, NWS', chicago, '2024-01-23', '07:13', '16:55'],
  ] as const)('%s (%o) on %s', (_who, place, date, rise, set) => {
    const day = sunDay(date, place);
    within(secondsOf(day.rise, place.timeZone), clock(rise), 60);
    within(secondsOf(day.set, place.timeZone), clock(set), 60);
    expect(localClock(day.rise!, place.timeZone).date).toBe(date);
    expect(localClock(day.set!, place.timeZone).date).toBe(date);
    expect(day.dayLength).toBeCloseTo((day.set! - day.rise!) / 3_600_000, 6);
  });
  it.each([
    ['2015-01-02', '12:04:45'],
    ['2015-08-02', '12:06:58'],
  ])('transit at Golden on %s (NREL)', (date, printed) =>
    within(secondsOf(sunDay(date, golden).transit, golden.timeZone), clock(printed), 5),
  );
  it('rise at Golden on 2 August 2015 (NREL)', () =>
    within(secondsOf(sunDay('2015-08-02', golden).rise, golden.timeZone), clock('05:00:27'), 5));
  it('rise in the worked example of the Solar Position Algorithm', () =>
    within(secondsOf(sunDay('2003-10-17', golden).rise, golden.timeZone), clock('06:12:43'), 5));
  it('the set that belongs to the local day, not to the UTC day (17:20:19 is that of the evening before)', () => {
    within(secondsOf(sunDay('2003-10-17', golden).set, golden.timeZone), clock('17:18:51'), 5);
    within(secondsOf(sunDay('2003-10-16', golden).set, golden.timeZone), clock('17:20:18.6'), 5);
  });
});

describe('the day about its noon', () => {
  it.each([
    ['north', chicago, '2027-07-17', 180],
    ['south', { latitude: -33.9, longitude: 151.2, timeZone: 'Australia/Sydney' }, '2027-07-17', 0],
  ] as const)(
    'in the %s the sun crosses the meridian at transit, rise and set lie even about it',
    (_side, place, date, azimuth) => {
      const day = sunDay(date, place);
      const away = sunPosition(day.transit, place).azimuth - azimuth;
      expect(Math.abs(((away + 540) % 360) - 180)).toBeLessThan(0.05);
      expect(Math.abs(day.set! + day.rise! - 2 * day.transit) / 2).toBeLessThan(60_000);
    },
  );
  it('of 23 and of 25 hours keeps its daylight', () => {
    const [spring, before] = [sunDay('2027-03-14', chicago), sunDay('2027-03-13', chicago)];
    expect(spring.dayLength - before.dayLength).toBeCloseTo(2.8 / 60, 1);
    expect(secondsOf(spring.rise, chicago.timeZone) - secondsOf(before.rise, chicago.timeZone)).toBeGreaterThan(3400);
    expect(sunDay('2027-11-07', chicago).kind).toBe('rises and sets');
  });
  it('has neither rise nor set in polar day and polar night', () => {
    const cape = { latitude: 70, longitude: 25, timeZone: 'Europe/Oslo' };
    expect(sunDay('2027-06-21', cape)).toMatchObject({ rise: null, set: null, kind: 'up all day', dayLength: 24 });
    expect(sunDay('2027-12-21', cape)).toMatchObject({ rise: null, set: null, kind: 'down all day', dayLength: 0 });
  });
  it('counts both bits of light where the sun sets after midnight', () => {
    const north = { latitude: 64.84, longitude: -147.72, timeZone: 'America/Anchorage' };
    const day = sunDay('2027-06-21', north);
    expect(day.kind).toBe('rises and sets');
    expect(day.set!).toBeLessThan(day.rise!);
    expect(day.dayLength).toBeGreaterThan(21.5);
    expect(day.dayLength).toBeLessThan(22.1);
  });
});
