import type { Forecast, Range } from '#shared/vocabulary/forecast.ts';
import { streamFor } from '#engine/chance/stream.ts';
import { usualMember } from '#engine/forecast/member.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { summarise } from '#engine/forecast/summarise.ts';
import { type Tally, usualCourse } from '#engine/forecast/tally.ts';
import { logLikelihoods, memberCourses, type MemberCourses, saidOf } from '#engine/learning/member-courses.ts';
import type { Seen } from '#engine/learning/seen.ts';
import { effectiveSize, plainRange, resampled, weightedRange, weightsOf } from '#engine/learning/weights.ts';

export interface AssimilateQuestion {
  /** The forecast as it was asked before anything was seen, with drawn members. */
  readonly question: ForecastQuestion;
  /** What the members are weighed by. */
  readonly seen: readonly Seen[];
  /** What only stands beside, such as readings later than the moment of a replay. */
  readonly beside: readonly Seen[];
}

/** One reading beside what the members said before and after they were weighed. */
export interface Compared {
  readonly before: Range;
  readonly after: Range;
  /** Share of the members below what was seen, before. */
  readonly place: number;
}

export interface Assimilated {
  /** The same question with the members that agree: `foresee` and `recoveryOutlook` go on from it. */
  readonly question: ForecastQuestion;
  readonly forecast: Forecast;
  readonly effectiveSize: number;
  readonly firstEffectiveSize: number;
  readonly widened: number;
  /** One for each of `seen`, then one for each of `beside`. */
  readonly compared: readonly Compared[];
  /** Before anything was seen, of the same members. */
  readonly before: Pick<Forecast, 'replaceArea' | 'chanceAllReady'>;
}

/**
 * Readings are likelihoods on the members: each member is weighed by how well it agrees with what was seen, members are drawn anew in
 * proportion to their weights, and the forecast goes on with those.
 *
 * Where fewer than `learning.leastMembers` still count, nothing that was drawn came near what was seen: every doubt is widened by
 * `learning.widen` and the members are drawn and weighed once more.
 * @source gordon-1993 for drawing anew, kong-1994 for the effective size
 * @throws RangeError with field and reason
 */
export const assimilate = (
  { question, seen, beside }: AssimilateQuestion,
  report: (share: number) => void = () => {},
): Assimilated => {
  const least = question.parameters['learning.leastMembers'];
  const first = memberCourses(question, (share) => report(share * 0.5));
  const firstWeights = weightsOf(logLikelihoods(first, seen));
  const firstEffectiveSize = effectiveSize(firstWeights);
  const again = firstEffectiveSize < least && question.parameters['learning.widen'] > 1;
  const widened = again ? question.parameters['learning.widen'] : 1;
  const courses = again ? memberCourses({ ...question, widened }, (share) => report(0.5 + share * 0.4)) : first;
  const weights = again ? weightsOf(logLikelihoods(courses, seen)) : firstWeights;
  const index = resampled(weights, question.members, streamFor(question.seed, 'learning: members drawn anew'));
  const weighed: ForecastQuestion = {
    ...question,
    draws: { from: question.members, index },
    ...(widened === 1 ? {} : { widened }),
  };
  const summed = (tally: Tally): Forecast => forecastOf(courses, tally);
  const before = forecastOf(first, first.tally);
  const forecast = summed(drawnTally(courses.tally, index));
  report(1);
  return {
    question: weighed,
    forecast,
    effectiveSize: effectiveSize(weights),
    firstEffectiveSize,
    widened,
    compared: [...seen, ...beside].map((one) => compare(one, first, courses, weights)),
    before: { replaceArea: before.replaceArea, chanceAllReady: before.chanceAllReady },
  };
};

const forecastOf = ({ shop, maker, evenings }: MemberCourses, tally: Tally): Forecast => {
  const usual = usualMember(maker);
  return summarise(shop, usualCourse(shop, usual), usual, tally, evenings);
};

const compare = (seen: Seen, first: MemberCourses, courses: MemberCourses, weights: Float64Array): Compared => {
  const said = saidOf(first, seen);
  return {
    before: plainRange(said),
    after: weightedRange(saidOf(courses, seen), weights),
    place: said.reduce((count, one) => (one < seen.value ? count + 1 : count), 0) / said.length,
  };
};

/** The tally as if the drawn members had been run in that order. */
const drawnTally = (tally: Tally, index: readonly number[]): Tally => {
  const byDay = (values: readonly Float64Array[]): Float64Array[] => values.map((zone) => picked(zone, tally.days, index));
  const groups = tally.groupAfter.length / tally.members;
  return {
    members: index.length,
    days: tally.days,
    cover: byDay(tally.cover),
    crowns: byDay(tally.crowns),
    reserve: byDay(tally.reserve),
    ruts: byDay(tally.ruts),
    groupAfter: picked(tally.groupAfter, groups, index),
    groupHome: picked(tally.groupHome, groups, index),
  };
};

const picked = <Values extends Float64Array | Float32Array>(values: Values, stride: number, index: readonly number[]): Values => {
  const drawn = new (values.constructor as new (length: number) => Values)(index.length * stride);
  index.forEach((member, place) => drawn.set(values.subarray(member * stride, (member + 1) * stride), place * stride));
  return drawn;
};
