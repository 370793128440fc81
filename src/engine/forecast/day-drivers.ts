import type { CourseNotes } from '#engine/forecast/course-record.ts';
import type { Member } from '#engine/forecast/member.ts';
import { type LaidFloor, type Workshop, dayOfHour, liftedAt } from '#engine/forecast/workshop.ts';
import { reserveGain, reserveLoss } from '#engine/injury/reserve-balance.ts';
import { driverLayout, driverStride } from '#engine/recovery/stand-layout.ts';

/**
 * Change of the reserve on an open day, 1/d; never below 0. Turf in the open holds its store: a venue whose turf starves where nothing
 * lies on it says so in its usual state.
 */
export const openReserveChange = ({ air, traits }: Member, day: number, light: number): number =>
  Math.max(0, reserveGain(light, air[day]!, traits.reserve) - reserveLoss(air[day]!, 0, traits.reserve));

/**
 * The days of a group as the turf meets them. Covered days sum the reserve hour by hour at the temperature of the crowns; growth keeps to
 * the mean air temperature on every day, as the growth potential is defined.
 */
export const fillDrivers = (shop: Workshop, at: number, member: Member, notes: CourseNotes): void => {
  const { scene, drivers, window, crown } = shop;
  const { period, light, rigs } = scene;
  const group = scene.groups[at]!;
  const floors = shop.floors[at]!;
  const days = period.days.length;
  const { values, traits } = member;
  for (let day = 0; day < days; day++) {
    const now = day * driverStride;
    let lamps = 0;
    for (const rig of group.rigs)
      if (rigs[rig]!.rig.from <= period.days[day]! && period.days[day]! <= rigs[rig]!.rig.until) lamps += rigs[rig]!.light;
    drivers[now + driverLayout.temperature] = member.air[day]!;
    drivers[now + driverLayout.soilTemperature] = member.soil[day]!;
    drivers[now + driverLayout.light] = member.useful[group.shade * days + day]! + lamps;
    drivers[now + driverLayout.seal] = 0;
    drivers[now + driverLayout.covered] = 0;
    drivers[now + driverLayout.watered] = 1;
    drivers[now + driverLayout.reserveChange] = openReserveChange(member, day, drivers[now + driverLayout.light]!);
  }
  if (floors.length === 0) return;
  const perMegajoule = values['light.molPerMegajoule'];
  const first = dayOfHour(period.firstHour, floors[0]!.stretch.from);
  const last = dayOfHour(period.firstHour, floors.at(-1)!.stretch.until - 1);
  let next = 0;
  for (let day = first; day <= last; day++) {
    const start = period.firstHour[day]!;
    const end = period.firstHour[day + 1]!;
    const now = day * driverStride;
    const open = drivers[now + driverLayout.light]!;
    let whole = 0;
    let received = 0;
    let coveredHours = 0;
    for (let hour = start; hour < end; hour++) {
      while (next < floors.length && floors[next]!.stretch.until <= hour) next++;
      const laid = next < floors.length && floors[next]!.stretch.from <= hour ? floors[next]! : null;
      const here = hour - window.from;
      const share =
        light.beam[(day * light.classes + group.shade) * 24 + Math.min(23, Math.floor(((hour - start) * 24) / (end - start)))]!;
      const arrives = (member.beam[here]! * share + member.diffuse[here]! * light.sky[group.shade]!) * perMegajoule;
      whole += arrives;
      const lifted = laid ? liftedAt(laid, hour) : 1;
      received += arrives * (laid ? lifted + (1 - lifted) * laid.light : 1);
      const temperature = laid ? crown[here]! : member.hours.air[here]!;
      if (laid) {
        coveredHours++;
        notes.crownSum += temperature;
        notes.crownHours++;
        notes.crownHighest = Math.max(notes.crownHighest, temperature);
      }
    }
    if (coveredHours === 0) continue;
    // Light above what a leaf can use is cut off by the same share as in the open.
    const useful = whole > 0 ? open * (received / whole) : 0;
    let change = 0;
    let later = floorFrom(floors, start);
    for (let hour = start; hour < end; hour++) {
      while (later < floors.length && floors[later]!.stretch.until <= hour) later++;
      const laid = later < floors.length && floors[later]!.stretch.from <= hour ? floors[later]! : null;
      const temperature = laid ? crown[hour - window.from]! : member.hours.air[hour - window.from]!;
      const seal = laid ? laid.seal * (1 - liftedAt(laid, hour)) : 0;
      change += reserveGain(useful, temperature, traits.reserve) - reserveLoss(temperature, seal, traits.reserve);
    }
    drivers[now + driverLayout.light] = useful;
    drivers[now + driverLayout.covered] = coveredHours / (end - start);
    drivers[now + driverLayout.reserveChange] = change / 24;
    notes.lightSum += useful * (coveredHours / (end - start));
    notes.lightDays += coveredHours / (end - start);
  }
};

const floorFrom = (floors: readonly LaidFloor[], hour: number): number => {
  let index = 0;
  while (index < floors.length && floors[index]!.stretch.until <= hour) index++;
  return index;
};
