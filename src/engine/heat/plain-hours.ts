import type { Climate, HourlyWeather } from '#engine/heat/climate-column.ts';
import type { FloorState } from '#engine/heat/floor.ts';
import { saturationVapour, vapourSlope } from '#engine/heat/saturation-vapour.ts';
import { blackBody, kelvin, skyEmissivity } from '#engine/heat/sky-radiation.ts';
import { anyFrost, unfold } from '#engine/heat/soil-sweep.ts';

/** ρ c_p of air, J/(m³ K), and the psychrometer constant over pressure, 1/K. @source allen-1998 */
export const airHeatCapacity = 1210;
export const psychrometer = 0.665e-3;

/** Newton's step at which the rounds end, K: what is left is about a hundredth of its square, some millionths of a kelvin. */
const settled = 0.02;
export const mostRounds = 30;

/** The state that nearly every hour is: nothing on the turf, or one covering of two nodes under the open sky; no ice, mist or heating. */
export const isPlain = ({ nodes, iceLink, mistTop, sweep }: FloorState): boolean =>
  (nodes === 0 || nodes === 2) && iceLink === 0 && mistTop === 0 && sweep.plain;

/**
 * Runs a plain state from step `from` to `until`, as long as nothing freezes, and answers the step at which it stopped. The equations of
 * `climate.ts` in the same order of elimination, with everything that does not change from hour to hour, and from round to round, worked
 * out once: most of a forecast's time is spent here. Results agree with the general step to rounding.
 */
export const runPlainHours = (
  climate: Climate,
  state: FloorState,
  weather: HourlyWeather,
  from: number,
  until: number,
  crown: Float64Array,
  wetness: number,
): number => {
  const { soil, ground, canopy, cover, settings } = climate;
  const { temperature, solved, p } = soil;
  const { own, fromBelow, q, link: soilLinks } = state.sweep;
  const { cells, upper: freezing } = ground;
  const { air: airs, sun: suns, wind: winds, vapour: vapours, cloud: clouds, emissivity: emissivities } = weather;
  const covered = state.nodes === 2;
  const { topArea, openArea, canopySun, gapLink, mistCanopy } = state;
  const { emissivity, stillConvection } = settings;
  const windConvection = settings.windConvection * state.shelter.wind;
  const { sky } = state.shelter;
  const perGamma = 1 / (psychrometer * settings.pressure);
  const leafResistance = settings.leafResistance / airHeatCapacity;
  const gapVapour = gapLink * state.vapourShare;
  const gapDry = gapVapour / (1 + (state.shadedLeaf / airHeatCapacity) * gapVapour);
  const perSecond = 1 / settings.step;
  const canopyStore = settings.canopyHeatCapacity * settings.canopyThickness * perSecond;
  const leafSteady = canopyStore + soilLinks[0]! * (1 - q[0]!) + gapLink;
  const soilLink = soilLinks[0]!;
  const deep = ground.deepTemperature ?? 0;
  const upper = covered ? state.link[0]! : 0;
  const lower = covered ? state.link[1]! : 0;
  const topStore = covered ? state.store[0]! * perSecond : 0;
  const baseStore = covered ? state.store[1]! * perSecond : 0;
  const topAir = state.airLink[0] ?? 0;
  const baseAir = state.airLink[1] ?? 0;
  const topSun = state.sun[0] ?? 0;
  const baseSun = state.sun[1] ?? 0;
  const baseDiagonal = baseStore + upper + lower + baseAir;
  let leafBefore = canopy[0]!;
  let topBefore = covered ? cover[0]! : 0;
  let baseBefore = covered ? cover[1]! : 0;

  if (anyFrost(temperature, freezing)) return from;
  let step = from;
  for (; step < until; step++) {
    const air = airs[step]!;
    const light = suns[step]!;
    const vapour = vapours[step]!;
    const convection = stillConvection + windConvection * winds[step]!;
    const whole = emissivities === undefined ? skyEmissivity(air, vapour, clouds[step]!) : emissivities[step]!;
    const gain = convection * air + emissivity * (sky > 0 ? 1 - sky * (1 - whole) : 1) * blackBody(air);
    const openLink = openArea * convection;
    // Vapour leaves by the ways heat leaves; a mist on the canopy spares the leaf's own resistance.
    const condensation = (openLink + gapVapour) * perGamma;
    const dry = wetness * (openLink / (1 + leafResistance * convection) + gapDry) * perGamma;
    const evaporation = dry * (1 - mistCanopy) + mistCanopy * condensation;
    let below = deep;
    for (let i = cells - 1; i >= 0; i--) p[i] = below = own[i]! * temperature[i]! + fromBelow[i]! * below;
    const leafKnown = canopyStore * leafBefore + soilLink * below + canopySun * light + gapLink * air;
    const topDiagonal = topStore + topAir + upper + topArea * convection;
    const topKnown = topStore * topBefore + topAir * air + topSun * light + topArea * gain;
    const baseKnown = baseStore * baseBefore + baseAir * air + baseSun * light;
    let leaf = leafBefore;
    let top = topBefore;
    let base = 0;
    for (let round = 0; round < mostRounds; round++) {
      let diagonal = leafSteady;
      let known = leafKnown;
      let topP = 0;
      let topQ = 0;
      let baseP = 0;
      let baseQ = 0;
      if (covered) {
        const radiated = emissivity * blackBody(top);
        const rise = (4 * radiated) / (top + kelvin);
        const share = 1 / (topDiagonal + topArea * rise);
        topP = (topKnown + topArea * (rise * top - radiated)) * share;
        topQ = upper * share;
        const down = 1 / (baseDiagonal - upper * topQ);
        baseP = (baseKnown + upper * topP) * down;
        baseQ = lower * down;
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
        const moved = Math.abs(above - top);
        if (moved > apart) apart = moved;
        top = above;
      }
      if (apart < settled) break;
    }
    if (unfold(q, soil, leaf) < freezing) break;
    for (let i = 0; i < cells; i++) temperature[i] = solved[i]!;
    crown[step] = leafBefore = leaf;
    topBefore = top;
    baseBefore = base;
  }
  canopy[0] = leafBefore;
  if (covered) {
    cover[0] = topBefore;
    cover[1] = baseBefore;
  }
  return step;
};
