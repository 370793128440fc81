import type { TrafficSettings } from '#engine/loads/machine-passes.ts';
import type { FlagSettings } from '#engine/loads/load-flags.ts';
import type { LoadsValues } from '#shared/parameters/loads.ts';
import type { WearValues } from '#shared/parameters/wear.ts';

/** How machines keep to their way. */
export interface WaySettings {
  /** m, both ways together */
  readonly wander: number;
  /** Ordinary passes that one pass through a gate throat counts as. */
  readonly gate: number;
}

/** Gathers what machine passes, ways and flags need out of a full set of values. */
export const trafficSettings = (values: LoadsValues & WearValues): TrafficSettings & WaySettings & FlagSettings => ({
  turning: { steered: values['traffic.turning.steered'], skid: values['traffic.turning.skid'] },
  dualSpacing: values['traffic.dualSpacing'],
  wearPressure: values['wear.wheel.pressure'],
  wander: values['traffic.wander'],
  gate: values['traffic.gate'],
  parkPressure: values['park.pressure'],
  cautionWheelLoad: values['stress.singleWheelCaution'],
  lorryPasses: values['park.lorryRoute.passes'],
});
