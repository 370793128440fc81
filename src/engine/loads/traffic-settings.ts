import type { TrafficSettings } from '#engine/loads/machine-passes.ts';
import type { RouteSettings } from '#engine/loads/route-impact.ts';
import type { FlagSettings } from '#engine/loads/load-flags.ts';
import type { LoadsValues } from '#shared/parameters/loads.ts';
import type { WearValues } from '#shared/parameters/wear.ts';

/** Gathers what machine passes, routes and flags need out of a full set of values. */
export const trafficSettings = (values: LoadsValues & WearValues): TrafficSettings & RouteSettings & FlagSettings => ({
  turning: { steered: values['traffic.turning.steered'], skid: values['traffic.turning.skid'] },
  dualSpacing: values['traffic.dualSpacing'],
  wearPressure: values['wear.wheel.pressure'],
  wander: values['traffic.wander'],
  gate: values['traffic.gate'],
  parkPressure: values['park.pressure'],
  cautionWheelLoad: values['stress.singleWheelCaution'],
  lorryPasses: values['park.lorryRoute.passes'],
});
