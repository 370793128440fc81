import { courseAnswer, courseInFull } from '#engine/forecast/course.ts';
import type { CourseNotes, CourseTrack } from '#engine/forecast/course-record.ts';
import type { Course } from '#engine/forecast/courses.ts';
import { memberAnswers, type MemberAnswers } from '#engine/forecast/member-answers.ts';
import type { Member } from '#engine/forecast/member.ts';
import { tolerancesOf } from '#engine/forecast/tolerances.ts';
import type { TurfWater } from '#engine/forecast/turf-water.ts';
import type { Workshop } from '#engine/forecast/workshop.ts';
import { causes } from '#engine/injury/causes.ts';

/** Everything the members say about every zone and group, one number a member and day. */
export interface Tally {
  readonly members: number;
  readonly days: number;
  /** By zone: mean over its turf, at [member·days + day]. */
  readonly cover: readonly Float64Array[];
  readonly crowns: readonly Float64Array[];
  readonly reserve: readonly Float64Array[];
  /** By zone: the deepest of its groups, m. */
  readonly ruts: readonly Float64Array[];
  /** By group and member: live cover and crowns at two mornings, at [member·groups + group]. */
  readonly groupAfter: Float32Array;
  readonly groupHome: Float32Array;
}

/** The usual season in detail. */
export interface UsualCourse {
  /** By group. */
  readonly tracks: readonly CourseTrack[];
  readonly notes: readonly CourseNotes[];
  readonly water: readonly TurfWater[];
}

/** The usual season, every group in full. */
export const usualCourse = (shop: Workshop, member: Member): UsualCourse => {
  const days = shop.scene.period.days.length;
  const tolerances = tolerancesOf(member);
  const answers = memberAnswers(shop, days);
  answers.begin();
  const wishes = { losses: true, keep: null };
  const found = shop.courses.map((_, at) => courseInFull(shop, at, member, tolerances, answers, wishes));
  const byGroup = Array.from(shop.courseOf, (at) => found[at]!);
  return {
    tracks: byGroup.map((answer) => answer.track),
    notes: byGroup.map((answer) => answer.notes),
    water: byGroup.map((answer) => answer.water),
  };
};

export const openTally = (shop: Workshop, members: number): Tally => {
  const days = shop.scene.period.days.length;
  const zones = (): Float64Array[] => shop.scene.zones.map(() => new Float64Array(members * days));
  const groups = shop.scene.groups.length;
  return {
    members,
    days,
    cover: zones(),
    crowns: zones(),
    reserve: zones(),
    ruts: zones(),
    groupAfter: new Float32Array(members * groups),
    groupHome: new Float32Array(members * groups),
  };
};

/** The days whose evenings stand for "when the last layer is off" by zone, and for the morning of the home date. */
export interface Marks {
  readonly after: readonly number[];
  readonly home: number;
}

/** Adds one member's way of some turf to the tally of every zone and group that goes it. */
export const count = (tally: Tally, shop: Workshop, member: number, course: Course, track: CourseTrack, marks: Marks): void => {
  const { days } = tally;
  const base = member * days;
  course.zones.forEach((zone, place) => {
    const weight = course.shares[place]!;
    const [cover, crowns] = [tally.cover[zone]!, tally.crowns[zone]!];
    const [reserve, ruts] = [tally.reserve[zone]!, tally.ruts[zone]!];
    for (let day = 0; day < days; day++) {
      cover[base + day]! += weight * track.cover[day]!;
      crowns[base + day]! += weight * track.crowns[day]!;
      reserve[base + day]! += weight * track.reserve[day]!;
      if (track.ruts[day]! > ruts[base + day]!) ruts[base + day] = track.ruts[day]!;
    }
  });
  const groups = shop.scene.groups.length;
  for (const at of course.groups) {
    tally.groupAfter[member * groups + at] = track.cover[marks.after[shop.scene.groups[at]!.zone]!]!;
    tally.groupHome[member * groups + at] = track.cover[marks.home]!;
  }
};

const freshAnswers = (shop: Workshop): MemberAnswers => {
  const answers = memberAnswers(shop, shop.lastBusy);
  answers.begin();
  return answers;
};

/** Runs one drawn member through every course into the tally. @param answers room begun for this member; new where left out */
export const countMember = (
  tally: Tally,
  shop: Workshop,
  index: number,
  member: Member,
  marks: Marks,
  answers: MemberAnswers = freshAnswers(shop),
): void => {
  const tolerances = tolerancesOf(member);
  shop.courses.forEach((course, at) => {
    count(tally, shop, index, course, courseAnswer(shop, at, member, tolerances, answers).track, marks);
  });
};

/** Logarithmic leaf loss of a zone by cause between two evenings, area-weighted over its groups. */
export const lossByCause = (shop: Workshop, usual: UsualCourse, zone: number, from: number, until: number): number[] => {
  const { groups, zoneArea } = shop.scene;
  return causes.map((_, cause) =>
    groups.reduce((sum, group, at) => {
      if (group.zone !== zone) return sum;
      const lost = usual.notes[at]!.lost!;
      const before = from < 0 ? 0 : lost[from * causes.length + cause]!;
      return sum + ((lost[until * causes.length + cause]! - before) * group.area) / zoneArea[zone]!;
    }, 0),
  );
};
