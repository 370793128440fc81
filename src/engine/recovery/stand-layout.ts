import { grasses, type Grass } from '#shared/vocabulary/turf.ts';

/**
 * Where each number of a stand lies in the flat form: `stands[at + standLayout.cover]`. Many stands lie one after the other, each
 * `standStride` numbers long. Units are those of `Stand`.
 */
export const standLayout = {
  cover: 0,
  crowns: 1,
  reserve: 2,
  bulkDensity: 3,
  ruts: 4,
  opened: 5,
  nitrogen: 6,
  darkClock: 7,
  /** 1 where there is sod */
  sodLaid: 8,
  sodAge: 9,
  sodThickness: 10,
  sodThermalTime: 11,
  /** three sowings of `seedStride` numbers each; `seedSown` is 0 in an empty slot */
  seedlings: 12,
  seedSlots: 3,
  seedStride: 5,
  seedGrass: 0,
  seedSown: 1,
  seedThermalTime: 2,
  seedCover: 3,
  seedAge: 4,
  /** one number for every cause, in the order of `causes` */
  leafLost: 27,
  crownsLost: 34,
  fedLeaf: 41,
  fedCrowns: 42,
  grasses,
} as const;
export const standStride = 43;

/** Index of a grass in the flat form and in the list of seed traits. */
export type SeedGrassIndex = number & keyof typeof grasses;
export const seedIndex = (grass: Grass): number => grasses.indexOf(grass);

/**
 * One day's drivers in the flat form, `driverStride` numbers a day: mean temperature of air, or of the crowns under a covering (°C); soil
 * at 50 mm (°C); useful light (mol/m²/d); seal of the covering (0–1); whether it is covered (0 or 1); whether young sod is watered
 * (0 or 1); change of the reserve over the day where the caller summed it hour by hour (1/d), NaN where the day's mean decides.
 */
export const driverLayout = {
  temperature: 0,
  soilTemperature: 1,
  light: 2,
  seal: 3,
  covered: 4,
  watered: 5,
  reserveChange: 6,
} as const;
export const driverStride = 7;
