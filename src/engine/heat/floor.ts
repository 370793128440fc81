import type { ClimateSettings, Shelter } from '#engine/heat/climate-settings.ts';
import type { Ground } from '#engine/heat/ground.ts';
import { prepareSweep } from '#engine/heat/soil-sweep.ts';
import type { SoilSweep } from '#engine/heat/soil-sweep.ts';
import type { Layer } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';

/** What the heat balance asks of a covering; a `Covering` of the vocabulary is one. */
export type ThermalCovering = Pick<
  Covering,
  'thickness' | 'conductivity' | 'heatCapacity' | 'solarTransmission' | 'absorptance' | 'gapResistance' | 'ventilation' | 'seal'
>;

/**
 * Things done hour by hour. `lift` takes the covering off a share of the zone, `prop` opens its edges, `mist` wets its top,
 * `sub-surface-air` draws air through the profile, `soil-heating` runs heating lines (W/m²), `growth-cover` lays a thin
 * translucent sheet on uncovered turf, `plant-off` stops the chiller of a rink.
 */
export type FloorCareKind = 'lift' | 'prop' | 'mist' | 'sub-surface-air' | 'soil-heating' | 'growth-cover' | 'plant-off';

/** One action from step to step (`until` not included), counted from when the floor is laid. */
export interface FloorCare {
  readonly kind: FloorCareKind;
  readonly from: number;
  readonly until: number;
  /** Share of the zone it reaches, 0–1. */
  readonly share: number;
  /** W/m² of soil heating; unused by the others. */
  readonly power?: number;
}

export interface FloorPlan {
  /** Coverings from the top down; empty for uncovered turf. */
  readonly stack: readonly ThermalCovering[];
  readonly loading: Layer['loading'];
  /** Share of the passed sun left by dirt; dirt absorbs the rest. */
  readonly cleanliness: number;
  /** °C an ice sheet on the stack is held at; null without one. */
  readonly iceTemperature: number | null;
  readonly care: readonly FloorCare[];
  /** Steps the floor lies; only needed where there is care. */
  readonly steps: number;
  /** The sheet a `growth-cover` action lays. */
  readonly growthCover?: ThermalCovering;
  /** Share of the sky dome not taken by the stands, 0–1; stands radiate at air temperature. */
  readonly skyView: number;
}

/** One state of a floor as the solver takes it. Links W/(m² K), stores J/(m² K), per m² of zone. */
export interface FloorState {
  /** Nodes above the canopy: two a covering. */
  readonly nodes: number;
  readonly store: Float64Array;
  /** Link of each node to the next one down; the last is to the canopy. */
  readonly link: Float64Array;
  readonly airLink: Float64Array;
  /** Share of the sun on the zone that each node absorbs. */
  readonly sun: Float64Array;
  /** Area of covering under the sky, per m². */
  readonly topArea: number;
  /** Area of canopy under the sky, per m²: holes and lifted panels; 1 uncovered. */
  readonly openArea: number;
  readonly canopySun: number;
  /** Link of the canopy to outside air through the gap, W/(m² K), and the share of its vapour that gets out. */
  readonly gapLink: number;
  readonly vapourShare: number;
  /** Resistance of a leaf under the covering to losing water, s/m: it closes as the light falls. */
  readonly shadedLeaf: number;
  readonly mistTop: number;
  readonly mistCanopy: number;
  readonly shelter: Shelter;
  /** Link of the ice to the floor beneath, W/(m² K); 0 without ice. */
  readonly iceLink: number;
  readonly iceHeld: boolean;
  /** Share of the sun the ice absorbs. */
  readonly iceSun: number;
  readonly sweep: SoilSweep;
}

export interface Floor {
  readonly states: readonly FloorState[];
  /** Which state is in force at each step; null when there is only one. */
  readonly stateAt: Uint8Array | null;
  readonly nodes: number;
  readonly iceTemperature: number | null;
  /** Floors with the same key are the same thing lying on: its warmth carries over. */
  readonly key: string;
}

/** Coverings that can lie on one another. */
export const mostLayers = 12;

/** Below this a resistance counts as contact, m² K/W. */
const contact = 1e-6;
/** A sheet thinner than some hundredths of a millimetre that passes all sun is not there; it fades in over this, m. */
const film = 1e-5;

/** The share of a covering that is plain opening: light and wind pass as if nothing lay there. */
export const openingOf = (covering: ThermalCovering, openVentilation: number): number => {
  const { solarTransmission, ventilation, thickness } = covering;
  const holes = solarTransmission * Math.min(1, ventilation / openVentilation);
  return 1 - (1 - holes) * (1 - solarTransmission * Math.exp(-thickness / film));
};

/** Ice near its melting point, W/(m K). @source iso-10456 */
const iceConductivity = 2.2;

interface Deeds {
  lift: number;
  prop: number;
  mist: number;
  air: number;
  power: number;
  sheet: number;
  plantOff: boolean;
}

const deedsAt = (care: readonly FloorCare[], step: number): Deeds => {
  const deeds: Deeds = { lift: 0, prop: 0, mist: 0, air: 0, power: 0, sheet: 0, plantOff: false };
  for (const act of care) {
    if (step < act.from || step >= act.until) continue;
    if (act.kind === 'lift') deeds.lift = Math.max(deeds.lift, act.share);
    else if (act.kind === 'prop') deeds.prop = Math.max(deeds.prop, act.share);
    else if (act.kind === 'mist') deeds.mist = Math.max(deeds.mist, act.share);
    else if (act.kind === 'sub-surface-air') deeds.air = Math.max(deeds.air, act.share);
    else if (act.kind === 'soil-heating') deeds.power += act.share * (act.power ?? 0);
    else if (act.kind === 'growth-cover') deeds.sheet = Math.max(deeds.sheet, act.share);
    else deeds.plantOff = true;
  }
  return deeds;
};

/** Air under a covering, half its resistance to either side, aired to the outside: the three links that are left without it. */
const gapLinks = (resistance: number, ventilation: number): { through: number; toAir: number } => {
  const half = 2 / Math.max(resistance, contact);
  const sum = 2 * half + ventilation;
  return { through: (half * half) / sum, toAir: (half * ventilation) / sum };
};

const sweepOf = (deeds: Deeds, ground: Ground, settings: ClimateSettings): SoilSweep => {
  const airLink = new Float64Array(ground.cells);
  const source = new Float64Array(ground.cells);
  let top = 0;
  for (let i = 0; i < ground.cells; i++) {
    const bottom = top + ground.thickness[i]!;
    const reached = Math.max(0, Math.min(bottom, settings.airDepth) - top);
    airLink[i] = (deeds.air * settings.airExchange * reached) / settings.airDepth;
    const last = i === ground.cells - 1;
    if (settings.heatingDepth >= top && (settings.heatingDepth < bottom || last)) source[i] = deeds.power;
    top = bottom;
  }
  const topResistance = settings.canopyThickness / (2 * settings.canopyConductivity);
  return prepareSweep(ground, settings.step, topResistance, airLink, source);
};

/** What ice without a floor lies on: a thin tight sheet. */
const iceSheetBed: ThermalCovering = {
  thickness: 0.001,
  conductivity: 0.33,
  heatCapacity: 1.8,
  solarTransmission: 0,
  absorptance: 0.5,
  gapResistance: 0.02,
  ventilation: 0,
  seal: 1,
};

/** What lies on the turf: the coverings that are not all opening, or else the bed of the ice, or the sheet of a growth cover. */
const lyingOf = (plan: FloorPlan, settings: ClimateSettings): { stack: readonly ThermalCovering[]; sheet: boolean } => {
  const stack = plan.stack.filter((covering) => openingOf(covering, settings.openVentilation) < 1 - 1e-9);
  if (stack.length > 0) return { stack, sheet: false };
  if (plan.iceTemperature !== null) return { stack: [iceSheetBed], sheet: false };
  const sheet = plan.growthCover !== undefined && plan.care.some((act) => act.kind === 'growth-cover');
  return sheet ? { stack: [plan.growthCover!], sheet } : { stack, sheet };
};

const stateOf = (plan: FloorPlan, deeds: Deeds, ground: Ground, settings: ClimateSettings): FloorState => {
  const { stack, sheet } = lyingOf(plan, settings);
  const lifted = stack.length === 0 ? 1 : sheet ? 1 - deeds.sheet : deeds.lift;
  const nodes = 2 * stack.length;
  const store = new Float64Array(nodes);
  const link = new Float64Array(nodes);
  const airLink = new Float64Array(nodes);
  const sun = new Float64Array(nodes);
  const shelter = plan.loading === 'open' ? settings.shelter.open : settings.shelter[plan.loading];
  const dirt = stack.length > 0 ? plan.cleanliness : 1;
  let opening = 1;
  let passed = 1;
  for (const covering of stack) opening *= openingOf(covering, settings.openVentilation);
  const openArea = stack.length > 0 ? 1 - (1 - opening) * (1 - lifted) : 1;
  const covered = 1 - openArea;
  let gapLink = 0;
  let seal = 0;
  stack.forEach((covering, i) => {
    const half = (covering.heatCapacity * 1e6 * covering.thickness) / 2;
    const { solarTransmission: tau, absorptance } = covering;
    store[2 * i] = half;
    store[2 * i + 1] = half;
    link[2 * i] = 1 / Math.max(covering.thickness / covering.conductivity, contact);
    const absorbed = passed * Math.min(1 - tau, absorptance + (i === 0 ? tau * (1 - dirt) : 0)) * (1 - lifted);
    sun[2 * i] = absorbed * (tau > 0 ? 0.5 : 1);
    sun[2 * i + 1] = absorbed - sun[2 * i]!;
    passed *= i === 0 ? tau * dirt : tau;
    const { through, toAir } = gapLinks(covering.gapResistance, covering.ventilation + deeds.prop * settings.propVentilation);
    const last = i === stack.length - 1;
    link[2 * i + 1] = last ? through * covered : through;
    airLink[2 * i + 1] = last ? toAir * covered : toAir;
    if (last) gapLink = toAir * covered;
    else airLink[2 * i + 2] = toAir;
    seal = Math.max(seal, covering.seal);
  });
  const ice = plan.iceTemperature !== null;
  const iceResistance = settings.iceThickness / (2 * iceConductivity) + settings.iceInsulation;
  return {
    nodes,
    store,
    link,
    airLink,
    sun: sun.map((share) => (ice ? 0 : share * shelter.sun)),
    iceSun: ice ? settings.iceAbsorptance * shelter.sun : 0,
    topArea: 1 - opening,
    openArea,
    canopySun: (1 - settings.canopyAlbedo) * (lifted + (1 - lifted) * passed) * shelter.sun * (ice ? 0 : 1),
    gapLink,
    vapourShare: 1 - seal * (1 - settings.propUnseal * deeds.prop),
    shadedLeaf: Math.min(settings.darkResistance, settings.leafResistance / Math.max((passed * shelter.sun) ** 2, 1e-9)),
    mistTop: stack.length > 0 ? deeds.mist : 0,
    mistCanopy: stack.length > 0 ? 0 : deeds.mist,
    shelter: { ...shelter, sky: shelter.sky * plan.skyView },
    iceLink: ice ? 1 / iceResistance : 0,
    iceHeld: ice && !deeds.plantOff,
    sweep: sweepOf(deeds, ground, settings),
  };
};

/** The thermal fields alone, so that a name or a price makes no new floor. */
const thermalOnly = (covering: ThermalCovering): readonly number[] => [
  covering.thickness,
  covering.conductivity,
  covering.heatCapacity,
  covering.solarTransmission,
  covering.absorptance,
  covering.gapResistance,
  covering.ventilation,
  covering.seal,
];

/**
 * Turns a covering, what stands on it and what is done to it into the states the solver steps through. Made once for an
 * exposure and used by every member.
 * @throws RangeError for more than 12 coverings, more than 255 different states, an action without length, or care
 * without steps.
 */
export const layOut = (plan: FloorPlan, ground: Ground, settings: ClimateSettings): Floor => {
  for (const act of plan.care) if (!(act.until > act.from)) throw new RangeError(`care: ${act.kind} must end after it starts`);
  const { stack } = lyingOf(plan, settings);
  if (stack.length > mostLayers) throw new RangeError(`stack: at most ${mostLayers} coverings can lie on one another`);
  const base = {
    nodes: 2 * stack.length,
    iceTemperature: plan.iceTemperature,
    key: JSON.stringify([stack.map(thermalOnly), plan.iceTemperature !== null]),
  };
  if (plan.care.length === 0) return { ...base, states: [stateOf(plan, deedsAt([], 0), ground, settings)], stateAt: null };
  if (!(plan.steps >= 1)) throw new RangeError('steps: a floor with care must say how many steps it lies');
  const states: FloorState[] = [];
  const known = new Map<string, number>();
  const stateAt = new Uint8Array(plan.steps);
  for (let step = 0; step < plan.steps; step++) {
    const deeds = deedsAt(plan.care, step);
    const name = JSON.stringify(deeds);
    let index = known.get(name);
    if (index === undefined) {
      index = states.length;
      if (index > 255) throw new RangeError('care: more than 255 different states');
      known.set(name, index);
      states.push(stateOf(plan, deeds, ground, settings));
    }
    stateAt[step] = index;
  }
  return { ...base, states, stateAt };
};

/** Uncovered turf, nothing done to it. */
export const uncovered: FloorPlan = {
  stack: [],
  loading: 'open',
  cleanliness: 1,
  iceTemperature: null,
  care: [],
  steps: 0,
  skyView: 1,
};
