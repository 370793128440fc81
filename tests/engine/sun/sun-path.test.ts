import { describe, expect, it } from 'vitest';
import { instantOf, localClock, localDayBounds, clockAheadAtNoon, dayOfYear } from '#engine/sun/local-day.ts';
import { sunPosition } from '#engine/sun/position.ts';
import { solarDay } from '#engine/sun/solar-day.ts';
import { sunPath } from '#engine/sun/sun-path.ts';
import { sunDay } from '#engine/sun/day-events.ts';
import { cosOf } from '#engine/sun/degrees.ts';

const chicago = { latitude: 41.9, longitude: -87.9, timeZone: 'America/Chicago' };
const sydney = { latitude: -33.9, longitude: 151.2, timeZone: 'Australia/Sydney' };
const singapore = { latitude: 1.3, longitude: 103.8, timeZone: 'Asia/Singapore' };
const fairbanks = { latitude: 64.8, longitude: -147.7, timeZone: 'America/Anchorage' };
const places = [chicago, sydney, singapore, fairbanks];

describe('the local day', () => {
  it('has 23, 24 and 25 hours', () => {
    const hours = (date: string) => {
      const { start, end } = localDayBounds(date, chicago.timeZone);
      return (end - start) / 3_600_000;
    };
    expect([hours('2027-03-14'), hours('2027-07-17'), hours('2027-11-07')]).toEqual([23, 24, 25]);
  });
  it('goes to an instant and back', () => {
    const instant = instantOf('2027-07-17', 19.5, chicago.timeZone);
    expect(instant).toBe(Date.UTC(2027, 6, 18, 0, 30));
    expect(localClock(instant, chicago.timeZone)).toEqual({ date: '2027-07-17', hour: 19.5 });
    expect(clockAheadAtNoon('2027-07-17', chicago.timeZone)).toBe(-5);
    expect(clockAheadAtNoon('2027-01-17', 'Asia/Kolkata')).toBe(5.5);
  });
  it('knows its place in the year', () => {
    expect([dayOfYear('2027-01-01'), dayOfYear('2027-12-31'), dayOfYear('2028-12-31')]).toEqual([1, 365, 366]);
  });
});

describe('the fast path', () => {
  it.each(['1990-03-20', '2027-06-21', '2027-09-23', '2031-12-05', '2099-02-14'])(
    'keeps within 0.05° of the ephemeris on %s',
    (date) => {
      for (const place of places) {
        const path = sunPath(date, place, 15);
        expect(path.steps).toBe(96);
        const noon = instantOf(date, 12, place.timeZone);
        for (let i = 0; i < path.steps; i += 3) {
          const sun = sunPosition(noon + (path.hour[i]! - 12) * 3_600_000, place);
          expect(Math.abs(sun.altitude - path.altitude[i]!)).toBeLessThan(0.05);
          const across = (((sun.azimuth - path.azimuth[i]! + 540) % 360) - 180) * cosOf(sun.altitude);
          expect(Math.abs(across)).toBeLessThan(0.05);
        }
      }
    },
  );
  it('refuses steps that do not fill the day', () => expect(() => sunPath('2027-06-21', chicago, 7)).toThrow(RangeError));
});

describe('the day about solar noon', () => {
  it.each(['2027-03-20', '2027-06-21', '2027-10-09', '2027-12-21'])(
    'mirrors its morning and follows the true sun on %s',
    (date) => {
      for (const place of places) {
        const day = solarDay(date, place, 10);
        const noon = instantOf(date, 12, place.timeZone);
        expect(day.steps % 2).toBe(0);
        expect(day.stepHours).toBeLessThanOrEqual(1 / 6 + 1e-9);
        for (let i = 0; i < day.steps / 2; i++) {
          const other = day.steps - 1 - i;
          expect(day.tanAltitude[i]).toBe(day.tanAltitude[other]);
          expect(day.hourAngle[i]).toBe(-day.hourAngle[other]!);
          expect(day.azimuth[i]! + day.azimuth[other]!).toBeCloseTo(360, 9);
          const sun = sunPosition(noon + (day.noonClock + day.hourAngle[i]! / 15 - 12) * 3_600_000, place);
          expect(Math.abs(Math.atan(day.tanAltitude[i]!) * (180 / Math.PI) - sun.altitude)).toBeLessThan(0.25);
        }
      }
    },
  );
  it('has its noon when the sun crosses the meridian', () => {
    for (const place of places) {
      const transit = localClock(sunDay('2027-05-05', place).transit, place.timeZone).hour;
      expect(Math.abs(solarDay('2027-05-05', place).noonClock - transit)).toBeLessThan(10 / 3600);
    }
  });
  it('has no steps in polar night and goes round in polar day', () => {
    const cape = { latitude: 71, longitude: 25, timeZone: 'Europe/Oslo' };
    expect(solarDay('2027-12-21', cape).steps).toBe(0);
    expect(solarDay('2027-06-21', cape, 10).steps).toBe(144);
  });
  it('refuses a step of no length', () => expect(() => solarDay('2027-06-21', chicago, 0)).toThrow(RangeError));
});
