import { describe, expect, it } from 'vitest';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import { saturationVapourPressure } from '#engine/weather/humidity.ts';
import { hourlyShape } from '#engine/weather/hourly-shape.ts';
import { hoursOf, temperatureAt } from '#engine/weather/hours-of-day.ts';

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;
const shape = hourlyShape(values);
const day = {
  maximum: 29,
  minimum: 18,
  rain: 12,
  vapourPressure: 2.2,
  wind: 2,
  maximumBefore: 27,
  minimumBefore: 16,
  minimumAfter: 15,
};
const sun = { solarNoon: 12.9, dayLength: 15 };

describe('hours of a day', () => {
  it('meet the extremes at their times and lie between them by day', () => {
    expect(temperatureAt(day, sun, shape, 12.9 - 7.5 - 0.17)).toBeCloseTo(18, 9);
    expect(temperatureAt(day, sun, shape, 12.9 + 1.86)).toBeCloseTo(29, 9);
    const { temperature } = hoursOf(day, sun, shape);
    expect(Math.max(...temperature)).toBeLessThanOrEqual(29);
    expect(Math.max(...temperature)).toBeGreaterThan(28.7);
    expect(Math.min(...temperature)).toBeGreaterThanOrEqual(15);
  });

  it('join at sunrise, at sunset and at midnight with the next day', () => {
    for (const edge of [12.9 - 7.67, 12.9 + 7.5]) {
      const [before, after] = [temperatureAt(day, sun, shape, edge - 1e-7), temperatureAt(day, sun, shape, edge + 1e-7)];
      expect(Math.abs(before - after)).toBeLessThan(1e-4);
    }
    const next = { ...day, maximum: 24, minimum: 15, maximumBefore: 29, minimumBefore: 18, minimumAfter: 14 };
    expect(temperatureAt(day, sun, shape, 24)).toBeCloseTo(temperatureAt(next, sun, shape, 0), 9);
  });

  it('keep the mean wind, the rain of the day, and air no wetter than saturated', () => {
    const hours = hoursOf({ ...day, vapourPressure: 3 }, sun, shape);
    expect(hours.wind.reduce((sum, wind) => sum + wind, 0) / 24).toBeCloseTo(2, 12);
    expect(hours.wind[13]! / hours.wind[1]!).toBeCloseTo(2, 12);
    expect(hours.rain.reduce((sum, rain) => sum + rain, 0)).toBeCloseTo(12, 12);
    // 12 mm at 2.5 mm/h are 5 h around 16 h.
    expect([...hours.rain].filter((rain) => rain > 0)).toHaveLength(5);
    expect(hours.rain[16]).toBeCloseTo(2.4, 12);
    hours.vapourPressure.forEach((pressure, hour) =>
      expect(pressure).toBeLessThanOrEqual(saturationVapourPressure(hours.temperature[hour]!)),
    );
  });

  it('hold at polar day and night, and with the sun noon shifted by the clock', () => {
    for (const dayLength of [0, 2, 12, 24]) {
      const hours = hoursOf(day, { solarNoon: 13.5, dayLength }, shape);
      expect(hours.temperature.every((value) => value >= 15 - 1e-9 && value <= 29 + 1e-9)).toBe(true);
      expect(hours.wind.reduce((sum, wind) => sum + wind, 0) / 24).toBeCloseTo(2, 12);
    }
  });
});
