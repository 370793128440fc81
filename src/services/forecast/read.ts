import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const readForecast: Service<'forecast/read'> = async ({ store }, { id }) => {
  const run = await store.read((contents) => contents.runs.find(id));
  return run ? done(run) : notFound('forecast', id);
};
