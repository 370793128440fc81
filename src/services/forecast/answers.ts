import { frozenQuestion } from '#services/forecast/frozen-question.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Id } from '#shared/vocabulary/primitives.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { done, notFound } from '#services/answers.ts';
import { gatherQuestion } from '#services/forecast/question.ts';
import type { Checked, Service } from '#services/needs.ts';
import type { Contents } from '#store/store.ts';

/** m; as for a kept run. */
const cellSize = 2;

/** What is asked, and the classes of floor there are to set beside it. */
interface Gathered {
  readonly question: ForecastQuestion;
  readonly floors: readonly Covering[];
}

/** A kept run is answered from its frozen input; a booking that need not be stored from the workspace as it is now. Nothing is kept. */
export const answerForecast: Service<'forecast/answers'> = async (needs, { forecastId, trial }) => {
  const gathered = await needs.store.read(async (contents): Promise<Answer<Gathered>> => {
    const question = forecastId === null ? await ofTrial(contents, trial!) : await ofRun(contents, forecastId);
    return question.ok ? done({ question: question.value, floors: await contents.coverings.list() }) : question;
  });
  if (!gathered.ok) return gathered;
  return done(async (work) => done(await needs.compute('answers', gathered.value, work)));
};

const ofRun = async (contents: Contents, id: Id): Promise<Answer<ForecastQuestion>> => {
  const input = await contents.runs.inputOf(id);
  return input === null ? notFound('forecast', id) : done(frozenQuestion(input));
};

const ofTrial = (
  contents: Contents,
  trial: NonNullable<Checked<'forecast/answers'>['trial']>,
): Promise<Answer<ForecastQuestion>> => gatherQuestion(contents, { ...trial, cellSize });
