import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

/** How a run was weighed. */
export const readAssimilation: Service<'learning/read'> = async ({ store }, { runId }) => {
  const assimilation = await store.read((contents) => contents.learning.assimilation(runId));
  return assimilation ? done(assimilation) : notFound('weighed run', runId);
};
