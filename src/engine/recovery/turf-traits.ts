import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import { grasses, seasonOf, type Grass, type Sward } from '#shared/vocabulary/turf.ts';
import type { DarkClockTraits } from '#engine/injury/dark-clock.ts';
import { darkClockTraitsOf, reserveTraitsOf, starvationTraitsOf } from '#engine/injury/injury-traits.ts';
import type { StarvationTraits } from '#engine/injury/kept-by-reserve.ts';
import type { ReserveTraits } from '#engine/injury/reserve-balance.ts';
import type { EmergenceShape } from '#engine/recovery/germination.ts';
import type { GrowthCurve } from '#engine/recovery/growth-potential.ts';
import type { SodTraits } from '#engine/recovery/sod-anchoring.ts';

/** One grass as seed. */
export interface SeedTraits {
  /** °C d to half emergence in the field */
  readonly emergence: number;
  /** °C */
  readonly base: number;
  readonly shape: EmergenceShape;
  /** 1/d, logistic rate of filling ground */
  readonly fill: number;
  /** ground covered by newly emerged seedlings at the full rate */
  readonly firstCover: number;
  /** d after emergence before it takes play, and before it counts as established */
  readonly playAge: number;
  readonly matureAge: number;
  /** g/m² of pure live seed at the full rate */
  readonly fullRate: number;
  readonly lightNeed: number;
  readonly growth: GrowthCurve;
}

/** What jobs do to the ground. */
export interface JobTraits {
  readonly nitrogenCap: number;
  readonly topdressMost: number;
  readonly hideDepth: number;
  readonly disturbance: number;
  readonly solidOpening: number;
  readonly loosenHollow: number;
  readonly loosenSolid: number;
  readonly loosenDeep: number;
  readonly looseDensity: number;
  readonly rollRuts: number;
  readonly rollDensity: number;
  readonly sodCover: number;
  readonly sodReserve: number;
  readonly mowRemoved: number;
  readonly mowReserve: number;
}

/** Everything a day step needs to know of one stand; one object for each member and sward. */
export interface TurfTraits {
  readonly growth: GrowthCurve;
  /** GP at or below which nothing grows back */
  readonly growthStop: number;
  /** 1/d in best growth: leaf, crowns, small openings; and the fastest ever measured */
  readonly leafRate: number;
  readonly spreadRate: number;
  readonly openedRate: number;
  readonly rateLimit: number;
  /** mol/m²/d */
  readonly lightNeed: number;
  readonly nitrogenUnfed: number;
  /** g/m² on hand in an ordinary stand, and the extra speed of leaf regrowth of a stand fed well above it */
  readonly nitrogenUsual: number;
  readonly fedBonus: number;
  readonly nitrogenFull: number;
  readonly nitrogenUse: number;
  readonly compactionFree: number;
  readonly compactionStop: number;
  readonly compactionLeast: number;
  readonly reserve: ReserveTraits;
  readonly starvation: StarvationTraits;
  readonly dark: DarkClockTraits;
  readonly sod: SodTraits;
  /** share of leaf lost on a dry day at 25 °C before sod has rooted */
  readonly sodDryLoss: number;
  readonly job: JobTraits;
  /** by index of the grass */
  readonly seeds: readonly SeedTraits[];
}

const growthCurveOf = (values: ParameterValues, grass: Grass): GrowthCurve => {
  const season = seasonOf(grass);
  return {
    optimum: values[`gp.optimum.${season}`],
    spread: values[`gp.spread.${season}`],
    plateau: season === 'warm' && values['gp.plateau'] >= 0.5,
  };
};

const seedTraitsOf = (values: ParameterValues, grass: Grass): SeedTraits => ({
  emergence: values[`seed.thermalTime.${grass}`] * values['seed.fieldFactor'],
  base: values[`seed.base.${grass}`],
  shape: { lag: values['seed.lag'], shape: values['seed.shape'] },
  fill: values[`seed.fill.${grass}`],
  firstCover: values['seed.firstCover'],
  playAge: values[`seed.playAge.${grass}`],
  matureAge: Math.max(values[`seed.matureAge.${grass}`], values[`seed.playAge.${grass}`]),
  fullRate: values[`seed.rate.${grass}`],
  lightNeed: values[`lightNeed.${grass}`],
  growth: growthCurveOf(values, grass),
});

export const sodTraitsOf = (values: ParameterValues, grass: Grass): SodTraits => {
  const season = seasonOf(grass);
  return {
    thin: values['sod.thin'],
    thick: values['sod.thick'],
    thickPlayDays: values['sod.playDays.thick'],
    rooting: values[`sod.rooting.${season}`],
    rootBase: values[`growth.base.${season}`],
    anchored: values['sod.anchored'],
    wearFirst: values['sod.wearFirst'],
    wearDays: values['sod.wearDays'],
  };
};

const jobTraitsOf = (values: ParameterValues): JobTraits => ({
  nitrogenCap: values['nitrogen.cap'],
  topdressMost: values['topdress.most'],
  hideDepth: values['topdress.hideDepth'],
  disturbance: values['aeration.disturbance'],
  solidOpening: values['aeration.solidOpening'],
  loosenHollow: values['aeration.loosen.hollow'],
  loosenSolid: values['aeration.loosen.solid'],
  loosenDeep: values['aeration.loosen.deep'],
  looseDensity: values['aeration.density'],
  rollRuts: values['roll.ruts'],
  rollDensity: values['roll.density'],
  sodCover: values['sod.cover'],
  sodReserve: values['sod.reserve'],
  mowRemoved: values['mow.removed'],
  mowReserve: values['mow.reserve'],
});

const seedsOf = (values: ParameterValues): readonly SeedTraits[] => grasses.map((seed) => seedTraitsOf(values, seed));

/** The traits of a stand of one grass, from one member's or one venue's values. @param seeds where they are known already */
export const turfTraitsOf = (values: ParameterValues, grass: Grass, seeds = seedsOf(values)): TurfTraits => ({
  growth: growthCurveOf(values, grass),
  growthStop: values['gp.stop'],
  leafRate: values[`recovery.leaf.${grass}`],
  spreadRate: values[`recovery.spread.${grass}`],
  openedRate: values['recovery.opened'],
  rateLimit: values['recovery.rateLimit'],
  lightNeed: values[`lightNeed.${grass}`],
  nitrogenUnfed: values['nitrogen.unfed'],
  nitrogenUsual: values['nitrogen.usual'],
  fedBonus: values['recovery.fedBonus'],
  nitrogenFull: values['nitrogen.full'],
  nitrogenUse: values['nitrogen.use'],
  compactionFree: values['compaction.free'],
  compactionStop: values['compaction.stop'],
  compactionLeast: values['compaction.least'],
  reserve: reserveTraitsOf(values, seasonOf(grass)),
  starvation: starvationTraitsOf(values),
  dark: darkClockTraitsOf(values, seasonOf(grass)),
  sod: sodTraitsOf(values, grass),
  sodDryLoss: values['sod.dryLoss'],
  job: jobTraitsOf(values),
  seeds,
});

/** Share-weighted mean of every number in objects of one shape; lists and switches are those of the first. */
const weighted = <Shape>(parts: readonly { readonly traits: Shape; readonly share: number }[]): Shape => {
  const mixed = (values: readonly unknown[]): unknown => {
    const first = values[0];
    if (typeof first === 'number')
      return values.reduce<number>((sum, value, part) => sum + (value as number) * parts[part]!.share, 0);
    if (typeof first !== 'object' || first === null || Array.isArray(first)) return first;
    return Object.fromEntries(
      Object.keys(first).map((key) => [key, mixed(values.map((value) => (value as Record<string, unknown>)[key]))]),
    );
  };
  return mixed(parts.map((part) => part.traits)) as Shape;
};

/**
 * The traits of a mixture: every number weighted by the shares. The first grass, the base, decides the plateau of growth.
 * A warm-season turf overseeded with a cool-season grass is two stands on one ground instead: see `sidesOf`.
 */
export const turfTraitsOfSward = (values: ParameterValues, sward: Sward): TurfTraits => {
  const seeds = seedsOf(values);
  const parts = sward.map(({ grass, share }) => ({ traits: turfTraitsOf(values, grass, seeds), share }));
  return parts.length === 1 ? parts[0]!.traits : weighted(parts);
};
