import type { RootZoneProfile } from '#engine/water/root-zone-profile.ts';
import { flows, stateLength } from '#engine/water/root-zone.ts';

/** What lies on each day as water sees it: share of the day, share of rain that comes through, share of the demand that remains. */
export interface WaterDays {
  readonly share: Float64Array;
  readonly rainThrough: Float64Array;
  readonly evaporation: Float64Array;
}

/** Room for one run of water. */
export interface WaterRoom {
  readonly state: Float64Array;
  readonly flow: Float64Array;
  readonly days: WaterDays;
}

export const waterRoomOf = (profile: RootZoneProfile, days: number): WaterRoom => ({
  state: new Float64Array(stateLength(profile)),
  flow: new Float64Array(flows),
  days: { share: new Float64Array(days), rainThrough: new Float64Array(days), evaporation: new Float64Array(days) },
});
