import { expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { modelKeeper, weatherModel } from '#engine/weather/weather-model.ts';
import { smallVenue } from '#tests/contract/small-venue.ts';

const { climate, place } = smallVenue;
const site = { latitude: place.latitude, elevation: place.elevation };

it('a kept model is that of its climate, place and values, and another one for each of them', () => {
  const models = modelKeeper();
  const one = models(climate, site, defaultValues);
  expect(one).toEqual(weatherModel(climate, site, defaultValues));
  expect(models({ ...climate }, { ...site }, { ...defaultValues })).toBe(one);
  const warmer = { ...climate, maximum: climate.maximum.map((month) => month + 1) };
  expect(models(warmer, site, defaultValues)).toEqual(weatherModel(warmer, site, defaultValues));
  const north = { ...site, latitude: site.latitude + 5 };
  expect(models(climate, north, defaultValues)).toEqual(weatherModel(climate, north, defaultValues));
  const cooler = { ...defaultValues, 'weather.wetDay.cooling': defaultValues['weather.wetDay.cooling'] + 1 };
  expect(models(climate, site, cooler)).toEqual(weatherModel(climate, site, cooler));
  expect(models(climate, site, cooler)).not.toEqual(one);
});
