import type { DayShape } from '#engine/sky/day-shape.ts';
import type { Bowl } from '#engine/stands/bowl.ts';
import { beamPass, binOf } from '#engine/stands/horizon.ts';

/**
 * Cells with much the same light are forecast together. A cell is described by the beam it gets before and after noon on each
 * of some days and by its view of the sky; classes are formed by moving cells to the nearest class mean, starting from bands of
 * total light. Nothing depends on the order of the cells, and a bowl that is its own mirror image gets classes that are.
 */
export type ShadeClasses = {
  readonly count: number;
  /** Class of each cell; class 0 is the brightest. */
  readonly of: Int16Array;
  /** Mean sky view of each class. */
  readonly skyView: Float64Array;
  /** Turf in each class, m². */
  readonly area: Float64Array;
};

/** What a class gets of each hour's beam on each day, ready for a forecast. */
export type ClassLight = {
  readonly days: number;
  readonly classes: number;
  /** Share of the beam of the clock hour that arrives, at [(day·classes + class)·24 + hour]; 0 where the sun is down. */
  readonly beam: Float64Array;
  /** Sky view by class. */
  readonly sky: Float64Array;
};

/**
 * @param shapes the days that describe the year or the season looked at, such as twelve average days
 * @param most how many classes at most
 */
export const shadeClasses = (bowl: Bowl, shapes: readonly DayShape[], most = 12): ShadeClasses => {
  const features = describe(bowl, shapes);
  const { count } = bowl.cells;
  const total = Float64Array.from({ length: count }, (_, cell) => sumOf(features, cell));
  let of = bandsOfLight(total, bowl.cells.area, most);
  for (let round = 0; round < 40; round++) {
    const means = classMeans(features, of, bowl.cells.area, most);
    const moved = nearestMeans(features, means, most);
    const settled = moved.every((now, cell) => now === of[cell]);
    of = moved;
    if (settled) break;
  }
  return numbered(bowl, of, total, most);
};

type Features = { readonly width: number; readonly values: Float64Array };

/**
 * Two numbers a day (beam before and after noon over the mean day's light above the air, halved: half the light of a
 * middling day is beam) and the sky view, weighted to count as the other half.
 */
const describe = (bowl: Bowl, shapes: readonly DayShape[]): Features => {
  const width = 2 * shapes.length + 1;
  const { count } = bowl.cells;
  const values = new Float64Array(count * width);
  const mean = shapes.reduce((sum, shape) => sum + shape.extraterrestrial, 0) / shapes.length || 1;
  const skyWeight = 0.5 * Math.sqrt(shapes.reduce((sum, shape) => sum + (shape.extraterrestrial / mean) ** 2, 0));
  const bins = binsOf(bowl, shapes);
  for (let cell = 0; cell < count; cell++) {
    let first = 0;
    for (let day = 0; day < shapes.length; day++) {
      const { sun, globalByStep, extraterrestrial } = shapes[day]!;
      for (let i = 0; i < sun.steps; i++) {
        const at = cell * width + 2 * day + (i < sun.steps / 2 ? 0 : 1);
        const pass = beamPass(bowl.horizons, cell, bins[first + i]!, sun.tanAltitude[i]!);
        values[at]! += (0.5 * globalByStep[i]! * extraterrestrial * pass) / mean;
      }
      first += sun.steps;
    }
  }
  for (let cell = 0; cell < count; cell++) values[cell * width + width - 1] = skyWeight * bowl.skyView[cell]!;
  return { width, values };
};

const sumOf = ({ width, values }: Features, cell: number): number => {
  let sum = 0;
  for (let i = 0; i < width; i++) sum += values[cell * width + i]!;
  return sum;
};

/** Bands of equal turf by total light; equal light is never torn apart. */
const bandsOfLight = (total: Float64Array, area: Float64Array, most: number): Int16Array => {
  const order = Array.from(total.keys()).sort((a, b) => total[a]! - total[b]! || a - b);
  const whole = area.reduce((sum, value) => sum + value, 0);
  const limits: number[] = [];
  let passed = 0;
  for (const cell of order) {
    if (passed >= (whole * (limits.length + 1)) / most && limits.length < most - 1) limits.push(total[cell]!);
    passed += area[cell]!;
  }
  return Int16Array.from(total, (light) => limits.reduce((band, limit) => (light > limit - 1e-9 ? band + 1 : band), 0));
};

const classMeans = ({ width, values }: Features, of: Int16Array, area: Float64Array, most: number): Float64Array => {
  const means = new Float64Array(most * width);
  const weight = new Float64Array(most);
  for (let cell = 0; cell < of.length; cell++) {
    weight[of[cell]!]! += area[cell]!;
    for (let i = 0; i < width; i++) means[of[cell]! * width + i]! += values[cell * width + i]! * area[cell]!;
  }
  for (let group = 0; group < most; group++)
    for (let i = 0; i < width; i++)
      means[group * width + i] = weight[group]! > 0 ? means[group * width + i]! / weight[group]! : NaN;
  return means;
};

/** The nearest mean of each cell; within rounding the lowest number wins. Empty classes (NaN) attract nothing. */
const nearestMeans = ({ width, values }: Features, means: Float64Array, most: number): Int16Array => {
  const of = new Int16Array(values.length / width);
  for (let cell = 0; cell < of.length; cell++) {
    let best = Infinity;
    for (let group = 0; group < most; group++) {
      let distance = 0;
      for (let i = 0; i < width; i++) distance += (values[cell * width + i]! - means[group * width + i]!) ** 2;
      if (distance < best - 1e-12) {
        best = distance;
        of[cell] = group;
      }
    }
  }
  return of;
};

/** Drops empty classes and numbers the rest from the brightest. */
const numbered = (bowl: Bowl, of: Int16Array, total: Float64Array, most: number): ShadeClasses => {
  const { area } = bowl.cells;
  const turf = new Float64Array(most);
  const light = new Float64Array(most);
  const sky = new Float64Array(most);
  of.forEach((group, cell) => {
    turf[group]! += area[cell]!;
    light[group]! += area[cell]! * total[cell]!;
    sky[group]! += area[cell]! * bowl.skyView[cell]!;
  });
  const kept = [...turf.keys()].filter((group) => turf[group]! > 0);
  kept.sort((a, b) => light[b]! / turf[b]! - light[a]! / turf[a]!);
  return {
    count: kept.length,
    of: of.map((group) => kept.indexOf(group)),
    skyView: Float64Array.from(kept, (group) => sky[group]! / turf[group]!),
    area: Float64Array.from(kept, (group) => turf[group]!),
  };
};

/**
 * The light of each class by day and clock hour: the mean over its cells, weighted by their turf and, within the hour, by the
 * sine of the sun's altitude. The beam of an hour on open ground times this, and the diffuse times the sky view, is the light of
 * the class.
 */
export const classLight = (bowl: Bowl, classes: ShadeClasses, shapes: readonly DayShape[]): ClassLight => {
  const beam = new Float64Array(shapes.length * classes.count * 24);
  const passed = passByStep(bowl, classes, shapes);
  const total = passed.length / classes.count;
  const above = new Float64Array(24);
  let first = 0;
  shapes.forEach((shape, day) => {
    above.fill(0);
    const base = day * classes.count * 24;
    for (let i = 0; i < shape.sun.steps; i++) {
      const hour = shape.hourOfStep[i]!;
      const next = (hour + 1) % 24;
      const here = shape.sun.sinAltitude[i]! * shape.shareInHour[i]!;
      const there = shape.sun.sinAltitude[i]! * (1 - shape.shareInHour[i]!);
      above[hour]! += here;
      above[next]! += there;
      for (let group = 0; group < classes.count; group++) {
        const pass = passed[group * total + first + i]!;
        beam[base + group * 24 + hour]! += here * pass;
        beam[base + group * 24 + next]! += there * pass;
      }
    }
    for (let group = 0; group < classes.count; group++)
      for (let hour = 0; hour < 24; hour++)
        beam[base + group * 24 + hour] = above[hour]! > 0 ? Math.min(1, beam[base + group * 24 + hour]! / above[hour]!) : 0;
    first += shape.sun.steps;
  });
  return { days: shapes.length, classes: classes.count, beam, sky: classes.skyView };
};

/**
 * Share of beam that arrives, at [class·steps + step] with the steps of all days end to end.
 *
 * The steps of one bin are put in the order of the sun's height: what a cell passes is then a run of steps, found by halving, so that the
 * cost does not grow with cells times steps.
 */
const passByStep = (bowl: Bowl, classes: ShadeClasses, shapes: readonly DayShape[]): Float64Array => {
  const { cells, horizons } = bowl;
  const { tangent, clearUntil, bandStart, bandLow, bandHigh, bandPass } = horizons;
  const { order, start, height } = stepsByBin(bowl, shapes);
  const total = order.length;
  // Change of the share from each step to the next higher one of its bin; one more place at the end of every bin.
  const width = total + horizons.bins;
  const change = new Float64Array(width * classes.count);
  for (let cell = 0; cell < cells.count; cell++) {
    const share = cells.area[cell]! / classes.area[classes.of[cell]!]!;
    const base = classes.of[cell]! * width;
    for (let bin = 0; bin < horizons.bins; bin++) {
      const [from, until] = [start[bin]!, start[bin + 1]!];
      if (from === until) continue;
      const at = cell * horizons.bins + bin;
      const here = base + bin;
      const clear = firstAbove(height, from, until, tangent[at]!, false);
      change[here + clear]! += share;
      if (clearUntil === null || clear === until || height[until - 1]! < clearUntil[at]!) continue;
      let next = clear;
      for (let band = bandStart[at]!; band < bandStart[at + 1]!; band++) {
        const low = Math.max(next, firstAbove(height, from, until, bandLow[band]!, true));
        const high = Math.max(low, firstAbove(height, from, until, bandHigh[band]!, false));
        change[here + low]! -= share * (1 - bandPass[band]!);
        change[here + high]! += share * (1 - bandPass[band]!);
        next = high;
      }
    }
  }
  const passed = new Float64Array(total * classes.count);
  for (let group = 0; group < classes.count; group++)
    for (let bin = 0; bin < horizons.bins; bin++) {
      let sum = 0;
      for (let i = start[bin]!; i < start[bin + 1]!; i++) {
        sum += change[group * width + bin + i]!;
        passed[group * total + order[i]!] = Math.max(0, sum);
      }
    }
  return passed;
};

/** First place from `from` to `until` whose height is above a value, or at least it; `until` where there is none. */
const firstAbove = (height: Float64Array, from: number, until: number, value: number, orAt: boolean): number => {
  let [low, high] = [from, until];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (orAt ? height[middle]! >= value : height[middle]! > value) high = middle;
    else low = middle + 1;
  }
  return low;
};

/** All steps of all days in the order of their bin and, within it, of the sun's height (its tangent). */
const stepsByBin = (bowl: Bowl, shapes: readonly DayShape[]) => {
  const { bins } = bowl.horizons;
  const bin = binsOf(bowl, shapes);
  const tanAltitude = Float64Array.from(shapes.flatMap(({ sun }) => [...sun.tanAltitude]));
  const order = Uint32Array.from(bin.keys()).sort((a, b) => bin[a]! - bin[b]! || tanAltitude[a]! - tanAltitude[b]! || a - b);
  const start = new Int32Array(bins + 1);
  for (const one of bin) start[one + 1]!++;
  for (let i = 0; i < bins; i++) start[i + 1]! += start[i]!;
  return { order, start, height: Float64Array.from(order, (step) => tanAltitude[step]!) };
};

/** The bin of the sun at every step, the steps of all days end to end. */
const binsOf = (bowl: Bowl, shapes: readonly DayShape[]): Int16Array =>
  Int16Array.from(
    shapes.flatMap(({ sun }) => Array.from(sun.azimuth, (angle) => binOf(angle - bowl.bearing, bowl.horizons.bins))),
  );
