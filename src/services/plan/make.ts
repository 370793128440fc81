import { fromEpoch } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import type { Answer, Problem } from '#shared/contract/failure.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { Mend, RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { applyMend } from '#planner/mends.ts';
import { planRecovery } from '#planner/not-possible.ts';
import { PlanRefusal } from '#planner/plan-refusal.ts';
import { done, invalid, notFound, outOfRange } from '#services/answers.ts';
import { canonicalJson } from '#services/forecast/fingerprint.ts';
import { frozenQuestion } from '#services/forecast/frozen-question.ts';
import { parametersOf } from '#services/forecast/question.ts';
import type { Needs, Service, Work } from '#services/needs.ts';
import { outlookQuestion } from '#services/plan/outlook-question.ts';
import { problemOf, type WindowParts } from '#services/plan/problem.ts';
import { worksOf } from '#services/plan/works.ts';

/** A kept forecast with the question it answered. */
interface Opened {
  readonly run: ForecastRun;
  readonly question: ForecastQuestion;
}

/** What the store says before the work begins: forecasts by home date, the next one first. */
interface Gathered {
  readonly forecasts: readonly Opened[];
  readonly venue: Venue;
  readonly before: PlanRun | null;
}

/** Plans the recovery after kept forecasts with the venue's crews, farms and rules as they are now. */
export const makePlan: Service<'plan/make'> = async (needs, request) => {
  const { forecastId, further, now, locks, done: finished, released, mends, instead } = request;
  const gathered = await needs.store.read(async (contents): Promise<Answer<Gathered>> => {
    const forecasts: Opened[] = [];
    for (const id of [forecastId, ...further]) {
      const run = await contents.runs.find(id);
      const input = await contents.runs.inputOf(id);
      if (!run || input === null) return notFound('forecast', id);
      forecasts.push({ run, question: frozenQuestion(input) });
    }
    const [first] = forecasts;
    const venue = await contents.venues.find(first!.run.venueId);
    if (!venue) return notFound('venue', first!.run.venueId);
    const before = instead === null ? null : await contents.plans.find(instead);
    if (instead !== null && !before) return notFound('plan', instead);
    return done({ forecasts, venue, before });
  });
  if (!gathered.ok) return gathered;
  const { forecasts, venue, before } = gathered.value;
  const problems = forecasts.flatMap((one, index) => forecastProblems(one, forecasts[index - 1] ?? null, index));
  if (problems.length > 0) return invalid(problems);
  const [{ run, question }] = forecasts as readonly [Opened];
  const moment = now ?? fromEpoch(needs.now(), venue.place.timeZone);
  if (moment >= question.homeDate.start)
    return outOfRange([{ field: 'now', reason: `is ${moment}, after the home date begins (${question.homeDate.start})` }]);

  return done(async (work) => {
    const windows: WindowParts[] = [];
    for (const [index, one] of forecasts.entries()) {
      const construction = venue.field.rootZone.construction;
      const outlook = await needs.compute('outlook', outlookQuestion(one.question, construction, venue.farms), {
        signal: work.signal,
        report: ({ share, note }) =>
          work.report({ share: (0.4 * (index + share)) / forecasts.length, note: note || 'reckoning each way back' }),
      });
      windows.push({ question: one.question, forecast: one.run.result, outlook });
    }
    const problem = problemOf({
      venue,
      values: parametersOf(venue),
      windows: windows as [WindowParts],
      now: moment,
      locks,
      done: finished,
      released,
      before: before?.plan ?? null,
    });
    const unknown = mends.flatMap((mend, index) => mendProblem(problem, mend, index));
    if (unknown.length > 0) return invalid(unknown);
    const kept = windows.map(({ forecast }) => forecast);
    const areas = new Map(problem.zones.map(({ letter, area }) => [letter, area]));
    const withWorks = (plan: RecoveryPlan): RecoveryPlan => ({
      ...plan,
      works: worksOf({ venue, values: parametersOf(venue), forecasts: kept, areas }, plan),
    });
    return solve(needs, work, run, moment, mends.reduce(applyMend, problem), withWorks);
  });
};

/** A mend that speaks of a farm or a window that the problem does not have. */
const mendProblem = ({ farms, windows }: RecoveryProblem, mend: Mend, index: number): readonly Problem[] => {
  if ('farm' in mend && !farms.some(({ id }) => id === mend.farm))
    return [{ field: `mends.${index}.farm`, reason: `the venue has no farm "${mend.farm}"` }];
  if ('window' in mend && !windows.some(({ id }) => id === mend.window))
    return [
      {
        field: `mends.${index}.window`,
        reason: `there is no window "${mend.window}"; there is ${windows.map(({ id }) => id).join(', ')}`,
      },
    ];
  return [];
};

/** Why a forecast cannot be planned after, or not behind the one before it. */
const forecastProblems = ({ run, question }: Opened, before: Opened | null, index: number): readonly Problem[] => {
  const field = index === 0 ? 'forecastId' : `further.${index - 1}`;
  if (question.booking === null) return [{ field, reason: 'is a forecast without an event: there is nothing to recover from' }];
  if (run.result.zones.every((zone) => zone.lastOff === null))
    return [{ field, reason: 'is a forecast in which nothing lies on the turf: there is nothing to recover from' }];
  if (before === null) return [];
  if (run.venueId !== before.run.venueId) return [{ field, reason: 'is a forecast of another venue' }];
  if (question.homeDate.start <= before.question.homeDate.end)
    return [{ field, reason: `is of a home date that is not after the one before it (${before.question.homeDate.name})` }];
  return [];
};

const solve = async (
  needs: Needs,
  work: Work,
  run: ForecastRun,
  now: LocalTime,
  problem: RecoveryProblem,
  withWorks: (plan: RecoveryPlan) => RecoveryPlan,
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
    plan: withWorks(answer.value),
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
