import type { HourlyWeather } from '#engine/heat/climate-column.ts';
import { saturationVapour } from '#engine/heat/saturation-vapour.ts';

/** A plain summer day for comparing coverings: sun by the textbook day arc, temperature by a sine from dawn to mid-afternoon. */
export interface DayPlan {
  readonly latitude: number;
  readonly dayOfYear: number;
  readonly highest: number;
  readonly lowest: number;
  /** Share of extraterrestrial radiation that arrives. */
  readonly clearness: number;
  readonly wind: number;
  /** °C */
  readonly dewPoint: number;
  readonly cloud: number;
}

export const hotJulyDay = (latitude: number): DayPlan => ({
  latitude,
  dayOfYear: 196,
  highest: 29,
  lowest: 18,
  clearness: 0.67,
  wind: 1.5,
  dewPoint: 17,
  cloud: 0.3,
});

/** Hourly arrays of one day, in solar time. */
export const dayWeather = (plan: DayPlan): HourlyWeather => {
  const latitude = (plan.latitude * Math.PI) / 180;
  const declination = 0.409 * Math.sin((2 * Math.PI * plan.dayOfYear) / 365 - 1.39);
  const half = (12 / Math.PI) * Math.acos(-Math.tan(latitude) * Math.tan(declination));
  const sunrise = 12 - half;
  const middle = (plan.highest + plan.lowest) / 2;
  const swing = (plan.highest - plan.lowest) / 2;
  const air = new Float64Array(24);
  const sun = new Float64Array(24);
  for (let hour = 0; hour < 24; hour++) {
    const angle = ((hour + 0.5 - 12) * Math.PI) / 12;
    const height = Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.cos(angle);
    sun[hour] = plan.clearness * 1367 * Math.max(0, height);
    const clock = hour + 1;
    // Falls from 15:00 through the night to sunrise, rises from sunrise to 15:00.
    const falling = clock < sunrise || clock > 15;
    const share = falling
      ? ((clock > 15 ? clock - 15 : clock + 9) / (sunrise + 9)) * Math.PI
      : Math.PI + ((clock - sunrise) / (15 - sunrise)) * Math.PI;
    air[hour] = middle + swing * Math.cos(share);
  }
  return {
    air,
    sun,
    wind: new Float64Array(24).fill(plan.wind),
    vapour: new Float64Array(24).fill(saturationVapour(plan.dewPoint)),
    cloud: new Float64Array(24).fill(plan.cloud),
  };
};
