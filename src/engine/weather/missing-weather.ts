import type { WeatherValues } from '#shared/parameters/weather.ts';
import {
  clearSkyRadiation,
  daylightHours,
  extraterrestrialRadiation,
  radiationFromSunshine,
  radiationFromTemperatureRange,
  type DailySite,
} from '#engine/weather/daily-radiation.ts';
import { meanSaturationVapourPressure, saturationVapourPressure } from '#engine/weather/humidity.ts';
import type { WeatherDay } from '#engine/weather/weather-day.ts';

/**
 * A day of which only part is known, made whole by the evapotranspiration standard's rules for missing data:
 * radiation from hours of sunshine, else from the range of temperature; humidity with the dew point at the night minimum;
 * wind at the default. Temperatures and rain have no substitute.
 * @source allen-1998
 */
export interface PartialDay {
  /** °C */
  readonly maximum: number;
  readonly minimum: number;
  /** mm */
  readonly rain: number;
  /** MJ/m²/d; null where unknown, and so below. */
  readonly radiation: number | null;
  /** Hours of sunshine, used where radiation is unknown. */
  readonly sunshine?: number | null;
  /** kPa */
  readonly vapourPressure: number | null;
  /** Mean relative humidity 0–1, used where vapour pressure is unknown. */
  readonly humidity?: number | null;
  /** m/s at 2 m */
  readonly wind: number | null;
}

/** How a quantity was filled, in words for a report. */
export interface Filling {
  readonly quantity: 'radiation' | 'vapourPressure' | 'wind';
  readonly how: string;
}

/** MJ/m²/d from whatever is known. */
const radiationOf = (day: PartialDay, site: DailySite, dayOfYear: number, values: WeatherValues, filled: Filling[]): number => {
  if (day.radiation !== null) return day.radiation;
  const outside = extraterrestrialRadiation(site.latitude, dayOfYear);
  const sunshine = day.sunshine ?? null;
  if (sunshine !== null) {
    filled.push({ quantity: 'radiation', how: 'from hours of sunshine' });
    const longest = daylightHours(site.latitude, dayOfYear);
    const share = longest > 0 ? sunshine / longest : 0;
    return radiationFromSunshine(share, outside, values['weather.sunshine.a'], values['weather.sunshine.b']);
  }
  filled.push({ quantity: 'radiation', how: 'from the range of temperature' });
  const clearSky = clearSkyRadiation(outside, site.elevation);
  return radiationFromTemperatureRange(day.maximum, day.minimum, outside, values['weather.radiation.fromRange'], clearSky);
};

const vapourPressureOf = (day: PartialDay, values: WeatherValues, filled: Filling[]): number => {
  const saturation = meanSaturationVapourPressure(day.maximum, day.minimum);
  if (day.vapourPressure !== null) return day.vapourPressure;
  if (day.humidity !== undefined && day.humidity !== null) return Math.min(1, day.humidity) * saturation;
  filled.push({ quantity: 'vapourPressure', how: 'dew point taken at the night minimum' });
  return saturationVapourPressure(day.minimum - values['weather.dewPoint.belowMinimum']);
};

/** The whole day, and what was filled how. */
export const completedDay = (
  day: PartialDay,
  site: DailySite,
  dayOfYear: number,
  values: WeatherValues,
): { readonly day: WeatherDay; readonly filled: readonly Filling[] } => {
  const filled: Filling[] = [];
  if (day.wind === null) filled.push({ quantity: 'wind', how: `taken as ${values['weather.wind.default']} m/s` });
  return {
    day: {
      maximum: day.maximum,
      minimum: day.minimum,
      rain: day.rain,
      radiation: radiationOf(day, site, dayOfYear, values, filled),
      vapourPressure: vapourPressureOf(day, values, filled),
      wind: day.wind ?? values['weather.wind.default'],
    },
    filled,
  };
};
