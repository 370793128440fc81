import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const readWeather: Service<'weather/read'> = ({ store }, { venueId }) =>
  store.read(async (contents) => {
    if (!(await contents.venues.find(venueId))) return notFound('venue', venueId);
    const { weather } = contents;
    return done({
      observed: [...(await weather.readings(venueId))],
      actual: [...(await weather.days(venueId, 'actual'))],
      expected: [...(await weather.days(venueId, 'expected'))],
    });
  });
