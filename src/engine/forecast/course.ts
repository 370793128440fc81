import { blankNotes, clearNotes, type CourseNotes, type CourseTrack, type Snapshot } from '#engine/forecast/course-record.ts';
import { InjuryState, suffer } from '#engine/forecast/covered-day.ts';
import { fillCoveredDays, fillOpenDays, openReserveChange } from '#engine/forecast/day-drivers.ts';
import { burn, freeze } from '#engine/forecast/incidents.ts';
import { blankTrack, type CourseAnswer, type MemberAnswers } from '#engine/forecast/member-answers.ts';
import { type Member, fillSun } from '#engine/forecast/member.ts';
import type { Tolerances } from '#engine/forecast/tolerances.ts';
import { press, tread } from '#engine/forecast/trodden-day.ts';
import { fillTurfWater, type TurfWater } from '#engine/forecast/turf-water.ts';
import { type Workshop, dayOfHour } from '#engine/forecast/workshop.ts';
import { type HeatProfile, profileOf, startClimate, straightProfile } from '#engine/heat/climate-column.ts';
import { runClimate } from '#engine/heat/climate.ts';
import { causes } from '#engine/injury/causes.ts';
import { advanceDays } from '#engine/recovery/advance-days.ts';
import { lightLeft, meanOfSides, together } from '#engine/recovery/overseeded.ts';
import { driverLayout, driverStride, standLayout } from '#engine/recovery/stand-layout.ts';
import { standOf, writeStand } from '#engine/recovery/stand.ts';

/** What a course is asked to keep besides its days. */
export interface CourseWishes {
  /** Losses by cause at the end of every day. */
  readonly losses: boolean;
  /** The stand of one evening. */
  readonly keep: Snapshot | null;
}

/** The course of some turf in one member, found where another group or option has asked for it, reckoned otherwise. */
export const courseAnswer = (
  shop: Workshop,
  at: number,
  member: Member,
  tolerances: Tolerances,
  answers: MemberAnswers,
): CourseAnswer => {
  const course = shop.courses[at]!;
  const water = waterOf(shop, at, member, answers);
  return answers.course(course, water, (answer) => {
    clearNotes(answer.notes);
    runCourse(shop, at, member, tolerances, answers, water, answer.track, answer.notes, null);
  });
};

/** The same with more kept of it; always reckoned, into room of its own. */
export const courseInFull = (
  shop: Workshop,
  at: number,
  member: Member,
  tolerances: Tolerances,
  answers: MemberAnswers,
  { losses, keep }: CourseWishes,
): CourseAnswer => {
  const days = shop.scene.period.days.length;
  const water = waterOf(shop, at, member, answers);
  const answer = { track: blankTrack(days), notes: blankNotes(losses ? days : null), water };
  runCourse(shop, at, member, tolerances, answers, water, answer.track, answer.notes, keep);
  return answer;
};

/** Water as far as something asks for it; in full it is followed to the end. */
const waterOf = (shop: Workshop, at: number, member: Member, answers: MemberAnswers): TurfWater =>
  answers.water(shop.courses[at]!, (into) => fillTurfWater(shop, shop.courses[at]!, member, into, answers.waterUntil));

/** The course of one group in one member: of its stand, or of the two stands that share the ground of overseeded turf. */
const runCourse = (
  shop: Workshop,
  at: number,
  member: Member,
  tolerances: Tolerances,
  answers: MemberAnswers,
  water: TurfWater,
  track: CourseTrack,
  notes: CourseNotes,
  keep: Snapshot | null,
): void => {
  const { overseed } = member;
  if (overseed === null) return runSide(shop, at, member, tolerances, answers, water, track, notes, keep, null);
  const above = { track: blankTrack(track.cover.length), notes: blankNotes(notes.lost && track.cover.length) };
  const kept = keep && { ...keep, into: keep.overseed };
  runSide(shop, at, overseed, tolerances.overseed!, answers, water, above.track, above.notes, kept, null);
  runSide(shop, at, member, tolerances, answers, water, track, notes, keep, above.track);
  join(track, notes, above.track, above.notes, member);
};

/** Writes what two stands on one ground are together over the course of the base. Losses by cause are those of both, by the green each began with. */
const join = (base: CourseTrack, notes: CourseNotes, over: CourseTrack, overNotes: CourseNotes, member: Member): void => {
  const began = [member.side.usual.cover, member.overseed!.side.usual.cover] as const;
  for (let day = 0; day < base.cover.length; day++) {
    base.reserve[day] = meanOfSides(base.cover[day]!, over.cover[day]!, base.reserve[day]!, over.reserve[day]!);
    base.cover[day] = together(base.cover[day]!, over.cover[day]!);
    base.crowns[day] = together(base.crowns[day]!, over.crowns[day]!);
  }
  if (notes.lost && overNotes.lost)
    for (let i = 0; i < notes.lost.length; i++)
      notes.lost[i] = meanOfSides(began[0], began[1], notes.lost[i]!, overNotes.lost[i]!);
};

/** The base's light on open days is what the stand above it leaves. */
const shadeBy = (above: CourseTrack, member: Member, drivers: Float64Array): void => {
  for (let day = 0; day < above.cover.length; day++) {
    const now = day * driverStride;
    const light = drivers[now + driverLayout.light]! * lightLeft(above.cover[day]!, member.values);
    drivers[now + driverLayout.light] = light;
    drivers[now + driverLayout.reserveChange] = openReserveChange(member, day, light);
  }
};

/**
 * The course of one stand, day by day. On each day: what machines, legs and feet do; then, while it is covered, heat,
 * frost and want of air hour by hour; then ice that has gone; then the reserve and growth of the day. What is spilt is laid over the whole
 * at the end, since its weeks are its own.
 */
const runSide = (
  shop: Workshop,
  at: number,
  member: Member,
  tolerances: Tolerances,
  answers: MemberAnswers,
  water: TurfWater,
  track: CourseTrack,
  notes: CourseNotes,
  keep: Snapshot | null,
  above: CourseTrack | null,
): void => {
  const { scene, stand, drivers } = shop;
  const course = shop.courses[at]!;
  const { group, busy } = course;
  const days = scene.period.days.length;
  const floors = shop.floors[at]!;
  drivers.set(answers.openDays(course, member, (into) => fillOpenDays(scene, course, member, into)));
  if (above !== null) shadeBy(above, member, drivers);
  const covered = floors.length === 0 ? null : coveredDays(shop, at);
  const crown = covered && answers.heat(course, (into) => crownsUnderFloors(shop, at, member, answers, into));
  if (crown) fillCoveredDays(shop, course, floors, member, crown, drivers, notes);
  writeStand(stand, 0, standOf(member.side.usual, shop.loads.ground.bulkDensity, member.values['nitrogen.usual']));
  const injuries = new InjuryState(tolerances);
  let day = 0;
  while (day < days) {
    let until = day + 1;
    const stop = keep !== null && keep.day >= day ? keep.day + 1 : days;
    if (!busy[day]) while (until < stop && !busy[until] && notes.lost === null) until++;
    else {
      press(shop, group, day, member, water, tolerances, notes);
      tread(shop, group, day, member, water, tolerances, notes);
      if (crown && covered!.firstDay <= day && day <= covered!.lastDay) suffer(shop, floors, crown, day, member, water, injuries);
      freeze(stand, group.exposure, day, tolerances);
    }
    if (!covered || day > covered.lastDay) injuries.rest(until - day);
    advanceDays(stand, 0, drivers, day, until - day, member.traits, track, day);
    for (let d = day; d < until; d++) {
      track.ruts[d] = stand[standLayout.ruts]!;
      track.density[d] = stand[standLayout.bulkDensity]!;
    }
    if (keep !== null && until - 1 === keep.day) keep.into.set(stand);
    if (notes.lost)
      for (let cause = 0; cause < causes.length; cause++)
        notes.lost[day * causes.length + cause] = stand[standLayout.leafLost + cause]!;
    day = until;
  }
  burn(group.exposure, tolerances.spill, track, notes);
};

interface CoveredDays {
  readonly firstDay: number;
  readonly lastDay: number;
}

const coveredDays = ({ scene, floors }: Workshop, at: number): CoveredDays => ({
  firstDay: dayOfHour(scene.period.firstHour, floors[at]![0]!.stretch.from),
  lastDay: dayOfHour(scene.period.firstHour, floors[at]!.at(-1)!.stretch.until - 1),
});

/** Runs the soil column through the floors of a course; leaves the crowns' temperature by hour of the window in `crown`. */
const crownsUnderFloors = (shop: Workshop, at: number, member: Member, answers: MemberAnswers, crown: Float64Array): void => {
  const { scene, window, climate } = shop;
  const floors = shop.floors[at]!;
  const course = shop.courses[at]!;
  const { shade } = course.group;
  const profile = answers.settled(course, (into) => settleSoil(shop, at, member, crown, into));
  let hour = floors[0]!.stretch.from - window.from;
  fillSun(scene, window, member, shade, hour, floors.at(-1)!.stretch.until - window.from);
  startClimate(climate, profile);
  for (const { stretch, floor } of floors) {
    const start = stretch.from - window.from;
    if (start > hour) runClimate(climate, shop.bare[shade]!, member.hours, hour, start, crown, 1);
    hour = stretch.until - window.from;
    runClimate(climate, floor, member.hours, start, hour, crown, 1);
  }
};

/** Runs open ground through the hours before the first floor, so that the soil has settled to the weather; the same for every floor that comes at that hour. */
const settleSoil = (shop: Workshop, at: number, member: Member, crown: Float64Array, into: HeatProfile): void => {
  const { scene, window, climate } = shop;
  const { shade } = shop.courses[at]!.group;
  const until = shop.floors[at]![0]!.stretch.from - window.from;
  const from = Math.max(0, until - scene.question.parameters['forecast.spinUp']);
  fillSun(scene, window, member, shade, from, until);
  startClimate(climate, straightProfile(climate.ground, member.hours.air[from]!, shop.deepTemperature));
  runClimate(climate, shop.bare[shade]!, member.hours, from, until, crown, 1);
  profileOf(climate, into);
};
