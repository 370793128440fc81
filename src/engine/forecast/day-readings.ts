import type { Course } from '#engine/forecast/courses.ts';
import type { CourseAnswer } from '#engine/forecast/member-answers.ts';
import type { Member } from '#engine/forecast/member.ts';
import type { Workshop } from '#engine/forecast/workshop.ts';
import { hardnessEstimate, hardnessEstimateSettings } from '#engine/wear/hardness-estimate.ts';

/** What instruments would read in every zone and member, mean over its turf. */
export interface DayReadings {
  readonly zones: number;
  readonly days: number;
  /** By zone, at [member·days + day]: g of the hammer, and m³/m³ in the top 75 mm. */
  readonly hardness: readonly Float32Array[];
  readonly water: readonly Float32Array[];
  /** °C at the crowns, mean of the covered hours, at [member·zones + zone]; 0 where never covered. */
  readonly crowns: Float64Array;
}

export const openDayReadings = ({ scene }: Workshop, members: number): DayReadings => {
  const days = scene.period.days.length;
  const byZone = (): Float32Array[] => scene.zones.map(() => new Float32Array(members * days));
  return {
    zones: scene.zones.length,
    days,
    hardness: byZone(),
    water: byZone(),
    crowns: new Float64Array(members * scene.zones.length),
  };
};

/** Adds one member's way of some turf. */
export const countReadings = (
  readings: DayReadings,
  { loads, profile }: Workshop,
  index: number,
  course: Course,
  { track, water, notes }: CourseAnswer,
  { values }: Member,
): void => {
  const settings = hardnessEstimateSettings(values);
  const porosity = profile.saturated[0]! / profile.thickness[0]!;
  const { days, zones } = readings;
  for (let day = 0; day < days; day++) {
    const wet = water.top[day]!;
    const hard = hardnessEstimate(track.density[day]!, loads.ground.bulkDensity, wet / porosity, track.cover[day]!, settings);
    course.zones.forEach((zone, place) => {
      const share = course.shares[place]!;
      readings.hardness[zone]![index * days + day]! += share * hard;
      readings.water[zone]![index * days + day]! += share * wet;
    });
  }
  if (notes.crownHours > 0)
    course.zones.forEach((zone, place) => {
      readings.crowns[index * zones + zone]! += (course.shares[place]! * notes.crownSum) / notes.crownHours;
    });
};
