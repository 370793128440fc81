/** One watering of young sod. */
export interface Watering {
  /** d since laying */
  readonly day: number;
  /** hour of the day, 0–23 */
  readonly hour: number;
  /** m of water */
  readonly depth: number;
}

/** A stretch of days after laying: how often it is watered and how much of the day's evaporation is given back. */
interface WaterStage {
  readonly untilDay: number;
  readonly hours: readonly number[];
  readonly share: number;
}

/** Little and often at first, deeper and rarer as it roots. Our assumption. */
const stages: readonly WaterStage[] = [
  { untilDay: 7, hours: [6, 10, 13, 16], share: 1.2 },
  { untilDay: 14, hours: [6, 13], share: 1.1 },
  { untilDay: 21, hours: [6], share: 1 },
];

/** m: sod is wetted through on the day it is laid, and never gets less than this on a dry day after. */
const firstDay = 0.012;
const leastDay = 0.003;

/**
 * The waterings of young sod, each a job: every day for three weeks or until the last day asked for. Rain of the day is taken off, but
 * the first day is always watered.
 * @param evaporation m a day from the day of laying @param rain m a day @param days how many days, at most those given
 */
export const youngSodWaterings = (evaporation: ArrayLike<number>, rain: ArrayLike<number>, days: number): readonly Watering[] => {
  const waterings: Watering[] = [];
  const last = Math.min(days, evaporation.length, rain.length);
  for (let day = 0; day < last; day++) {
    const stage = stages.find((one) => day < one.untilDay);
    if (!stage) break;
    const dry = Math.max(leastDay, evaporation[day]! * stage.share);
    const wanted = day === 0 ? Math.max(firstDay, dry) : Math.max(0, dry - rain[day]!);
    if (wanted === 0) continue;
    for (const hour of stage.hours) waterings.push({ day, hour, depth: wanted / stage.hours.length });
  }
  return waterings;
};

/** Water for a watering on an area, m³. */
export const waterVolume = (watering: Watering, area: number): number => watering.depth * area;
