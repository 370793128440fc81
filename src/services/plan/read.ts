import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const readPlan: Service<'plan/read'> = async ({ store }, { id }) => {
  const plan = await store.read((contents) => contents.plans.find(id));
  return plan ? done(plan) : notFound('plan', id);
};
