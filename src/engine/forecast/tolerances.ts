import type { Member } from '#engine/forecast/member.ts';
import { iceHalfKillDays } from '#engine/injury/ice-encasement.ts';
import { type FrostTolerance, frostTolerance, halfKillTemperature } from '#engine/injury/frost.ts';
import type { HeatTolerance } from '#engine/injury/heat-dose.ts';
import { spillTraitsOf, waterloggingTraitsOf } from '#engine/injury/injury-traits.ts';
import type { SpillTraits } from '#engine/injury/spill.ts';
import type { WaterloggingTraits } from '#engine/injury/waterlogging.ts';
import type { WearSettings } from '#engine/wear/wear-kept.ts';
import { wearSettings } from '#engine/wear/wear-settings.ts';
import { seasonOf } from '#shared/vocabulary/turf.ts';

/** What a member's values make of injuries. */
export interface Tolerances {
  readonly heat: HeatTolerance;
  readonly doseMemory: number;
  readonly frost: FrostTolerance;
  /** °C that kills half, by hardening 0 and 1. */
  readonly tender: number;
  readonly hardened: number;
  readonly wet: WaterloggingTraits;
  readonly wear: WearSettings;
  readonly spill: SpillTraits;
  /** Days under ice that kill half, and how steeply. */
  readonly ice: { readonly halfKill: number; readonly steepness: number };
  /** Those of the grass sown in; null where there is none. */
  readonly overseed: Tolerances | null;
}

export const tolerancesOf = ({ values, side: { sward }, overseed }: Member): Tolerances => {
  const mean = (of: (grass: (typeof sward)[number]['grass']) => number): number =>
    sward.reduce((sum, part) => sum + part.share * of(part.grass), 0);
  return {
    heat: {
      halfKill: mean((grass) => values[`heat.halfKill.${seasonOf(grass)}`]),
      decade: values['heat.decade'],
      steepness: values['heat.doseSteepness'],
    },
    doseMemory: values['forecast.doseMemory'],
    frost: frostTolerance(values),
    tender: mean((grass) => halfKillTemperature(grass, 0, values)),
    hardened: mean((grass) => halfKillTemperature(grass, 1, values)),
    wet: waterloggingTraitsOf(values),
    wear: wearSettings(values),
    spill: spillTraitsOf(values),
    ice: { halfKill: mean((grass) => iceHalfKillDays(grass, values)), steepness: values['ice.steepness'] },
    overseed: overseed && tolerancesOf(overseed),
  };
};
