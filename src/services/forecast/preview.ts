import { done } from '#services/answers.ts';
import { gatherQuestion } from '#services/forecast/question.ts';
import type { Service } from '#services/needs.ts';

/** The usual season, without chance: one member, seed 0. Nothing is kept. */
export const previewForecast: Service<'forecast/preview'> = async (needs, { venueId, fixtureId, booking, cellSize }) => {
  const asked = { venueId, fixtureId, booking, members: 1, seed: 0, cellSize, withoutYears: true as const };
  const gathered = await needs.store.read((contents) => gatherQuestion(contents, asked));
  return gathered.ok ? done(await needs.compute('foresee', gathered.value, { urgent: true })) : gathered;
};
