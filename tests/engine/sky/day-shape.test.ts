import { describe, expect, it } from 'vitest';
import type { DayShape } from '#engine/sky/day-shape.ts';
import { dayShape, diffuseOfDay, diffuseOfMonth, splitHours, spreadOverHours, spreadOverSteps } from '#engine/sky/day-shape.ts';

const chicago = { latitude: 41.9, longitude: -87.9, timeZone: 'America/Chicago' };
const fairbanks = { latitude: 64.8, longitude: -147.7, timeZone: 'America/Anchorage' };
const cape = { latitude: 71, longitude: 25, timeZone: 'Europe/Oslo' };
const sum = (values: ArrayLike<number>) => Array.from(values).reduce((a, b) => a + b, 0);
const shapes: DayShape[] = [
  dayShape('2027-06-21', chicago),
  dayShape('2027-12-21', chicago, 15),
  dayShape('2027-03-14', chicago),
  dayShape('2027-06-21', fairbanks),
  dayShape('2027-12-21', fairbanks),
];

describe('the shape of a day', () => {
  it('shares everything out, by step and by hour', () => {
    for (const shape of shapes) {
      for (const shares of [shape.globalByStep, shape.diffuseByStep, shape.globalByHour, shape.diffuseByHour])
        expect(sum(shares)).toBeCloseTo(1, 12);
      expect(sum(shape.extraterrestrialByHour)).toBeCloseTo(shape.extraterrestrial, 9);
    }
  });
  it('puts the light where the clock says: summer time moves noon past one', () => {
    const { globalByHour } = shapes[0]!;
    expect(globalByHour.indexOf(Math.max(...globalByHour))).toBe(12);
    expect(shapes[0]!.sun.noonClock).toBeGreaterThan(12.8);
    expect(globalByHour[4]).toBe(0);
    expect(globalByHour[5]!).toBeGreaterThan(0);
    expect(globalByHour[20]!).toBeGreaterThan(0);
    expect(globalByHour[21]).toBe(0);
  });
  it('carries light past midnight round to the first hour', () => expect(shapes[3]!.globalByHour[0]!).toBeGreaterThan(0));
  it('refuses steps longer than an hour', () => expect(() => dayShape('2027-06-21', chicago, 90)).toThrow(RangeError));
});

describe('a day of weather over its shape', () => {
  it('keeps beam and diffuse to the global sum, none below zero', () => {
    for (const shape of shapes)
      for (const k of [0, 0.02, 0.3, 0.55, 0.75, 1.1]) {
        const global = k * shape.extraterrestrial;
        const diffuse = diffuseOfDay(shape, global);
        const [beam, sky] = [new Float64Array(24), new Float64Array(24)];
        spreadOverHours(shape, global, beam, sky);
        expect(sum(beam) + sum(sky)).toBeCloseTo(global, 9);
        expect(sum(sky)).toBeCloseTo(diffuse, 9);
        expect(Math.min(...beam, ...sky)).toBeGreaterThanOrEqual(0);
        const byStep = new Float64Array(shape.sun.steps);
        expect(spreadOverSteps(shape, global, diffuse, byStep) + sum(byStep)).toBeCloseTo(global, 9);
        expect(Math.min(...byStep)).toBeGreaterThanOrEqual(0);
      }
  });
  it('has more beam on a clear day than the month’s mean says of its mean day', () => {
    const [june] = shapes;
    const global = 0.7 * june!.extraterrestrial;
    expect(diffuseOfDay(june!, global)).toBeLessThan(diffuseOfMonth(june!, global));
  });
  it('without sunrise is all diffuse', () => {
    const night = dayShape('2027-12-21', cape);
    const [beam, sky] = [new Float64Array(24), new Float64Array(24)];
    spreadOverHours(night, 0.1, beam, sky);
    expect([sum(beam), sum(sky)]).toEqual([0, 0.1]);
    expect(spreadOverSteps(night, 0.1, diffuseOfDay(night, 0.1), new Float64Array(0))).toBe(0.1);
    expect(night.extraterrestrial).toBe(0);
  });
  it('splits measured hours one by one', () => {
    const shape = shapes[0]!;
    const [beam, sky] = [new Float64Array(24), new Float64Array(24)];
    const cloudy = shape.extraterrestrialByHour.map((above) => 0.15 * above);
    splitHours(shape, cloudy, 0.065, beam, sky);
    expect(sum(beam) + sum(sky)).toBeCloseTo(sum(cloudy), 12);
    expect(sum(sky) / sum(cloudy)).toBeCloseTo(1 - 0.09 * 0.15, 3);
    const clear = shape.extraterrestrialByHour.map((above) => 0.85 * above);
    splitHours(shape, clear, 0.065, beam, sky);
    expect(sky[13]! / clear[13]!).toBeCloseTo(0.165, 12);
    splitHours(shape, new Float64Array(24).fill(0.01), 0.065, beam, sky);
    expect([beam[1], sky[1]]).toEqual([0, 0.01]);
  });
});
