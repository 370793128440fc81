import { lightFromFlux } from '#engine/light/photons.ts';
import { advanceDays } from '#engine/recovery/advance-days.ts';
import { injureStand, type Injury } from '#engine/recovery/injure.ts';
import { applyJob, type Job } from '#engine/recovery/jobs.ts';
import { driverLayout, driverStride, standStride } from '#engine/recovery/stand-layout.ts';
import { readStand, writeStand, type Stand } from '#engine/recovery/stand.ts';
import type { TurfTraits } from '#engine/recovery/turf-traits.ts';

/** What acts on a stand for one day. */
export interface DayDrivers {
  /** °C, mean of the air, or of the crowns under a covering */
  readonly temperature: number;
  /** °C at 50 mm */
  readonly soilTemperature: number;
  /** useful daily light that reaches the turf, mol/m²/d */
  readonly light: number;
  /** seal of the covering, 0–1 */
  readonly seal: number;
  readonly covered: boolean;
  /** whether young sod is watered */
  readonly watered: boolean;
  /** change of the reserve summed hour by hour, 1/d; null where the day's mean decides */
  readonly reserveChange: number | null;
}

/** An uncovered, watered day. */
export const openDay = (temperature: number, light: number, soilTemperature = temperature): DayDrivers => ({
  temperature,
  soilTemperature,
  light,
  seal: 0,
  covered: false,
  watered: true,
  reserveChange: null,
});

/** Writes one day into the flat form. */
export const writeDrivers = (drivers: Float64Array, day: number, one: DayDrivers): void => {
  const at = day * driverStride;
  drivers[at + driverLayout.temperature] = one.temperature;
  drivers[at + driverLayout.soilTemperature] = one.soilTemperature;
  drivers[at + driverLayout.light] = one.light;
  drivers[at + driverLayout.seal] = one.seal;
  drivers[at + driverLayout.covered] = one.covered ? 1 : 0;
  drivers[at + driverLayout.watered] = one.watered ? 1 : 0;
  drivers[at + driverLayout.reserveChange] = one.reserveChange ?? NaN;
};

/** What is done and what happens to a stand on one day. Jobs come first, then injuries, then the day's growth. */
export interface DayActions {
  readonly jobs: readonly Job[];
  readonly injuries: readonly Injury[];
}
export const noActions: DayActions = { jobs: [], injuries: [] };

/**
 * The stand after one day. The same arithmetic as `advanceDays`, on one object.
 * @throws RangeError when a job is refused
 */
export const stepDay = (stand: Stand, drivers: DayDrivers, actions: DayActions, traits: TurfTraits): Stand => {
  const worked = actions.jobs.reduce((before, job) => applyJob(before, job, traits), stand);
  const flat = new Float64Array(standStride);
  const day = new Float64Array(driverStride);
  writeStand(flat, 0, injureStand(worked, actions.injuries));
  writeDrivers(day, 0, drivers);
  advanceDays(flat, 0, day, 0, 1, traits, null, 0);
  return readStand(flat, 0);
};

/** A growth cover: warmer under it, and darker. The soil warms half as much. @param warming °C @param transmission 0–1 */
export const underGrowthCover = (drivers: DayDrivers, warming: number, transmission: number): DayDrivers => ({
  ...drivers,
  temperature: drivers.temperature + warming,
  soilTemperature: drivers.soilTemperature + warming / 2,
  light: drivers.light * transmission,
});

/** Grow lights: `min(flux, cap) · h · 0.0036` on top. @param flux µmol/m²/s @param hours h @param cap flux that still counts */
export const underLamps = (drivers: DayDrivers, flux: number, hours: number, cap: number): DayDrivers => ({
  ...drivers,
  light: drivers.light + lightFromFlux(Math.min(flux, cap), hours),
});
