import { cosOf, sinOf, tanOf, toDegrees } from '#engine/sun/degrees.ts';
import { solarCoordinates } from '#engine/sun/solar-coordinates.ts';

/** How far the sundial is ahead of a clock that runs evenly. Both forms give minutes, positive where the sun is early. */

/**
 * By the almanac's short series, to about a second:
 *
 *   E = y sin 2L0 − 2e sin M + 4 e y sin M cos 2L0 − ½ y² sin 4L0 − 5/4 e² sin 2M  (radians),   y = tan²(ε/2)
 *
 * Four minutes of time make a degree.
 * @param day Julian day in dynamical time
 * @returns min
 * @source meeus-1998
 */
export const equationOfTime = (day: number): number => {
  const { meanLongitude: l, meanAnomaly: m, eccentricity: e, meanObliquity } = solarCoordinates(day);
  const y = tanOf(meanObliquity / 2) ** 2;
  const radians =
    y * sinOf(2 * l) -
    2 * e * sinOf(m) +
    4 * e * y * sinOf(m) * cosOf(2 * l) -
    0.5 * y * y * sinOf(4 * l) -
    1.25 * e * e * sinOf(2 * m);
  return 4 * toDegrees(radians);
};

/**
 * By the day of the year alone, to about half a minute, as solar engineering prints it. With B = (n − 1) 360/365:
 *
 *   E = 229.2 (0.000075 + 0.001868 cos B − 0.032077 sin B − 0.014615 cos 2B − 0.04089 sin 2B)
 *
 * @param n day of the year, 1–366
 * @returns min
 * @source spencer-1971
 */
export const equationOfTimeByDay = (n: number): number => {
  const b = ((n - 1) * 360) / 365;
  return 229.2 * (0.000075 + 0.001868 * cosOf(b) - 0.032077 * sinOf(b) - 0.014615 * cosOf(2 * b) - 0.04089 * sinOf(2 * b));
};
