import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import { seasonOf } from '#shared/vocabulary/turf.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { climateSettings } from '#engine/heat/climate-settings.ts';
import { crownTemperaturesForDay, type DayUnderCovering } from '#engine/heat/crown-temperatures-for-day.ts';
import { pitchGround } from '#engine/heat/pitch-ground.ts';
import { dayShape, spreadOverHours } from '#engine/sky/day-shape.ts';
import { drainedState, rootZoneWaterContent } from '#engine/water/root-zone.ts';
import { rootZoneProfile } from '#engine/water/root-zone-profile.ts';
import { clearSkyRadiation, extraterrestrialRadiation } from '#engine/weather/daily-radiation.ts';
import { emptyHours, fillHours } from '#engine/weather/hours-of-day.ts';
import { dayBetween, hourlyShape } from '#engine/weather/hourly-shape.ts';
import { completedDay } from '#engine/weather/missing-weather.ts';
import { normalSeason } from '#engine/weather/normal-season.ts';
import { seriesFrom } from '#engine/weather/weather-day.ts';

/** A day of the venue's calendar: the usual one, or one of given extremes whose radiation follows from their range. */
export interface DayOfVenue {
  readonly date: string;
  /** °C; null for the usual day. */
  readonly maximum: number | null;
  readonly minimum: number | null;
}

export interface ClimateOfDay {
  /** °C by hour. */
  readonly air: readonly number[];
  readonly under: readonly DayUnderCovering[];
}

/**
 * Crowns hour by hour under each covering on one day, in the open middle of the field, after the day has repeated until the ground
 * has settled to it.
 * @param dayOfLying day of lying that is shown, 1 the first
 * @throws RangeError where the maximum is below the minimum
 */
export const climateOfDay = (
  venue: Venue,
  values: ParameterValues,
  coverings: readonly Covering[],
  day: DayOfVenue,
  dayOfLying: number,
): ClimateOfDay => {
  const site = { latitude: venue.place.latitude, elevation: venue.place.elevation };
  const usual = normalSeason(venue.climate, site, values, day.date, 1);
  const maximum = day.maximum ?? usual.maximum[0]!;
  const minimum = day.minimum ?? usual.minimum[0]!;
  if (maximum < minimum) throw new RangeError(`maximum: ${maximum} °C is below the minimum of ${minimum} °C`);
  const asked = day.maximum !== null || day.minimum !== null;
  const whole = completedDay(
    {
      maximum,
      minimum,
      rain: 0,
      radiation: asked ? null : usual.radiation[0]!,
      vapourPressure: asked ? null : usual.vapourPressure[0]!,
      wind: usual.wind[0]!,
    },
    site,
    usual.dayOfYear[0]!,
    values,
  ).day;
  const shape = dayShape(day.date, venue.place, values['light.sunStep'], values['light.solarConstant']);
  const hours = emptyHours();
  const sun = { solarNoon: shape.sun.noonClock, dayLength: (2 * shape.sun.sunsetHourAngle) / 15 };
  fillHours(dayBetween(seriesFrom(day.date, [whole]), 0), sun, hourlyShape(values), hours);
  const [beam, diffuse] = [new Float64Array(24), new Float64Array(24)];
  spreadOverHours(shape, whole.radiation, beam, diffuse);
  const clear = clearSkyRadiation(extraterrestrialRadiation(site.latitude, usual.dayOfYear[0]!), site.elevation);
  const cloud = clear > 0 ? Math.min(1, Math.max(0, 1.35 - (1.35 * whole.radiation) / clear)) : 0.5;
  const { maximum: highs, minimum: lows } = venue.climate;
  const yearMean = highs.reduce((sum, high, month) => sum + (high + lows[month]!) / 2, 0) / 12;
  const profile = rootZoneProfile(venue.field.rootZone, seasonOf(venue.field.sward[0]!.grass), values);
  const under = crownTemperaturesForDay({
    coverings,
    day: {
      air: hours.temperature,
      sun: beam.map((value, hour) => ((value + diffuse[hour]!) * 1e6) / 3600),
      wind: hours.wind,
      vapour: hours.vapourPressure,
      cloud: new Float64Array(24).fill(cloud),
    },
    ground: pitchGround(venue.field.rootZone, rootZoneWaterContent(profile, drainedState(profile)), yearMean, values),
    settings: climateSettings(values),
    wetness: 1,
    care: [],
    skyView: 1,
    dayOfLying,
  });
  return { air: [...hours.temperature], under };
};
