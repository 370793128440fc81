import { cosOf, sinOf, toRadians } from '#engine/sun/degrees.ts';
import { sunsetHourAngle } from '#engine/sun/solar-angles.ts';

/**
 * Sunlight above the air: the most a day could bring. Two forms of the normal irradiance stand side by side because they
 * differ by 3 W/m² in January; with n the day of the year and B = (n − 1) 360/365:
 *
 *   Gon = Gsc (1 + 0.033 cos(360 n/365))                                                          simple
 *   Gon = Gsc (1.000110 + 0.034221 cos B + 0.001280 sin B + 0.000719 cos 2B + 0.000077 sin 2B)    Spencer
 *   H0  = (86400/π) Gon [cos φ cos δ sin ωs + ωs sin φ sin δ]                                     a day, level ground
 *   I0  = (43200/π) Gon [cos φ cos δ (sin ω2 − sin ω1) + (ω2 − ω1) sin φ sin δ]                    from ω1 to ω2
 *
 * H0 is 0 in polar night. I0 counts only the part between rise and set. Printed with Gsc = 1367 W/m².
 * @source duffie-beckman-2013
 */

/** @param n day of the year; @param solarConstant W/m²; @returns W/m² */
export const normalExtraterrestrialSimple = (n: number, solarConstant: number): number =>
  solarConstant * (1 + 0.033 * cosOf((360 * n) / 365));

/** @param n day of the year; @param solarConstant W/m²; @returns W/m². @source spencer-1971 */
export const normalExtraterrestrial = (n: number, solarConstant: number): number => {
  const b = ((n - 1) * 360) / 365;
  return solarConstant * (1.00011 + 0.034221 * cosOf(b) + 0.00128 * sinOf(b) + 0.000719 * cosOf(2 * b) + 0.000077 * sinOf(2 * b));
};

/** H0. @param latitude °; @param declination °; @param normal Gon, W/m²; @returns MJ/m²/d */
export const dailyExtraterrestrial = (latitude: number, declination: number, normal: number): number => {
  const set = sunsetHourAngle(latitude, declination);
  return (
    (0.0864 / Math.PI) *
    normal *
    Math.max(0, cosOf(latitude) * cosOf(declination) * sinOf(set) + toRadians(set) * sinOf(latitude) * sinOf(declination))
  );
};

/** I0 between two hour angles, ° (`from` ≤ `until`). @returns MJ/m² */
export const extraterrestrialBetween = (
  latitude: number,
  declination: number,
  from: number,
  until: number,
  normal: number,
): number => {
  const set = sunsetHourAngle(latitude, declination);
  const first = Math.min(set, Math.max(-set, from));
  const last = Math.min(set, Math.max(-set, until));
  return (
    (0.0432 / Math.PI) *
    normal *
    Math.max(
      0,
      cosOf(latitude) * cosOf(declination) * (sinOf(last) - sinOf(first)) +
        toRadians(last - first) * sinOf(latitude) * sinOf(declination),
    )
  );
};

/**
 * The day of each month whose H0 is nearest the month's mean, January first: n for a year without 29 February.
 * @source duffie-beckman-2013
 */
export const averageDays: readonly number[] = [17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344];
