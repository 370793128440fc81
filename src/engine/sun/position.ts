import { Body, Equator, Horizon, MakeTime, Observer, Seasons } from 'astronomy-engine';
import type { Air } from '#engine/sun/refraction.ts';
import { refractionFromTrue } from '#engine/sun/refraction.ts';

/** Where a place lies: ° north, ° east, m above the sea. */
export type Ground = { readonly latitude: number; readonly longitude: number; readonly elevation?: number };

export type SunPosition = {
  /** ° above the horizon without refraction. */
  readonly altitude: number;
  /** ° clockwise from north. */
  readonly azimuth: number;
  /** ° above the horizon as seen through the air; the geometric altitude where no air was given. */
  readonly apparentAltitude: number;
  /** ° */
  readonly declination: number;
  /** Astronomical units. */
  readonly distance: number;
};

/**
 * The sun by a full ephemeris (within 0.001° of the Solar Position Algorithm): the yardstick for the fast path of the hot
 * loops, and what the plan shows for one instant.
 * @param instant UTC epoch milliseconds; @param air for the apparent altitude
 */
export const sunPosition = (instant: number, place: Ground, air?: Air): SunPosition => {
  const time = MakeTime(new Date(instant));
  const observer = new Observer(place.latitude, place.longitude, place.elevation ?? 0);
  const seen = Equator(Body.Sun, time, observer, true, true);
  const { altitude, azimuth } = Horizon(time, observer, seen.ra, seen.dec);
  return {
    altitude,
    azimuth,
    apparentAltitude: air === undefined ? altitude : altitude + refractionFromTrue(altitude, air),
    declination: seen.dec,
    distance: seen.dist,
  };
};

/**
 * Equinoxes and solstices of a year as Julian days in dynamical time (in 2025 about 69 s ahead of universal time).
 */
export const seasons = (year: number): { march: number; june: number; september: number; december: number } => {
  const found = Seasons(year);
  const julian = (time: { tt: number }) => time.tt + 2451545;
  return {
    march: julian(found.mar_equinox),
    june: julian(found.jun_solstice),
    september: julian(found.sep_equinox),
    december: julian(found.dec_solstice),
  };
};
