/** Laws of generated weather on random climates and places. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import type { Climate } from '#shared/vocabulary/venue.ts';
import { extraterrestrialRadiation } from '#engine/weather/daily-radiation.ts';
import { generatedWeather } from '#engine/weather/generated-weather.ts';
import { meanSaturationVapourPressure } from '#engine/weather/humidity.ts';
import { normalSeasonOf } from '#engine/weather/normal-season.ts';
import { quantities, type WeatherSeries } from '#engine/weather/weather-day.ts';
import { weatherModel } from '#engine/weather/weather-model.ts';

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;

const number = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const twelve = (low: number, high: number) => fc.array(number(low, high), { minLength: 12, maxLength: 12 });
const climates: fc.Arbitrary<Climate> = fc
  .record({
    minimum: twelve(-35, 25),
    range: twelve(0, 18),
    rain: fc.array(fc.oneof(fc.constant(0), number(0.1, 300)), { minLength: 12, maxLength: 12 }),
    wetDays: twelve(0, 28),
    radiation: fc.option(twelve(0, 30)),
    humidity: fc.option(twelve(0.1, 1)),
    wind: fc.option(twelve(0, 9)),
  })
  .map(({ range, ...climate }) => ({
    ...climate,
    origin: 'invented for a law',
    maximum: climate.minimum.map((low, month) => low + range[month]!),
  }));
const places = fc.record({ latitude: number(-66, 66), elevation: number(0, 3000) });

const holds = (series: WeatherSeries, latitude: number) => {
  for (let i = 0; i < series.days; i++) {
    for (const quantity of quantities) expect(Number.isFinite(series[quantity][i]!)).toBe(true);
    expect(series.minimum[i]!).toBeLessThanOrEqual(series.maximum[i]!);
    expect(series.rain[i]!).toBeGreaterThanOrEqual(0);
    expect(series.radiation[i]!).toBeGreaterThanOrEqual(0);
    // The table of a common year is read one day late after a leap day.
    const day = Math.min(365, series.dayOfYear[i]!);
    expect(series.radiation[i]!).toBeLessThanOrEqual(0.8 * extraterrestrialRadiation(latitude, day) * 1.03 + 0.2);
    expect(series.vapourPressure[i]!).toBeGreaterThan(0);
    expect(series.vapourPressure[i]!).toBeLessThanOrEqual(
      meanSaturationVapourPressure(series.maximum[i]!, series.minimum[i]!) + 1e-12,
    );
    expect(series.wind[i]!).toBeGreaterThan(0);
  }
};

describe('generated and normal weather', () => {
  it('keep their limits in any climate', () => {
    fc.assert(
      fc.property(climates, places, fc.integer(), (climate, place, seed) => {
        const model = weatherModel(climate, place, values);
        holds(generatedWeather(model, '2027-01-01', 365, seed), place.latitude);
        holds(normalSeasonOf(model, '2027-01-01', 365), place.latitude);
      }),
      { numRuns: 25 },
    );
  });

  it('radiation never passes 0.8 of what reaches the outside of the atmosphere in a common year', () => {
    fc.assert(
      fc.property(climates, places, fc.integer(), (climate, place, seed) => {
        const year = generatedWeather(weatherModel(climate, place, values), '2027-01-01', 365, seed);
        for (let i = 0; i < 365; i++) {
          expect(year.radiation[i]!).toBeLessThanOrEqual(0.8 * extraterrestrialRadiation(place.latitude, i + 1) + 1e-12);
        }
      }),
      { numRuns: 15 },
    );
  });

  it('same seed and member, same bytes; another member, another season', () => {
    fc.assert(
      fc.property(climates, places, fc.integer(), fc.integer({ min: 0, max: 400 }), (climate, place, seed, member) => {
        const model = weatherModel(climate, place, values);
        const first = generatedWeather(model, '2028-02-20', 60, seed, member);
        expect(generatedWeather(model, '2028-02-20', 60, seed, member)).toEqual(first);
        expect([...generatedWeather(model, '2028-02-20', 60, seed, member + 1).maximum]).not.toEqual([...first.maximum]);
      }),
      { numRuns: 20 },
    );
  });

  it('a longer season begins with the shorter one', () => {
    fc.assert(
      fc.property(climates, places, fc.integer(), (climate, place, seed) => {
        const model = weatherModel(climate, place, values);
        const long = generatedWeather(model, '2027-04-20', 90, seed, 3);
        const short = generatedWeather(model, '2027-04-20', 30, seed, 3);
        for (const quantity of quantities) expect([...short[quantity]]).toEqual([...long[quantity].slice(0, 30)]);
      }),
      { numRuns: 10 },
    );
  });

  it('more rain in the table at the same wet days never makes a day drier', () => {
    fc.assert(
      fc.property(climates, places, fc.integer(), number(1, 3), (climate, place, seed, factor) => {
        // Above the rule for small rain, where shape and scale both change, the ordering holds for the total only.
        const less = generatedWeather(weatherModel(climate, place, values), '2027-01-01', 365, seed);
        const more = generatedWeather(
          weatherModel({ ...climate, rain: climate.rain.map((mm) => mm * factor) }, place, values),
          '2027-01-01',
          365,
          seed,
        );
        let [sum, wetter] = [0, 0];
        for (let i = 0; i < 365; i++) {
          expect(more.rain[i]! > 0).toBe(less.rain[i]! > 0);
          sum += less.rain[i]!;
          wetter += more.rain[i]!;
        }
        expect(wetter).toBeGreaterThanOrEqual(sum * 0.999);
      }),
      { numRuns: 20 },
    );
  });
});
