import { openClimate, startClimate, straightProfile } from '#engine/heat/climate-column.ts';
import { runClimate } from '#engine/heat/climate.ts';
import type { HourlyWeather } from '#engine/heat/climate-column.ts';
import type { ClimateSettings } from '#engine/heat/climate-settings.ts';
import { layOut, uncovered } from '#engine/heat/floor.ts';
import type { FloorCare } from '#engine/heat/floor.ts';
import type { Ground } from '#engine/heat/ground.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';

export interface DayQuestion {
  readonly coverings: readonly Covering[];
  /** 24 hours of one day, from midnight. */
  readonly day: HourlyWeather;
  readonly ground: Ground;
  readonly settings: ClimateSettings;
  readonly wetness: number;
  /** Actions by hour of the day, `from` and `until` 0–24. */
  readonly care: readonly FloorCare[];
  readonly skyView: number;
  /** Which day of lying is shown: 1 is the first day after laying at midnight. */
  readonly dayOfLying: number;
}

export interface DayUnderCovering {
  readonly coveringId: string;
  /** °C of the crowns at the end of each hour. */
  readonly hourly: readonly number[];
  readonly mean: number;
  readonly maximum: number;
}

const bareDays = 12;

const repeated = (values: Float64Array, days: number): Float64Array => {
  const all = new Float64Array(values.length * days);
  for (let day = 0; day < days; day++) all.set(values, day * values.length);
  return all;
};

/**
 * The same day under each covering: the turf lies bare through many such days until it has settled, then is covered at
 * midnight, and the asked day of lying is read.
 * @throws RangeError unless the day has 24 hours and `dayOfLying` is 1 or more.
 */
export const crownTemperaturesForDay = (question: DayQuestion): DayUnderCovering[] => {
  const { day, ground, settings, wetness, dayOfLying } = question;
  if (day.air.length !== 24) throw new RangeError('day: must have 24 hours');
  if (!(dayOfLying >= 1)) throw new RangeError('dayOfLying: must be 1 or more');
  const weather: HourlyWeather = {
    air: repeated(day.air, bareDays + dayOfLying),
    sun: repeated(day.sun, bareDays + dayOfLying),
    wind: repeated(day.wind, bareDays + dayOfLying),
    vapour: repeated(day.vapour, bareDays + dayOfLying),
    cloud: repeated(day.cloud, bareDays + dayOfLying),
  };
  const mean = day.air.reduce((sum, air) => sum + air, 0) / 24;
  const start = straightProfile(ground, mean, ground.deepTemperature ?? mean);
  const crown = new Float64Array(weather.air.length);
  const laid = 24 * bareDays;
  const care = Array.from({ length: dayOfLying }, (_, shift) =>
    question.care.map((act) => ({ ...act, from: act.from + 24 * shift, until: act.until + 24 * shift })),
  ).flat();
  return question.coverings.map((covering) => {
    const climate = openClimate(ground, settings);
    startClimate(climate, start);
    const bare = layOut({ ...uncovered, skyView: question.skyView }, ground, settings);
    runClimate(climate, bare, weather, 0, laid, crown, wetness);
    const plan = { ...uncovered, stack: [covering], care, steps: 24 * dayOfLying, skyView: question.skyView };
    runClimate(climate, layOut(plan, ground, settings), weather, laid, crown.length, crown, wetness);
    const hourly = Array.from(crown.subarray(crown.length - 24));
    return {
      coveringId: covering.id,
      hourly,
      mean: hourly.reduce((sum, value) => sum + value, 0) / 24,
      maximum: Math.max(...hourly),
    };
  });
};
