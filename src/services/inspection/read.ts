import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const readInspection: Service<'inspection/read'> = async ({ store }, { id }) => {
  const line = await store.read((contents) => contents.inspections.find(id));
  return line ? done(line) : notFound('inspection', id);
};
