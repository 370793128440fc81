import type { Covering } from '#shared/vocabulary/covering.ts';
import { lyingAt, type CoveredStretch, type Exposure, type MachineVisit } from '#engine/forecast/exposure.ts';
import type { Group, Scene } from '#engine/forecast/scene.ts';
import { groundOf, type Ground } from '#engine/loads/ground.ts';
import { trafficFlags, type Flag } from '#engine/loads/load-flags.ts';
import { trafficImpact, type TrafficImpact } from '#engine/loads/machine-passes.ts';
import { evenPressureImpact, fillPressure, icePressure, legsImpact, type StandingImpact } from '#engine/loads/standing-loads.ts';
import { trafficSettings } from '#engine/loads/traffic-settings.ts';
import { passesAcross } from '#engine/loads/way-width.ts';

/** What the wheels of one visit leave, with the share of the ground they touch. */
export interface WheelLoad {
  readonly impact: TrafficImpact;
  readonly touched: number;
  /** Share of shear that the covering lets through; 1 on bare turf. */
  readonly wearThrough: number;
}

/** Machines, legs, ice and fill on one exposure. Answers are kept by wetness in steps, since members differ little. */
export interface GroundLoads {
  readonly ground: Ground;
  readonly wheels: (group: Group, visit: MachineVisit, water: number) => WheelLoad;
  readonly standing: (stretch: CoveredStretch, water: number) => StandingImpact | null;
  /** What the venue must look at before the machines come, at the usual wetness. */
  readonly flags: (group: Group, visit: MachineVisit, water: number) => readonly Flag[];
}

const bare = { spread: 'none', thickness: 0, modulus: 0, panelWidth: 0 } as const;
/** m³/m³; loads are reckoned at the wetter end of each step. */
const waterStep = 0.02;

/** @throws RangeError where a covering or machine of the exposure is not in the question */
export const groundLoads = (scene: Scene): GroundLoads => {
  const { question } = scene;
  const { parameters, venue } = question;
  const ground = groundOf(venue.field.rootZone.soil, parameters);
  const settings = trafficSettings(parameters);
  const known = new Map<string, WheelLoad>();
  const stood = new Map<string, StandingImpact | null>();
  // By visit or stretch and step of water: what members ask for again and again.
  const bySteps = new WeakMap<object, WeakMap<object, (WheelLoad | undefined)[]>>();
  const stoodBySteps = new WeakMap<object, (StandingImpact | null | undefined)[]>();

  const stateAt = (water: number) => ({ water, bulkDensity: null, roots: venue.field.usual.crowns });
  const stepOf = (water: number): number => Math.ceil(Math.min(ground.saturated, water) / waterStep);
  const stepped = (water: number): number => Math.min(ground.saturated, Math.ceil(water / waterStep) * waterStep);
  const coveringAt = (exposure: Exposure, hour: number): Covering | null => coveringOf(scene, lyingAt(exposure, hour));
  const wheels = (group: Group, visit: MachineVisit, water: number): WheelLoad => {
    let ofVisit = bySteps.get(visit);
    if (ofVisit === undefined) bySteps.set(visit, (ofVisit = new WeakMap()));
    let steps = ofVisit.get(group);
    if (steps === undefined) ofVisit.set(group, (steps = []));
    return (steps[stepOf(water)] ??= wheelsAnew(group, visit, water));
  };

  const wheelsAnew = (group: Group, visit: MachineVisit, water: number): WheelLoad => {
    const wet = stepped(water);
    const covering = coveringAt(group.exposure, visit.hour);
    const { vehicle: id, passes, turning } = visit.pass;
    const key = `${visit.width} ${visit.gate} ${id} ${passes} ${turning} ${covering?.id} ${wet.toFixed(3)}`;
    let load = known.get(key);
    if (load === undefined) {
      const vehicle = scene.vehicles.get(id);
      if (!vehicle) throw new RangeError(`booking.traffic: there is no machine "${id}"`);
      const counted = passes * (visit.gate ? settings.gate : 1);
      const { touched, machine } = passesAcross(visit.width, { vehicle, passes: counted, turning }, settings.wander);
      load = {
        impact: trafficImpact([machine], covering ?? bare, 'edge', ground, stateAt(wet), settings),
        touched,
        wearThrough: covering?.wearThrough ?? 1,
      };
      known.set(key, load);
    }
    return load;
  };

  const standing = (stretch: CoveredStretch, water: number): StandingImpact | null => {
    let steps = stoodBySteps.get(stretch);
    if (steps === undefined) stoodBySteps.set(stretch, (steps = []));
    const step = stepOf(water);
    const here = steps[step];
    return here === undefined ? (steps[step] = standingAnew(stretch, water)) : here;
  };

  const standingAnew = (stretch: CoveredStretch, water: number): StandingImpact | null => {
    const { layer } = stretch;
    const wet = stepped(water);
    const hours = stretch.until - stretch.from;
    const key = `${layer.covering} ${layer.loading} ${JSON.stringify(layer.legs)} ${hours} ${wet.toFixed(3)}`;
    let impact = stood.get(key);
    if (impact === undefined) {
      const covering = coveringOf(scene, stretch)!;
      if (layer.legs) impact = legsImpact(layer.legs, covering, 'edge', ground, stateAt(wet), hours);
      else if (layer.loading === 'ice')
        impact = evenPressureImpact(
          icePressure(parameters['heat.rink.iceThickness'], parameters['ice.density']),
          ground,
          stateAt(wet),
        );
      else if (layer.loading === 'fill')
        impact = evenPressureImpact(fillPressure(covering.thickness, parameters['fill.unitWeight']), ground, stateAt(wet));
      else impact = null;
      stood.set(key, impact);
    }
    return impact;
  };

  return {
    ground,
    wheels,
    standing,
    flags: (group, visit, water) =>
      trafficFlags(
        scene.vehicles.get(visit.pass.vehicle)!,
        visit.pass.passes,
        coveringAt(group.exposure, visit.hour),
        wheels(group, visit, water).impact,
        settings,
      ),
  };
};

/** The covering of a stretch; null for bare turf. @throws RangeError where it is not in the question */
export const coveringOf = (scene: Scene, stretch: CoveredStretch | null): Covering | null => {
  if (stretch === null) return null;
  const covering = scene.coverings.get(stretch.layer.covering);
  if (!covering) throw new RangeError(`booking.layers: there is no covering "${stretch.layer.covering}"`);
  return covering;
};
