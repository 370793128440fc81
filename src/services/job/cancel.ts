import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const cancelJob: Service<'job/cancel'> = async ({ jobs }, { id }) => {
  const job = await jobs.cancel(id);
  return job ? done(job) : notFound('job', id);
};
