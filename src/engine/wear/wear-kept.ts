import { coverAfterGames } from '#engine/wear/studded-play.ts';
import { footfallsPerPass, type WalkingSettings } from '#engine/wear/walking.ts';
import { keptAfter } from '#engine/wear/wear-curve.ts';
import { wetFactor, type WetSettings } from '#engine/wear/wet-wear.ts';
import type { CrowdSettings } from '#engine/wear/crowd-footfalls.ts';
import type { Grass, Soil, Sward } from '#shared/vocabulary/turf.ts';

/**
 * What feet, studs, wheels and legs leave of leaf and crowns in one exposure.
 *
 * Each cause has its own curve and keeps a share; shares multiply. Footfalls and wheel wear are lessened by the covering (which takes
 * the shear of a shoe or tyre); pressures of wheels and legs have already gone through it. Crowns go at a part of the rate of leaf.
 *
 *     feet    leaf = 2^(−F · shoe · wet · through/(tolerance · 860 passes in footfalls))
 *     studs   leaf = 2^(−games · wet/(tolerance · half))
 *     wheels  leaf = 2^(−passes · wet · through/(tolerance · half)) / [1 + (rut/half rut)³] on the touched share of the ground
 *     legs    leaf = 1/[1 + (pressure/strength/half)³] on the pressed share of the ground
 *
 * A mixture keeps the mean of its grasses by their shares. The curves of wheels, ruts and crushing are our assumption.
 *
 * @source hill-pickering-2009
 * @source cole-1995b
 * @source thoms-2016
 * @source dickson-2018
 */
export const shoes = ['boots', 'ordinary', 'soft'] as const;
export type Shoe = (typeof shoes)[number];

export interface WearExposure {
  /** Footfalls per m² on top of the covering. */
  readonly footfalls: number;
  readonly shoe: Shoe;
  /** Simulated games played in studs on bare turf. */
  readonly games: number;
  /** Share of foot and wheel shear that gets through the covering; 1 on bare turf. */
  readonly wearThrough: number;
  readonly wheels: {
    /** Passes of a touched spot, weighted by pressure. */
    readonly passes: number;
    /** m */
    readonly rut: number;
    /** Share of the ground that wheels touch. */
    readonly touched: number;
  } | null;
  readonly legs: {
    /** Pressure on the turf over bearing strength. */
    readonly load: number;
    /** Share of the ground under their patches. */
    readonly pressed: number;
  } | null;
}

export interface WearPlace {
  readonly sward: Sward;
  readonly soil: Soil;
  /** m³/m³ in the top of the root zone */
  readonly water: number;
}

export interface WearSettings extends CrowdSettings {
  readonly walking: WalkingSettings;
  readonly shoe: Readonly<Record<Shoe, number>>;
  readonly wet: WetSettings & { readonly factor: Readonly<Record<Soil, number>> };
  readonly gamesToHalf: Readonly<Record<Soil, number>>;
  readonly tolerance: Readonly<Record<'stud' | 'foot' | 'wheel', Readonly<Record<Grass, number>>>>;
  /** Rate at which crowns go beside leaf. */
  readonly crownShare: number;
  readonly wheelHalf: number;
  /** m */
  readonly rutHalf: { readonly leaf: number; readonly crowns: number };
  readonly crushHalf: { readonly leaf: number; readonly crowns: number };
}

/** Shares kept, 0–1. */
export interface Kept {
  readonly leaf: number;
  readonly crowns: number;
}

export interface WearKept extends Kept {
  readonly causes: Readonly<Record<'feet' | 'studs' | 'wheels' | 'legs', Kept>>;
}

const steepness = 3;
const crushed = (amount: number, half: number): number => 1 / (1 + (Math.max(0, amount) / half) ** steepness);

/** Leaf kept as the mean over the grasses of a mixture, crowns from the same curve at their slower rate. */
const wornBy = (sward: Sward, crownShare: number, leafOf: (grass: Grass) => number): Kept => {
  let [leaf, crowns] = [0, 0];
  for (const { grass, share } of sward) {
    const kept = leafOf(grass);
    leaf += share * kept;
    crowns += share * kept ** crownShare;
  }
  return { leaf, crowns };
};

const onShare = (share: number, kept: Kept): Kept => ({
  leaf: 1 - share * (1 - kept.leaf),
  crowns: 1 - share * (1 - kept.crowns),
});

const untouched: Kept = { leaf: 1, crowns: 1 };

export const wearKept = (exposure: WearExposure, place: WearPlace, settings: WearSettings): WearKept => {
  const { sward, soil, water } = place;
  const wet = wetFactor(water, settings.wet.factor[soil], settings.wet);
  const { tolerance, crownShare } = settings;
  const through = exposure.wearThrough;

  const halfFootfalls = settings.walking.half.lawn * footfallsPerPass(settings.walking);
  const walked = exposure.footfalls * settings.shoe[exposure.shoe] * wet * through;
  const feet =
    walked > 0
      ? wornBy(sward, crownShare, (grass) => keptAfter(walked, halfFootfalls * tolerance.foot[grass], settings.walking.shape))
      : untouched;

  const studs =
    exposure.games > 0
      ? wornBy(sward, crownShare, (grass) =>
          coverAfterGames(exposure.games, settings.gamesToHalf[soil], wet, tolerance.stud[grass]),
        )
      : untouched;

  const { wheels: rolling, legs: standing } = exposure;
  let wheels = untouched;
  if (rolling) {
    const worn = wornBy(sward, crownShare, (grass) =>
      keptAfter(rolling.passes * wet * through, settings.wheelHalf * tolerance.wheel[grass]),
    );
    wheels = onShare(rolling.touched, {
      leaf: worn.leaf * crushed(rolling.rut, settings.rutHalf.leaf),
      crowns: worn.crowns * crushed(rolling.rut, settings.rutHalf.crowns),
    });
  }
  const legs = standing
    ? onShare(standing.pressed, {
        leaf: crushed(standing.load, settings.crushHalf.leaf),
        crowns: crushed(standing.load, settings.crushHalf.crowns),
      })
    : untouched;

  return {
    leaf: feet.leaf * studs.leaf * wheels.leaf * legs.leaf,
    crowns: feet.crowns * studs.crowns * wheels.crowns * legs.crowns,
    causes: { feet, studs, wheels, legs },
  };
};
