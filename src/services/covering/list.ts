import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listCoverings: Service<'covering/list'> = async ({ store }) =>
  done([...(await store.read((contents) => contents.coverings.list()))]);
