import { saturationVapourPressure } from '#engine/weather/humidity.ts';

/**
 * The hours of a day from its extremes, for the heat under a covering.
 *
 * Temperature: from the minimum near sunrise on a sine to the maximum some hours after solar noon, on to sunset, then a decaying
 * exponential to the next minimum:
 *   day    T = Tmin + (Tmax − Tmin) sin(π m/(Y + 2a − 2c))    m hours since the minimum, Y day length, a lag of the maximum,
 *                                                             c lag of the minimum behind sunrise
 *   night  T = [Tmin' − Ts e^(−b) + (Ts − Tmin') e^(−b s/Z)]/(1 − e^(−b))   Ts at sunset, Z length of the night from sunset to the
 *                                                             minimum, s hours since sunset; so the next minimum is met exactly
 * The sine reaches the maximum a + Y/2 after sunrise. Radiation by the hour belongs to the sky, not to this file.
 * Humidity: the day's vapour pressure, never above saturation of the hour. Wind: two levels, day and night, in a set ratio about
 * the day's mean. Rain: one block of whole hours at a set rate around a set hour, the day's total kept.
 * Day lengths outside 2–22 h are held there: at such latitudes the shape is a guess anyway.
 * @source parton-logan-1981
 */
export interface HourlyShape {
  /** h after solar noon */
  readonly maximumLag: number;
  /** h after sunrise */
  readonly minimumLag: number;
  readonly nightDecay: number;
  /** Day wind over night wind. */
  readonly windRatio: number;
  /** mm/h */
  readonly rainIntensity: number;
  /** Hour of the day, 0–24, in the middle of the rain. */
  readonly rainCentre: number;
}

/** One day's sun by the clock that the hours are to follow, h. */
export interface DaylightClock {
  readonly solarNoon: number;
  /** h */
  readonly dayLength: number;
}

/** Twenty-four values each; hour 0 is midnight to one. */
export interface HoursOfDay {
  /** °C, at the middle of the hour */
  readonly temperature: Float64Array;
  /** kPa */
  readonly vapourPressure: Float64Array;
  /** m/s at 2 m */
  readonly wind: Float64Array;
  /** mm */
  readonly rain: Float64Array;
}

export const emptyHours = (): HoursOfDay => ({
  temperature: new Float64Array(24),
  vapourPressure: new Float64Array(24),
  wind: new Float64Array(24),
  rain: new Float64Array(24),
});

/** A day as its hours need it: the neighbours' extremes shape the two nights. */
export interface DayBetween {
  readonly maximum: number;
  readonly minimum: number;
  readonly rain: number;
  readonly vapourPressure: number;
  readonly wind: number;
  /** Extremes of the day before, °C; the day's own when they are not known. */
  readonly maximumBefore: number;
  readonly minimumBefore: number;
  /** Minimum of the day after, °C; the day's own when it is not known. */
  readonly minimumAfter: number;
}

/** °C at a clock hour, which may lie outside 0–24 by a night. */
export const temperatureAt = (day: DayBetween, sun: DaylightClock, shape: HourlyShape, hour: number): number => {
  const length = Math.max(2, Math.min(22, sun.dayLength));
  const coldest = sun.solarNoon - length / 2 + shape.minimumLag;
  const sunset = sun.solarNoon + length / 2;
  const wave = 2 * (sun.solarNoon + shape.maximumLag - coldest);
  const atSunset = Math.sin((Math.PI * (sunset - coldest)) / wave);
  const night = 24 - (sunset - coldest);
  if (hour >= coldest && hour <= sunset) {
    return day.minimum + (day.maximum - day.minimum) * Math.sin((Math.PI * (hour - coldest)) / wave);
  }
  const evening = hour > sunset;
  const before = evening ? day.minimum : day.minimumBefore;
  const from = before + ((evening ? day.maximum : day.maximumBefore) - before) * atSunset;
  const to = evening ? day.minimumAfter : day.minimum;
  const since = evening ? hour - sunset : hour + 24 - sunset;
  const end = Math.exp(-shape.nightDecay);
  return (to - from * end + (from - to) * Math.exp((-shape.nightDecay * since) / night)) / (1 - end);
};

const fillRain = (rain: Float64Array, total: number, shape: HourlyShape): void => {
  rain.fill(0);
  if (total <= 0) return;
  const hours = Math.max(1, Math.min(24, Math.round(total / shape.rainIntensity)));
  const from = Math.max(0, Math.min(24 - hours, Math.round(shape.rainCentre - hours / 2)));
  for (let hour = from; hour < from + hours; hour++) rain[hour] = total / hours;
};

/** Fills the hours of one day in place. */
export const fillHours = (day: DayBetween, sun: DaylightClock, shape: HourlyShape, out: HoursOfDay): void => {
  const length = Math.max(2, Math.min(22, sun.dayLength));
  const calm = (24 * day.wind) / (length * shape.windRatio + (24 - length));
  for (let hour = 0; hour < 24; hour++) {
    const middle = hour + 0.5;
    const temperature = temperatureAt(day, sun, shape, middle);
    out.temperature[hour] = temperature;
    out.vapourPressure[hour] = Math.min(day.vapourPressure, saturationVapourPressure(temperature));
    // The part of the hour between sunrise and sunset, so that the day's mean wind is kept exactly.
    const rise = sun.solarNoon - length / 2;
    const lit = [-24, 0, 24].reduce(
      (sum, shift) => sum + Math.max(0, Math.min(hour + 1, rise + shift + length) - Math.max(hour, rise + shift)),
      0,
    );
    out.wind[hour] = calm * (1 + (shape.windRatio - 1) * lit);
  }
  fillRain(out.rain, day.rain, shape);
};

/** The hours of one day in arrays of their own. */
export const hoursOf = (day: DayBetween, sun: DaylightClock, shape: HourlyShape): HoursOfDay => {
  const hours = emptyHours();
  fillHours(day, sun, shape, hours);
  return hours;
};
