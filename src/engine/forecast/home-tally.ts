import type { Workshop } from '#engine/forecast/workshop.ts';
import type { CourseTrack } from '#engine/forecast/course-record.ts';
import type { Course } from '#engine/forecast/courses.ts';

/** What the members of one option say about the eve of the home date, at [member·zones + zone]. */
export interface HomeTally {
  readonly zones: number;
  readonly cover: Float64Array;
  readonly ruts: Float64Array;
  /** m² of the zone whose group is not ready. */
  readonly replace: Float64Array;
}

export const openHomeTally = (zones: number, members: number): HomeTally => ({
  zones,
  cover: new Float64Array(members * zones),
  ruts: new Float64Array(members * zones),
  replace: new Float64Array(members * zones),
});

/** Adds one member's way of some turf. */
export const countHome = (
  tally: HomeTally,
  { scene }: Workshop,
  member: number,
  course: Course,
  track: CourseTrack,
  home: number,
): void => {
  const short = track.cover[home]! < scene.question.venue.rules.coverNeeded - 1e-6;
  course.zones.forEach((zone, place) => {
    const at = member * tally.zones + zone;
    const share = course.shares[place]!;
    tally.cover[at]! += share * track.cover[home]!;
    if (track.ruts[home]! > tally.ruts[at]!) tally.ruts[at] = track.ruts[home]!;
    if (short) tally.replace[at]! += share * scene.zoneArea[zone]!;
  });
};

/** Whether a zone is ready in a member. */
export const readyHome = (tally: HomeTally, { scene }: Workshop, member: number, zone: number): boolean => {
  const { rules } = scene.question.venue;
  const at = member * tally.zones + zone;
  return tally.cover[at]! >= rules.coverNeeded - 1e-6 && tally.ruts[at]! <= rules.rutAllowed + 1e-9;
};

/** One zone's numbers over the members. */
export const ofZone = (values: Float64Array, tally: HomeTally, zone: number): Float64Array =>
  Float64Array.from({ length: values.length / tally.zones }, (_, member) => values[member * tally.zones + zone]!);
