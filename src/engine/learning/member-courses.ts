import { groundLoads } from '#engine/forecast/ground-loads.ts';
import { drawnMember, memberMaker, type MemberMaker } from '#engine/forecast/member.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { sceneOf } from '#engine/forecast/scene.ts';
import { eveningsOf, type Evenings } from '#engine/forecast/summarise.ts';
import { countMember, openTally, type Tally } from '#engine/forecast/tally.ts';
import { workshop, type Workshop } from '#engine/forecast/workshop.ts';
import type { Seen } from '#engine/learning/seen.ts';

/** The members of a question, one by one: what `foresee` sums up before it forgets them. */
export interface MemberCourses {
  readonly maker: MemberMaker;
  readonly shop: Workshop;
  readonly evenings: Evenings;
  readonly tally: Tally;
}

/** @throws RangeError with field and reason where the question contradicts itself */
export const memberCourses = (question: ForecastQuestion, report: (share: number) => void = () => {}): MemberCourses => {
  const scene = sceneOf(question);
  const maker = memberMaker(scene);
  const shop = workshop(scene, maker.window, groundLoads(scene));
  const evenings = eveningsOf(shop);
  const tally = openTally(shop, question.members);
  for (let index = 0; index < question.members; index++) {
    countMember(tally, shop, index, drawnMember(maker, index), evenings);
    if (index % 10 === 9) report((index + 1) / question.members);
  }
  return { maker, shop, evenings, tally };
};

/**
 * What every member says about the zone, evening and quantity of a reading.
 * @throws RangeError where the forecast has no such zone or evening
 */
export const saidOf = ({ shop, tally }: MemberCourses, seen: Pick<Seen, 'zone' | 'evening' | 'quantity'>): Float64Array => {
  const zone = shop.scene.zones.findIndex((one) => one.letter === seen.zone);
  const day = shop.scene.period.days.indexOf(seen.evening);
  if (zone < 0 || day < 0)
    throw Object.assign(new RangeError(`the forecast has no zone ${seen.zone} on the evening of ${seen.evening}`), {
      field: 'inspections',
    });
  const values = tally[seen.quantity][zone]!;
  return Float64Array.from({ length: tally.members }, (_, member) => values[member * tally.days + day]!);
};

/**
 * How well each member agrees with what was seen, as the logarithm of a Gaussian likelihood without its constant:
 *
 *     ln L = −½ Σ ((seen − said)/error)²
 */
export const logLikelihoods = (courses: MemberCourses, seen: readonly Seen[]): Float64Array => {
  const log = new Float64Array(courses.tally.members);
  for (const one of seen) {
    const said = saidOf(courses, one);
    for (let member = 0; member < log.length; member++) {
      const off = (one.value - said[member]!) / one.error;
      log[member]! -= 0.5 * off * off;
    }
  }
  return log;
};
