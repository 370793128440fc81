import type { DoubtOf } from '#engine/forecast/draw-parameters.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';

/** Doubts as the venue has learnt them, else the catalogue's; widened where the run asks for it. */
export const doubtsOf = ({ venue, widened = 1 }: Pick<ForecastQuestion, 'venue' | 'widened'>): DoubtOf => {
  const { settings } = venue;
  return (name, doubt) => ((Object.hasOwn(settings, name) ? settings[name]!.doubt : undefined) ?? doubt) * widened;
};
