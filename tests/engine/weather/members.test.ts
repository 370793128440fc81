import { describe, expect, it } from 'vitest';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import { dateOf, dayNumberOf } from '#engine/weather/calendar-day.ts';
import { daylightHours, extraterrestrialRadiation } from '#engine/weather/daily-radiation.ts';
import { saturationVapourPressure } from '#engine/weather/humidity.ts';
import { completedDay } from '#engine/weather/missing-weather.ts';
import { forecastSpread, withActuals, withForecast, type ForecastDay } from '#engine/weather/near-term.ts';
import { membersFromYears } from '#engine/weather/observed-years.ts';
import { datedDays, emptySeries, seriesFrom, setDay, type DatedWeatherDay } from '#engine/weather/weather-day.ts';

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;
const site = { latitude: 40, elevation: 100 };
const plain = { maximum: 20, minimum: 10, rain: 0, radiation: 15, vapourPressure: 1.2, wind: 2 };

/** Days whose maximum tells the year and whose rain tells the day. */
const record = (from: string, to: string): DatedWeatherDay[] => {
  const days: DatedWeatherDay[] = [];
  for (let number = dayNumberOf(from); number <= dayNumberOf(to); number++) {
    const date = dateOf(number);
    days.push({ date, ...plain, maximum: Number(date.slice(2, 4)), minimum: 0, rain: Number(date.slice(8)) });
  }
  return days;
};

describe('members from observed years', () => {
  it('take the same stretch of the calendar out of every complete year', () => {
    const { members, years } = membersFromYears(record('2011-01-01', '2014-08-01'), '2027-07-17', 30, null, 1);
    expect(years).toEqual([2011, 2012, 2013]);
    expect(members.map((member) => member.series.maximum[0])).toEqual([11, 12, 13]);
    expect(members[1]!.series.start).toBe('2027-07-17');
    expect(members[1]!.series.rain[0]).toBe(17);
    expect(members[1]!.series.rain[15]).toBe(1);
  });

  it('use the years in turn, later rounds moved by a few days, every year alike', () => {
    const { members } = membersFromYears(record('2011-01-01', '2016-12-31'), '2027-05-10', 40, 60, 7);
    expect(members).toHaveLength(60);
    for (let year = 2011; year <= 2016; year++) expect(members.filter((member) => member.year === year)).toHaveLength(10);
    expect(members.slice(0, 6).every((member) => member.shift === 0)).toBe(true);
    expect(members.every((member) => Math.abs(member.shift) <= 7)).toBe(true);
    expect(new Set(members.map((member) => `${member.year} ${member.shift}`)).size).toBeGreaterThan(30);
    const again = membersFromYears(record('2011-01-01', '2016-12-31'), '2027-05-10', 40, 60, 7);
    expect(again.members).toEqual(members);
  });

  it('cross the new year, start on a leap day, and let one full year stand for all', () => {
    const two = membersFromYears(record('2011-01-01', '2012-12-31'), '2027-12-20', 30, null, 1);
    expect(two.years).toEqual([2011]);
    expect(two.members[0]!.series.maximum[20]).toBe(12);
    const leap = membersFromYears(record('2011-01-01', '2012-12-31'), '2028-02-29', 5, null, 1);
    expect(leap.members[0]!.series.rain[0]).toBe(28);
    expect(leap.members[1]!.series.rain[0]).toBe(29);
    const one = membersFromYears(record('2011-01-01', '2011-12-31'), '2027-12-20', 30, 3, 1);
    expect(one.members).toHaveLength(3);
    expect(one.members[0]!.series.rain[12]).toBe(1);
  });

  it('give nothing when no year covers the stretch', () => {
    expect(membersFromYears(record('2011-03-01', '2011-05-01'), '2027-07-01', 10, 5, 1).members).toEqual([]);
  });
});

describe('a day that is only partly known', () => {
  const known = { maximum: 26, minimum: 14, rain: 0, radiation: null, vapourPressure: null, wind: null };

  it('is made whole by the rules for missing data, each named', () => {
    const { day, filled } = completedDay(known, site, 196, values);
    expect(day.radiation).toBeCloseTo(0.16 * Math.sqrt(12) * extraterrestrialRadiation(40, 196), 9);
    expect(day.vapourPressure).toBeCloseTo(saturationVapourPressure(14), 12);
    expect(day.wind).toBe(2);
    expect(filled.map((each) => each.quantity).sort()).toEqual(['radiation', 'vapourPressure', 'wind']);
  });

  it('prefers sunshine and relative humidity where they are known, and what is given before all', () => {
    const sunny = completedDay({ ...known, sunshine: daylightHours(40, 196), humidity: 0.6 }, site, 196, values).day;
    expect(sunny.radiation).toBeCloseTo(0.75 * extraterrestrialRadiation(40, 196), 9);
    expect(sunny.vapourPressure).toBeCloseTo(0.3 * (saturationVapourPressure(26) + saturationVapourPressure(14)), 9);
    const given = completedDay({ ...known, radiation: 9, vapourPressure: 1, wind: 5 }, site, 196, values);
    expect(given.day).toMatchObject({ radiation: 9, vapourPressure: 1, wind: 5 });
    expect(given.filled).toEqual([]);
  });
});

describe('forecast and readings', () => {
  const base = seriesFrom(
    '2027-07-01',
    Array.from({ length: 10 }, () => plain),
  );
  const forecast: ForecastDay[] = Array.from({ length: 5 }, (_, i) => ({
    date: `2027-07-0${i + 1}`,
    maximum: 30,
    minimum: 20,
    rain: 8,
    radiation: 22,
    vapourPressure: 2,
    wind: 3,
  }));

  it('a forecast without spread stands as typed and leaves the rest', () => {
    const series = withForecast(base, forecast, site, values, null, 1, 0);
    expect([...series.maximum]).toEqual([30, 30, 30, 30, 30, 20, 20, 20, 20, 20]);
    expect(base.maximum[0]).toBe(20);
  });

  it('the spread between members grows with the root of the lead and keeps the mean', () => {
    const members = Array.from({ length: 2000 }, (_, m) =>
      withForecast(base, forecast, site, values, forecastSpread(values), 3, m),
    );
    const deviation = (day: number) => {
      const all = members.map((series) => series.maximum[day]!);
      const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
      expect(Math.abs(mean - 30)).toBeLessThan(0.2);
      return Math.sqrt(all.reduce((sum, value) => sum + (value - mean) ** 2, 0) / all.length);
    };
    expect(deviation(0)).toBeCloseTo(1, 1);
    expect(deviation(3)).toBeCloseTo(2, 0);
    const rain = members.reduce((sum, series) => sum + series.rain[4]!, 0) / members.length;
    expect(Math.abs(rain - 8)).toBeLessThan(0.5);
    expect(members.every((series) => series.maximum.every((high, i) => high >= series.minimum[i]!))).toBe(true);
  });

  it('a chance of rain is the share of members it falls in', () => {
    const likely = [{ ...forecast[0]!, rainChance: 0.3 }];
    const wet = Array.from({ length: 1000 }, (_, m) =>
      withForecast(base, likely, site, values, forecastSpread(values), 3, m),
    ).filter((series) => series.rain[0]! > 0).length;
    expect(Math.abs(wet / 1000 - 0.3)).toBeLessThan(0.05);
    expect(withForecast(base, likely, site, values, null, 3, 0).rain[0]).toBe(0);
  });

  it('readings override the forecast up to their last day, with days between drawn straight', () => {
    const series = withForecast(base, forecast, site, values, forecastSpread(values), 3, 4);
    const actuals = [
      { date: '2027-07-03', ...plain, maximum: 26 },
      { date: '2027-07-01', ...plain, maximum: 22 },
    ];
    const read = withActuals(series, actuals);
    expect([...read.maximum.slice(0, 3)]).toEqual([22, 24, 26]);
    expect(read.maximum[3]).toBe(series.maximum[3]);
    expect(withActuals(base, [{ date: '2027-08-20', ...plain, maximum: 40 }]).maximum[9]).toBe(20);
  });
});

describe('a series', () => {
  it('goes to days and back', () => {
    const series = emptySeries('2028-02-27', 3);
    setDay(series, 2, plain);
    const days = datedDays(series);
    expect(days.map((day) => day.date)).toEqual(['2028-02-27', '2028-02-28', '2028-02-29']);
    expect(days[2]).toMatchObject(plain);
    expect(() => emptySeries('2027-02-30', 3)).toThrow(RangeError);
    expect(() => emptySeries('2027-02-03', -1)).toThrow(RangeError);
  });
});
