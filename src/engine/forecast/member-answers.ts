import { blankNotes, type CourseNotes, type CourseTrack } from '#engine/forecast/course-record.ts';
import type { Course } from '#engine/forecast/courses.ts';
import type { Member } from '#engine/forecast/member.ts';
import type { TurfWater } from '#engine/forecast/turf-water.ts';
import type { Workshop } from '#engine/forecast/workshop.ts';
import type { HeatProfile } from '#engine/heat/climate-column.ts';
import { driverStride } from '#engine/recovery/stand-layout.ts';

/** The course of some turf in the member at hand. */
export interface CourseAnswer {
  readonly track: CourseTrack;
  readonly notes: CourseNotes;
  readonly water: TurfWater;
}

/** Something reckoned for one member, and for which. */
interface Kept<Value> {
  readonly value: Value;
  member: number;
}

/**
 * Room for one member's answers, by what they depend on: groups and options that share a floor, water or a whole course find it reckoned
 * already. The room is used again for every member, so that nothing is allocated once it is there.
 */
export interface MemberAnswers {
  /** Day to which water is followed. */
  readonly waterUntil: number;
  /** Begins another member. */
  readonly begin: () => void;
  /** Temperatures of open ground as the first floor comes. */
  readonly settled: (course: Course, reckon: (profile: HeatProfile) => void) => HeatProfile;
  readonly heat: (course: Course, reckon: (crown: Float64Array) => void) => Float64Array;
  readonly water: (course: Course, reckon: (water: TurfWater) => void) => TurfWater;
  readonly openDays: (course: Course, member: Member, reckon: (drivers: Float64Array) => void) => Float64Array;
  readonly course: (course: Course, water: TurfWater, reckon: (answer: CourseAnswer) => void) => CourseAnswer;
}

export const blankTrack = (days: number): CourseTrack => ({
  cover: new Float32Array(days),
  crowns: new Float32Array(days),
  reserve: new Float32Array(days),
  ruts: new Float32Array(days),
  density: new Float32Array(days),
});

/** @param waterUntil day to which anybody asks for water */
export const memberAnswers = ({ scene, window, climate }: Workshop, waterUntil: number): MemberAnswers => {
  const days = scene.period.days.length;
  let member = 0;
  const shelf = <Value>(make: () => Value) => {
    const kept: Kept<Value>[] = [];
    return (number: number, reckon: (value: Value) => void): Value => {
      const here = (kept[number] ??= { value: make(), member: 0 });
      if (here.member !== member) {
        here.member = member;
        reckon(here.value);
      }
      return here.value;
    };
  };
  const profiles = shelf(() => new Float64Array(climate.ground.cells + 1));
  const heats = shelf(() => new Float64Array(window.hours));
  const waters = shelf((): TurfWater => ({ top: new Float64Array(days), airless: new Uint8Array(days) }));
  const skies = shelf(() => new Float64Array(days * driverStride));
  const skiesBeneath = shelf(() => new Float64Array(days * driverStride));
  const tracks: (Kept<CourseAnswer> | undefined)[] = [];
  return {
    waterUntil,
    begin: () => void member++,
    settled: (course, reckon) => profiles(course.settled, reckon),
    heat: (course, reckon) => heats(course.heat, reckon),
    water: (course, reckon) => waters(course.water, reckon),
    // Beneath an overseed the base has light and warmth of its own.
    openDays: (course, { overseed }, reckon) => (overseed === null ? skies : skiesBeneath)(course.sky, reckon),
    course: (course, water, reckon) => {
      const here = (tracks[course.number] ??= {
        value: { track: blankTrack(days), notes: blankNotes(null), water },
        member: 0,
      });
      if (here.member !== member) {
        here.member = member;
        reckon(here.value);
      }
      return here.value;
    },
  };
};
