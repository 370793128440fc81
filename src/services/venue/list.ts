import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listVenues: Service<'venue/list'> = async ({ store }) =>
  done([...(await store.read((contents) => contents.venues.list()))]);
