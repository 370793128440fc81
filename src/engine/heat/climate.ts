import type { ClimateSettings } from '#engine/heat/climate-settings.ts';
import { mostLayers } from '#engine/heat/floor.ts';
import type { Floor, FloorState } from '#engine/heat/floor.ts';
import type { Ground } from '#engine/heat/ground.ts';
import { saturationVapour, vapourSlope } from '#engine/heat/saturation-vapour.ts';
import { blackBody, kelvin, skyEmissivity } from '#engine/heat/sky-radiation.ts';
import {
  anyFrost,
  beginFrost,
  foldFrost,
  foldThawed,
  openSoil,
  settleFrost,
  soilHeat,
  soilIntake,
  unfold,
} from '#engine/heat/soil-sweep.ts';
import type { SoilState } from '#engine/heat/soil-sweep.ts';

/**
 * Temperature of the crowns under a covering, hour by hour: covering – aired gap – canopy and thatch – ground – deep
 * temperature, one implicit step an hour. The surface that faces the sky gains the sun it absorbs and the sky's longwave
 * radiation, and loses its own, convection 5.7 + 3.8 u and, where water can leave, evaporation:
 *
 *     λE = β ρ c_p/γ · (e0(Tc) − ea)/(ra + rs),    ra = ρ c_p/h
 *
 * (Penman–Monteith with the surface's own temperature). Radiation and evaporation are solved as they are, by Newton's
 * method; the ground is folded into one line beforehand. Stable at any step. Energy closes to rounding.
 * @source mcadams-1954, monteith-unsworth-2013
 */

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

const AIR = 0;
const SUN = 1;
const CONVECTION = 2;
const LONGWAVE = 3;
const VAPOUR = 4;
const EVAPORATION = 5;
const CONDENSATION = 6;
const MIST = 7;
const ICE = 8;

const ICE_HEAT = 0;
const RECEIVED = 1;
const MOVED = 2;

/** ρ c_p of air, J/(m³ K), and the psychrometer constant over pressure, 1/K. @source allen-1998 */
const airHeatCapacity = 1210;
const psychrometer = 0.665e-3;
/** Ice and water of a rink: density kg/m³, specific heats J/(kg K), latent heat J/kg. @source bonan-2019 */
const iceDensity = 917;
const iceSpecificHeat = 2117;
const waterSpecificHeat = 4188;
const fusion = 333700;

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

/** The profile now, to start another run from. */
export const profileOf = (climate: Climate): HeatProfile => {
  const profile = new Float64Array(climate.ground.cells + 1);
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

/** Lays a floor, unless the same lies there already: a covering comes at air temperature, its ice at the temperature it is held at. */
export const layFloor = (climate: Climate, floor: Floor, air: number): void => {
  if (climate.lying === floor.key) return;
  climate.lying = floor.key;
  for (let i = 0; i < floor.nodes; i++) climate.cover[i] = air;
  const mass = iceDensity * climate.settings.iceThickness;
  climate.account[ICE_HEAT] = floor.iceTemperature === null ? 0 : mass * (iceSpecificHeat * floor.iceTemperature - fusion);
};

/** Temperature of an ice sheet with a given heat, J/m², counted from water at 0 °C. */
const iceTemperatureOf = (heat: number, mass: number): number => {
  if (heat >= 0) return heat / (mass * waterSpecificHeat);
  const melted = -mass * fusion;
  return heat >= melted ? 0 : (heat - melted) / (mass * iceSpecificHeat);
};

/** Turns the weather of a step into the terms the balance uses. */
const force = (climate: Climate, state: FloorState, weather: HourlyWeather, step: number, wetness: number): void => {
  const { forcing, settings } = climate;
  const air = weather.air[step]!;
  const vapour = weather.vapour[step]!;
  const convection = settings.stillConvection + settings.windConvection * weather.wind[step]! * state.shelter.wind;
  const gamma = psychrometer * settings.pressure;
  const { sky } = state.shelter;
  const whole = weather.emissivity ? weather.emissivity[step]! : skyEmissivity(air, vapour, weather.cloud[step]!);
  const emissivity = sky > 0 ? 1 - sky * (1 - whole) : 1;
  const leaf = settings.leafResistance / airHeatCapacity;
  const shaded = state.shadedLeaf / airHeatCapacity;
  const openLink = state.openArea * convection;
  const gapLink = state.gapLink * state.vapourShare;
  forcing[AIR] = air;
  forcing[SUN] = weather.sun[step]!;
  forcing[CONVECTION] = convection;
  forcing[LONGWAVE] = settings.emissivity * emissivity * blackBody(air);
  forcing[VAPOUR] = vapour;
  // Vapour leaves by the ways heat leaves; a mist on the canopy spares the leaf's own resistance.
  const dry = wetness * (openLink / (1 + leaf * convection) + gapLink / (1 + shaded * gapLink));
  forcing[CONDENSATION] = (openLink + gapLink) / gamma;
  forcing[EVAPORATION] = (dry * (1 - state.mistCanopy)) / gamma + state.mistCanopy * forcing[CONDENSATION]!;
  forcing[MIST] = (state.mistTop * state.topArea * convection) / gamma;
};

/** Newton's step at which the rounds end, K: what is left is about a hundredth of its square, below 1e-9 K. */
const settled = 1e-4;

/**
 * Solves covering and canopy against the folded ground (link, p, q of its first cell). Leaves the canopy in `canopy[1]` and
 * the covering in `guess`. Newton's method from the last guess.
 */
const solveTop = (climate: Climate, state: FloorState, soilLink: number, soilP: number, soilQ: number): void => {
  const { cover, guess, p, q, canopy, forcing, settings } = climate;
  const { nodes, link, store, airLink, sun, topArea, openArea } = state;
  const perSecond = 1 / settings.step;
  const emissivity = settings.emissivity;
  const air = forcing[AIR]!;
  const light = forcing[SUN]!;
  const convection = forcing[CONVECTION]!;
  const longwave = forcing[LONGWAVE]!;
  const vapour = forcing[VAPOUR]!;
  const canopyStore = settings.canopyHeatCapacity * settings.canopyThickness * perSecond;
  const iced = state.iceLink > 0;
  for (let round = 0; round < 30; round++) {
    let fromAbove = 0;
    let aboveP = 0;
    if (nodes > 0) {
      const top = guess[0]!;
      let diagonal = store[0]! * perSecond + airLink[0]! + link[0]!;
      let known = store[0]! * perSecond * cover[0]! + airLink[0]! * air + sun[0]! * light;
      if (iced) {
        diagonal += state.iceLink;
        known += state.iceLink * forcing[ICE]!;
      } else {
        const radiated = emissivity * blackBody(top);
        const rise = (4 * radiated) / (top + kelvin);
        diagonal += topArea * (convection + rise);
        known += topArea * (convection * air + longwave - radiated + rise * top);
        if (forcing[MIST]! > 0) {
          const saturated = saturationVapour(top);
          if (saturated > vapour) {
            const slope = forcing[MIST]! * vapourSlope(top, saturated);
            diagonal += slope;
            known += slope * top - forcing[MIST]! * (saturated - vapour);
          }
        }
      }
      p[0] = known / diagonal;
      q[0] = link[0]! / diagonal;
      for (let i = 1; i < nodes; i++) {
        const above = link[i - 1]!;
        const sum = store[i]! * perSecond + above * (1 - q[i - 1]!) + link[i]! + airLink[i]!;
        p[i] = (store[i]! * perSecond * cover[i]! + above * p[i - 1]! + airLink[i]! * air + sun[i]! * light) / sum;
        q[i] = link[i]! / sum;
      }
      fromAbove = link[nodes - 1]! * (1 - q[nodes - 1]!);
      aboveP = link[nodes - 1]! * p[nodes - 1]!;
    }
    const old = canopy[1]!;
    let diagonal = canopyStore + fromAbove + soilLink * (1 - soilQ) + state.gapLink;
    let known = canopyStore * canopy[0]! + aboveP + soilLink * soilP + state.canopySun * light + state.gapLink * air;
    if (openArea > 0) {
      const radiated = emissivity * blackBody(old);
      const rise = (4 * radiated) / (old + kelvin);
      diagonal += openArea * (convection + rise);
      known += openArea * (convection * air + longwave - radiated + rise * old);
    }
    if (forcing[CONDENSATION]! > 0) {
      const saturated = saturationVapour(old);
      const ease = saturated > vapour ? forcing[EVAPORATION]! : forcing[CONDENSATION]!;
      const slope = ease * vapourSlope(old, saturated);
      diagonal += slope;
      known += slope * old - ease * (saturated - vapour);
    }
    let next = known / diagonal;
    let apart = Math.abs(next - old);
    canopy[1] = next;
    for (let i = nodes - 1; i >= 0; i--) {
      next = p[i]! + q[i]! * next;
      if (i === 0) apart = Math.max(apart, Math.abs(next - guess[0]!));
      guess[i] = next;
    }
    if (apart < settled) return;
  }
};

/**
 * The same for the two cases that nearly every hour is: nothing on the turf, or one covering of two nodes under the open sky without ice
 * or mist. Everything that does not change from round to round stands outside the rounds. The same equations in the same order of
 * elimination; results agree to rounding.
 */
const solvePlainTop = (climate: Climate, state: FloorState, soilLink: number, soilP: number, soilQ: number): void => {
  const { cover, guess, canopy, forcing, settings } = climate;
  const covered = state.nodes === 2;
  const { store, link, airLink, sun, topArea, openArea } = state;
  const perSecond = 1 / settings.step;
  const emissivity = settings.emissivity;
  const air = forcing[AIR]!;
  const light = forcing[SUN]!;
  const convection = forcing[CONVECTION]!;
  const gain = convection * air + forcing[LONGWAVE]!;
  const vapour = forcing[VAPOUR]!;
  const evaporation = forcing[EVAPORATION]!;
  const condensation = forcing[CONDENSATION]!;
  const canopyStore = settings.canopyHeatCapacity * settings.canopyThickness * perSecond;
  const leafDiagonal = canopyStore + soilLink * (1 - soilQ) + state.gapLink;
  const leafKnown = canopyStore * canopy[0]! + soilLink * soilP + state.canopySun * light + state.gapLink * air;
  const upper = covered ? link[0]! : 0;
  const lower = covered ? link[1]! : 0;
  const topDiagonal = covered ? store[0]! * perSecond + airLink[0]! + upper + topArea * convection : 1;
  const topKnown = covered ? store[0]! * perSecond * cover[0]! + airLink[0]! * air + sun[0]! * light + topArea * gain : 0;
  const baseDiagonal = covered ? store[1]! * perSecond + upper + lower + airLink[1]! : 1;
  const baseKnown = covered ? store[1]! * perSecond * cover[1]! + airLink[1]! * air + sun[1]! * light : 0;
  let leaf = canopy[1]!;
  let top = covered ? guess[0]! : 0;
  let base = 0;
  for (let round = 0; round < 30; round++) {
    let diagonal = leafDiagonal;
    let known = leafKnown;
    let [topP, topQ, baseP, baseQ] = [0, 0, 0, 0];
    if (covered) {
      const radiated = emissivity * blackBody(top);
      const rise = (4 * radiated) / (top + kelvin);
      const share = 1 / (topDiagonal + topArea * rise);
      topP = (topKnown + topArea * (rise * top - radiated)) * share;
      topQ = upper * share;
      const below = 1 / (baseDiagonal - upper * topQ);
      baseP = (baseKnown + upper * topP) * below;
      baseQ = lower * below;
      diagonal += lower * (1 - baseQ);
      known += lower * baseP;
    }
    if (openArea > 0) {
      const radiated = emissivity * blackBody(leaf);
      const rise = (4 * radiated) / (leaf + kelvin);
      diagonal += openArea * (convection + rise);
      known += openArea * (gain - radiated + rise * leaf);
    }
    if (condensation > 0) {
      const saturated = saturationVapour(leaf);
      const ease = saturated > vapour ? evaporation : condensation;
      const slope = ease * vapourSlope(leaf, saturated);
      diagonal += slope;
      known += slope * leaf - ease * (saturated - vapour);
    }
    const next = known / diagonal;
    let apart = Math.abs(next - leaf);
    leaf = next;
    if (covered) {
      base = baseP + baseQ * next;
      const above = topP + topQ * base;
      apart = Math.max(apart, Math.abs(above - top));
      top = above;
    }
    if (apart < settled) break;
  }
  canopy[1] = leaf;
  if (!covered) return;
  guess[0] = top;
  guess[1] = base;
};

/** Heat the covering and the canopy take from outside, W/m², at the solved temperatures. */
const topIntake = (climate: Climate, state: FloorState): number => {
  const { guess, canopy, forcing, settings } = climate;
  const air = forcing[AIR]!;
  const convection = forcing[CONVECTION]!;
  const leaf = canopy[1]!;
  let sum = state.canopySun * forcing[SUN]! + state.gapLink * (air - leaf);
  if (state.openArea > 0)
    sum += state.openArea * (convection * (air - leaf) + forcing[LONGWAVE]! - settings.emissivity * blackBody(leaf));
  if (forcing[CONDENSATION]! > 0) {
    const lack = saturationVapour(leaf) - forcing[VAPOUR]!;
    sum -= lack > 0 ? forcing[EVAPORATION]! * lack : forcing[CONDENSATION]! * lack;
  }
  if (state.nodes === 0) return sum;
  const top = guess[0]!;
  if (state.iceLink > 0) sum += state.iceLink * (forcing[ICE]! - top);
  else {
    sum += state.topArea * (convection * (air - top) + forcing[LONGWAVE]! - settings.emissivity * blackBody(top));
    if (forcing[MIST]! > 0) sum -= forcing[MIST]! * Math.max(0, saturationVapour(top) - forcing[VAPOUR]!);
  }
  for (let i = 0; i < state.nodes; i++) sum += state.airLink[i]! * (air - guess[i]!) + state.sun[i]! * forcing[SUN]!;
  return sum;
};

/** The ice sheet after a step: held by the plant, or warming and melting under the air, the sun and the floor below. */
const meltIce = (climate: Climate, floor: Floor, state: FloorState): void => {
  const { account, forcing, settings } = climate;
  const mass = iceDensity * settings.iceThickness;
  if (state.iceHeld) {
    account[ICE_HEAT] = mass * (iceSpecificHeat * floor.iceTemperature! - fusion);
    return;
  }
  const surface = forcing[ICE]!;
  const radiated = settings.emissivity * blackBody(surface);
  const rise = (4 * radiated) / (surface + kelvin);
  const fromAir = forcing[CONVECTION]! * (forcing[AIR]! - surface) + forcing[LONGWAVE]! - radiated;
  const intake = fromAir + state.iceSun * forcing[SUN]! + state.iceLink * (climate.guess[0]! - surface);
  // Implicit while the sheet changes temperature; at the melting point its temperature does not answer.
  const melting = account[ICE_HEAT]! < 0 && surface === 0;
  const specific = account[ICE_HEAT]! < 0 ? iceSpecificHeat : waterSpecificHeat;
  const stiff = melting ? 0 : forcing[CONVECTION]! + rise + state.iceLink;
  account[ICE_HEAT]! += (intake * settings.step) / (1 + (stiff * settings.step) / (mass * specific));
};

const frostTolerance = 1e-4;
const mostFrostRounds = 25;

/** One step; the soil's linear fold, or rounds of it while there is ice in the ground. */
const advance = (climate: Climate, floor: Floor, state: FloorState): void => {
  const { soil, ground, canopy, cover, guess, forcing, account, settings } = climate;
  const { sweep } = state;
  if (state.iceLink > 0) {
    const mass = iceDensity * settings.iceThickness;
    forcing[ICE] = state.iceHeld ? floor.iceTemperature! : iceTemperatureOf(account[ICE_HEAT]!, mass);
  }
  canopy[1] = canopy[0]!;
  for (let i = 0; i < state.nodes; i++) guess[i] = cover[i]!;
  let frost = anyFrost(soil.temperature, ground.upper);
  if (!frost) {
    foldThawed(sweep, soil, forcing[AIR]!);
    if (state.iceLink > 0 || state.nodes > 2 || forcing[MIST]! > 0)
      solveTop(climate, state, sweep.link[0]!, soil.p[0]!, sweep.q[0]!);
    else solvePlainTop(climate, state, sweep.link[0]!, soil.p[0]!, sweep.q[0]!);
    frost = unfold(sweep.q, soil, canopy[1]!) < ground.upper;
  }
  if (frost) {
    beginFrost(sweep, soil);
    for (let round = 0; round < mostFrostRounds; round++) {
      foldFrost(sweep, soil, forcing[AIR]!);
      solveTop(climate, state, soil.link[0]!, soil.p[0]!, soil.q[0]!);
      unfold(soil.q, soil, canopy[1]!);
      if (settleFrost(sweep, soil) < frostTolerance) break;
    }
  }
  if (climate.accounted) {
    const deepLink = frost ? soil.link[ground.cells]! : sweep.link[ground.cells]!;
    const above = topIntake(climate, state);
    const below = soilIntake(sweep, soil, deepLink, forcing[AIR]!);
    account[RECEIVED]! += (above + below) * settings.step;
    account[MOVED]! += (Math.abs(above) + Math.abs(below)) * settings.step;
  }
  if (state.iceLink > 0) meltIce(climate, floor, state);
  canopy[0] = canopy[1]!;
  for (let i = 0; i < state.nodes; i++) cover[i] = guess[i]!;
  const kept = frost ? soil.guess : soil.solved;
  for (let i = 0; i < ground.cells; i++) soil.temperature[i] = kept[i]!;
};

/**
 * Runs a floor through the weather from step `from` to `until` (not included) and writes the crown temperature of each step,
 * °C, into `crown` at the same index. Allocates nothing. `wetness` 0–1 is how freely the canopy can draw water;
 * `floorStep` is how many steps the floor had lain at `from` (for its timed care).
 */
export const runClimate = (
  climate: Climate,
  floor: Floor,
  weather: HourlyWeather,
  from: number,
  until: number,
  crown: Float64Array,
  wetness: number,
  floorStep = 0,
): void => {
  if (until > from) layFloor(climate, floor, weather.air[from]!);
  for (let step = from; step < until; step++) {
    const { stateAt } = floor;
    const state = floor.states[stateAt === null ? 0 : stateAt[step - from + floorStep]!]!;
    force(climate, state, weather, step, wetness);
    advance(climate, floor, state);
    crown[step] = climate.canopy[1]!;
  }
};

/** Heat in covering, canopy and ground now, J/m² (the ice sheet of a rink not counted: it is the boundary). */
export const storedHeat = (climate: Climate, floor: Floor): number => {
  const { settings, canopy, cover, ground, soil } = climate;
  let sum = soilHeat(ground, soil.temperature) + settings.canopyHeatCapacity * settings.canopyThickness * canopy[0]!;
  const { store } = floor.states[0]!;
  for (let i = 0; i < floor.nodes; i++) sum += store[i]! * cover[i]!;
  return sum;
};

/** Heat received since the start, and the sum of the sizes of the flows behind it, J/m². */
export const heatReceived = (climate: Climate): { readonly received: number; readonly moved: number } => ({
  received: climate.account[RECEIVED]!,
  moved: climate.account[MOVED]!,
});

/** Ice left on the floor, m of ice: all of it until melting starts, 0 once it has run off. */
export const iceLeft = (climate: Climate): number => {
  const { iceThickness } = climate.settings;
  const whole = iceDensity * iceThickness * fusion;
  return iceThickness * Math.min(1, Math.max(0, -climate.account[ICE_HEAT]! / whole));
};
