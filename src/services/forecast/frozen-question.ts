import { defaultValues } from '#shared/parameters/catalogue.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';

/** The question of a kept run. Numbers that the catalogue has gained since stand at their own values; all others as they were frozen. */
export const frozenQuestion = (input: string): ForecastQuestion => {
  const question = JSON.parse(input) as ForecastQuestion;
  return { ...question, parameters: { ...defaultValues, ...question.parameters } };
};
