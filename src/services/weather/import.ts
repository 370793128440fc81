import { done, invalid, notFound } from '#services/answers.ts';
import { parametersOf } from '#services/forecast/question.ts';
import type { Service } from '#services/needs.ts';

/** How many refused lines are told; the rest are counted. */
const toldLines = 50;

/** Takes a weather file in whole or not at all: one refused line and nothing is stored. */
export const importWeather: Service<'weather/import'> = async ({ store, readWeather }, { venueId, format, fileName, text }) => {
  const venue = await store.read((contents) => contents.venues.find(venueId));
  if (!venue) return notFound('venue', venueId);
  const { latitude, elevation } = venue.place;
  const read = readWeather(format, text, { site: { latitude, elevation }, values: parametersOf(venue) });
  if (!read.ok)
    return invalid(
      read.refused.slice(0, toldLines).map(({ line, column, reason }) => ({
        field: line === 0 ? fileName : `line ${line}${column === null ? '' : `, ${column}`}`,
        reason,
      })),
    );
  const reading = {
    fileName,
    from: read.days[0]!.date,
    until: read.days.at(-1)!.date,
    days: read.days.length,
    filled: read.filled.map(({ line, quantity, how, day, through }) => ({
      line,
      quantity,
      how: day === through ? `${day}: ${how}` : `${day} to ${through}: ${how}`,
    })),
  };
  return store.write(async (contents) => {
    if (!(await contents.venues.find(venueId))) return notFound('venue', venueId);
    await contents.weather.takeIn(venueId, reading, read.days);
    return done(reading);
  });
};
