import type { CourseNotes, CourseTrack, Snapshot } from '#engine/forecast/course-record.ts';
import { InjuryState, suffer } from '#engine/forecast/covered-day.ts';
import { fillDrivers } from '#engine/forecast/day-drivers.ts';
import { type Member, fillSun } from '#engine/forecast/member.ts';
import type { Group } from '#engine/forecast/scene.ts';
import type { Tolerances } from '#engine/forecast/tolerances.ts';
import { press, tread } from '#engine/forecast/trodden-day.ts';
import { type Workshop, dayOfHour } from '#engine/forecast/workshop.ts';
import { runClimate, startClimate, straightProfile } from '#engine/heat/climate.ts';
import { causes } from '#engine/injury/causes.ts';
import { advanceDays } from '#engine/recovery/advance-days.ts';
import { standLayout } from '#engine/recovery/stand-layout.ts';
import { standOf, writeStand } from '#engine/recovery/stand.ts';
import type { RootZoneCourse } from '#engine/water/root-zone-course.ts';

/**
 * The course of one group in one member, day by day. On each day: what machines, legs and feet do; then, while it is covered, heat,
 * frost and want of air hour by hour; then the reserve and growth of the day.
 */
export const runCourse = (
  shop: Workshop,
  at: number,
  member: Member,
  tolerances: Tolerances,
  water: RootZoneCourse,
  track: CourseTrack,
  notes: CourseNotes,
  keep: Snapshot | null = null,
): void => {
  const { scene, stand, drivers } = shop;
  const group = scene.groups[at]!;
  const { field } = scene.question.venue;
  const days = scene.period.days.length;
  const covered = crownsUnderFloors(shop, at, member);
  fillDrivers(shop, at, member, notes);
  writeStand(stand, 0, standOf(field.usual, shop.loads.ground.bulkDensity, member.values['nitrogen.usual']));
  const injuries = new InjuryState(tolerances);
  let day = 0;
  while (day < days) {
    const busy = isBusy(shop, group, day, covered);
    let until = day + 1;
    const stop = keep !== null && keep.day >= day ? keep.day + 1 : days;
    if (!busy) while (until < stop && !isBusy(shop, group, until, covered) && notes.lost === null) until++;
    if (busy) {
      press(shop, group, day, water, tolerances, notes);
      tread(shop, group, day, water, tolerances, notes);
      if (covered && covered.firstDay <= day && day <= covered.lastDay) suffer(shop, at, day, member, water, injuries);
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
};

interface CoveredDays {
  readonly firstDay: number;
  readonly lastDay: number;
}

const isBusy = ({ scene }: Workshop, group: Group, day: number, covered: CoveredDays | null): boolean =>
  (covered !== null && day >= covered.firstDay && day <= covered.lastDay) ||
  group.exposure.crowds.some((visit) => visit.day === day) ||
  group.exposure.machines.some((visit) => visit.day === day) ||
  scene.play.some((game) => game.day === day);

/** Runs the soil column through the floors of a group; leaves the crowns' temperature by hour of the window in `crown`. */
const crownsUnderFloors = (shop: Workshop, at: number, member: Member): CoveredDays | null => {
  const { scene, window, climate, crown } = shop;
  const floors = shop.floors[at]!;
  if (floors.length === 0) return null;
  const { shade } = scene.groups[at]!;
  const from = Math.max(0, floors[0]!.stretch.from - window.from - scene.question.parameters['forecast.spinUp']);
  const end = floors.at(-1)!.stretch.until - window.from;
  fillSun(scene, window, member, shade, from, end);
  startClimate(climate, straightProfile(climate.ground, member.hours.air[from]!, shop.deepTemperature));
  let hour = from;
  for (const { stretch, floor } of floors) {
    const start = stretch.from - window.from;
    if (start > hour) runClimate(climate, shop.bare[shade]!, member.hours, hour, start, crown, 1);
    hour = stretch.until - window.from;
    runClimate(climate, floor, member.hours, start, hour, crown, 1);
  }
  const { firstHour } = scene.period;
  return {
    firstDay: dayOfHour(firstHour, floors[0]!.stretch.from),
    lastDay: dayOfHour(firstHour, floors.at(-1)!.stretch.until - 1),
  };
};
