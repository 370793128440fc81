import type { DayShape, LightPlace } from '#engine/sky/day-shape.ts';
import { dayShape, diffuseOfDay, diffuseOfMonth, spreadOverSteps } from '#engine/sky/day-shape.ts';
import type { Bowl } from '#engine/stands/bowl.ts';
import { binOf, roofPass } from '#engine/stands/horizon.ts';
import type { Horizons } from '#engine/stands/horizon.ts';
import { averageDays } from '#engine/sky/extraterrestrial.ts';

/**
 * Light by cell and day: beam where the sun stands clear of the horizon of its bin, and the sky's diffuse light times the sky view.
 *
 *   radiation(cell) = Σ beam(step)·pass(cell, step) + diffuse·Ψ(cell)
 *
 * Radiation in MJ/m²/d on level turf; times mol per MJ it is the daily light integral.
 */
export type LightMap = {
  readonly days: number;
  readonly count: number;
  /** MJ/m² at [day·count + cell]. */
  readonly radiation: Float32Array;
};

/** One day ready for the hot loop: radiation on open ground and how much of it is diffuse, MJ/m². */
export type LitDay = { readonly shape: DayShape; readonly global: number; readonly diffuse: number };

/** The days of a calendar with their global radiation, split by the daily correlation. */
export const litDays = (shapes: readonly DayShape[], radiation: ArrayLike<number>): readonly LitDay[] =>
  shapes.map((shape, day) => ({ shape, global: radiation[day]!, diffuse: diffuseOfDay(shape, radiation[day]!) }));

/** All steps of all days end to end. */
type Steps = {
  readonly dayStart: Int32Array;
  readonly bin: Int16Array;
  readonly tanAltitude: Float64Array;
  readonly beam: Float64Array;
  readonly diffuse: Float64Array;
};

const stepsOf = (bowl: Bowl, days: readonly LitDay[]): Steps => {
  const dayStart = new Int32Array(days.length + 1);
  days.forEach((day, i) => (dayStart[i + 1] = dayStart[i]! + day.shape.sun.steps));
  const total = dayStart[days.length]!;
  const steps: Steps = {
    dayStart,
    bin: new Int16Array(total),
    tanAltitude: new Float64Array(total),
    beam: new Float64Array(total),
    diffuse: new Float64Array(days.length),
  };
  days.forEach(({ shape, global, diffuse }, day) => {
    const [from, until] = [dayStart[day]!, dayStart[day + 1]!];
    steps.tanAltitude.set(shape.sun.tanAltitude, from);
    steps.diffuse[day] = spreadOverSteps(shape, global, diffuse, steps.beam.subarray(from, until));
    for (let i = from; i < until; i++) steps.bin[i] = binOf(shape.sun.azimuth[i - from]! - bowl.bearing, bowl.horizons.bins);
  });
  return steps;
};

/** Light of every cell on every day. 2,500 cells over a year take about half a second, a second among roofs. */
export const lightMap = (bowl: Bowl, days: readonly LitDay[]): LightMap => {
  const { cells, horizons, skyView } = bowl;
  const steps = stepsOf(bowl, days);
  const radiation = new Float32Array(days.length * cells.count);
  for (let cell = 0; cell < cells.count; cell++)
    for (let day = 0; day < days.length; day++)
      radiation[day * cells.count + cell] = steps.diffuse[day]! * skyView[cell]! + beamOfDay(horizons, cell, steps, day);
  return { days: days.length, count: cells.count, radiation };
};

/** Beam that reaches a cell on a day, MJ/m². */
const beamOfDay = (horizons: Horizons, cell: number, steps: Steps, day: number): number => {
  const { tangent, clearUntil } = horizons;
  const { bin, tanAltitude, beam } = steps;
  const base = cell * horizons.bins;
  const until = steps.dayStart[day + 1]!;
  let sum = 0;
  for (let i = steps.dayStart[day]!; i < until; i++) {
    const at = base + bin[i]!;
    const high = tanAltitude[i]!;
    if (!(high > tangent[at]!)) continue;
    sum += clearUntil === null || high < clearUntil[at]! ? beam[i]! : beam[i]! * roofPass(horizons, at, high);
  }
  return sum;
};

/** One day of a map, by cell. */
export const dayOfMap = (map: LightMap, day: number): Float32Array =>
  map.radiation.subarray(day * map.count, (day + 1) * map.count);

/**
 * Means by month from a map of single days.
 * @param dates of the map's days, `YYYY-MM-DD`
 * @returns twelve maps, January first, MJ/m²/d by cell; NaN for a month without days
 */
export const monthlyMeans = (map: LightMap, dates: readonly string[]): readonly Float64Array[] => {
  const sums = Array.from({ length: 12 }, () => new Float64Array(map.count));
  const days = new Float64Array(12);
  dates.forEach((date, day) => {
    const month = Number(date.slice(5, 7)) - 1;
    days[month]!++;
    const values = dayOfMap(map, day);
    for (let cell = 0; cell < map.count; cell++) sums[month]![cell]! += values[cell]!;
  });
  return sums.map((sum, month) => sum.map((value) => value / days[month]!));
};

/**
 * Mean light by month and cell from a climate's monthly means alone: each month is its average day, split by the monthly
 * correlation.
 * @param radiation twelve means of global radiation, MJ/m²/d; @param year any common year, for the calendar
 * @returns twelve maps, January first, MJ/m²/d by cell
 */
export const climateLight = (
  bowl: Bowl,
  place: LightPlace,
  radiation: readonly number[],
  year = 2027,
  stepMinutes = 10,
): readonly Float64Array[] => {
  const days = averageDates(year).map((date, month): LitDay => {
    const shape = dayShape(date, place, stepMinutes);
    return { shape, global: radiation[month]!, diffuse: diffuseOfMonth(shape, radiation[month]!) };
  });
  const map = lightMap(bowl, days);
  return days.map((_, month) => Float64Array.from(dayOfMap(map, month)));
};

/** The average day of each month as a date of the calendar. */
export const averageDates = (year: number): readonly string[] =>
  averageDays.map((n) => new Date(Date.UTC(year, 0, n)).toISOString().slice(0, 10));
