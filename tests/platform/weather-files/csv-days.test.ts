import { describe, expect, it } from 'vitest';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import { WeatherOfDay } from '#shared/vocabulary/weather.ts';
import { dateOf, dayNumberOf } from '#engine/weather/calendar-day.ts';
import { daylightHours, extraterrestrialRadiation } from '#engine/weather/daily-radiation.ts';
import { saturationVapourPressure, windAtTwoMetres } from '#engine/weather/humidity.ts';
import { csvDays } from '#platform/weather-files/csv-days.ts';
import { largestFile } from '#platform/weather-files/weather-text.ts';

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;
const place = { site: { latitude: 41.9, elevation: 200 }, values };
const read = (text: string) => csvDays(text, place);

/** A file of invented days; each line can be replaced. */
const lineOf = (i: number) =>
  `${dateOf(dayNumberOf('2021-05-01') + i)},${20 + (i % 5)},${9 + (i % 3)},${i % 4 === 0 ? 3.5 : 0},18,65,2.5`;
const header = 'date,tmax,tmin,rain,radiation,humidity,wind';
const file = (days: number, changes: Readonly<Record<number, string>> = {}) =>
  [header, ...Array.from({ length: days }, (_, i) => changes[i] ?? lineOf(i))].join('\n');
const refusedAt = (text: string) => {
  const report = read(text);
  expect(report.ok).toBe(false);
  expect(report.days).toEqual([]);
  return report.refused;
};

describe('a good CSV file', () => {
  it('gives every day in our units and says how each column was read', () => {
    const report = read(file(10));
    expect(report).toMatchObject({ ok: true, read: 10, filled: [], refused: [], refusals: 0 });
    expect(report.days).toHaveLength(10);
    expect(report.days[0]).toMatchObject({ date: '2021-05-01', maximum: 20, minimum: 9, rain: 3.5, radiation: 18, wind: 2.5 });
    expect(report.columns.find((column) => column.quantity === 'rain')).toEqual({
      column: 'rain',
      quantity: 'rain',
      unit: 'mm (not named in the header)',
    });
    for (const day of report.days) expect(WeatherOfDay.safeParse(day).success).toBe(true);
  });

  it('does not mind the order of the columns, comments, blank lines, a mark at the start or the kind of line end', () => {
    const text =
      '\uFEFF# invented\r\nwind (m/s),Min Temp [°C],Date,Precipitation (mm),Max Temp [°C]\r\n\r\n3,10,2021-05-01,1,20\r\n4,11,2021-05-02,0,21\r\n';
    const report = read(text);
    expect(report.ok).toBe(true);
    expect(report.days[1]).toMatchObject({ date: '2021-05-02', maximum: 21, minimum: 11, rain: 0, wind: 4 });
  });

  it('converts units that the header names', () => {
    const text =
      'date,tmax_f,tmin (°F),rain [in],radiation (W/m²),humidity (%),wind (mph at 10 m)\n2021-05-01,99,50,1,250,50,10\n2021-05-02,77,50,0,250,50,10';
    const [day] = read(text).days;
    expect(day!.maximum).toBeCloseTo((99 - 32) / 1.8, 9);
    expect(day!.minimum).toBeCloseTo(10, 9);
    expect(day!.rain).toBeCloseTo(25.4, 9);
    expect(day!.radiation).toBeCloseTo(21.6, 9);
    expect(day!.wind).toBeCloseTo(windAtTwoMetres(4.4704, 10), 9);
    expect(day!.vapourPressure).toBeCloseTo(0.25 * (saturationVapourPressure(day!.maximum) + saturationVapourPressure(10)), 9);
  });

  it('reads decimal commas between semicolons, and day.month.year', () => {
    const report = read('Datum;tmax;tmin;rain\n01.05.2021;20,5;9,5;0,2\n02.05.2021;21,5;8;1,25\n');
    expect(report.ok).toBe(true);
    expect(report.days[0]).toMatchObject({ date: '2021-05-01', maximum: 20.5, minimum: 9.5, rain: 0.2 });
    expect(report.cautions).toContain('figures were read with a decimal comma');
  });

  it('reads year, month and day from columns of their own, and month/day/year where the file tells', () => {
    expect(read('year,month,day,tmax,tmin,rain\n2020,2,28,9,1,0\n2020,2,29,10,1,0\n2020,3,1,8,1,0').days[1]!.date).toBe(
      '2020-02-29',
    );
    const american = read('date,tmax,tmin,rain\n5/12/2021,20,9,0\n5/13/2021,20,9,0');
    expect(american.days.map((day) => day.date)).toEqual(['2021-05-12', '2021-05-13']);
  });

  it('sorts days that are out of order and drops a line that only repeats another', () => {
    const report = read(`${header}\n${lineOf(1)}\n${lineOf(0)}\n${lineOf(0)}`);
    expect(report.ok).toBe(true);
    expect(report.days.map((day) => day.date)).toEqual(['2021-05-01', '2021-05-02']);
    expect(report.skipped).toEqual([{ line: 4, reason: 'repeats line 3' }]);
    expect(report.cautions[0]).toMatch(/sorted/);
  });

  it('leaves out days before 1990 and says how many', () => {
    const report = read('date,tmax,tmin,rain\n1989-12-30,5,1,0\n1989-12-31,5,1,0\n1990-01-01,5,1,0');
    expect(report.days).toHaveLength(1);
    expect(report.skipped[0]!.reason).toBe('2 days before 1990 were left out');
  });
});

describe('what a CSV file leaves out', () => {
  it('short gaps are drawn straight and reported by line and day', () => {
    const changes = { 4: '2021-05-05,9999,10,0,18,65,2.5', 5: '2021-05-06,,10,NA,18,65,2.5' };
    const report = read(file(10, changes));
    expect(report.ok).toBe(true);
    const [before, after] = [report.days[3]!.maximum, report.days[6]!.maximum];
    expect(report.days[4]!.maximum).toBeCloseTo(before + (after - before) / 3, 9);
    expect(report.filled).toContainEqual({
      line: 6,
      day: '2021-05-05',
      through: '2021-05-06',
      days: 2,
      quantity: 'maximum',
      how: 'drawn straight between the days around it',
    });
    expect(report.filled.filter((filled) => filled.quantity === 'rain')).toHaveLength(1);
  });

  it('days that are missing altogether are filled up to three, refused beyond', () => {
    const without = (from: number, to: number) =>
      [
        header,
        ...Array.from({ length: 12 }, (_, i) => i)
          .filter((i) => i < from || i >= to)
          .map(lineOf),
      ].join('\n');
    const report = read(without(4, 7));
    expect(report.ok).toBe(true);
    expect(report.days).toHaveLength(12);
    expect(report.filled.filter((filled) => filled.days === 3)).toHaveLength(6);
    const refused = refusedAt(without(4, 8));
    expect(refused[0]).toMatchObject({ line: 6 });
    expect(refused[0]!.reason).toMatch(/4 days are missing before 2021-05-09/);
  });

  it('four days without a temperature, or the first day without one, are refused', () => {
    const gone = Object.fromEntries([3, 4, 5, 6].map((i) => [i, lineOf(i).replace(/,\d+,/, ',99.9,')]));
    expect(refusedAt(file(10, gone))[0]).toMatchObject({ line: 5, column: 'tmax' });
    expect(refusedAt(file(10, { 0: '2021-05-01,,9,0,18,65,2' }))[0]!.reason).toMatch(/both sides/);
  });

  it('radiation from sunshine, else from the range of temperature; humidity and wind by default', () => {
    const sunny = read('date,tmax,tmin,rain,sunshine (h)\n2021-06-01,24,12,0,8\n2021-06-02,25,13,0,9');
    const outside = extraterrestrialRadiation(41.9, 152);
    expect(sunny.days[0]!.radiation).toBeCloseTo((0.25 + (0.5 * 8) / daylightHours(41.9, 152)) * outside, 9);
    expect(sunny.filled).toContainEqual(
      expect.objectContaining({ quantity: 'radiation', how: 'from hours of sunshine', days: 2 }),
    );
    const bare = read('date,tmax,tmin,rain\n2021-06-01,24,12,0\n2021-06-02,25,13,0');
    expect(bare.days[0]!.radiation).toBeCloseTo(0.16 * Math.sqrt(12) * outside, 9);
    expect(bare.days[0]!.vapourPressure).toBeCloseTo(saturationVapourPressure(12), 12);
    expect(bare.days[0]!.wind).toBe(2);
    expect(bare.filled.map((filled) => [filled.quantity, filled.days]).sort()).toEqual([
      ['radiation', 2],
      ['vapour pressure', 2],
      ['wind', 2],
    ]);
  });

  it('a trace of rain is none, and 99.9 °F is a reading where 99.9 °C is a code', () => {
    expect(read('date,tmax,tmin,rain\n2021-06-01,24,12,T\n2021-06-02,25,13,0').days[0]!.rain).toBe(0);
    const hot = read('date,tmax_f,tmin_f,rain\n2021-06-01,99.9,70,0\n2021-06-02,95,70,0');
    expect(hot.days[0]!.maximum).toBeCloseTo(67.9 / 1.8, 9);
    expect(hot.filled.some((filled) => filled.quantity === 'maximum')).toBe(false);
  });
});

describe('bad CSV files are refused by line with nothing given', () => {
  it('31 February and 29 February of a common year', () => {
    expect(refusedAt('date,tmax,tmin,rain\n2021-02-28,9,1,0\n2021-02-31,9,1,0')[0]).toMatchObject({ line: 3, column: 'date' });
    expect(refusedAt('date,tmax,tmin,rain\n2021-02-29,9,1,0')[0]!.reason).toMatch(/not a day of the calendar/);
  });

  it('400 °C', () => {
    const [refusal] = refusedAt(file(10, { 6: '2021-05-07,400,9,0,18,65,2.5' }));
    expect(refusal).toMatchObject({ line: 8, column: 'tmax' });
    expect(refusal!.reason).toMatch(/400 °C is above 58/);
  });

  it('columns that are swapped: minimum and maximum, humidity and temperature, rain and temperature', () => {
    expect(refusedAt(file(5, { 2: '2021-05-03,9,20,0,18,65,2.5' }))[0]).toMatchObject({ line: 4, column: 'tmin' });
    const humid = refusedAt(
      ['date,tmax,tmin,rain,humidity', ...Array.from({ length: 6 }, (_, i) => `2021-05-0${i + 1},${60 + 3 * i},10,0,21`)].join(
        '\n',
      ),
    );
    expect(humid.map((refusal) => refusal.column)).toContain('tmax');
    const mild = refusedAt(
      ['date,tmax,tmin,rain,humidity', ...Array.from({ length: 6 }, (_, i) => `2021-05-0${i + 1},${38 + i},8,0,21`)].join('\n'),
    );
    expect(mild[0]!.reason).toMatch(/no place has that/);
    expect(refusedAt('date,tmax,rain,tmin\n2021-01-01,2,-5,0\n2021-01-02,2,-4,0')[0]).toMatchObject({ line: 2, column: 'rain' });
  });

  it('radiation beyond the sun, vapour the air cannot hold, humidity of 0–1 in percent', () => {
    expect(refusedAt(file(5, { 1: '2021-05-02,20,9,0,44,65,2.5' }))[0]!.reason).toMatch(/more than the .* that the sun sends/);
    expect(refusedAt('date,tmax,tmin,rain,ea\n2021-05-01,10,2,0,4\n2021-05-02,10,2,0,1')[0]!.column).toBe('ea');
    const shares = ['date,tmax,tmin,rain,rh', ...Array.from({ length: 6 }, (_, i) => `2021-05-0${i + 1},20,10,0,0.6`)].join('\n');
    expect(refusedAt(shares)[0]!.reason).toMatch(/between 0 and 1/);
  });

  it('a day twice with other values, an hourly file, a date whose order nobody knows', () => {
    expect(refusedAt(file(5, { 3: '2021-05-03,25,9,0,18,65,2.5' }))[0]!.reason).toMatch(/stands on line 4 already/);
    expect(refusedAt('date,tmax,tmin,rain\n2021-05-01 13:00,20,9,0')[0]!.reason).toMatch(/time of day/);
    expect(refusedAt('date,tmax,tmin,rain\n5/6/2021,20,9,0\n6/6/2021,20,9,0')[0]!.reason).toMatch(/which number is the day/);
  });

  it('figures that can be read two ways, words, and lines that are cut off', () => {
    expect(refusedAt('date,tmax,tmin,rain\n2021-05-01,"20,125",9,0')[0]!.reason).toMatch(/thousands comma/);
    expect(refusedAt('date;tmax;tmin;rain\n2021-05-01;20,5;9;0\n2021-05-02;20.5;9;0')[0]!.reason).toMatch(
      /decimal commas and decimal points/,
    );
    expect(refusedAt('date,tmax,tmin,rain\n2021-05-01,warm,9,0')[0]).toMatchObject({ line: 2, column: 'tmax' });
    expect(refusedAt(`${file(5)}\n2021-05-06,20,9`)[0]).toMatchObject({ line: 7, column: null });
    expect(refusedAt('date,tmax,tmin,rain\n"2021-05-01,20,9,0')[0]!.reason).toMatch(/quotation marks/);
  });

  it('headers that lack a column, name it twice, or name a unit nobody knows', () => {
    expect(refusedAt('date,tmax,tmin\n2021-05-01,20,9')[0]).toMatchObject({ line: 1, reason: 'there is no column for the rain' });
    expect(refusedAt('date,tmax,tmin,rain,high\n2021-05-01,20,9,0,20')[0]!.reason).toMatch(/means the same as the column "tmax"/);
    expect(refusedAt('date,tmax (°X),tmin,rain\n2021-05-01,20,9,0')[0]!.reason).toMatch(/unit "°X" is not known/);
    expect(refusedAt('2021-05-01,20,9,0\n2021-05-02,20,9,0')[0]!.reason).toMatch(/must name the columns/);
    expect(refusedAt('hello\nworld')[0]!.reason).toMatch(/single column/);
  });

  it('an empty file, a header alone, UTF-16, a spreadsheet, 200 MB', () => {
    expect(refusedAt('')[0]).toMatchObject({ line: 0, reason: 'the file is empty' });
    expect(refusedAt(' \r\n \n')[0]!.reason).toBe('the file is empty');
    expect(refusedAt(header)[0]!.reason).toBe('the file holds no days');
    const wide = new TextDecoder('utf-8').decode(Buffer.from(`\uFEFF${file(3)}`, 'utf16le'));
    expect(refusedAt(wide)[0]!.reason).toMatch(/UTF-16/);
    const bare = new TextDecoder('utf-8').decode(Buffer.from(file(3), 'utf16le'));
    expect(refusedAt(bare)[0]!.reason).toMatch(/UTF-16/);
    expect(refusedAt('PK\u0003\u0004rest of it')[0]!.reason).toMatch(/packed archive/);
    const large = csvDays(file(3), { ...place, byteLength: 200_000_000 });
    expect(large).toMatchObject({ ok: false, days: [], read: 0 });
    expect(large.refused[0]!.reason).toMatch(/200 MB; at most 50 MB/);
    expect(largestFile).toBeLessThan(200_000_000);
  });

  it('many refusals are counted, the first 200 shown in the order of the lines', () => {
    const bad = Object.fromEntries(
      Array.from({ length: 300 }, (_, i) => [i, lineOf(i).replace(/,\d+,/, ',400,').replace(',18,', ',4,')]),
    );
    const report = read(file(300, bad));
    expect(report.refusals).toBe(300);
    expect(report.refused).toHaveLength(200);
    expect(report.refused[0]!.line).toBe(2);
  });

  it('a place in the other half of the world is a caution, not a refusal', () => {
    const year = Array.from({ length: 365 }, (_, i) => {
      const warm = 15 - 10 * Math.cos((2 * Math.PI * i) / 365);
      return `${dateOf(dayNumberOf('2021-01-01') + i)},${(warm + 5).toFixed(1)},${(warm - 5).toFixed(1)},${i % 3 === 0 ? 5 : 0}`;
    });
    const text = ['date,tmax,tmin,rain', ...year].join('\n');
    expect(read(text).cautions).toEqual([]);
    const south = csvDays(text, { ...place, site: { latitude: -34, elevation: 10 } });
    expect(south.ok).toBe(true);
    expect(south.cautions.some((caution) => caution.includes('other half of the world'))).toBe(true);
  });
});
