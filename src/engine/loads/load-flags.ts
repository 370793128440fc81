import type { TrafficImpact } from '#engine/loads/machine-passes.ts';
import type { Warning } from '#shared/vocabulary/forecast.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';

/**
 * What is out of line about a machine on turf or on a covering. A flag states a limit and by how much it is passed; no flag means
 * only that none of these limits is passed.
 *
 * @source nps-turf-guide
 * @source carpenter-1985
 */

export interface Flag {
  readonly kind: Warning['kind'];
  /** What was found, in `unit`. */
  readonly value: number;
  /** The limit it passes, in `unit`. */
  readonly limit: number;
  readonly unit: 'kPa' | 'kN' | 'passes';
}

export interface FlagSettings {
  /** kPa, straight on turf */
  readonly parkPressure: number;
  /** kN on one wheel */
  readonly cautionWheelLoad: number;
  /** Passes of lorries over one panel route. */
  readonly lorryPasses: number;
}

/** What the flags need to know of a covering; null, or one without thickness, is bare turf. */
export interface RatedCovering {
  /** m */
  readonly thickness: number;
  readonly spread: 'none' | 'plate' | 'beam' | 'rigid-pad';
  /** kN on one wheel; 0 is feet only */
  readonly wheelRating: number;
}

/** The flag of the park rule for a pressure in kPa straight on turf, or null at or below the limit (7 psi). */
export const parkRuleFlag = (pressure: number, settings: Pick<FlagSettings, 'parkPressure'>): Flag | null =>
  pressure > settings.parkPressure
    ? {
        kind: 'park-rule',
        value: pressure,
        limit: settings.parkPressure,
        unit: 'kPa',
      }
    : null;

/** Whether the axle loads add to the weight within 2 %; a flag where they do not. All in kN. */
export const weightFlag = (vehicle: Pick<Vehicle, 'weight' | 'axles'>): Flag | null => {
  const onAxles = vehicle.axles.reduce((sum, axle) => sum + axle.load, 0);
  if (Math.abs(onAxles - vehicle.weight) <= 0.02 * vehicle.weight) return null;
  return {
    kind: 'weight-off-axles',
    value: vehicle.weight,
    limit: onAxles,
    unit: 'kN',
  };
};

/** All flags of one machine crossing one zone. `covering` is what the machine rolls on. */
export const trafficFlags = (
  vehicle: Vehicle,
  passes: number,
  covering: RatedCovering | null,
  impact: Pick<TrafficImpact, 'contactPressure' | 'peakPressure' | 'strength'>,
  settings: FlagSettings,
): readonly Flag[] => {
  const flags: Flag[] = [];
  const add = (flag: Flag | null): void => {
    if (flag) flags.push(flag);
  };
  const wheelLoad = Math.max(...vehicle.axles.map((axle) => axle.load / axle.wheels));
  add(weightFlag(vehicle));
  const floor = covering !== null && covering.thickness > 0 ? covering : null;
  // A sheet that spreads nothing leaves the wheel straight on the turf.
  if (floor === null || floor.spread === 'none') add(parkRuleFlag(impact.contactPressure, settings));
  if (floor !== null && floor.wheelRating === 0)
    add({
      kind: 'covering-feet-only',
      value: wheelLoad,
      limit: 0,
      unit: 'kN',
    });
  else if (floor !== null && wheelLoad > floor.wheelRating)
    add({
      kind: 'covering-rating',
      value: wheelLoad,
      limit: floor.wheelRating,
      unit: 'kN',
    });
  if (impact.peakPressure > impact.strength)
    add({
      kind: 'bearing-strength',
      value: impact.peakPressure,
      limit: impact.strength,
      unit: 'kPa',
    });
  if (wheelLoad > settings.cautionWheelLoad)
    add({
      kind: 'wheel-load',
      value: wheelLoad,
      limit: settings.cautionWheelLoad,
      unit: 'kN',
    });
  if (floor !== null && vehicle.axles.length >= 4 && passes > settings.lorryPasses)
    add({
      kind: 'lorry-route-used-again',
      value: passes,
      limit: settings.lorryPasses,
      unit: 'passes',
    });
  return flags;
};
