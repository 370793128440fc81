import type { CourseNotes } from '#engine/forecast/course-record.ts';
import type { Course } from '#engine/forecast/courses.ts';
import { clockHour, type Member } from '#engine/forecast/member.ts';
import type { Scene } from '#engine/forecast/scene.ts';
import { type LaidFloor, type Workshop, dayOfHour, liftedAt } from '#engine/forecast/workshop.ts';
import { gainFromLight, gainWarmth, lossAt } from '#engine/injury/reserve-rates.ts';
import { driverLayout, driverStride } from '#engine/recovery/stand-layout.ts';

/**
 * Change of the reserve on an open day, 1/d; never below 0. Turf in the open holds its store: a venue whose turf starves where nothing
 * lies on it says so in its usual state.
 */
export const openReserveChange = ({ rates, openWarmth, openLoss }: Member, day: number, light: number): number =>
  Math.max(0, gainFromLight(rates, Math.max(0, light)) * openWarmth[day]! - openLoss[day]!);

/** The days of a class of shade and its lamps with nothing lying there; growth keeps to the mean air temperature on every day. */
export const fillOpenDays = (scene: Scene, { group }: Course, member: Member, drivers: Float64Array): void => {
  const { period, rigs } = scene;
  const days = period.days.length;
  for (let day = 0; day < days; day++) {
    const now = day * driverStride;
    let lamps = 0;
    for (const rig of group.rigs)
      if (rigs[rig]!.rig.from <= period.days[day]! && period.days[day]! <= rigs[rig]!.rig.until) lamps += rigs[rig]!.light;
    const light = member.useful[group.shade * days + day]! + lamps;
    drivers[now + driverLayout.temperature] = member.air[day]!;
    drivers[now + driverLayout.soilTemperature] = member.soil[day]!;
    drivers[now + driverLayout.light] = light;
    drivers[now + driverLayout.seal] = 0;
    drivers[now + driverLayout.covered] = 0;
    drivers[now + driverLayout.watered] = 1;
    drivers[now + driverLayout.reserveChange] = openReserveChange(member, day, light);
  }
};

/**
 * The covered days of a course, written over its open ones: light that comes through, and the reserve summed hour by hour at the
 * temperature of the crowns.
 */
export const fillCoveredDays = (
  { scene, window }: Workshop,
  { group }: Course,
  floors: readonly LaidFloor[],
  member: Member,
  crown: Float64Array,
  drivers: Float64Array,
  notes: CourseNotes,
): void => {
  const { period, light } = scene;
  const { rates } = member;
  const perMegajoule = member.values['light.molPerMegajoule'];
  const sky = light.sky[group.shade]!;
  const air = member.hours.air;
  const first = dayOfHour(period.firstHour, floors[0]!.stretch.from);
  const last = dayOfHour(period.firstHour, floors.at(-1)!.stretch.until - 1);
  let next = 0;
  for (let day = first; day <= last; day++) {
    const start = period.firstHour[day]!;
    const end = period.firstHour[day + 1]!;
    const now = day * driverStride;
    const open = drivers[now + driverLayout.light]!;
    const beamAt = (day * light.classes + group.shade) * 24;
    let whole = 0;
    let received = 0;
    let coveredHours = 0;
    let warmth = 0;
    let loss = 0;
    for (let hour = start; hour < end; hour++) {
      while (next < floors.length && floors[next]!.stretch.until <= hour) next++;
      const laid = next < floors.length && floors[next]!.stretch.from <= hour ? floors[next]! : null;
      const here = hour - window.from;
      const share = light.beam[beamAt + clockHour(hour - start, end - start)]!;
      const arrives = (member.beam[here]! * share + member.diffuse[here]! * sky) * perMegajoule;
      whole += arrives;
      if (laid === null) {
        received += arrives;
        warmth += gainWarmth(rates, air[here]!);
        loss += lossAt(rates, air[here]!, 0);
        continue;
      }
      const lifted = laid.lifts.length === 0 ? 0 : liftedAt(laid, hour);
      const temperature = crown[here]!;
      received += arrives * (lifted + (1 - lifted) * laid.light);
      warmth += gainWarmth(rates, temperature);
      loss += lossAt(rates, temperature, laid.seal * (1 - lifted));
      coveredHours++;
      notes.crownSum += temperature;
      if (temperature > notes.crownHighest) notes.crownHighest = temperature;
    }
    if (coveredHours === 0) continue;
    // Light above what a leaf can use is cut off by the same share as in the open.
    const useful = whole > 0 ? open * (received / whole) : 0;
    const covered = coveredHours / (end - start);
    drivers[now + driverLayout.light] = useful;
    drivers[now + driverLayout.covered] = covered;
    drivers[now + driverLayout.reserveChange] = (gainFromLight(rates, Math.max(0, useful)) * warmth - loss) / 24;
    notes.crownHours += coveredHours;
    notes.lightSum += useful * covered;
    notes.lightDays += covered;
  }
};
