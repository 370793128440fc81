import { openClimate, profileOf, startClimate } from '#engine/heat/climate-column.ts';
import { heatReceived, layFloor, runClimate, storedHeat } from '#engine/heat/climate.ts';
import type { HeatProfile, HourlyWeather } from '#engine/heat/climate-column.ts';
import type { ClimateSettings } from '#engine/heat/climate-settings.ts';
import { layOut } from '#engine/heat/floor.ts';
import type { FloorPlan } from '#engine/heat/floor.ts';
import type { Ground } from '#engine/heat/ground.ts';

/** A floor, or uncovered turf, from step to step. */
export interface FloorSpell {
  readonly from: number;
  readonly until: number;
  readonly plan: FloorPlan;
}

export interface ClimateRequest {
  readonly ground: Ground;
  readonly settings: ClimateSettings;
  readonly weather: HourlyWeather;
  readonly start: HeatProfile;
  /** In order of time, each beginning where the one before ends. */
  readonly spells: readonly FloorSpell[];
  /** How freely the canopy can draw water, 0–1. */
  readonly wetness: number;
}

export interface ClimateResult {
  /** °C of the crowns at each step of the weather; NaN outside the spells. */
  readonly crown: Float64Array;
  /** What to start the next run from. */
  readonly profile: HeatProfile;
  /** J/m²: change of stored heat summed over the spells, net intake through the boundaries, and the sum of their sizes. */
  readonly stored: number;
  readonly received: number;
  readonly moved: number;
}

/**
 * Crown temperature through a sequence of floors: uncovered, covered, uncovered again, without a break.
 * @throws RangeError when a spell begins before the one before it ends or runs beyond the weather.
 */
export const climateUnder = (request: ClimateRequest): ClimateResult => {
  const { ground, settings, weather, spells } = request;
  const climate = openClimate(ground, settings);
  const crown = new Float64Array(weather.air.length).fill(NaN);
  startClimate(climate, request.start);
  let end = -1;
  let stored = 0;
  for (const { from, until, plan } of spells) {
    if (from < end || until > crown.length) throw new RangeError('spells: must follow one another inside the weather');
    end = until;
    if (until <= from) continue;
    const floor = layOut({ ...plan, steps: until - from }, ground, settings);
    layFloor(climate, floor, weather.air[from]!);
    const before = storedHeat(climate, floor);
    runClimate(climate, floor, weather, from, until, crown, request.wetness);
    stored += storedHeat(climate, floor) - before;
  }
  return { crown, profile: profileOf(climate), stored, ...heatReceived(climate) };
};
