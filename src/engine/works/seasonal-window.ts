import { isOverseeded } from '#engine/recovery/overseeded.ts';
import { seasonOf, type Sward } from '#shared/vocabulary/turf.ts';

/** A stretch of the year in which a work is usually done; days written MM-DD, both included. It may cross the year's end. */
export interface SeasonalWindow {
  readonly name: string;
  readonly from: string;
  readonly until: string;
}

const monthLengths = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

const parsed = (day: string): readonly [number, number] => {
  const [month, date] = day.split('-').map(Number) as [number, number];
  if (!/^\d\d-\d\d$/.test(day) || month < 1 || month > 12 || date < 1 || date > monthLengths[month - 1]!) {
    throw new RangeError(`day: "${day}" is not a day of the year written MM-DD`);
  }
  return [month, date];
};

/** Half a year later, cut to the length of the month. */
const sixMonthsOn = (day: string): string => {
  const [month, date] = parsed(day);
  const shifted = ((month + 5) % 12) + 1;
  const cut = Math.min(date, shifted === 2 ? 28 : monthLengths[shifted - 1]!);
  // The last day of a month stays the last day of a month.
  const last = date === monthLengths[month - 1] ? (shifted === 2 ? 28 : monthLengths[shifted - 1]!) : cut;
  return `${String(shifted).padStart(2, '0')}-${String(last).padStart(2, '0')}`;
};

/** The window as it falls at a latitude: six months later south of the equator. */
export const windowAt = (window: SeasonalWindow, latitude: number): SeasonalWindow =>
  latitude >= 0 ? window : { ...window, from: sixMonthsOn(window.from), until: sixMonthsOn(window.until) };

/** Whether a day MM-DD lies in a window. */
export const isInWindow = (day: string, window: SeasonalWindow): boolean => {
  for (const one of [day, window.from, window.until]) parsed(one);
  return window.from <= window.until ? day >= window.from && day <= window.until : day >= window.from || day <= window.until;
};

/** A warning that names the window when a day lies outside it, else null. The job is never moved. */
export const windowWarning = (day: string, window: SeasonalWindow): string | null =>
  isInWindow(day, window) ? null : `outside the window "${window.name}", ${window.from} to ${window.until}`;

/** Windows in the order in which they begin, counted from a day on, so that one across the year's end stands where it begins. */
export const sortWindows = (windows: readonly SeasonalWindow[], startOfSeason = '01-01'): readonly SeasonalWindow[] => {
  const later = (day: string): string => (day >= startOfSeason ? `0${day}` : `1${day}`);
  return windows.toSorted((a, b) => (later(a.from) < later(b.from) ? -1 : later(a.from) > later(b.from) ? 1 : 0));
};

/** Usual windows of the northern hemisphere. @source purdue-turf-101, tennessee-2010 */
export const usualWindows = {
  'cool-season seeding': { name: 'cool-season seeding', from: '08-15', until: '09-15' },
  'cool-season renovation': { name: 'cool-season renovation', from: '08-01', until: '09-30' },
  'ryegrass overseed': { name: 'ryegrass overseed, transition zone', from: '09-01', until: '11-30' },
  'ryegrass repeat': { name: 'ryegrass overseed, repeat', from: '12-01', until: '01-31' },
} as const satisfies Readonly<Record<string, SeasonalWindow>>;

/** The seasons in which what is sown into a sward usually takes; none where nobody has printed one. */
export const sowingWindows = (sward: Sward): readonly SeasonalWindow[] => {
  if (isOverseeded(sward)) return [usualWindows['ryegrass overseed'], usualWindows['ryegrass repeat']];
  return seasonOf(sward[0]!.grass) === 'cool' ? [usualWindows['cool-season seeding']] : [];
};
