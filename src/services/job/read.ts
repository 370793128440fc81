import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const readJob: Service<'job/read'> = ({ jobs }, { id }) => {
  const job = jobs.find(id);
  return job ? done(job) : notFound('job', id);
};
