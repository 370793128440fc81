import { wrapTo360 } from '#engine/sun/degrees.ts';
import { equationOfTime } from '#engine/sun/equation-of-time.ts';
import { julianDayOf } from '#engine/sun/julian-day.ts';
import { clockAheadAtNoon, dayOfYear, utcMidnight } from '#engine/sun/local-day.ts';
import { altitude, azimuth, sunsetHourAngle } from '#engine/sun/solar-angles.ts';
import { solarCoordinates } from '#engine/sun/solar-coordinates.ts';
import { sinOf, tanOf } from '#engine/sun/degrees.ts';

/**
 * Daylight in equal steps about solar noon, with the declination of that noon: morning and afternoon are each other's exact
 * mirror image, so that a mirrored bowl gets mirrored light. Against the true path the declination is off by at most 0.13° (at
 * an equinox, eight hours from noon), which moves the edge of a shadow by less than half a metre above 15° of altitude.
 */
export type SolarDay = {
  /** Day of the venue's calendar. */
  readonly date: string;
  /** n, 1–366. */
  readonly dayOfYear: number;
  /** δ at solar noon, °. */
  readonly declination: number;
  /** ωs, 0–180°. */
  readonly sunsetHourAngle: number;
  /** Hours the venue's clock shows at solar noon (as the clock stands that noon). */
  readonly noonClock: number;
  /** An even number; 0 in polar night. */
  readonly steps: number;
  /** h */
  readonly stepHours: number;
  /** ω at the middle of each step, °, morning first. */
  readonly hourAngle: Float64Array;
  readonly sinAltitude: Float64Array;
  readonly tanAltitude: Float64Array;
  /** ° clockwise from north. */
  readonly azimuth: Float64Array;
};

/**
 * @param date day of the venue's calendar; @param place ° north, ° east, IANA zone
 * @param stepMinutes longest step; the daylight is cut into the least even number of steps that are no longer
 */
export const solarDay = (
  date: string,
  place: { readonly latitude: number; readonly longitude: number; readonly timeZone: string },
  stepMinutes = 10,
): SolarDay => {
  if (!(stepMinutes > 0)) throw new RangeError(`sun step: ${stepMinutes} min is not above 0`);
  const ahead = clockAheadAtNoon(date, place.timeZone);
  const noon = julianDayOf(utcMidnight(date)) + (12 - ahead) / 24;
  const meanNoon = 12 - place.longitude / 15 + ahead;
  const nearNoon = noon + (meanNoon - 12) / 24;
  const noonClock = meanNoon - equationOfTime(nearNoon) / 60;
  const { declination } = solarCoordinates(nearNoon);
  const set = sunsetHourAngle(place.latitude, declination);
  const half = Math.max(0, Math.ceil((set * 4) / stepMinutes - 1e-9));
  const steps = 2 * half;
  const width = half === 0 ? 0 : set / half;
  const day = {
    hourAngle: new Float64Array(steps),
    sinAltitude: new Float64Array(steps),
    tanAltitude: new Float64Array(steps),
    azimuth: new Float64Array(steps),
  };
  for (let i = 0; i < half; i++) {
    const angle = (i + 0.5) * width;
    const high = altitude(place.latitude, declination, angle);
    const bearing = azimuth(place.latitude, declination, angle);
    for (const after of [true, false]) {
      const at = after ? half + i : half - 1 - i;
      day.hourAngle[at] = after ? angle : -angle;
      day.sinAltitude[at] = Math.max(0, sinOf(high));
      day.tanAltitude[at] = Math.max(0, tanOf(high));
      day.azimuth[at] = after ? bearing : wrapTo360(360 - bearing);
    }
  }
  return {
    date,
    dayOfYear: dayOfYear(date),
    declination,
    sunsetHourAngle: set,
    noonClock,
    steps,
    stepHours: width / 15,
    ...day,
  };
};
