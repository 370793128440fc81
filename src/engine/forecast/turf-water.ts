import { coveringOf } from '#engine/forecast/ground-loads.ts';
import type { Course } from '#engine/forecast/courses.ts';
import type { Member } from '#engine/forecast/member.ts';
import type { WaterDays } from '#engine/forecast/water-room.ts';
import type { Workshop } from '#engine/forecast/workshop.ts';
import { evaporationUnderCovering } from '#engine/water/root-zone-course.ts';
import { fillDrained, lacksOxygen, stepRootZone, topWaterContent } from '#engine/water/root-zone.ts';

/** What the turf feels of its water, one number a day. */
export interface TurfWater {
  /** m³/m³ in the top 75 mm. */
  readonly top: Float64Array;
  /** 1 where roots lack air. */
  readonly airless: Uint8Array;
}

/** @param still the member's `water.stillEvaporation` */
const fillWaterDays = ({ scene }: Workshop, { group }: Course, still: number, into: WaterDays): void => {
  const { firstHour } = scene.period;
  into.share.fill(0);
  into.rainThrough.fill(0);
  into.evaporation.fill(0);
  for (const stretch of group.exposure.stretches) {
    const covering = coveringOf(scene, stretch)!;
    const evaporation = evaporationUnderCovering(covering, still);
    for (let day = 0; day < into.share.length; day++) {
      const [start, end] = [firstHour[day]!, firstHour[day + 1]!];
      if (end <= stretch.from || start >= stretch.until) continue;
      const part = (Math.min(end, stretch.until) - Math.max(start, stretch.from)) / (end - start);
      into.share[day]! += part;
      into.rainThrough[day]! += part * covering.rainThrough;
      into.evaporation[day]! += part * evaporation;
    }
  }
};

/** The root zone's water under the coverings of a course in one member, as far as day `until`; the same arithmetic as `rootZoneCourse`, without its other flows. */
export const fillTurfWater = (shop: Workshop, course: Course, member: Member, water: TurfWater, until: number): void => {
  const { profile, irrigation, waterRoom } = shop;
  const { state, flow, days } = waterRoom;
  fillWaterDays(shop, course, member.values['water.stillEvaporation'], days);
  fillDrained(profile, state);
  const target = irrigation.kind === 'refill' ? irrigation.target : -1;
  const limit = irrigation.kind === 'refill' ? irrigation.limit : 0;
  for (let day = 0; day < until; day++) {
    let rain = member.weather.rain[day]!;
    let demand = member.demand[day]!;
    const lying = days.share[day]!;
    const share = Math.min(1, lying);
    if (lying > 0) {
      rain *= 1 - share * (1 - days.rainThrough[day]! / lying);
      demand *= 1 - share * (1 - days.evaporation[day]! / lying);
    }
    stepRootZone(profile, state, 0, rain, demand, 0, lying > 0 ? -1 : target, limit, flow);
    water.top[day] = topWaterContent(profile, state);
    water.airless[day] = lacksOxygen(profile, state) ? 1 : 0;
  }
};
