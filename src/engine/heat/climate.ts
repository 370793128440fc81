import type { Climate, HourlyWeather } from '#engine/heat/climate-column.ts';
import type { Floor, FloorState } from '#engine/heat/floor.ts';
import { airHeatCapacity, isPlain, mostRounds, psychrometer, runPlainHours } from '#engine/heat/plain-hours.ts';
import { saturationVapour, vapourSlope } from '#engine/heat/saturation-vapour.ts';
import { blackBody, kelvin, skyEmissivity } from '#engine/heat/sky-radiation.ts';
import {
  anyFrost,
  beginFrost,
  foldFrost,
  foldThawed,
  settleFrost,
  soilHeat,
  soilIntake,
  unfold,
} from '#engine/heat/soil-sweep.ts';

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

/** Ice and water of a rink: density kg/m³, specific heats J/(kg K), latent heat J/kg. @source bonan-2019 */
const iceDensity = 917;
const iceSpecificHeat = 2117;
const waterSpecificHeat = 4188;
const fusion = 333700;

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
  for (let round = 0; round < mostRounds; round++) {
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
    solveTop(climate, state, sweep.link[0]!, soil.p[0]!, sweep.q[0]!);
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
  const { stateAt } = floor;
  const fast = stateAt === null && !climate.accounted && isPlain(floor.states[0]!);
  for (let step = from; step < until; step++) {
    const state = floor.states[stateAt === null ? 0 : stateAt[step - from + floorStep]!]!;
    if (fast) step = runPlainHours(climate, state, weather, step, until, crown, wetness);
    if (step === until) return;
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
