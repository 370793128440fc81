import type { ProposedChange } from '#shared/vocabulary/learning.ts';
import { doubtsOf } from '#engine/forecast/doubts.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { learntValues, memberDraws } from '#engine/learning/learnt-values.ts';
import { logLikelihoods, memberCourses } from '#engine/learning/member-courses.ts';
import type { Seen } from '#engine/learning/seen.ts';
import { effectiveSize, trustFor, weightsOf } from '#engine/learning/weights.ts';

/** One past event of a venue with what was seen at it. */
export interface PastEvent {
  readonly question: ForecastQuestion;
  readonly seen: readonly Seen[];
}

export interface LearnQuestion {
  /** All with the same values, doubts, members and seed: member n has the same numbers in each of them. */
  readonly events: readonly PastEvent[];
}

export interface Learnt {
  readonly effectiveSize: number;
  /** Weight the readings were given, at most 1, so that `learning.leastMembers` count. */
  readonly trust: number;
  readonly changes: readonly ProposedChange[];
}

/**
 * Learns the venue's own numbers from several past events together. A member draws its numbers once for all events, so that its
 * likelihood is the product over them; what several numbers explain between them stays shared out among them.
 * @throws RangeError with field `events` where they do not share their draws
 */
export const learnFromEvents = ({ events }: LearnQuestion, report: (share: number) => void = () => {}): Learnt => {
  const [first] = events;
  if (!first) throw Object.assign(new RangeError('names no event'), { field: 'events' });
  const { members, seed, parameters } = first.question;
  const sum = new Float64Array(members);
  events.forEach(({ question, seen }, at) => {
    if (question.members !== members || question.seed !== seed || question.draws !== undefined)
      throw Object.assign(new RangeError('the events must share their members and seed'), { field: 'events' });
    const courses = memberCourses(question, (share) => report((at + share) / events.length));
    logLikelihoods(courses, seen).forEach((one, member) => (sum[member]! += one));
  });
  const trust = trustFor(sum, Math.min(parameters['learning.leastMembers'], members));
  const weights = weightsOf(sum, trust);
  return {
    effectiveSize: effectiveSize(weights),
    trust,
    changes: learntValues(
      memberDraws(parameters, doubtsOf(first.question), seed, members),
      weights,
      parameters['learning.surety'],
    ),
  };
};
