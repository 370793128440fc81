import { cosOf, sinOf, toRadians } from '#engine/sun/degrees.ts';

/**
 * How a day's radiation spreads over its hours. Share of the day in the hour around ω, ωs the hour angle of sunset, °:
 *
 *   rt = (π/24)(a + b cos ω)(cos ω − cos ωs)/(sin ωs − ωs cos ωs)    global (Collares-Pereira and Rabl)
 *   rd = (π/24)(cos ω − cos ωs)/(sin ωs − ωs cos ωs)                diffuse (Liu and Jordan)
 *   a = 0.409 + 0.5016 sin(ωs − 60),  b = 0.6609 − 0.4767 sin(ωs − 60)
 *
 * 0 outside the daylight. Sums over hours depart from 1 by up to 1.4 %: `shareOut` brings them back to 1.
 * @source collares-pereira-rabl-1979
 */

/** (π/24)(cos ω − cos ωs)/(sin ωs − ωs cos ωs): share of the day per hour. @source liu-jordan-1960 */
export const diffuseShareInHour = (angle: number, sunset: number): number => {
  if (Math.abs(angle) >= sunset) return 0;
  const whole = sinOf(sunset) - toRadians(sunset) * cosOf(sunset);
  return ((Math.PI / 24) * (cosOf(angle) - cosOf(sunset))) / whole;
};

/** rt: share of the day per hour. */
export const globalShareInHour = (angle: number, sunset: number): number => {
  const a = 0.409 + 0.5016 * sinOf(sunset - 60);
  const b = 0.6609 - 0.4767 * sinOf(sunset - 60);
  // In short winter days of high latitude a + b cos ω could fall below 0 at the edges of the day.
  return Math.max(0, a + b * cosOf(angle)) * diffuseShareInHour(angle, sunset);
};

/** Scales shares in place so that they add to 1. All zero stays all zero. */
export const shareOut = (shares: Float64Array): Float64Array => {
  let sum = 0;
  for (let i = 0; i < shares.length; i++) sum += shares[i]!;
  if (sum > 0) for (let i = 0; i < shares.length; i++) shares[i]! /= sum;
  return shares;
};
