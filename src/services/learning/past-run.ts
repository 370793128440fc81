import { frozenQuestion } from '#services/forecast/frozen-question.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { InspectionLine } from '#shared/vocabulary/inspection.ts';
import type { Id } from '#shared/vocabulary/primitives.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import type { Contents } from '#store/store.ts';

/** A kept run as it was asked before anything was seen, with all inspections of its event. */
export interface PastRun {
  /** The run that no reading had weighed: a weighed run leads back to it. */
  readonly root: ForecastRun;
  readonly question: ForecastQuestion;
  readonly lines: readonly InspectionLine[];
}

export const pastRun = async (contents: Contents, forecastId: Id): Promise<Answer<PastRun>> => {
  if (!(await contents.runs.find(forecastId))) return notFound('forecast', forecastId);
  const rootId = (await contents.learning.assimilation(forecastId))?.parentId ?? forecastId;
  const root = await contents.runs.find(rootId);
  const input = await contents.runs.inputOf(rootId);
  if (!root || input === null) return notFound('forecast', rootId);
  if (root.bookingId === null)
    return invalid([{ field: 'forecastId', reason: 'is a forecast without an event: no inspection belongs to it' }]);
  return done({
    root,
    question: frozenQuestion(input),
    lines: await contents.inspections.list(root.venueId, root.bookingId),
  });
};

/** Members a run is weighed with: as many as it had, or enough that weighing leaves some. */
export const enoughMembers = (asked: number | null, had: number): number => asked ?? Math.max(had, 200);
