/** Degree days of one day: `max(0, Tmean − base)`; bases by convention 0 °C cool-season, 10 °C warm-season. */
export const degreeDays = (meanTemperature: number, base: number): number => Math.max(0, meanTemperature - base);

/** Sum over days, °C d. */
export const sumDegreeDays = (meanTemperatures: ArrayLike<number>, base: number): number => {
  let sum = 0;
  for (let day = 0; day < meanTemperatures.length; day++) sum += degreeDays(meanTemperatures[day]!, base);
  return sum;
};

/**
 * Days until a growth-regulator spray is due again at a constant temperature; null at or below the base, where it never is.
 * @param interval °C d @source kreuser-soldat-2011, reasor-2018
 */
export const daysToRespray = (interval: number, temperature: number, base: number): number | null =>
  temperature > base ? interval / (temperature - base) : null;

/** °F d of a sum in °C d, exactly 1.8 times. */
export const fahrenheitDegreeDays = (celsiusDegreeDays: number): number => celsiusDegreeDays * 1.8;
