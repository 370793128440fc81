/**
 * Vapour pressure over water, and its slope: what drives evaporation from a leaf.
 *
 *     e0(T) = 0.6108 exp(17.27 T/(T + 237.3)),   de0/dT = 4098 e0/(T + 237.3)²
 *
 * T °C (meant for −40 to 60; below −100 the value of −100 is used, where it is nil), e0 kPa, slope kPa/K.
 * @source allen-1998 eq. 11, 13
 */
export const saturationVapour = (temperature: number): number => {
  const t = temperature > -100 ? temperature : -100;
  return 0.6108 * Math.exp((17.27 * t) / (t + 237.3));
};

/** Slope belonging to a value of `saturationVapour` at the same temperature. */
export const vapourSlope = (temperature: number, saturated: number): number => {
  const t = (temperature > -100 ? temperature : -100) + 237.3;
  return (4098 * saturated) / (t * t);
};
