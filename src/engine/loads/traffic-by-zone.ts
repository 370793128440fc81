import type { MachinePasses } from '#engine/loads/machine-passes.ts';
import type { Traffic } from '#shared/vocabulary/booking.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';

/** The machines of a booking, zone by zone, in the order entered. Throws RangeError for a machine that is not in the list. */
export const trafficByZone = (
  traffic: readonly Traffic[],
  vehicles: readonly Vehicle[],
): ReadonlyMap<string, readonly MachinePasses[]> => {
  const known = new Map(vehicles.map((vehicle) => [vehicle.id, vehicle]));
  const zones = new Map<string, MachinePasses[]>();
  for (const { zone, vehicle: id, passes, turning } of traffic) {
    const vehicle = known.get(id);
    if (vehicle === undefined) throw new RangeError(`vehicle: ${id} is not a known class of machine`);
    const list = zones.get(zone) ?? [];
    list.push({ vehicle, passes, turning });
    zones.set(zone, list);
  }
  return zones;
};
