import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listVehicles: Service<'vehicle/list'> = async ({ store }) =>
  done([...(await store.read((contents) => contents.vehicles.list()))]);
