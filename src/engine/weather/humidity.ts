/**
 * Moist air. Vapour pressure drives evaporation and fills in for missing humidity.
 *
 * P = 101.3 ((293 − 0.0065 z)/293)^5.26            atmospheric pressure, kPa; z elevation, m          (eq. 7)
 * γ = 0.000665 P                                    psychrometric constant, kPa/°C                      (eq. 8)
 * e°(T) = 0.6108 exp(17.27 T/(T + 237.3))           saturation vapour pressure, kPa; T in °C            (eq. 11)
 * es = (e°(Tmax) + e°(Tmin))/2                      mean saturation vapour pressure                     (eq. 12)
 * Δ = 4098 e°(T)/(T + 237.3)²                       slope of the saturation curve, kPa/°C               (eq. 13)
 * ea = e°(Twet) − a P (Tdry − Twet)                 a psychrometer coefficient, 1/°C                    (eq. 15, 16)
 * ea = [e°(Tmin) RHmax + e°(Tmax) RHmin]/2          relative humidity 0–1                               (eq. 17)
 * ea = e°(Tmin) RHmax                               when the lowest humidity is doubtful                (eq. 18)
 * ea = RHmean es                                    the weakest form                                    (eq. 19)
 *
 * Range: −70 to 60 °C, −420 to 4,500 m. Nothing is clamped here.
 * @source allen-1998
 */

/** kPa at `elevation` m. */
export const atmosphericPressure = (elevation: number): number => 101.3 * ((293 - 0.0065 * elevation) / 293) ** 5.26;

/** kPa/°C at a pressure in kPa. */
export const psychrometricConstant = (pressure: number): number => 0.000665 * pressure;

/** kPa over water at `temperature` °C; also the actual vapour pressure at a dew point. */
export const saturationVapourPressure = (temperature: number): number =>
  0.6108 * Math.exp((17.27 * temperature) / (temperature + 237.3));

/** kPa/°C. */
export const saturationSlope = (temperature: number): number =>
  (4098 * saturationVapourPressure(temperature)) / (temperature + 237.3) ** 2;

/** kPa: mean of the values at the day's extremes, not the value at the mean temperature. */
export const meanSaturationVapourPressure = (maximum: number, minimum: number): number =>
  (saturationVapourPressure(maximum) + saturationVapourPressure(minimum)) / 2;

/** kPa from dry and wet bulb °C, pressure kPa and the instrument's coefficient (0.000662 aspirated), 1/°C. */
export const vapourPressureFromWetBulb = (dryBulb: number, wetBulb: number, pressure: number, coefficient: number): number =>
  saturationVapourPressure(wetBulb) - coefficient * pressure * (dryBulb - wetBulb);

/** kPa from the day's extremes of temperature °C and relative humidity 0–1. */
export const vapourPressureFromHumidityRange = (
  maximum: number,
  minimum: number,
  highestHumidity: number,
  lowestHumidity: number,
): number => (saturationVapourPressure(minimum) * highestHumidity + saturationVapourPressure(maximum) * lowestHumidity) / 2;

/** kPa from the lowest temperature °C and the highest relative humidity 0–1. */
export const vapourPressureFromHighestHumidity = (minimum: number, highestHumidity: number): number =>
  saturationVapourPressure(minimum) * highestHumidity;

/** kPa from the day's extremes of temperature °C and its mean relative humidity 0–1. */
export const vapourPressureFromMeanHumidity = (maximum: number, minimum: number, meanHumidity: number): number =>
  meanHumidity * meanSaturationVapourPressure(maximum, minimum);

/** Dew point °C of a vapour pressure kPa (the saturation curve turned round). Pressures below 0.001 kPa read as 0.001. */
export const dewPoint = (vapourPressure: number): number => {
  const ratio = Math.log(Math.max(vapourPressure, 0.001) / 0.6108);
  return (237.3 * ratio) / (17.27 - ratio);
};

/**
 * Wind speed at 2 m from a reading at another height over short grass, m/s: u2 = uz 4.87/ln(67.8 z − 5.42) (eq. 47).
 * @param height of the instrument, m. Below 0.5 m, where the logarithm loses its meaning, a RangeError.
 */
export const windAtTwoMetres = (speed: number, height: number): number => {
  if (!(height >= 0.5)) throw new RangeError(`height: ${height} m; a wind reading must be taken at 0.5 m or more`);
  return (speed * 4.87) / Math.log(67.8 * height - 5.42);
};
