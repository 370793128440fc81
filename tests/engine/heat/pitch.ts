import { defaultValues } from '#shared/parameters/catalogue.ts';
import type { RootZone } from '#shared/vocabulary/turf.ts';
import { climateSettings } from '#engine/heat/climate-settings.ts';
import type { HourlyWeather } from '#engine/heat/climate-column.ts';
import { pitchGround } from '#engine/heat/pitch-ground.ts';
import { startingCoverings } from '#shared/parameters/coverings.ts';

/** A sand pitch over gravel, invented. */
export const sandPitch: RootZone = {
  construction: 'sand-over-gravel',
  soil: 'sand',
  sandShare: 0.92,
  depth: 0.3,
  gravelDepth: 0.1,
  drainSpacing: 5,
  conductivity: 300,
};

export const settings = climateSettings(defaultValues);
export const groundAt = (deepTemperature: number, water = 0.18) => pitchGround(sandPitch, water, deepTemperature, defaultValues);

export const coveringNamed = (id: (typeof startingCoverings)[number]['id']) =>
  startingCoverings.find((covering) => covering.id === id)!;

/** The same day again and again, its air shifted by some degrees. */
export const days = (day: HourlyWeather, count: number, shift = 0): HourlyWeather => {
  const again = (values: Float64Array, plus = 0) =>
    Float64Array.from({ length: 24 * count }, (_, hour) => values[hour % 24]! + plus);
  return {
    air: again(day.air, shift),
    sun: again(day.sun),
    wind: again(day.wind),
    vapour: again(day.vapour),
    cloud: again(day.cloud),
  };
};
