import { causes } from '#engine/injury/causes.ts';
import { runCourse } from '#engine/forecast/course.ts';
import { blankNotes, type CourseNotes, type CourseTrack } from '#engine/forecast/course-record.ts';
import { tolerancesOf } from '#engine/forecast/tolerances.ts';
import { waterOf, type Workshop } from '#engine/forecast/workshop.ts';
import type { Member } from '#engine/forecast/member.ts';
import type { RootZoneCourse } from '#engine/water/root-zone-course.ts';

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
  readonly water: readonly RootZoneCourse[];
}

const trackOf = (days: number): CourseTrack => ({
  cover: new Float32Array(days),
  crowns: new Float32Array(days),
  reserve: new Float32Array(days),
  ruts: new Float32Array(days),
  density: new Float32Array(days),
});

/** Root-zone water of every group; groups that share their exposure share it. */
export const watersOf = (shop: Workshop, member: Member): readonly RootZoneCourse[] => {
  const known = new Map<unknown, RootZoneCourse>();
  return shop.scene.groups.map((group, at) => {
    let water = known.get(group.exposure);
    if (water === undefined) {
      water = waterOf(shop, at, member);
      known.set(group.exposure, water);
    }
    return water;
  });
};

export const usualCourse = (shop: Workshop, member: Member): UsualCourse => {
  const days = shop.scene.period.days.length;
  const tolerances = tolerancesOf(shop.scene, member);
  const water = watersOf(shop, member);
  const tracks = shop.scene.groups.map(() => trackOf(days));
  const notes = shop.scene.groups.map(() => blankNotes(days));
  shop.scene.groups.forEach((_, at) => runCourse(shop, at, member, tolerances, water[at]!, tracks[at]!, notes[at]!));
  return { tracks, notes, water };
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

/** Adds one member's course of one group to the tally. */
export const count = (tally: Tally, shop: Workshop, member: number, at: number, track: CourseTrack, marks: Marks): void => {
  const { zone, area } = shop.scene.groups[at]!;
  const weight = area / shop.scene.zoneArea[zone]!;
  const base = member * tally.days;
  for (let day = 0; day < tally.days; day++) {
    tally.cover[zone]![base + day]! += weight * track.cover[day]!;
    tally.crowns[zone]![base + day]! += weight * track.crowns[day]!;
    tally.reserve[zone]![base + day]! += weight * track.reserve[day]!;
    if (track.ruts[day]! > tally.ruts[zone]![base + day]!) tally.ruts[zone]![base + day] = track.ruts[day]!;
  }
  tally.groupAfter[member * shop.scene.groups.length + at] = track.cover[marks.after[zone]!]!;
  tally.groupHome[member * shop.scene.groups.length + at] = track.cover[marks.home]!;
};

/** Runs one drawn member through every group into the tally. */
export const countMember = (tally: Tally, shop: Workshop, index: number, member: Member, marks: Marks): void => {
  const tolerances = tolerancesOf(shop.scene, member);
  const water = watersOf(shop, member);
  const track = trackOf(tally.days);
  const notes = blankNotes(null);
  for (let at = 0; at < shop.scene.groups.length; at++) {
    runCourse(shop, at, member, tolerances, water[at]!, track, notes);
    count(tally, shop, index, at, track, marks);
  }
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
