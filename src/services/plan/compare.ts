import { fromEpoch } from '#shared/calendar/local-time.ts';
import type { Answer, Failure } from '#shared/contract/failure.ts';
import type { WayOutcome } from '#shared/vocabulary/comparison.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import { PlanRefusal } from '#planner/plan-refusal.ts';
import { done, notFound } from '#services/answers.ts';
import { parametersOf, gatherQuestion } from '#services/forecast/question.ts';
import type { Needs, Service, Work } from '#services/needs.ts';
import { figuresOf } from '#services/plan/figures.ts';
import { outlookQuestion } from '#services/plan/outlook-question.ts';
import { problemOf, type ProblemParts } from '#services/plan/problem.ts';

/** m; ways are laid side by side, so that an error of the grid is common to all. */
const cellSize = 4;
/** Ways are told apart by more than this share of their cost. */
const gap = 0.05;
/** s for the plan of one way. */
const timeLimit = 20;

interface Asked {
  readonly name: string;
  readonly question: Answer<ForecastQuestion>;
}

/** A way that is refused says why and does not hinder the others. */
export const compareWays: Service<'plan/compare'> = async (needs, { venueId, ways, members, seed, recovery }) => {
  const gathered = await needs.store.read(async (contents): Promise<Answer<readonly Asked[]>> => {
    if (!(await contents.venues.find(venueId))) return notFound('venue', venueId);
    const asked: Asked[] = [];
    for (const { name, fixtureId, booking } of ways)
      asked.push({
        name,
        question: await gatherQuestion(contents, { venueId, fixtureId, booking, members, seed, cellSize }),
      });
    return done(asked);
  });
  if (!gathered.ok) return gathered;

  return done(async ({ signal, report }) => {
    const outcomes: WayOutcome[] = [];
    for (const [at, { name, question }] of gathered.value.entries()) {
      if (signal.aborted) return { ok: false, failure: { kind: 'cancelled', message: 'The comparison was stopped.' } };
      const share = (part: number): number => (at + part) / gathered.value.length;
      if (!question.ok) {
        outcomes.push({ name, forecast: null, recovery: null, reason: reasonOf(question.failure) });
        continue;
      }
      const forecast = await needs.compute('foresee', question.value, {
        signal,
        report: (progress) => report({ share: share(0.5 * progress.share), note: name }),
      });
      const outcome = recovery
        ? await recoveryAfter(needs, question.value, forecast, {
            signal,
            report: (progress) => report({ share: share(0.5 + 0.4 * progress.share), note: name }),
          })
        : { plan: null, reason: null };
      outcomes.push({ name, forecast, recovery: outcome.plan, reason: outcome.reason });
    }
    return done(outcomes);
  });
};

const reasonOf = (failure: Failure): string =>
  'problems' in failure ? failure.problems.map(({ field, reason }) => `${field}: ${reason}`).join('; ') : failure.message;

const recoveryAfter = async (
  needs: Needs,
  question: ForecastQuestion,
  forecast: Forecast,
  work: Work,
): Promise<ReturnType<typeof figuresOf>> => {
  const { venue, homeDate } = question;
  if (forecast.zones.every((zone) => zone.lastOff === null)) return { plan: null, reason: 'Nothing lies on the turf.' };
  const now = fromEpoch(needs.now(), venue.place.timeZone);
  if (now >= homeDate.start) return { plan: null, reason: 'The home date has begun.' };
  const asked = outlookQuestion(question, venue.field.rootZone.construction, venue.farms);
  const outlook = await needs.compute('outlook', asked, work);
  const parts: ProblemParts = {
    venue,
    values: parametersOf(venue),
    windows: [{ question, forecast, outlook }],
    now,
    locks: [],
    done: [],
    released: [],
    before: null,
  };
  try {
    return figuresOf(await schedulePlan(problemOf(parts), needs.optimiser, { gap, timeLimit, signal: work.signal }));
  } catch (error) {
    if (error instanceof PlanRefusal) return { plan: null, reason: `${error.field}: ${error.reason}` };
    throw error;
  }
};
