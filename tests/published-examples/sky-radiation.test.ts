import { describe, expect, it } from 'vitest';
import { airMass, clearSkyByAltitude, clearSkyByTurbidity, haurwitzConstants, noonAltitude } from '#engine/sky/clear-sky.ts';
import {
  clearnessIndex,
  diffuseShareOfDay,
  diffuseShareOfDayCollaresPereiraRabl,
  diffuseShareOfHour,
  diffuseShareOfMonth,
} from '#engine/sky/diffuse-fraction.ts';
import {
  averageDays,
  dailyExtraterrestrial,
  extraterrestrialBetween,
  normalExtraterrestrial,
  normalExtraterrestrialSimple,
} from '#engine/sky/extraterrestrial.ts';
import { diffuseShareInHour, globalShareInHour, shareOut } from '#engine/sky/hour-from-day.ts';
import { splitHour } from '#engine/sky/split-hour.ts';
import { groundOnSlope, skyOnSlope } from '#engine/sky/tilted-surface.ts';
import { declinationByDay, sunsetHourAngle } from '#engine/sun/solar-angles.ts';

const within = (value: number, printed: number, tolerance: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(tolerance);
const share = (value: number, printed: number, part: number) => within(value, printed, part * Math.abs(printed));
const gsc = 1367;

describe('above the air', () => {
  it('normal irradiance on 1 January and at the June solstice (Duffie & Beckman 1.4)', () => {
    within(normalExtraterrestrial(1, gsc), 1415, 1);
    within(normalExtraterrestrial(171, gsc), 1322, 1);
    within(normalExtraterrestrial(1, gsc), 1414.9, 0.1);
    within(normalExtraterrestrial(171, gsc), 1322.7, 0.1);
    within(normalExtraterrestrialSimple(1, gsc), 1412.1, 0.1);
    within(normalExtraterrestrialSimple(171, gsc), 1322.8, 0.1);
  });
  const above = (latitude: number, n: number) =>
    dailyExtraterrestrial(latitude, declinationByDay(n), normalExtraterrestrialSimple(n, gsc));
  it('inputs of examples 1.10.1 and 1.10.2: 43 N, 15 April (derived)', () => {
    within(sunsetHourAngle(43, declinationByDay(105)), 98.9, 0.05);
    share(above(43, 105), 33.775, 0.01);
    const hour = extraterrestrialBetween(43, declinationByDay(105), -30, -15, normalExtraterrestrialSimple(105, gsc));
    share(hour, 3.79, 0.01);
  });
  it('is nothing in polar night', () => {
    expect(above(68, 1)).toBe(0);
    expect(above(80, 55)).toBe(0);
  });
  it('hours of a day add to the day', () => {
    for (const [latitude, n] of [
      [43, 105],
      [-60, 172],
      [66, 172],
      [0, 80],
    ] as const) {
      const normal = normalExtraterrestrialSimple(n, gsc);
      let sum = 0;
      for (let h = -12; h < 12; h++) sum += extraterrestrialBetween(latitude, declinationByDay(n), 15 * h, 15 * h + 15, normal);
      expect(sum).toBeCloseTo(above(latitude, n), 9);
    }
  });
  it('clearness by month at San Francisco airport (EnergyPlus auxiliary manual, TMY3; derived with average days)', () => {
    const global = [2136, 3160, 4402, 5672, 6419, 7148, 7129, 6401, 5460, 3761, 2530, 2127];
    const printed = [0.461, 0.52, 0.556, 0.579, 0.58, 0.617, 0.631, 0.624, 0.636, 0.569, 0.51, 0.503];
    averageDays.forEach((n, month) =>
      within(clearnessIndex(global[month]! * 0.0036, above(37 + 37 / 60, n)), printed[month]!, 0.002),
    );
  });
});

/** Inputs printed in Duffie & Beckman chapter 2; results derived from the formulas. */
describe('textbook examples of the split', () => {
  it('2.11.1: St Louis, 3 September, 23.0 MJ', () => {
    const n = 246;
    const declination = declinationByDay(n);
    const above = dailyExtraterrestrial(38.6, declination, normalExtraterrestrialSimple(n, gsc));
    share(above, 33.25, 0.01);
    const k = clearnessIndex(23, above);
    within(k, 0.692, 0.005);
    const diffuse = diffuseShareOfDay(k, sunsetHourAngle(38.6, declination));
    share(diffuse, 0.253, 0.05);
    share(diffuse * 23, 5.8, 0.05);
  });
  it('2.12.1: Madison, June, 23.0 MJ', () => {
    const declination = declinationByDay(162);
    const above = dailyExtraterrestrial(43, declination, normalExtraterrestrialSimple(162, gsc));
    share(above, 41.78, 0.01);
    within(clearnessIndex(23, above), 0.551, 0.005);
    share(diffuseShareOfMonth(23 / above, sunsetHourAngle(43, declination)), 0.38, 0.05);
  });
  it('2.13.2: Madison, 23 August, 31.4 MJ, 13 to 14 h', () => {
    const declination = declinationByDay(235);
    within(declination, 11.05, 0.15);
    const set = sunsetHourAngle(43, declination);
    within(set, 100.5, 0.15);
    share(globalShareInHour(22.5, set), 0.1177, 0.01);
    share(31.4 * globalShareInHour(22.5, set), 3.7, 0.01);
  });
  it('2.13.3: Madison, June, 23.0 MJ, 10 to 11 h and 13 to 14 h', () => {
    const declination = declinationByDay(162);
    const set = sunsetHourAngle(43, declination);
    const above = dailyExtraterrestrial(43, declination, normalExtraterrestrialSimple(162, gsc));
    const day = 23 * diffuseShareOfMonth(23 / above, set);
    for (const angle of [-22.5, 22.5]) {
      share(globalShareInHour(angle, set), 0.1085, 0.01);
      share(diffuseShareInHour(angle, set), 0.1015, 0.01);
      const [global, diffuse] = [23 * globalShareInHour(angle, set), day * diffuseShareInHour(angle, set)];
      share(global, 2.49, 0.01);
      within(diffuse, 0.89, 0.01);
      within(global - diffuse, 1.6, 0.02);
    }
  });
});

/** Erbs, Klein & Duffie 1982; values by arithmetic from the printed polynomials. */
describe('diffuse share', () => {
  it.each([
    [0.1, 0.991],
    [0.22, 0.9802],
    [0.3, 0.9486],
    [0.4, 0.84],
    [0.5, 0.6591],
    [0.6, 0.4395],
    [0.7, 0.244],
    [0.8, 0.1653],
  ])('of an hour at k %d', (k, printed) => within(diffuseShareOfHour(k), printed, 1e-4));
  it('of an hour runs on at its seams', () => {
    within(diffuseShareOfHour(0.22), diffuseShareOfHour(0.22 + 1e-9), 0.002);
    within(diffuseShareOfHour(0.8), diffuseShareOfHour(0.8 + 1e-9), 0.002);
    expect(diffuseShareOfHour(0.9)).toBe(0.165);
  });
  it.each([
    [0.3, 0.892, 0.8778],
    [0.5, 0.5688, 0.6083],
    [0.7, 0.1641, 0.2357],
  ])('of a day at K %d', (k, winter, other) => {
    within(diffuseShareOfDay(k, 80), winter, 1e-4);
    within(diffuseShareOfDay(k, 81.4), winter, 1e-4);
    within(diffuseShareOfDay(k, 90), other, 1e-4);
  });
  it('of a very clear day is level', () => {
    expect(diffuseShareOfDay(0.715, 80)).toBe(0.143);
    expect(diffuseShareOfDay(0.722, 90)).toBe(0.175);
  });
  it.each([
    [0.4, 0.5005, 0.534],
    [0.5, 0.3911, 0.4291],
    [0.6, 0.3014, 0.3382],
  ])('of a month at K %d', (k, winter, other) => {
    within(diffuseShareOfMonth(k, 80), winter, 1e-4);
    within(diffuseShareOfMonth(k, 90), other, 1e-4);
  });
  it('of a month is taken at the nearer limit outside 0.3 to 0.8', () => {
    expect(diffuseShareOfMonth(0.2, 90)).toBe(diffuseShareOfMonth(0.3, 90));
    expect(diffuseShareOfMonth(0.95, 70)).toBe(diffuseShareOfMonth(0.8, 70));
  });
  it.each([
    [0.3, 0.887],
    [0.5, 0.603],
    [0.7, 0.257],
  ])('of a day after Collares-Pereira & Rabl at K %d (derived)', (k, value) =>
    within(diffuseShareOfDayCollaresPereiraRabl(k), value, 0.001),
  );
  it('against the months of San Francisco airport (EnergyPlus auxiliary manual)', () => {
    const global = [2136, 3160, 4402, 5672, 6419, 7148, 7129, 6401, 5460, 3761, 2530, 2127];
    const diffuse = [1127, 1300, 1763, 2344, 2335, 2247, 2148, 1998, 1643, 1610, 1252, 912];
    const near = [0.12, 0.12, 0.12, 0.06, 0.02, 0.02, 0.02, 0.02, 0.02, 0.12, 0.12, 0.12];
    averageDays.forEach((n, month) => {
      const declination = declinationByDay(n);
      const k = (global[month]! * 0.0036) / dailyExtraterrestrial(37.617, declination, normalExtraterrestrialSimple(n, gsc));
      within(diffuseShareOfMonth(k, sunsetHourAngle(37.617, declination)), diffuse[month]! / global[month]!, near[month]!);
    });
  });
  it.each([
    [1, 1000, 10, 0.7181, 217.9, 794.2],
    [171, 1000, 10, 0.7682, 170.8, 842.0],
    [1, 50, 85, 0.4057, 41.6, 96.7],
  ])(
    'the whole chain of an hour, day %i, %i W/m² at zenith %i (test suite of pvlib-python)',
    (n, global, zenith, kt, dhi, dni) => {
      const split = splitHour(global, zenith, normalExtraterrestrial(n, 1366.1), 0.065);
      within(split.clearness, kt, 0.001);
      within(split.diffuse, dhi, 2);
      within(split.beamNormal, dni, 2);
    },
  );
});

describe('hour from day', () => {
  const sums = (set: number, form: typeof globalShareInHour) => {
    let sum = 0;
    for (let h = 0; h < 24; h++) sum += form(15 * (h - 11.5), set);
    return sum;
  };
  it('raw sums are near 1 and exact after sharing out', () => {
    for (let set = 60; set <= 120; set++) {
      within(sums(set, globalShareInHour), 1, 0.015);
      within(sums(set, diffuseShareInHour), 1, 0.015);
      for (const form of [globalShareInHour, diffuseShareInHour]) {
        const shares = shareOut(Float64Array.from({ length: 24 }, (_, h) => form(15 * (h - 11.5), set)));
        within(
          shares.reduce((a, b) => a + b, 0),
          1,
          1e-9,
        );
      }
    }
    within(sums(113.4, globalShareInHour), 1.0016, 1e-4);
    within(sums(113.4, diffuseShareInHour), 0.998, 1e-4);
  });
});

describe('clear sky', () => {
  /** Design data of San Francisco airport at noon on the 21st (EnergyPlus auxiliary manual, after the 2009 handbook). */
  it.each([
    [21, 0.316, 2.608, 879, 79],
    [52, 0.326, 2.528, 910, 93],
    [80, 0.334, 2.525, 933, 100],
    [294, 0.335, 2.545, 887, 90],
    [325, 0.32, 2.611, 866, 78],
    [355, 0.318, 2.538, 846, 80],
  ])('by turbidity on day %i', (n, beam, diffuse, normal, level) => {
    const high = noonAltitude(37 + 37 / 60, declinationByDay(n));
    const sky = clearSkyByTurbidity(n, high, { beam, diffuse }, gsc);
    within(sky.beamNormal, normal, 1);
    within(sky.diffuse, level, 1);
    expect(sky.global).toBeCloseTo(sky.beamNormal * Math.sin((high * Math.PI) / 180) + sky.diffuse, 9);
  });
  it('gives nothing at night', () => {
    expect(clearSkyByTurbidity(100, -1, { beam: 0.3, diffuse: 2.5 }, gsc)).toEqual({ beamNormal: 0, diffuse: 0, global: 0 });
    expect(clearSkyByAltitude(-1)).toBe(0);
    expect(airMass(90)).toBeCloseTo(1, 3);
  });
  it.each([
    [5, 48.63],
    [10, 135.742],
    [30, 487.894],
    [50, 778.767],
    [90, 1035.092],
  ])('by altitude %i, constant 0.059 (Haurwitz, test suite of pvlib-python)', (high, printed) =>
    within(clearSkyByAltitude(high), printed, 0.01),
  );
  it.each([
    [5, 49.76],
    [10, 137.31],
    [30, 489.85],
    [50, 780.8],
    [90, 1037.16],
  ])('by altitude %i, constant 0.057 (derived)', (high, value) =>
    within(clearSkyByAltitude(high, haurwitzConstants.variant), value, 0.01),
  );
});

describe('tilted surfaces', () => {
  it('ground-reflected light at 45° (test suite of pvlib-python)', () => within(groundOnSlope(1000, 0.2, 45), 29.29, 0.005));
  it('level and upright', () => {
    expect(skyOnSlope(100, 0)).toBe(100);
    expect(skyOnSlope(100, 90)).toBeCloseTo(50, 9);
    expect(groundOnSlope(1000, 0.2, 0)).toBe(0);
  });
});
