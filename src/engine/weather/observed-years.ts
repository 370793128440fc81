import { streamFor } from '#engine/chance/stream.ts';
import { calendarDay, dayNumber, dayNumberOf, monthLength } from '#engine/weather/calendar-day.ts';
import { emptySeries, setDay, type DatedWeatherDay, type WeatherDay, type WeatherSeries } from '#engine/weather/weather-day.ts';

/**
 * Members from years that were observed: the same stretch of the calendar out of each year on record. When more members are asked
 * for than there are years, the years are used in turn again, each time moved by a few days drawn from the member's stream, so
 * that every year counts alike and no two members need be the same.
 */
export interface ObservedMember {
  readonly series: WeatherSeries;
  /** Year its first day was taken from. */
  readonly year: number;
  /** Days it was moved on the calendar. */
  readonly shift: number;
}

/** What the record could give. */
export interface ObservedMembers {
  readonly members: readonly ObservedMember[];
  /** Years whose stretch is complete. */
  readonly years: readonly number[];
}

type Lookup = (number: number) => WeatherDay | undefined;

/** A record of one full year stands for every year: past its end it starts again. */
const lookupOf = (record: readonly DatedWeatherDay[]): { readonly at: Lookup; readonly years: number[] } => {
  const byNumber = new Map<number, WeatherDay>();
  for (const day of record) byNumber.set(dayNumberOf(day.date), day);
  const years = [...new Set([...byNumber.keys()].map((number) => calendarDay(number).year))].sort((a, b) => a - b);
  const only = years.length === 1 && byNumber.size >= 365 ? years[0]! : null;
  if (only === null) return { at: (number) => byNumber.get(number), years };
  const at: Lookup = (number) => {
    const { month, day } = calendarDay(number);
    return byNumber.get(dayNumber(only, month, Math.min(day, monthLength(only, month))));
  };
  return { at, years };
};

const startIn = (year: number, start: string): number => {
  const { month, day } = calendarDay(dayNumberOf(start));
  return dayNumber(year, month, Math.min(day, monthLength(year, month)));
};

const covers = (at: Lookup, from: number, days: number): boolean => {
  for (let i = 0; i < days; i++) if (at(from + i) === undefined) return false;
  return true;
};

/** Steps through the calendar as the season does, so that a leap day in either year moves nothing. */
const taken = (at: Lookup, from: number, start: string, days: number): WeatherSeries => {
  const series = emptySeries(start, days);
  for (let i = 0; i < days; i++) setDay(series, i, at(from + i)!);
  return series;
};

/**
 * @param record days of any years, in any order, each date once
 * @param start first day of the season, `YYYY-MM-DD`; @param days its length
 * @param count members wanted; null gives one a year
 * @param reach most days a repeated year is moved either way
 * @returns no members when no year covers the stretch
 */
export const membersFromYears = (
  record: readonly DatedWeatherDay[],
  start: string,
  days: number,
  count: number | null,
  seed: number,
  reach = 7,
): ObservedMembers => {
  const { at, years: all } = lookupOf(record);
  const years = all.filter((year) => covers(at, startIn(year, start), days));
  const members: ObservedMember[] = [];
  const wanted = years.length === 0 ? 0 : (count ?? years.length);
  for (let i = 0; i < wanted; i++) {
    const year = years[i % years.length]!;
    const from = startIn(year, start);
    const draw = streamFor(seed, 'weather: shift of an observed year', i)();
    const drawn = i < years.length ? 0 : Math.floor(draw * (2 * reach + 1)) - reach;
    const shift = covers(at, from + drawn, days) ? drawn : 0;
    members.push({ series: taken(at, from + shift, start, days), year, shift });
  }
  return { members, years };
};
