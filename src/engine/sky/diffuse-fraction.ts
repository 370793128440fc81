import { cosOf } from '#engine/sun/degrees.ts';

/**
 * What share of global radiation comes from the whole sky and not from the sun's disc, by how clear it is. k, K: radiation
 * received over that above the air for the hour, the day, the month's mean day. ωs: hour angle of sunset, °; at or below 81.4
 * the correlations for a day and a month take their winter form. Every result is held inside 0 to 1.
 */
const share = (value: number): number => Math.min(1, Math.max(0, value));

/** ωs up to which the winter forms hold, °. */
const winter = 81.4;

/**
 * Hour: k ≤ 0.22: 1 − 0.09k; to 0.80: 0.9511 − 0.1604k + 4.388k² − 16.638k³ + 12.336k⁴; above: 0.165. A negative k counts as 0.
 * @source erbs-1982
 */
export const diffuseShareOfHour = (clearness: number): number => {
  const k = Math.max(0, clearness);
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k <= 0.8) return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
  return 0.165;
};

/**
 * Day. Winter: 1 − 0.2727K + 2.4495K² − 11.9514K³ + 9.3879K⁴ for K < 0.715, else 0.143;
 * otherwise 1 + 0.2832K − 2.5557K² + 0.8448K³ for K < 0.722, else 0.175. A negative K counts as 0.
 * @source erbs-1982
 */
export const diffuseShareOfDay = (clearness: number, sunset: number): number => {
  const k = Math.max(0, clearness);
  if (sunset <= winter) return k < 0.715 ? share(1 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + k * 9.3879)))) : 0.143;
  return k < 0.722 ? share(1 + k * (0.2832 + k * (-2.5557 + k * 0.8448))) : 0.175;
};

/**
 * Month's mean day. Winter: 1.391 − 3.560K + 4.189K² − 2.137K³; otherwise 1.311 − 3.022K + 3.427K² − 1.821K³.
 * Valid for 0.3 ≤ K ≤ 0.8: K outside is taken at the nearer limit.
 * @source erbs-1982
 */
export const diffuseShareOfMonth = (clearness: number, sunset: number): number => {
  const k = Math.min(0.8, Math.max(0.3, clearness));
  return sunset <= winter ? 1.391 + k * (-3.56 + k * (4.189 - k * 2.137)) : 1.311 + k * (-3.022 + k * (3.427 - k * 1.821));
};

/**
 * Day, another correlation: 0.99 for K ≤ 0.17; 1.188 − 2.272K + 9.473K² − 21.865K³ + 14.648K⁴ below 0.75; −0.54K + 0.632 below
 * 0.80; 0.2 above.
 * @source collares-pereira-rabl-1979
 */
export const diffuseShareOfDayCollaresPereiraRabl = (clearness: number): number => {
  const k = clearness;
  if (k <= 0.17) return 0.99;
  if (k < 0.75) return 1.188 + k * (-2.272 + k * (9.473 + k * (-21.865 + k * 14.648)));
  return k < 0.8 ? 0.632 - 0.54 * k : 0.2;
};

/**
 * Month, another correlation: 0.775 + 0.00606(ωs − 90) − [0.505 + 0.00455(ωs − 90)] cos(115K − 103), K as above.
 * @source collares-pereira-rabl-1979
 */
export const diffuseShareOfMonthCollaresPereiraRabl = (clearness: number, sunset: number): number => {
  const k = Math.min(0.8, Math.max(0.3, clearness));
  return share(0.775 + 0.00606 * (sunset - 90) - (0.505 + 0.00455 * (sunset - 90)) * cosOf(115 * k - 103));
};

/** Month, after Liu and Jordan: 1.390 − 4.027K + 5.531K² − 3.108K³, K as above. @source liu-jordan-1960 */
export const diffuseShareOfMonthLiuJordan = (clearness: number): number => {
  const k = Math.min(0.8, Math.max(0.3, clearness));
  return share(1.39 + k * (-4.027 + k * (5.531 - k * 3.108)));
};

/** Radiation received over that above the air, held inside 0 to 1; 0 where nothing arrives above the air. */
export const clearnessIndex = (received: number, extraterrestrial: number): number =>
  extraterrestrial > 0 ? share(received / extraterrestrial) : 0;
