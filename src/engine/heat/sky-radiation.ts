/**
 * Longwave radiation of the sky: a clear dry night cools a pitch far below the air, a cloudy one does not.
 *
 *     ε_clear = 1.24 (10 ea / Ta)^(1/7),   ε = ε_clear + 0.84 c (1 − ε_clear),   L↓ = ε σ Ta⁴
 *
 * ea kPa, Ta K, c share of sky under cloud 0–1, L↓ W/m². ε is held between 0.5 and 1.
 * @source brutsaert-1975; cloud term monteith-unsworth-2013
 */
export const stefanBoltzmann = 5.670374e-8;
export const kelvin = 273.15;

export const skyEmissivity = (airTemperature: number, vapourPressure: number, cloud: number): number => {
  const clear = 1.24 * Math.pow((10 * Math.max(vapourPressure, 0)) / (airTemperature + kelvin), 1 / 7);
  const held = clear < 0.5 ? 0.5 : clear > 1 ? 1 : clear;
  return held + 0.84 * cloud * (1 - held);
};

/** σ T⁴, W/m², of a black surface at a temperature in °C. */
export const blackBody = (temperature: number): number => {
  const absolute = temperature + kelvin;
  const square = absolute * absolute;
  return stefanBoltzmann * square * square;
};
