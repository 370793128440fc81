import { done, invalid, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const setWeatherDays: Service<'weather/set-days'> = ({ store }, { venueId, standing, days }) =>
  store.write(async (contents) => {
    if (!(await contents.venues.find(venueId))) return notFound('venue', venueId);
    const twice = days.findIndex((day, index) => days.findIndex((other) => other.date === day.date) !== index);
    if (twice >= 0) return invalid([{ field: `days.${twice}.date`, reason: `${days[twice]!.date} stands twice` }]);
    await contents.weather.setDays(venueId, standing, days);
    return done({ days: days.length });
  });
