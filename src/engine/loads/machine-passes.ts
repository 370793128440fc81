import {
  compactionLinesOf,
  concentrationAt,
  type Ground,
  type GroundState,
  groundUnderPanel,
  measuredStrengthUnder,
  saturationOf,
  strengthUnder,
} from '#engine/loads/ground.ts';
import {
  type PanelPosition,
  type PlacedLoad,
  pressuresUnder,
  type SpreadingCovering,
  type SpreadLoad,
} from '#engine/loads/panel/pressure-under.ts';
import { matPatch } from '#engine/loads/outrigger-mat.ts';
import { pointStress } from '#engine/loads/stress/point-stress.ts';
import { circleShare } from '#engine/loads/stress/circle-stress.ts';
import { densityAfterStress } from '#engine/soil/critical-state-density.ts';
import { rutDepth } from '#engine/soil/rut-depth.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';

/**
 * What one or more machines do to the ground they roll over.
 *
 * Every wheel of an axle presses through the covering, each feeling the others; the stress at depth is taken under the worst wheel
 * with the others added. Ruts and density follow the multi-pass law; several axles and machines add as equal passes do,
 * z = (Σ Nᵢ zᵢ^a)^(1/a), so that the order of machines does not matter and ten equal axles are one axle ten times.
 * A turning pass counts as several straight ones.
 *
 * @source abebe-1989
 */
export interface MachinePasses {
  readonly vehicle: Vehicle;
  /** Passes over the touched ground; parts of one are allowed. */
  readonly passes: number;
  readonly turning: boolean;
}

export interface TrafficSettings {
  /** Straight passes that one turning pass counts as. */
  readonly turning: { readonly steered: number; readonly skid: number };
  /** m between twin wheels */
  readonly dualSpacing: number;
  /** kPa at which one wheel pass counts once as wear */
  readonly wearPressure: number;
}

export interface TrafficImpact {
  /** Worst pressure on the turf, kPa. */
  readonly peakPressure: number;
  /** Worst pressure under a wheel before the covering, kPa. */
  readonly contactPressure: number;
  /** Worst stress at 75 mm, kPa. */
  readonly stressAt75: number;
  /** Bearing strength under the patch that comes nearest to failing, kPa; infinite without traffic. */
  readonly strength: number;
  /** Mg/m³ of the top 75 mm, after. */
  readonly bulkDensity: number;
  /** m */
  readonly rut: number;
  /** Wheel passes over a touched spot, weighted by pressure on the turf and by turning. */
  readonly wheelPasses: number;
}

const layer = 0.075;

/** Places of the wheels of one axle across the machine, m from its middle: even shares to both sides, twins inward. */
export const wheelPlaces = (wheels: number, track: number, dualSpacing: number): readonly number[] => {
  if (wheels === 1) return [0];
  const places: number[] = [];
  for (let i = 0; i < wheels; i++) {
    const inward = Math.floor(i / 2) * Math.min(dualSpacing, track / wheels);
    places.push((i % 2 === 0 ? -1 : 1) * (track / 2 - inward));
  }
  return places;
};

/** kPa at depth `z` m under the worst of some spread loads, the others added. */
const worstStress = (places: readonly PlacedLoad[], spread: readonly SpreadLoad[], z: number, concentration: number): number => {
  let worst = 0;
  for (const here of places) {
    let sum = 0;
    places.forEach((there, j) => {
      const { peak, radius } = spread[j]!;
      const distance = Math.hypot(here.x - there.x, here.y - there.y);
      // Three radii off, a patch and a point load of the same weight differ by less than 2 % of the peak.
      sum +=
        distance > 3 * radius
          ? pointStress(there.load, distance, z, concentration)
          : peak * circleShare(distance / radius, z / radius, concentration);
    });
    worst = Math.max(worst, sum);
  }
  return worst;
};

export interface SpotImpact {
  readonly peak: number;
  readonly stressAt75: number;
  readonly strength: number;
  /** Mg/m³ gained by the first pass */
  readonly gain: number;
  /** m, first pass */
  readonly rut: number;
}

/** One application of some loads that stand together on a covering. `standingHours` is 0 for wheels that roll. */
export const impactOnce = (
  loads: readonly PlacedLoad[],
  covering: SpreadingCovering,
  position: PanelPosition,
  ground: Ground,
  state: GroundState,
  standingHours: number,
): SpotImpact => {
  const saturation = saturationOf(state.water, ground);
  const concentration = concentrationAt(saturation, ground);
  const spread = pressuresUnder(loads, covering, groundUnderPanel(ground, standingHours), position);
  let [peak, strength, rut, ratio] = [0, Infinity, 0, 0];
  for (const one of spread) {
    const diameter = 2 * one.radius;
    const bears = strengthUnder(ground, state, diameter);
    peak = Math.max(peak, one.peak);
    if (one.peak / bears > ratio) [ratio, strength] = [one.peak / bears, bears];
    rut = Math.max(
      rut,
      rutDepth(one.peak, diameter, 1, {
        strength: bears,
        measuredStrength: measuredStrengthUnder(ground, diameter),
        moduli: ground.rut.moduli,
        yieldShare: ground.rut.yieldShare,
        passExponent: ground.rut.passExponent,
        deepest: ground.rut.deepest,
      }),
    );
  }
  const density = state.bulkDensity ?? ground.bulkDensity;
  const stress = worstStress(loads, spread, layer / 2, concentration);
  const lines = compactionLinesOf(ground, state);
  return {
    peak,
    stressAt75: worstStress(loads, spread, layer, concentration),
    strength,
    gain: densityAfterStress(stress, density, ground.particleDensity, lines) - density,
    rut,
  };
};

/** Straight passes that one pass of this machine counts as. */
export const turningFactor = (vehicle: Vehicle, turning: boolean, settings: TrafficSettings): number =>
  turning ? (vehicle.skids ? settings.turning.skid : settings.turning.steered) : 1;

/** Loads of one axle on its wheels, or of a row of outriggers on their pads or mats, m² and kN. */
export const wheelLoads = (
  vehicle: Vehicle,
  axle: Vehicle['axles'][number],
  ground: Ground,
  settings: TrafficSettings,
): readonly PlacedLoad[] => {
  const load = axle.load / axle.wheels;
  const patch = load / axle.contactPressure;
  const area = axle.mat ? matPatch(load, patch, axle.mat, ground, vehicle.standing ?? 0) : patch;
  return wheelPlaces(axle.wheels, vehicle.track, settings.dualSpacing).map((x) => ({ load, area, x, y: 0 }));
};

/** What all these passes leave behind on the ground that wheels touch. */
export const trafficImpact = (
  machines: readonly MachinePasses[],
  covering: SpreadingCovering,
  position: PanelPosition,
  ground: Ground,
  state: GroundState,
  settings: TrafficSettings,
): TrafficImpact => {
  const density = state.bulkDensity ?? ground.bulkDensity;
  const densest = Math.max(density, ground.particleDensity * (1 - ground.leastPorosity));
  let [peakPressure, contactPressure, stressAt75, strength, ratio, wheelPasses] = [0, 0, 0, Infinity, 0, 0];
  let [ruts, gains] = [0, 0];
  for (const { vehicle, passes, turning } of machines) {
    if (!(passes > 0)) continue;
    const counted = passes * turningFactor(vehicle, turning, settings);
    for (const axle of vehicle.axles) {
      const loads = wheelLoads(vehicle, axle, ground, settings);
      const once = impactOnce(loads, covering, position, ground, state, vehicle.standing ?? 0);
      contactPressure = Math.max(contactPressure, ...loads.map(({ load, area }) => load / area));
      peakPressure = Math.max(peakPressure, once.peak);
      stressAt75 = Math.max(stressAt75, once.stressAt75);
      if (once.peak / once.strength > ratio) [ratio, strength] = [once.peak / once.strength, once.strength];
      wheelPasses += (counted * once.peak) / settings.wearPressure;
      ruts += counted * once.rut ** ground.rut.passExponent;
      gains += counted * once.gain ** ground.compactionExponent;
    }
  }
  return {
    peakPressure,
    contactPressure,
    stressAt75,
    strength,
    bulkDensity: Math.min(densest, density + gains ** (1 / ground.compactionExponent)),
    rut: Math.min(ground.rut.deepest, ruts ** (1 / ground.rut.passExponent)),
    wheelPasses,
  };
};
