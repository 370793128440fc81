import { tanOf } from '#engine/sun/degrees.ts';

/**
 * How far the air lifts the sun. Shade on turf uses the geometric altitude; these serve where an apparent one is asked for.
 * Minutes of arc, for 1010 mbar and 10 °C:
 *
 *   R = 1/tan(h0 + 7.31/(h0 + 4.4))            from the apparent altitude h0, ° (Bennett)
 *   R = 1.02/tan(h + 10.3/(h + 5.11))          from the true altitude h, ° (Sæmundsson)
 *
 * times (P/1010) · 283/(273 + T) elsewhere. Meant for altitudes above the horizon; below −1° both are taken at −1°.
 * @source meeus-1998
 */
export type Air = {
  /** mbar */ readonly pressure: number;
  /** °C */ readonly temperature: number;
};

const density = (air: Air | undefined): number =>
  air === undefined ? 1 : (air.pressure / 1010) * (283 / (273 + air.temperature));

/** @param apparent ° above the horizon as seen; @returns degrees to take off */
export const refractionFromApparent = (apparent: number, air?: Air): number => {
  const h = Math.max(-1, apparent);
  return (density(air) * (1 / tanOf(h + 7.31 / (h + 4.4)))) / 60;
};

/** @param altitude ° above the horizon without air; @returns degrees to add */
export const refractionFromTrue = (altitude: number, air?: Air): number => {
  const h = Math.max(-1, altitude);
  return (density(air) * (1.02 / tanOf(h + 10.3 / (h + 5.11)))) / 60;
};
