import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Grass } from '#shared/vocabulary/turf.ts';

/**
 * Ice lying on turf cuts it off from air, and hardened dormant grass outlives it for a number of days that differs widely
 * between species.
 *
 *     kept = 1/(1 + (d/d50)^s)
 *
 * d days under ice, d50 days that kill half, s steepness. Day counts of hardened, dormant turf only. A rink on insulated
 * sections is not this: there the turf lies dark, cold and cut off from the air under a floor. It becomes this only where
 * melt water has run under the floor and frozen on the turf, which is an incident that somebody enters.
 * @source frank-2014, hoglind-2010
 */
export type IcedGrass = Grass | 'annual-bluegrass' | 'creeping-bentgrass';

const grassName = {
  'kentucky-bluegrass': 'kentuckyBluegrass',
  'perennial-ryegrass': 'perennialRyegrass',
  'tall-fescue': 'tallFescue',
  'bermudagrass-common': 'bermudagrassCommon',
  'bermudagrass-hybrid': 'bermudagrassHybrid',
  zoysiagrass: 'zoysiagrass',
  'seashore-paspalum': 'seashorePaspalum',
  'annual-bluegrass': 'annualBluegrass',
  'creeping-bentgrass': 'creepingBentgrass',
} as const satisfies Record<IcedGrass, string>;

/** Days under ice that kill half of a hardened stand. */
export const iceHalfKillDays = (grass: IcedGrass, values: ParameterValues): number => values[`ice.halfKill.${grassName[grass]}`];

/** Share of crowns alive after days under ice; all of them at none. */
export const keptUnderIce = (days: number, halfKillDays: number, steepness: number): number =>
  days <= 0 ? 1 : 1 / (1 + (days / halfKillDays) ** steepness);

/** What ice over a zone does to its turf. */
export type IceCase = 'none' | 'cover-and-cold' | 'encasement';

/** `iceOnFloor`: a sheet held on floor sections; `refrozenOnTurf`: an entered incident of ice on the grass itself. */
export const iceCase = (iceOnFloor: boolean, refrozenOnTurf: boolean): IceCase =>
  refrozenOnTurf ? 'encasement' : iceOnFloor ? 'cover-and-cold' : 'none';
