import { lightFromFlux } from '#engine/light/photons.ts';

/**
 * A leaf uses light only up to the flux at which it saturates, so a day of light counts as
 *
 *   Σ min(PPFD, cap) Δt
 *
 * PPFD and cap in µmol/m²/s; the sum in mol/m². Never more than the light there is.
 */

/** @param light mol/m² in each interval; @param hours length of each interval, h; @param cap µmol/m²/s; @returns mol/m² */
export const usefulLight = (light: ArrayLike<number>, hours: number, cap: number): number => {
  const most = lightFromFlux(cap, hours);
  let sum = 0;
  for (let i = 0; i < light.length; i++) sum += Math.min(light[i]!, most);
  return sum;
};

/**
 * Flux of a day that swells and fades as half a sine wave:  PPFD(t) = peak · sin(π t/D),  peak = π DLI/(2 D · 0.0036).
 * @param light DLI, mol/m²/d; @param dayLength D, h; @param sinceRise t, h; @returns µmol/m²/s; 0 outside the day
 */
export const halfSineFlux = (light: number, dayLength: number, sinceRise: number): number =>
  sinceRise <= 0 || sinceRise >= dayLength ? 0 : halfSinePeak(light, dayLength) * Math.sin((Math.PI * sinceRise) / dayLength);

/** Flux at the top of the half sine, µmol/m²/s; 0 where there is no day. */
export const halfSinePeak = (light: number, dayLength: number): number =>
  dayLength > 0 ? (Math.PI * light) / (2 * dayLength * 0.0036) : 0;

/**
 * Useful light of a half-sine day in closed form. With the cap met at t0 = (D/π) asin(cap/peak):
 *
 *   useful = DLI (1 − cos(π t0/D)) + cap (D − 2 t0) 0.0036
 *
 * @param light DLI, mol/m²/d; @param dayLength D, h; @param cap µmol/m²/s; @returns mol/m²/d
 */
export const usefulLightOfHalfSine = (light: number, dayLength: number, cap: number): number => {
  const peak = halfSinePeak(light, dayLength);
  if (peak <= cap) return dayLength > 0 ? light : 0;
  const reach = Math.asin(Math.max(0, cap) / peak);
  const capped = lightFromFlux(Math.max(0, cap), dayLength * (1 - (2 * reach) / Math.PI));
  return light * (1 - Math.cos(reach)) + capped;
};
