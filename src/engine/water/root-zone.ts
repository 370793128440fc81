/**
 * Water in the root zone, day by day. Rain enters from the top, free water above what a layer holds after drainage moves down the
 * same day, the base lets go what the drains take, what cannot leave backs up and may stand on the surface; roots take the demand,
 * from the top down, less as a layer dries; a little water rises toward drier layers; the irrigation refills last.
 *
 * Every step only moves water, so  Σ before + rain + irrigation = Σ after + evapotranspiration + drainage + run-off  to rounding.
 * Every step is also monotone: more rain never leaves any layer drier.
 * Precipitation counts as rain at any temperature; snow lying and frozen ground are not followed.
 */
import type { BaseDrainage, RootZoneProfile } from '#engine/water/root-zone-profile.ts';

/** Places of a day's flows in the array `stepRootZone` fills, all mm. */
export const flow = { evapotranspiration: 0, drainage: 1, runoff: 2, irrigation: 3 } as const;
/** Length of that array. */
export const flows = 4;

/** Numbers a state takes: one a layer, mm of water, top first, and the water standing on the surface, mm. */
export const stateLength = (profile: RootZoneProfile): number => profile.layers + 1;

/** A drained profile with a dry surface: the state to start from. Writes at `at`. */
export const fillDrained = (profile: RootZoneProfile, water: Float64Array, at = 0): void => {
  water.set(profile.drained, at);
  water[at + profile.layers] = 0;
};

/** The drained state in an array of its own. */
export const drainedState = (profile: RootZoneProfile): Float64Array => {
  const water = new Float64Array(stateLength(profile));
  fillDrained(profile, water);
  return water;
};

/** mm that leave the base in a day when `free` mm of free water stand on it. Rises with `free`, never more than it. */
export const baseOutflow = (base: BaseDrainage, free: number): number => {
  if (free <= 0) return 0;
  if (base.kind === 'steady') return Math.min(base.limit, free);
  const { linear, square } = base;
  const kept =
    linear < 1e-12
      ? free / (1 + square * free)
      : (linear * free * Math.exp(-linear)) / (linear + square * free * -Math.expm1(-linear));
  return free - kept;
};

const passDown = (profile: RootZoneProfile, water: Float64Array, at: number, inflow: number): number => {
  const { layers, drained, saturated, percolation, base } = profile;
  let moving = inflow;
  for (let i = 0; i < layers - 1; i++) {
    const held = water[at + i]! + moving;
    let out = percolation[i]! * Math.max(0, held - drained[i]!);
    if (held - out > saturated[i]!) out = held - saturated[i]!;
    water[at + i] = held - out;
    moving = out;
  }
  const last = layers - 1;
  const held = water[at + last]! + moving;
  const out = baseOutflow(base, percolation[last]! * Math.max(0, held - drained[last]!));
  water[at + last] = held - out;
  return out;
};

const backUp = (profile: RootZoneProfile, water: Float64Array, at: number): void => {
  const { layers, saturated } = profile;
  for (let i = layers - 1; i >= 0; i--) {
    const excess = water[at + i]! - saturated[i]!;
    if (excess <= 0) continue;
    water[at + i] = saturated[i]!;
    water[at + (i === 0 ? layers : i - 1)]! += excess;
  }
};

const takeUp = (profile: RootZoneProfile, water: Float64Array, at: number, demand: number): number => {
  const { layers, wilting, easy, roots } = profile;
  const fromPond = Math.min(water[at + layers]!, demand);
  water[at + layers]! -= fromPond;
  const rest = demand - fromPond;
  let unmet = 0;
  let taken = fromPond;
  for (let i = 0; i < layers; i++) {
    const wanted = rest * roots[i]! + unmet;
    const held = water[at + i]!;
    const span = easy[i]! - wilting[i]!;
    let left = held - wanted;
    // Below `easy` the uptake falls in proportion to what is left at the end of the day, so a layer never passes wilting.
    if (left < easy[i]!)
      left = held <= wilting[i]! || span <= 0 ? held : wilting[i]! + (held - wilting[i]!) / (1 + wanted / span);
    if (left > held) left = held;
    water[at + i] = left;
    taken += held - left;
    unmet = wanted - (held - left);
  }
  return taken;
};

const moveUp = (profile: RootZoneProfile, water: Float64Array, at: number): void => {
  const { layers, residual, wetness, rise } = profile;
  let lower = (water[at + layers - 1]! - residual[layers - 1]!) * wetness[layers - 1]!;
  for (let i = layers - 2; i >= 0; i--) {
    const upper = (water[at + i]! - residual[i]!) * wetness[i]!;
    // Free water below counts as drained: it feeds no more than a full layer would.
    const moved = rise[i]! * ((lower > 1 ? 1 : lower) - upper);
    lower = upper;
    if (!(moved > 0)) continue;
    water[at + i + 1]! -= moved;
    water[at + i]! += moved;
    lower += moved * wetness[i]!;
  }
};

const refill = (profile: RootZoneProfile, water: Float64Array, at: number, target: number, limit: number): number => {
  const { layers, drained, wilting } = profile;
  let left = limit;
  for (let i = 0; i < layers && left > 0; i++) {
    const goal = wilting[i]! + target * (drained[i]! - wilting[i]!);
    const added = Math.min(left, Math.max(0, goal - water[at + i]!));
    water[at + i]! += added;
    left -= added;
  }
  return limit - left;
};

/**
 * One day, in place; nothing is allocated.
 * @param water state array, see `stateLength`; @param at where this state begins in it
 * @param rain mm that reach the turf; @param demand mm the turf would take with water at hand
 * @param sprinkled mm of irrigation by the clock; @param refillTarget share 0–1 of the plant's water to refill to, each layer from
 * the top, or a negative number for none; @param refillLimit mm a day
 * @param out flows of the day, see `flow`
 */
export const stepRootZone = (
  profile: RootZoneProfile,
  water: Float64Array,
  at: number,
  rain: number,
  demand: number,
  sprinkled: number,
  refillTarget: number,
  refillLimit: number,
  out: Float64Array,
): void => {
  const pond = at + profile.layers;
  const falling = rain + sprinkled;
  // Rain faster than the soil takes it stands; what stands above the rim of the surface runs off.
  const standing = water[pond]! + falling * (1 - profile.intake);
  const kept = Math.min(profile.pondDepth, standing);
  let runoff = standing - kept;
  const soaking = Math.min(kept, profile.intakeLimit);
  water[pond] = kept - soaking;
  const drainage = passDown(profile, water, at, falling * profile.intake + soaking);
  backUp(profile, water, at);
  if (water[pond]! > profile.pondDepth) {
    runoff += water[pond]! - profile.pondDepth;
    water[pond] = profile.pondDepth;
  }
  const taken = takeUp(profile, water, at, demand);
  moveUp(profile, water, at);
  const refilled = refillTarget >= 0 ? refill(profile, water, at, refillTarget, refillLimit) : 0;
  out[flow.evapotranspiration] = taken;
  out[flow.drainage] = drainage;
  out[flow.runoff] = runoff;
  out[flow.irrigation] = sprinkled + refilled;
};

/** mm of water in the layers and on the surface. */
export const waterHeld = (profile: RootZoneProfile, water: Float64Array, at = 0): number => {
  let sum = 0;
  for (let i = 0; i <= profile.layers; i++) sum += water[at + i]!;
  return sum;
};

const meanContent = (profile: RootZoneProfile, water: Float64Array, at: number, layers: number): number => {
  let held = 0;
  let depth = 0;
  for (let i = 0; i < layers; i++) {
    held += water[at + i]!;
    depth += profile.thickness[i]!;
  }
  return held / depth;
};

/** m³/m³ in the top 75 mm (in all of a thinner root zone). */
export const topWaterContent = (profile: RootZoneProfile, water: Float64Array, at = 0): number =>
  meanContent(profile, water, at, profile.topLayers);

/** m³/m³ in the whole root zone. */
export const rootZoneWaterContent = (profile: RootZoneProfile, water: Float64Array, at = 0): number =>
  meanContent(profile, water, at, profile.layers);

/** Whether water stands on the surface or the top 75 mm hold too little air for roots. */
export const lacksOxygen = (profile: RootZoneProfile, water: Float64Array, at = 0): boolean => {
  if (water[at + profile.layers]! > 0.1) return true;
  const porosity = profile.saturated[0]! / profile.thickness[0]!;
  return porosity - topWaterContent(profile, water, at) < profile.oxygenLimit;
};
