import { monthLight } from '#engine/light/month-light.ts';
import { done, notFound } from '#services/answers.ts';
import { parametersOf } from '#services/forecast/question.ts';
import type { Service } from '#services/needs.ts';

export const lightOfMonth: Service<'light/month'> = async ({ store }, { venueId, month }) => {
  const venue = await store.read((contents) => contents.venues.find(venueId));
  return venue ? done(monthLight(venue, parametersOf(venue), month)) : notFound('venue', venueId);
};
