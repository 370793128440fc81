import type { CourseNotes } from '#engine/forecast/course-record.ts';
import { lyingAt } from '#engine/forecast/exposure.ts';
import { coveringOf } from '#engine/forecast/ground-loads.ts';
import type { Member } from '#engine/forecast/member.ts';
import type { Group, Scene } from '#engine/forecast/scene.ts';
import type { Tolerances } from '#engine/forecast/tolerances.ts';
import type { TurfWater } from '#engine/forecast/turf-water.ts';
import type { Workshop } from '#engine/forecast/workshop.ts';
import { causes } from '#engine/injury/causes.ts';
import { injureAt } from '#engine/recovery/injure.ts';
import { standLayout } from '#engine/recovery/stand-layout.ts';
import { crowdFootfalls } from '#engine/wear/crowd-footfalls.ts';
import { type WearExposure, wearKept } from '#engine/wear/wear-kept.ts';

const WEAR = causes.indexOf('wear');
const LOAD = causes.indexOf('load');

/** Machines that come on a day and legs that are set down: ruts, density, torn and crushed turf. */
export const press = (
  shop: Workshop,
  group: Group,
  day: number,
  member: Member,
  water: TurfWater,
  tolerances: Tolerances,
  notes: CourseNotes,
): void => {
  const { scene, stand, loads } = shop;
  const { firstHour } = scene.period;
  const place = placeOf(scene, member, water, day);
  for (const visit of group.exposure.machines) {
    if (visit.day !== day) continue;
    const { impact, touched, wearThrough } = loads.wheels(group, visit, place.water);
    const kept = wearKept(
      { ...nothing, wearThrough, wheels: { passes: impact.wheelPasses, rut: impact.rut, touched } },
      place,
      tolerances.wear,
    );
    firm(shop, impact.bulkDensity, touched, impact.rut);
    notes.pressure = Math.max(notes.pressure, impact.peakPressure);
    injureAt(stand, 0, LOAD, kept.leaf, kept.crowns);
  }
  for (const stretch of group.exposure.stretches) {
    if (stretch.from < firstHour[day]! || stretch.from >= firstHour[day + 1]!) continue;
    const impact = loads.standing(stretch, place.water);
    if (!impact) continue;
    const kept = wearKept(
      { ...nothing, legs: { load: impact.peak / impact.strength, pressed: impact.pressed } },
      place,
      tolerances.wear,
    );
    firm(shop, impact.bulkDensity, impact.pressed, impact.rut);
    notes.pressure = Math.max(notes.pressure, impact.peak);
    injureAt(stand, 0, LOAD, kept.leaf, kept.crowns);
  }
};

const nothing: WearExposure = { footfalls: 0, shoe: 'ordinary', games: 0, wearThrough: 1, wheels: null, legs: null };

/** Density of the mean of the group; the deepest rut, since that is what a foot finds. */
const firm = ({ stand, loads }: Workshop, density: number, share: number, rut: number): void => {
  const now = stand[standLayout.bulkDensity]!;
  stand[standLayout.bulkDensity] = now + share * Math.max(0, density - loads.ground.bulkDensity);
  stand[standLayout.ruts] = Math.max(stand[standLayout.ruts]!, rut);
};

/** Crowds of a day, and play on it. */
export const tread = (
  shop: Workshop,
  group: Group,
  day: number,
  member: Member,
  water: TurfWater,
  tolerances: Tolerances,
  notes: CourseNotes,
): void => {
  const { scene, stand } = shop;
  const place = placeOf(scene, member, water, day);
  for (const visit of group.exposure.crowds) {
    if (visit.day !== day) continue;
    const covering = coveringOf(scene, lyingAt(group.exposure, visit.hour));
    const { density, activity } = visit.crowd;
    const footfalls = crowdFootfalls(density, visit.hours, activity, visit.use, tolerances.wear);
    const wearThrough = covering?.wearThrough ?? 1;
    const kept = wearKept(
      { ...nothing, footfalls, wearThrough, shoe: activity === 'working' ? 'boots' : 'ordinary' },
      place,
      tolerances.wear,
    );
    notes.footfalls += footfalls;
    injureAt(stand, 0, WEAR, kept.leaf, kept.crowns);
  }
  for (const game of scene.play) {
    if (game.day !== day) continue;
    const kept = wearKept({ ...nothing, games: game.games }, place, tolerances.wear);
    injureAt(stand, 0, WEAR, kept.leaf, kept.crowns);
  }
};

const placeOf = (scene: Scene, { side }: Member, water: TurfWater, day: number) => ({
  sward: side.sward,
  soil: scene.question.venue.field.rootZone.soil,
  water: water.top[day]!,
});
