import { describe, expect, it } from 'vitest';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import { daysBeforeMonth, monthLengths } from '#engine/weather/calendar-day.ts';
import { centreForMean, clampedMean, normalProbability } from '#engine/weather/clamped-normal.ts';
import { extraterrestrialRadiation } from '#engine/weather/daily-radiation.ts';
import { meanSaturationVapourPressure, saturationVapourPressure } from '#engine/weather/humidity.ts';
import { generatedWeather } from '#engine/weather/generated-weather.ts';
import { normalSeason, normalSeasonOf } from '#engine/weather/normal-season.ts';
import { seasonCurve } from '#engine/weather/season-curve.ts';
import { weatherModel } from '#engine/weather/weather-model.ts';
import { celsius, chicago, climateOf, newYork } from '#tests/fixtures/climates.ts';

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;
const meanOf = (all: ArrayLike<number>, from: number, to: number) => {
  let sum = 0;
  for (let i = from; i < to; i++) sum += all[i]!;
  return sum / (to - from);
};
const humidity = newYork.humidityPercent.map((percent) => percent / 100);
// Printed sunshine through the Ångström rule, as the climate-normals check has it.
const radiation = [7.6, 10.5, 14.4, 18.4, 21.2, 22.4, 22.2, 20.6, 16.1, 12.2, 8.0, 6.4];
const climate = climateOf(newYork, { humidity, radiation });

describe('the course through the year', () => {
  it('keeps every monthly mean exactly and has no step at a month or at the new year', () => {
    const means = chicago.maximumF.map(celsius);
    const curve = seasonCurve(means);
    means.forEach((mean, month) =>
      expect(meanOf(curve, daysBeforeMonth[month]!, daysBeforeMonth[month + 1]!)).toBeCloseTo(mean, 10),
    );
    for (let day = 0; day < 365; day++) expect(Math.abs(curve[(day + 1) % 365]! - curve[day]!)).toBeLessThan(0.6);
  });

  it('is flat for twelve equal months and refuses eleven', () => {
    for (const value of seasonCurve(new Array<number>(12).fill(7))) expect(value).toBeCloseTo(7, 12);
    expect(() => seasonCurve([1, 2, 3])).toThrow(RangeError);
  });
});

describe('clamped draws', () => {
  it('know the normal distribution (tabulated quantiles)', () => {
    expect(normalProbability(0)).toBe(0.5);
    expect(normalProbability(1.959963985)).toBeCloseTo(0.975, 9);
    expect(normalProbability(-3.090232306)).toBeCloseTo(0.001, 9);
  });

  it('find the centre that keeps the mean', () => {
    for (const [mean, deviation, ceiling] of [
      [3, 3, 10],
      [9, 4, 10],
      [5, 0.1, 10],
    ] as const) {
      expect(clampedMean(centreForMean(mean, deviation, ceiling), deviation, ceiling)).toBeCloseTo(mean, 6);
    }
  });
});

describe('the normal season', () => {
  const year = normalSeason(climate, newYork, values, '2027-01-01', 365);

  it('keeps the table month by month and the rain of the year', () => {
    for (let month = 0; month < 12; month++) {
      const [from, to] = [daysBeforeMonth[month]!, daysBeforeMonth[month + 1]!];
      expect(meanOf(year.maximum, from, to)).toBeCloseTo(climate.maximum[month]!, 9);
      expect(meanOf(year.minimum, from, to)).toBeCloseTo(climate.minimum[month]!, 9);
      expect(meanOf(year.radiation, from, to)).toBeCloseTo(radiation[month]!, 9);
      const wet = year.rain.slice(from, to).filter((rain) => rain > 0).length;
      expect(Math.abs(wet - climate.wetDays[month]!)).toBeLessThanOrEqual(1.01);
    }
    const total = climate.rain.reduce((sum, rain) => sum + rain, 0);
    expect(year.rain.reduce((sum, rain) => sum + rain, 0)).toBeCloseTo(total, 9);
  });

  it('is the same weather on the same date, wherever the season starts', () => {
    const later = normalSeason(climate, newYork, values, '2027-06-10', 30);
    expect([...later.rain]).toEqual([...year.rain.slice(160, 190)]);
    expect([...later.maximum]).toEqual([...year.maximum.slice(160, 190)]);
  });

  it('passes a leap day without rain of its own', () => {
    const leap = normalSeason(climate, newYork, values, '2028-02-28', 3);
    expect(leap.maximum[1]).toBe(leap.maximum[0]);
    expect(leap.rain[1]).toBe(0);
    expect([...leap.dayOfYear]).toEqual([59, 60, 61]);
  });

  it('estimates radiation, humidity and wind by the stated defaults where the table has none', () => {
    const bare = climateOf(newYork);
    const season = normalSeason(bare, newYork, values, '2027-07-15', 1);
    const outside = extraterrestrialRadiation(newYork.latitude, 196);
    expect(season.radiation[0]).toBeCloseTo(0.16 * Math.sqrt(season.maximum[0]! - season.minimum[0]!) * outside, 9);
    expect(season.vapourPressure[0]).toBeCloseTo(saturationVapourPressure(season.minimum[0]!), 9);
    expect(season.wind[0]).toBe(2);
    const printed = normalSeason(climate, newYork, values, '2027-07-15', 1);
    const share = printed.vapourPressure[0]! / meanSaturationVapourPressure(printed.maximum[0]!, printed.minimum[0]!);
    expect(share).toBeCloseTo(0.642, 2);
  });

  it('copes with a year without rain and a month whose rain has no wet day in the table', () => {
    const none = new Array<number>(12).fill(0);
    const dry = weatherModel({ ...climate, rain: none, wetDays: none }, newYork, values);
    expect(normalSeasonOf(dry, '2027-01-01', 365).rain.every((rain) => rain === 0)).toBe(true);
    expect(generatedWeather(dry, '2027-01-01', 365, 1).rain.every((rain) => rain === 0)).toBe(true);
    const odd = weatherModel({ ...climate, wetDays: none }, newYork, values);
    expect(normalSeasonOf(odd, '2027-01-01', 365).rain.reduce((sum, rain) => sum + rain, 0)).toBeGreaterThan(1000);
  });
});

describe('generated years', () => {
  it('keep the monthly means of temperature and radiation within what 300 years leave to chance', () => {
    const model = weatherModel(climate, newYork, values);
    const sums = { maximum: new Float64Array(12), minimum: new Float64Array(12), radiation: new Float64Array(12) };
    const years = 300;
    for (let member = 0; member < years; member++) {
      const year = generatedWeather(model, '2027-01-01', 365, 42, member);
      for (let day = 0; day < 365; day++) {
        for (const quantity of ['maximum', 'minimum', 'radiation'] as const) {
          sums[quantity][year.month[day]! - 1]! += year[quantity][day]!;
        }
      }
    }
    for (let month = 0; month < 12; month++) {
      const days = years * monthLengths[month]!;
      // About 2,000 independent days a month and a deviation of 3 to 6 K; the swap of crossed extremes adds a few hundredths.
      expect(Math.abs(sums.maximum[month]! / days - climate.maximum[month]!)).toBeLessThan(0.45);
      expect(Math.abs(sums.minimum[month]! / days - climate.minimum[month]!)).toBeLessThan(0.45);
      expect(Math.abs(sums.radiation[month]! / days / radiation[month]! - 1)).toBeLessThan(0.03);
    }
  });

  it('make wet days cooler and darker by the stated amounts', () => {
    const model = weatherModel(climate, newYork, values);
    const [wet, dry] = [
      { days: 0, maximum: 0, radiation: 0 },
      { days: 0, maximum: 0, radiation: 0 },
    ];
    for (let member = 0; member < 400; member++) {
      const july = generatedWeather(model, '2027-07-01', 31, 5, member);
      for (let day = 0; day < 31; day++) {
        const side = july.rain[day]! > 0 ? wet : dry;
        side.days++;
        side.maximum += july.maximum[day]!;
        side.radiation += july.radiation[day]!;
      }
    }
    expect(dry.maximum / dry.days - wet.maximum / wet.days).toBeCloseTo(2, 0);
    expect(wet.radiation / wet.days / (dry.radiation / dry.days)).toBeCloseTo(0.5, 1);
  });
});
