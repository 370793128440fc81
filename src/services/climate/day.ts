import { climateOfDay } from '#engine/heat/climate-of-day.ts';
import { done, invalid, notFound, outOfRange } from '#services/answers.ts';
import { parametersOf } from '#services/forecast/question.ts';
import type { Service } from '#services/needs.ts';

export const climateUnderCoverings: Service<'climate/day'> = async ({ store }, request) => {
  const { venueId, date, maximum, minimum, dayOfLying } = request;
  const { venue, all } = await store.read(async (contents) => ({
    venue: await contents.venues.find(venueId),
    all: await contents.coverings.list(),
  }));
  if (!venue) return notFound('venue', venueId);
  const unknown = request.coverings.findIndex((id) => !all.some((covering) => covering.id === id));
  if (unknown >= 0)
    return invalid([{ field: `coverings.${unknown}`, reason: `there is no covering "${request.coverings[unknown]!}"` }]);
  if (maximum !== null && minimum !== null && maximum < minimum)
    return outOfRange([{ field: 'maximum', reason: `is ${maximum} °C, below the minimum of ${minimum} °C` }]);
  const coverings = request.coverings.length === 0 ? all : all.filter((covering) => request.coverings.includes(covering.id));
  const { air, under } = climateOfDay(venue, parametersOf(venue), coverings, { date, maximum, minimum }, dayOfLying);
  return done({
    air: air.map(tenths),
    under: under.map((one) => ({
      covering: one.coveringId,
      name: coverings.find((covering) => covering.id === one.coveringId)!.name,
      hourly: one.hourly.map(tenths),
      mean: tenths(one.mean),
      maximum: tenths(one.maximum),
    })),
  });
};

const tenths = (value: number): number => Math.round(value * 10) / 10;
