import { answerAll, type AnswersQuestion } from '#engine/forecast/answers.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { recoveryOutlook, type OutlookQuestion } from '#engine/forecast/recovery-outlook.ts';
import { type AssimilateQuestion, assimilate } from '#engine/learning/assimilate.ts';
import { type LearnQuestion, learnFromEvents } from '#engine/learning/learn-from-events.ts';
import { type MeasureQuestion, measurePhotograph } from '#platform/photographs/measure.ts';
import { thumbnailOf } from '#platform/photographs/thumbnail.ts';
import { serveTasks } from '#platform/workers/serve-tasks.ts';

/** Entry of a worker thread: every task of `Tasks` by its name. */
serveTasks({
  foresee: (question: ForecastQuestion, report) => foresee(question, report),
  answers: (question: AnswersQuestion, report) => answerAll(question, report),
  outlook: (question: OutlookQuestion, report) => recoveryOutlook(question, report),
  assimilate: (question: AssimilateQuestion, report) => assimilate(question, report),
  learn: (question: LearnQuestion, report) => learnFromEvents(question, report),
  thumbnail: (question: { readonly bytes: Uint8Array }) => thumbnailOf(question),
  measure: (question: MeasureQuestion) => measurePhotograph(question),
});
