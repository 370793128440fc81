import { describe, expect, it } from 'vitest';
import { costOf } from '#engine/works/cost-line.ts';
import { isInWindow, sortWindows, usualWindows, windowAt, windowWarning } from '#engine/works/seasonal-window.ts';
import { coolRoll, hotRoll, hoursInRollAllowed, judgeHoursInRoll } from '#engine/works/sod-perishing.ts';
import { trucksFor } from '#engine/works/topdressing.ts';
import { waterVolume, youngSodWaterings } from '#engine/works/young-sod-water.ts';
import { wholeNumberUp } from '#engine/works/customary-units.ts';

describe('whole numbers', () => {
  it('go up, except a hair above one', () => {
    expect(wholeNumberUp(3.0000000001)).toBe(3);
    expect(wholeNumberUp(3.001)).toBe(4);
    expect(wholeNumberUp(0)).toBe(0);
    expect(trucksFor(20_001, 20_000)).toBe(2);
    expect(() => trucksFor(1, 0)).toThrow(/payload/);
  });
});

describe('hours in the roll', () => {
  const limits = { coolHours: 48, hotHours: 12, specified: null };
  it('fall from cool to hot and never exceed the specification', () => {
    expect(hoursInRollAllowed(coolRoll, limits)).toBe(48);
    expect(hoursInRollAllowed(hotRoll, limits)).toBe(12);
    expect(hoursInRollAllowed(40, limits)).toBe(12);
    expect(hoursInRollAllowed(5, { ...limits, specified: 36 })).toBe(36);
    for (let temperature = 0; temperature < 40; temperature++) {
      expect(hoursInRollAllowed(temperature + 1, limits)).toBeLessThanOrEqual(hoursInRollAllowed(temperature, limits));
    }
  });
  it('are checked with a reason', () => {
    expect(judgeHoursInRoll(10, 32, limits)).toEqual({ allowed: 12, within: true, reason: null });
    expect(judgeHoursInRoll(20, 32, limits).reason).toBe('20.0 h from harvest to laying at 32 °C; the limit is 12.0 h');
  });
});

describe('water for young sod', () => {
  const evaporation = Array.from({ length: 30 }, () => 0.005);
  const dry = Array.from({ length: 30 }, () => 0);
  it('comes every day, often at first and rarer later, and ends after three weeks', () => {
    const waterings = youngSodWaterings(evaporation, dry, 30);
    const perDay = Array.from({ length: 30 }, (_, day) => waterings.filter((one) => one.day === day).length);
    expect(perDay.slice(0, 21).every((count) => count > 0)).toBe(true);
    expect(perDay.slice(21).every((count) => count === 0)).toBe(true);
    expect(perDay[0]).toBeGreaterThan(perDay[10]!);
    expect(perDay[10]).toBeGreaterThan(perDay[20]!);
    const depth = (day: number) => waterings.filter((one) => one.day === day).reduce((sum, one) => sum + one.depth, 0);
    expect(depth(0)).toBeCloseTo(0.012, 12);
    expect(depth(3)).toBeCloseTo(0.006, 12);
    expect(depth(20)).toBeCloseTo(0.005, 12);
    expect(waterVolume({ day: 0, hour: 6, depth: 0.003 }, 1000)).toBeCloseTo(3, 12);
  });
  it('rain takes its place, but not on the day of laying', () => {
    const wet = Array.from({ length: 30 }, () => 0.05);
    const waterings = youngSodWaterings(evaporation, wet, 30);
    expect(new Set(waterings.map((one) => one.day))).toEqual(new Set([0]));
  });
});

describe('seasonal windows', () => {
  const all = Object.values(usualWindows);
  const seeding = usualWindows['cool-season seeding'];
  const winter = usualWindows['ryegrass repeat'];
  it('cross the end of the year', () => {
    expect(isInWindow('12-24', winter)).toBe(true);
    expect(isInWindow('01-31', winter)).toBe(true);
    expect(isInWindow('02-01', winter)).toBe(false);
    expect(isInWindow('06-01', winter)).toBe(false);
  });
  it('warn with their name, and do not move the job', () => {
    expect(windowWarning('09-01', seeding)).toBeNull();
    expect(windowWarning('07-01', seeding)).toBe('outside the window "cool-season seeding", 08-15 to 09-15');
  });
  it('shift by six months south of the equator', () => {
    expect(windowAt(seeding, -33)).toMatchObject({ from: '02-15', until: '03-15' });
    expect(windowAt(usualWindows['cool-season renovation'], -33)).toMatchObject({ from: '02-01', until: '03-31' });
    expect(windowAt(winter, -33)).toMatchObject({ from: '06-01', until: '07-31' });
    expect(windowAt(seeding, 40)).toBe(seeding);
  });
  it('sort by where they begin, also from a season that starts in autumn', () => {
    expect(sortWindows(all).map((one) => one.from)).toEqual(['08-01', '08-15', '09-01', '12-01']);
    expect(sortWindows(all, '09-01').map((one) => one.from)).toEqual(['09-01', '12-01', '08-01', '08-15']);
  });
  it('refuse a day that is none', () => expect(() => isInWindow('13-01', seeding)).toThrow(/13-01/));
});

describe('cost', () => {
  // Michigan State University, Turf Line News Dec 2011: 14,400 for one inch on one field in 2011; 821.71 to overseed one in 2004.
  it('is quantity times price with the year', () => {
    expect(costOf(57.6, { price: 14.27, year: 2004 })).toEqual({ known: true, amount: 57.6 * 14.27, year: 2004 });
    expect(Math.abs(57.6 * 14.27 - 821.71)).toBeLessThan(0.3);
  });
  it('of a blank price is "no price", never zero', () => {
    expect(costOf(100, { price: null, year: null })).toEqual({ known: false, words: 'no price' });
    expect(costOf(100, { price: 0, year: 2026 })).toMatchObject({ known: true, amount: 0 });
    expect(() => costOf(-1, { price: 1, year: null })).toThrow(/quantity/);
  });
});
