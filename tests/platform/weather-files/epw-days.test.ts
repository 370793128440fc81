import { describe, expect, it } from 'vitest';
import { weatherParameters, type WeatherValues } from '#shared/parameters/weather.ts';
import { WeatherOfDay } from '#shared/vocabulary/weather.ts';
import { calendarDay, dayNumber } from '#engine/weather/calendar-day.ts';
import { dewPoint, saturationVapourPressure, windAtTwoMetres } from '#engine/weather/humidity.ts';
import { epwDays } from '#platform/weather-files/epw-days.ts';

const values = Object.fromEntries(
  Object.entries(weatherParameters).map(([name, parameter]) => [name, parameter.value]),
) as WeatherValues;
const place = { site: { latitude: 41.9, elevation: 200 }, values };
const read = (text: string) => epwDays(text, place);

const head = (until: string) => [
  'LOCATION,Invented Field,-,XXX,Invented,000000,41.98,-87.92,-6.0,201.0',
  'DESIGN CONDITIONS,0',
  'TYPICAL/EXTREME PERIODS,0',
  'GROUND TEMPERATURES,0',
  'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
  'COMMENTS 1,invented for a test',
  'COMMENTS 2,',
  `DATA PERIODS,1,1,Data,Monday,1/1,${until}`,
];

interface Hour {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  dry: number;
  dew: number;
  humidity: number;
  sun: number;
  wind: number;
  rain: number;
}

const lineOf = (h: Hour) => {
  const cells = new Array<string | number>(35).fill(0);
  cells.splice(0, 6, h.year, h.month, h.day, h.hour, 60, '?9?9?9?9E0');
  cells.splice(6, 4, h.dry, h.dew, h.humidity, 99000);
  cells[13] = h.sun;
  cells[21] = h.wind;
  cells[33] = h.rain;
  return cells.join(',');
};

/** An invented year: a cosine through the year and through the day. */
const year = (
  days = 365,
  change: (hour: Hour, index: number) => void = () => {},
  printed: (month: number) => number = () => 2021,
) => {
  const lines: string[] = [];
  for (let i = 0; i < days * 24; i++) {
    const { month, day } = calendarDay(dayNumber(2021, 1, 1) + Math.floor(i / 24));
    const hour = (i % 24) + 1;
    const season = 10 - 12 * Math.cos((2 * Math.PI * i) / 8760);
    const dry = Math.round(10 * (season + 5 * Math.cos((2 * Math.PI * (hour - 15)) / 24))) / 10;
    const row = {
      year: printed(month),
      month,
      day,
      hour,
      dry,
      dew: 0,
      humidity: 60,
      sun: 0,
      wind: 4,
      rain: i % 50 === 0 ? 2 : 0,
    };
    row.dew = Math.round(10 * dewPoint(0.6 * saturationVapourPressure(dry))) / 10;
    row.sun = hour >= 9 && hour <= 16 ? 300 : 0;
    change(row, i);
    lines.push(lineOf(row));
  }
  return lines;
};
const text = (lines: readonly string[], until = '12/31') => [...head(until), ...lines].join('\r\n');
const refusedAt = (file: string) => {
  const report = read(file);
  expect(report.ok).toBe(false);
  expect(report.days).toEqual([]);
  return report.refused;
};
const good = year();

describe('a good EPW file', () => {
  const report = read(text(good));

  it('gives the days of the year it prints', () => {
    expect(report).toMatchObject({ ok: true, read: 8760, refused: [], cautions: [] });
    expect(report.days).toHaveLength(365);
    expect(report.days[0]!.date).toBe('2021-01-01');
    expect(report.days[364]!.date).toBe('2021-12-31');
    for (const day of report.days) expect(WeatherOfDay.safeParse(day).success).toBe(true);
  });

  it('takes extremes, sums and means of the hours, wind brought from 10 m to 2 m', () => {
    const hours = good.slice(0, 24).map((line) => line.split(',').map(Number));
    const [day] = report.days;
    expect(day!.maximum).toBe(Math.max(...hours.map((cells) => cells[6]!)));
    expect(day!.minimum).toBe(Math.min(...hours.map((cells) => cells[6]!)));
    expect(day!.radiation).toBeCloseTo(8 * 300 * 0.0036, 9);
    expect(day!.rain).toBe(2);
    expect(day!.wind).toBeCloseTo(windAtTwoMetres(4, 10), 9);
    const pressure = hours.reduce((sum, cells) => sum + saturationVapourPressure(cells[7]!), 0) / 24;
    expect(day!.vapourPressure).toBeCloseTo(pressure, 9);
  });

  it('files a typical year put together from several years under a nominal one', () => {
    const typical = read(text(year(365, undefined, (month) => 1980 + month)));
    expect(typical.ok).toBe(true);
    expect(typical.days[0]!.date).toBe('2001-01-01');
    expect(typical.days[364]!.date).toBe('2001-12-31');
    expect(typical.cautions[0]).toMatch(/months of 12 years/);
  });

  it('warns when the place is another, and when rain is left out', () => {
    expect(epwDays(text(good), { ...place, site: { latitude: 30, elevation: 0 } }).cautions[0]).toMatch(/away from the venue/);
    const dry = read(text(year(365, (hour) => (hour.rain = 999))));
    expect(dry.ok).toBe(true);
    expect(dry.cautions[0]).toMatch(/carries no rain/);
    expect(dry.filled).toContainEqual(expect.objectContaining({ quantity: 'rain', days: 365 }));
  });
});

describe('what an EPW file leaves out', () => {
  it('hours of temperature with the code 99.9 are drawn straight up to six, refused beyond', () => {
    const gap = (hours: number) => text(year(365, (hour, i) => i >= 100 && i < 100 + hours && (hour.dry = 99.9)));
    const report = read(gap(6));
    expect(report.ok).toBe(true);
    expect(report.filled).toContainEqual(expect.objectContaining({ line: 109, day: '2021-01-05', quantity: 'temperature' }));
    expect(Math.max(...report.days.map((day) => day.maximum))).toBeLessThan(50);
    expect(refusedAt(gap(7))[0]).toMatchObject({ line: 109, column: 'dry bulb temperature' });
  });

  it('radiation 9999, wind 999 and dew point 99.9 are filled by the rules', () => {
    const report = read(
      text(
        year(365, (hour, i) => {
          if (i < 24 * 10) hour.sun = 9999;
          if (i < 24 * 10) hour.wind = 999;
          if (i < 24) hour.dew = 99.9;
        }),
      ),
    );
    expect(report.ok).toBe(true);
    expect(report.filled).toContainEqual(
      expect.objectContaining({ quantity: 'radiation', days: 10, how: 'from the range of temperature' }),
    );
    expect(report.days[0]!.wind).toBe(2);
    // Humidity stands in for the dew point.
    expect(report.days[0]!.vapourPressure).toBeCloseTo(read(text(good)).days[0]!.vapourPressure, 1);
  });
});

describe('bad EPW files are refused by line with nothing given', () => {
  it('cut off in the middle of a line, of a day, of the year, or of the header', () => {
    const lines = good.slice(0, 5000);
    expect(refusedAt(text([...lines, good[5000]!.slice(0, 40)]))[0]).toMatchObject({ line: 5009, column: null });
    expect(refusedAt(text(lines))[0]!.reason).toMatch(/cut off/);
    expect(refusedAt(text(good.slice(0, 24 * 100)))[0]!.reason).toMatch(
      /ends on 10\.4\.; its header says 31\.12\.: it is cut off/,
    );
    expect(refusedAt(head('12/31').slice(0, 5).join('\n'))[0]).toMatchObject({ line: 6 });
    expect(refusedAt(head('12/31').join('\n'))[0]!.reason).toMatch(/no hours follow/);
  });

  it('31 February, hour 25, a day twice, a day left out', () => {
    const wrong = [...good];
    wrong[31 * 24] = wrong[31 * 24]!.replace('2021,2,1,', '2021,2,31,');
    expect(refusedAt(text(wrong))[0]).toMatchObject({ line: 31 * 24 + 9, column: 'date' });
    const late = [...good];
    late[23] = late[23]!.replace(',24,60,', ',25,60,');
    expect(refusedAt(text(late))[0]).toMatchObject({ line: 32, column: 'hour' });
    expect(refusedAt(text([...good.slice(0, 48), ...good.slice(24)]))[0]!.line).toBeGreaterThan(50);
    expect(refusedAt(text([...good.slice(0, 48), ...good.slice(72)]))[0]!.reason).toMatch(/does not follow/);
    expect(refusedAt(text([...good.slice(0, 30), ...good.slice(31)]))[0]!.column).toBe('hour');
  });

  it('400 °C, humidity in the temperature column, dew point and dry bulb swapped', () => {
    expect(refusedAt(text(year(365, (hour, i) => i === 500 && (hour.dry = 400))))[0]).toMatchObject({
      line: 509,
      column: 'dry bulb temperature',
    });
    const humid = refusedAt(text(year(365, (hour) => ([hour.dry, hour.humidity] = [hour.humidity, Math.max(0, hour.dry)]))));
    expect(humid[0]!.line).toBe(9);
    expect(humid[0]!.column).toBe('dry bulb temperature');
    expect(refusedAt(text(year(365, (hour) => ([hour.dry, hour.dew] = [hour.dew, hour.dry]))))[0]!.reason).toMatch(/swapped/);
  });

  it('more sun than there is, an empty file, UTF-16, 200 MB, a CSV under the wrong name', () => {
    expect(refusedAt(text(year(365, (hour) => (hour.sun = 1400))))[0]!.reason).toMatch(/more than the/);
    expect(refusedAt('')[0]!.reason).toBe('the file is empty');
    const wide = new TextDecoder('utf-8').decode(Buffer.from(`\uFEFF${text(good.slice(0, 24))}`, 'utf16le'));
    expect(refusedAt(wide)[0]!.reason).toMatch(/UTF-16/);
    expect(epwDays(text(good), { ...place, byteLength: 200e6 }).refused[0]!.reason).toMatch(/200 MB/);
    expect(refusedAt('date,tmax,tmin,rain\n2021-05-01,20,9,0')[0]).toMatchObject({ line: 1 });
  });
});
