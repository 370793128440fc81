import { answerAll, type AnswersQuestion } from '#engine/forecast/answers.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { recoveryOutlook, type OutlookQuestion } from '#engine/forecast/recovery-outlook.ts';
import { serveTasks } from '#platform/workers/serve-tasks.ts';

/** Entry of a worker thread: every task of `Tasks` by its name. */
serveTasks({
  foresee: (question: ForecastQuestion, report) => foresee(question, report),
  answers: (question: AnswersQuestion, report) => answerAll(question, report),
  outlook: (question: OutlookQuestion, report) => recoveryOutlook(question, report),
});
