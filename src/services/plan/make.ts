import { frozenQuestion } from '#services/forecast/frozen-question.ts';
import { fromEpoch } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { planRecovery } from '#planner/not-possible.ts';
import { PlanRefusal } from '#planner/plan-refusal.ts';
import { done, invalid, notFound, outOfRange } from '#services/answers.ts';
import { canonicalJson } from '#services/forecast/fingerprint.ts';
import { parametersOf } from '#services/forecast/question.ts';
import type { Needs, Service, Work } from '#services/needs.ts';
import { outlookQuestion } from '#services/plan/outlook-question.ts';
import { problemOf, type ProblemParts } from '#services/plan/problem.ts';

/** What the store says before the work begins. */
interface Gathered {
  readonly run: ForecastRun;
  readonly question: ForecastQuestion;
  readonly venue: Venue;
  readonly before: PlanRun | null;
}

/** Plans the recovery after a kept forecast with the venue's crews, farms and rules as they are now. */
export const makePlan: Service<'plan/make'> = async (needs, { forecastId, now, locks, done: finished, instead }) => {
  const gathered = await needs.store.read(async (contents): Promise<Answer<Gathered>> => {
    const run = await contents.runs.find(forecastId);
    const input = await contents.runs.inputOf(forecastId);
    if (!run || input === null) return notFound('forecast', forecastId);
    const venue = await contents.venues.find(run.venueId);
    if (!venue) return notFound('venue', run.venueId);
    const before = instead === null ? null : await contents.plans.find(instead);
    if (instead !== null && !before) return notFound('plan', instead);
    return done({ run, venue, before, question: frozenQuestion(input) });
  });
  if (!gathered.ok) return gathered;
  const { run, question, venue, before } = gathered.value;
  if (question.booking === null)
    return invalid([{ field: 'forecastId', reason: 'is a forecast without an event: there is nothing to recover from' }]);
  if (run.result.zones.every((zone) => zone.lastOff === null))
    return invalid([
      { field: 'forecastId', reason: 'is a forecast in which nothing lies on the turf: there is nothing to recover from' },
    ]);
  const moment = now ?? fromEpoch(needs.now(), venue.place.timeZone);
  if (moment >= question.homeDate.start)
    return outOfRange([{ field: 'now', reason: `is ${moment}, after the home date begins (${question.homeDate.start})` }]);

  return done(async (work) => {
    const outlook = await needs.compute('outlook', outlookQuestion(question, venue.field.rootZone.construction, venue.farms), {
      signal: work.signal,
      report: ({ share, note }) => work.report({ share: 0.4 * share, note: note || 'reckoning each way back' }),
    });
    const problem = problemOf({
      venue,
      values: parametersOf(venue),
      forecast: run.result,
      outlook,
      homeDate: question.homeDate,
      fixtures: question.fixtures,
      others: question.others,
      now: moment,
      locks,
      done: finished,
      before: before?.plan ?? null,
    } satisfies ProblemParts);
    return solve(needs, work, run, moment, problem);
  });
};

const solve = async (
  needs: Needs,
  work: Work,
  run: ForecastRun,
  now: LocalTime,
  problem: RecoveryProblem,
): Promise<Answer<PlanRun>> => {
  const answer = await planned(needs, work, problem);
  if (!answer.ok) return answer;
  const plan: PlanRun = {
    id: `plan-${needs.newId()}`,
    forecastId: run.id,
    venueId: run.venueId,
    bookingId: run.bookingId,
    fixtureId: run.fixtureId,
    createdAt: new Date(needs.now()).toISOString(),
    now,
    plan: answer.value,
  };
  return needs.store.write(async (contents) => {
    if (!(await contents.runs.find(run.id))) return notFound('forecast', run.id);
    await contents.plans.keep(plan, canonicalJson(problem));
    return done(plan);
  });
};

const planned = async (needs: Needs, work: Work, problem: RecoveryProblem): Promise<Answer<PlanRun['plan']>> => {
  try {
    const answer = await planRecovery(problem, needs.optimiser, {
      signal: work.signal,
      onProgress: (stage, { gap }) =>
        work.report({
          share: 0.7,
          note:
            gap === null || !Number.isFinite(gap) ? `planning: ${stage}` : `planning: ${stage}, gap ${(100 * gap).toFixed(1)} %`,
        }),
    });
    if (answer.outcome === 'plan') return done(answer.plan);
    if (answer.outcome === 'stopped')
      return {
        ok: false,
        failure: work.signal.aborted
          ? { kind: 'cancelled', message: 'The planning was stopped. Nothing was kept.' }
          : { kind: 'busy', message: answer.reason },
      };
    const { because } = answer;
    return {
      ok: false,
      failure: { kind: 'no-plan', message: `Not possible because ${because.reasons[0]!.replace(/[.]$/, '')}.`, because },
    };
  } catch (error) {
    if (error instanceof PlanRefusal) return invalid([{ field: error.field, reason: error.reason }]);
    throw error;
  }
};
