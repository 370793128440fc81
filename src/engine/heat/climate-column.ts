import type { ClimateSettings } from '#engine/heat/climate-settings.ts';
import { mostLayers } from '#engine/heat/floor.ts';
import type { Ground } from '#engine/heat/ground.ts';
import { openSoil, type SoilState } from '#engine/heat/soil-sweep.ts';

/** Weather on the covering, one value a step; the sun after the shade of the stands. */
export interface HourlyWeather {
  /** °C */
  readonly air: Float64Array;
  /** W/m² on the horizontal */
  readonly sun: Float64Array;
  /** m/s */
  readonly wind: Float64Array;
  /** kPa */
  readonly vapour: Float64Array;
  /** Share of sky under cloud, 0–1 */
  readonly cloud: Float64Array;
  /** Emissivity of the whole sky where it was worked out beforehand for many floors; left out: from air, vapour and cloud. */
  readonly emissivity?: Float64Array;
}

/** A column of turf with all the room it needs to run; made once and used for any number of members. */
export interface Climate {
  readonly ground: Ground;
  readonly settings: ClimateSettings;
  readonly soil: SoilState;
  /** °C of the canopy: [now, solved]. */
  readonly canopy: Float64Array;
  /** °C of the nodes of the covering: now, guess, and the line of each on the one below. */
  readonly cover: Float64Array;
  readonly guess: Float64Array;
  readonly p: Float64Array;
  readonly q: Float64Array;
  /** Weather terms of the step, in the order of the names below. */
  readonly forcing: Float64Array;
  /** J/m²: heat of the ice sheet; heat received; sum of the sizes of the flows. */
  readonly account: Float64Array;
  /** Whether the account is kept: a long run of many members has no use for it. */
  readonly accounted: boolean;
  /** Key of the floor that lies there, '' before the first. */
  lying: string;
}

const mostNodes = 2 * mostLayers;

export const openClimate = (ground: Ground, settings: ClimateSettings, accounted = true): Climate => ({
  ground,
  settings,
  soil: openSoil(ground.cells),
  canopy: new Float64Array(2),
  cover: new Float64Array(mostNodes),
  guess: new Float64Array(mostNodes),
  p: new Float64Array(mostNodes),
  q: new Float64Array(mostNodes),
  forcing: new Float64Array(9),
  account: new Float64Array(3),
  accounted,
  lying: '',
});

/** Temperatures to start from or to carry over: the canopy, then the cells of the ground from the top, °C. */
export type HeatProfile = Float64Array;

/** Sets the column to a profile with nothing lying on it. */
export const startClimate = (climate: Climate, profile: HeatProfile): void => {
  climate.canopy[0] = profile[0]!;
  const { temperature } = climate.soil;
  for (let i = 0; i < temperature.length; i++) temperature[i] = profile[i + 1]!;
  climate.lying = '';
  climate.account.fill(0);
};

/** The profile now, to start another run from. @param profile room for it; new where left out */
export const profileOf = (climate: Climate, profile: HeatProfile = new Float64Array(climate.ground.cells + 1)): HeatProfile => {
  profile[0] = climate.canopy[0]!;
  profile.set(climate.soil.temperature, 1);
  return profile;
};

/** A profile straight from the canopy's temperature to the deep one. */
export const straightProfile = (ground: Ground, canopy: number, deep: number): HeatProfile => {
  const profile = new Float64Array(ground.cells + 1);
  const bottom = ground.depth[ground.cells - 1]! + ground.thickness[ground.cells - 1]! / 2 + ground.deepDistance;
  profile[0] = canopy;
  for (let i = 0; i < ground.cells; i++) profile[i + 1] = canopy + ((deep - canopy) * ground.depth[i]!) / bottom;
  return profile;
};
