import { clearnessIndex, diffuseShareOfDay, diffuseShareOfHour, diffuseShareOfMonth } from '#engine/sky/diffuse-fraction.ts';
import { dailyExtraterrestrial, extraterrestrialBetween, normalExtraterrestrial } from '#engine/sky/extraterrestrial.ts';
import { diffuseShareInHour, globalShareInHour, shareOut } from '#engine/sky/hour-from-day.ts';
import type { SolarDay } from '#engine/sun/solar-day.ts';
import { solarDay } from '#engine/sun/solar-day.ts';

/**
 * Everything about a day's light that does not depend on its weather, worked out once: the sun's steps, the light above the air,
 * how global and diffuse spread over steps and over the 24 hours of the venue's clock. Weather then costs one split a day.
 */
export type DayShape = {
  readonly sun: SolarDay;
  /** H0, MJ/m²/d. */
  readonly extraterrestrial: number;
  /** Above the air straight at the sun, MJ/m² in an hour. */
  readonly normal: number;
  /** Share of the day's global radiation by step; adds to 1. */
  readonly globalByStep: Float64Array;
  /** Share of the day's diffuse radiation by step; adds to 1. */
  readonly diffuseByStep: Float64Array;
  /** The same by clock hour, 24 each. */
  readonly globalByHour: Float64Array;
  readonly diffuseByHour: Float64Array;
  /** Above the air by clock hour, MJ/m². */
  readonly extraterrestrialByHour: Float64Array;
  /** For each step the first clock hour it touches, and how much of the step lies in that hour; the rest lies in the next. */
  readonly hourOfStep: Int8Array;
  readonly shareInHour: Float64Array;
};

export type LightPlace = { readonly latitude: number; readonly longitude: number; readonly timeZone: string };

/**
 * @param date day of the venue's calendar; @param stepMinutes longest sun step, at most 60; @param solarConstant W/m²
 */
export const dayShape = (date: string, place: LightPlace, stepMinutes = 10, solarConstant = 1367): DayShape => {
  if (stepMinutes > 60) throw new RangeError(`sun step: ${stepMinutes} min is longer than an hour`);
  const sun = solarDay(date, place, stepMinutes);
  const normal = normalExtraterrestrial(sun.dayOfYear, solarConstant);
  const globalByStep = shareOut(sun.hourAngle.map((angle) => globalShareInHour(angle, sun.sunsetHourAngle)));
  const diffuseByStep = shareOut(sun.hourAngle.map((angle) => diffuseShareInHour(angle, sun.sunsetHourAngle)));
  const hourOfStep = new Int8Array(sun.steps);
  const shareInHour = new Float64Array(sun.steps);
  const globalByHour = new Float64Array(24);
  const diffuseByHour = new Float64Array(24);
  for (let i = 0; i < sun.steps; i++) {
    const start = sun.noonClock + sun.hourAngle[i]! / 15 - sun.stepHours / 2;
    const hour = Math.floor(start);
    hourOfStep[i] = ((hour % 24) + 24) % 24;
    shareInHour[i] = Math.min(1, (hour + 1 - start) / sun.stepHours);
    const next = (hourOfStep[i]! + 1) % 24;
    globalByHour[hourOfStep[i]!]! += shareInHour[i]! * globalByStep[i]!;
    globalByHour[next]! += (1 - shareInHour[i]!) * globalByStep[i]!;
    diffuseByHour[hourOfStep[i]!]! += shareInHour[i]! * diffuseByStep[i]!;
    diffuseByHour[next]! += (1 - shareInHour[i]!) * diffuseByStep[i]!;
  }
  return {
    sun,
    extraterrestrial: dailyExtraterrestrial(place.latitude, sun.declination, normal),
    normal: 0.0036 * normal,
    globalByStep,
    diffuseByStep,
    globalByHour,
    diffuseByHour,
    extraterrestrialByHour: aboveTheAirByHour(place.latitude, sun, normal),
    hourOfStep,
    shareInHour,
  };
};

/** Above the air by clock hour; an hour angle beyond 180° belongs to the other side of midnight. */
const aboveTheAirByHour = (latitude: number, sun: SolarDay, normal: number): Float64Array => {
  const hours = new Float64Array(24);
  for (let hour = 0; hour < 24; hour++) {
    for (const turn of [-360, 0, 360]) {
      const from = 15 * (hour - sun.noonClock) + turn;
      const [first, last] = [Math.max(-180, from), Math.min(180, from + 15)];
      if (last > first) hours[hour]! += extraterrestrialBetween(latitude, sun.declination, first, last, normal);
    }
  }
  return hours;
};

/** Diffuse part of a day's global radiation, MJ/m², by the daily correlation. */
export const diffuseOfDay = (shape: DayShape, global: number): number =>
  global * diffuseShareOfDay(clearnessIndex(global, shape.extraterrestrial), shape.sun.sunsetHourAngle);

/** Diffuse part of a month's mean day, MJ/m², by the monthly correlation; the shape is that of the month's average day. */
export const diffuseOfMonth = (shape: DayShape, global: number): number =>
  global * diffuseShareOfMonth(clearnessIndex(global, shape.extraterrestrial), shape.sun.sunsetHourAngle);

/**
 * Spreads a day's global radiation over its steps as beam on level ground; what is not beam is diffuse. Where the diffuse share
 * of a step would exceed the global one, all of it is diffuse. Beam and diffuse together are the global radiation of the day.
 * @param global MJ/m²/d; @param diffuse MJ/m²/d; @param beam filled, MJ/m² by step
 * @returns diffuse of the whole day after that limit, MJ/m². A day whose sun does not rise is all diffuse.
 */
export const spreadOverSteps = (shape: DayShape, global: number, diffuse: number, beam: Float64Array): number => {
  let direct = 0;
  for (let i = 0; i < shape.sun.steps; i++) {
    beam[i] = Math.max(0, global * shape.globalByStep[i]! - diffuse * shape.diffuseByStep[i]!);
    direct += beam[i]!;
  }
  // The limit can only raise beam; what it raised is taken back evenly so that the day closes.
  const scale = direct > 0 ? (global - diffuse) / direct : 0;
  for (let i = 0; i < shape.sun.steps; i++) beam[i]! *= scale;
  return direct > 0 ? diffuse : global;
};

/**
 * The same over the 24 hours of the venue's clock, from a daily sum.
 * @param global MJ/m²/d; @param beam @param diffuse filled, MJ/m² in the hour on level ground
 */
export const spreadOverHours = (shape: DayShape, global: number, beam: Float64Array, diffuse: Float64Array): void => {
  const sky = diffuseOfDay(shape, global);
  let direct = 0;
  for (let h = 0; h < 24; h++) {
    beam[h] = Math.max(0, global * shape.globalByHour[h]! - sky * shape.diffuseByHour[h]!);
    direct += beam[h]!;
  }
  const scale = direct > 0 ? (global - sky) / direct : 0;
  for (let h = 0; h < 24; h++) {
    beam[h]! *= scale;
    diffuse[h] = Math.max(0, global * shape.globalByHour[h]! - beam[h]!);
  }
  // Twilight alone: all of it about noon.
  if (shape.sun.steps === 0) diffuse[((Math.floor(shape.sun.noonClock) % 24) + 24) % 24] = global;
};

/**
 * From measured hourly global radiation: each hour split by the hourly correlation.
 * @param globalByHour 24 clock hours, MJ/m²; @param lowestSine floor under the sine of the altitude where clearness is formed
 * @param beam @param diffuse filled, MJ/m² in the hour on level ground; both add to the global radiation of the hour
 */
export const splitHours = (
  shape: DayShape,
  globalByHour: ArrayLike<number>,
  lowestSine: number,
  beam: Float64Array,
  diffuse: Float64Array,
): void => {
  for (let h = 0; h < 24; h++) {
    const global = Math.max(0, globalByHour[h]!);
    const above = shape.extraterrestrialByHour[h]!;
    const k = clearnessIndex(global, Math.max(above, lowestSine * shape.normal));
    diffuse[h] = above > 0 ? global * diffuseShareOfHour(k) : global;
    beam[h] = global - diffuse[h]!;
  }
};
