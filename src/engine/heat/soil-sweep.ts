import { frozenShare, heatContent, heatSlope, temperatureOfHeat } from '#engine/heat/freezing-enthalpy.ts';
import type { Ground } from '#engine/heat/ground.ts';

/**
 * One implicit step of heat conduction through the ground, folded from the bottom up so that whatever lies on top (a held
 * surface, a canopy, a floor) sees the whole column as one straight line: T₀ = p₀ + q₀ · T_above.
 *
 *     dH_i/dt = G_i (T_{i−1} − T_i) + G_{i+1} (T_{i+1} − T_i) + A_i (T_air − T_i) + S_i
 *
 * H J/m², G and A W/(m² K), S W/m². While all is thawed the factors do not change and are made once; with ice about, heat
 * content is linearised around the last guess, solved, and mapped back to temperature until both agree. The heat content
 * that is kept is the one the solved fluxes deliver, so energy closes whatever the tolerance.
 */
export interface SoilSweep {
  readonly ground: Ground;
  /** s */
  readonly step: number;
  /** Resistance between whatever lies on top and the top of the first cell, m² K/W. */
  readonly topResistance: number;
  /** Exchange of each cell with outside air, W/(m² K), and heat put in, W/m². */
  readonly airLink: Float64Array;
  readonly source: Float64Array;
  /** Links above each cell and below the last, W/(m² K), capacity over step, and the factors: all of thawed ground. */
  readonly link: Float64Array;
  readonly store: Float64Array;
  readonly inverse: Float64Array;
  readonly q: Float64Array;
  /** Share of its own temperature and of the line below in the line of each cell; whether outside air or a source reaches any. */
  readonly own: Float64Array;
  readonly fromBelow: Float64Array;
  readonly plain: boolean;
}

const fillLinks = (ground: Ground, topResistance: number, conductivity: Float64Array, link: Float64Array): void => {
  const { cells, thickness } = ground;
  let above = topResistance;
  for (let i = 0; i < cells; i++) {
    const half = thickness[i]! / (2 * conductivity[i]!);
    link[i] = 1 / (above + half);
    above = half;
  }
  link[cells] = ground.deepTemperature === null ? 0 : 1 / (above + ground.deepDistance / conductivity[cells - 1]!);
};

/** Makes the sweep of thawed ground for a step in seconds. `airLink` and `source` default to none. */
export const prepareSweep = (
  ground: Ground,
  step: number,
  topResistance: number,
  airLink: Float64Array = new Float64Array(ground.cells),
  source: Float64Array = new Float64Array(ground.cells),
): SoilSweep => {
  const { cells } = ground;
  const link = new Float64Array(cells + 1);
  fillLinks(ground, topResistance, ground.thawedConductivity, link);
  const store = ground.thickness.map((thickness, i) => (thickness * ground.thawedHeatCapacity[i]!) / step);
  const inverse = new Float64Array(cells);
  const q = new Float64Array(cells + 1);
  for (let i = cells - 1; i >= 0; i--) {
    inverse[i] = 1 / (store[i]! + link[i]! + link[i + 1]! * (1 - q[i + 1]!) + airLink[i]!);
    q[i] = link[i]! * inverse[i]!;
  }
  const own = store.map((value, i) => value * inverse[i]!);
  const fromBelow = inverse.map((value, i) => value * link[i + 1]!);
  const plain = airLink.every((value) => value === 0) && source.every((value) => value === 0);
  return { ground, step, topResistance, airLink, source, link, store, inverse, q, own, fromBelow, plain };
};

/** Room to work in and the state of one column; made once, used for every step. */
export interface SoilState {
  /** °C of each cell at the start of the step. */
  readonly temperature: Float64Array;
  /** °C solved for the end of the step; what the fluxes of the step are made of. */
  readonly solved: Float64Array;
  /** The line of each cell on the one above it, and the links in force. */
  readonly p: Float64Array;
  readonly q: Float64Array;
  readonly link: Float64Array;
  /** Guess and heat content while ice is about. */
  readonly guess: Float64Array;
  readonly heat: Float64Array;
  readonly slope: Float64Array;
  readonly heatBefore: Float64Array;
  readonly conductivity: Float64Array;
}

export const openSoil = (cells: number): SoilState => ({
  temperature: new Float64Array(cells),
  solved: new Float64Array(cells),
  p: new Float64Array(cells + 1),
  q: new Float64Array(cells + 1),
  link: new Float64Array(cells + 1),
  guess: new Float64Array(cells),
  heat: new Float64Array(cells),
  slope: new Float64Array(cells),
  heatBefore: new Float64Array(cells),
  conductivity: new Float64Array(cells),
});

/** True when any cell is at or below the upper end of the freezing interval. */
export const anyFrost = (temperature: Float64Array, upper: number): boolean => {
  for (let i = 0; i < temperature.length; i++) if (temperature[i]! < upper) return true;
  return false;
};

/** Folds thawed ground; afterwards `p[0]`, `sweep.q[0]` and `sweep.link[0]` are what lies on top needs. */
export const foldThawed = (sweep: SoilSweep, state: SoilState, air: number): void => {
  const { cells } = sweep.ground;
  const { store, link, inverse, airLink, source } = sweep;
  const { p, temperature } = state;
  let below = sweep.ground.deepTemperature ?? 0;
  if (sweep.plain) {
    const { own, fromBelow } = sweep;
    for (let i = cells - 1; i >= 0; i--) p[i] = below = own[i]! * temperature[i]! + fromBelow[i]! * below;
    return;
  }
  for (let i = cells - 1; i >= 0; i--) {
    below = (store[i]! * temperature[i]! + link[i + 1]! * below + airLink[i]! * air + source[i]!) * inverse[i]!;
    p[i] = below;
  }
};

/** Unfolds from the temperature above into `solved`; answers the coldest, °C. */
export const unfold = (q: Float64Array, state: SoilState, above: number): number => {
  const { p, solved } = state;
  let upper = above;
  let coldest = Infinity;
  for (let i = 0; i < solved.length; i++) {
    upper = p[i]! + q[i]! * upper;
    solved[i] = upper;
    if (upper < coldest) coldest = upper;
  }
  return coldest;
};

/** Starts a step with ice about: links by the share frozen now, heat content now. */
export const beginFrost = (sweep: SoilSweep, state: SoilState): void => {
  const { ground } = sweep;
  for (let i = 0; i < ground.cells; i++) {
    const temperature = state.temperature[i]!;
    const ice = frozenShare(temperature, ground.upper, ground.interval);
    state.conductivity[i] = ground.thawedConductivity[i]! + ice * (ground.frozenConductivity[i]! - ground.thawedConductivity[i]!);
    state.guess[i] = temperature;
    state.heat[i] =
      ground.thickness[i]! *
      heatContent(
        temperature,
        ground.upper,
        ground.interval,
        ground.thawedHeatCapacity[i]!,
        ground.frozenHeatCapacity[i]!,
        ground.latentHeat[i]!,
      );
    state.heatBefore[i] = state.heat[i]!;
  }
  fillLinks(ground, sweep.topResistance, state.conductivity, state.link);
};

/** Folds the column linearised around the guess into `p`, `q`; links are `state.link`. */
export const foldFrost = (sweep: SoilSweep, state: SoilState, air: number): void => {
  const { ground, step, airLink, source } = sweep;
  const { p, q, link, guess, heat, slope, heatBefore } = state;
  let below = ground.deepTemperature ?? 0;
  let belowShare = 0;
  for (let i = ground.cells - 1; i >= 0; i--) {
    const rise =
      ground.thickness[i]! *
      heatSlope(
        guess[i]!,
        ground.upper,
        ground.interval,
        ground.thawedHeatCapacity[i]!,
        ground.frozenHeatCapacity[i]!,
        ground.latentHeat[i]!,
      );
    slope[i] = rise;
    const inverse = 1 / (rise / step + link[i]! + link[i + 1]! * (1 - belowShare) + airLink[i]!);
    const known = (heatBefore[i]! - heat[i]! + rise * guess[i]!) / step;
    below = (known + link[i + 1]! * below + airLink[i]! * air + source[i]!) * inverse;
    belowShare = link[i]! * inverse;
    p[i] = below;
    q[i] = belowShare;
  }
};

/** Maps the solved temperatures back through heat content; returns how far guess and solution still differ, K. */
export const settleFrost = (sweep: SoilSweep, state: SoilState): number => {
  const { ground } = sweep;
  const { guess, heat, slope, solved } = state;
  let apart = 0;
  for (let i = 0; i < ground.cells; i++) {
    heat[i] = heat[i]! + slope[i]! * (solved[i]! - guess[i]!);
    guess[i] = temperatureOfHeat(
      heat[i]! / ground.thickness[i]!,
      ground.upper,
      ground.interval,
      ground.thawedHeatCapacity[i]!,
      ground.frozenHeatCapacity[i]!,
      ground.latentHeat[i]!,
    );
    const gap = Math.abs(solved[i]! - guess[i]!);
    if (gap > apart) apart = gap;
  }
  return apart;
};

/** Heat in the column, J/m², counted from thawed ground at the upper end of the freezing interval. */
export const soilHeat = (ground: Ground, temperature: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < ground.cells; i++)
    sum +=
      ground.thickness[i]! *
      heatContent(
        temperature[i]!,
        ground.upper,
        ground.interval,
        ground.thawedHeatCapacity[i]!,
        ground.frozenHeatCapacity[i]!,
        ground.latentHeat[i]!,
      );
  return sum;
};

/** Heat the column takes through its lower end, from air drawn through it and from sources, W/m², at the solved temperatures. */
export const soilIntake = (sweep: SoilSweep, state: SoilState, deepLink: number, air: number): number => {
  const { ground, airLink, source } = sweep;
  const { solved } = state;
  let sum = deepLink * ((ground.deepTemperature ?? 0) - solved[ground.cells - 1]!);
  for (let i = 0; i < ground.cells; i++) sum += airLink[i]! * (air - solved[i]!) + source[i]!;
  return sum;
};
