import { emergedShare } from '#engine/recovery/germination.ts';
import { growthPotential } from '#engine/recovery/growth-potential.ts';
import { lightFactor } from '#engine/recovery/recovery-factors.ts';
import { recoveryRate } from '#engine/recovery/regrowth.ts';
import { anchorage, rootedShare } from '#engine/recovery/sod-anchoring.ts';
import { driverLayout, driverStride, standLayout } from '#engine/recovery/stand-layout.ts';
import type { TurfTraits } from '#engine/recovery/turf-traits.ts';

/** What a forecast keeps of every day, one number a day and class; green cover, crowns, reserve, each 0–1. */
export interface DayTrack {
  readonly cover: Float32Array;
  readonly crowns: Float32Array;
  readonly reserve: Float32Array;
}

const { cover: COVER, crowns: CROWNS, reserve: RESERVE, opened: OPENED, nitrogen: NITROGEN, darkClock: CLOCK } = standLayout;
const { bulkDensity: DENSITY, sodLaid: SOD, leafLost: LEAF_LOST, crownsLost: CROWNS_LOST } = standLayout;
const { fedLeaf: FED_LEAF, fedCrowns: FED_CROWNS } = standLayout;
const { seedlings: SEEDLINGS, seedSlots: SLOTS, seedStride: SLOT } = standLayout;
/** index of `wetness` among the causes; `light` is 0 */
const WETNESS = 5;

/** Seedlings on the ground, 0–1. */
const seedlingsAt = (stands: Float64Array, at: number): number => {
  let sum = 0;
  for (let slot = 0; slot < SLOTS; slot++) sum += stands[at + SEEDLINGS + slot * SLOT + standLayout.seedCover]!;
  return sum;
};

/**
 * Moves one stand of the flat form on by some days, in place and without allocating.
 *
 * In this order on each day: the reserve, and the leaf and crowns that starve as it falls; leaf back towards what living crowns and the
 * reserve can carry; crowns spreading; openings closing; nitrogen used; then sod and seedlings where there are any.
 *
 *     reserve ← clamp(reserve + gain − loss)
 *     cover ← cover + k · GP · f_light · (crowns − cover)
 *     crowns ← crowns + r · GP · f_light · f_N · f_compaction · crowns · (1 − crowns)
 *     opened ← opened · exp(−k_opened · GP · f_light)
 *
 * Hunger is kept apart from everything else that takes leaf and crowns: cover = a · l and crowns = u · s, where l and s (`fedLeaf`,
 * `fedCrowns`) are never above leafKept and crownsKept of the reserve, fall with them, and come back at the rates above: l towards
 * s · leafKept(reserve), s by its own logistic. A reserve that only wavers therefore costs nothing twice, and all losses multiply. Without
 * hunger (l = s = 1) the lines above are the whole of it. Nothing grows at GP ≤ 0.10 and no rate exceeds 0.459 /d.
 * @param at first number of the stand @param drivers days in the form of `driverLayout` @param from first day @param count days
 * @param track where to keep each day, at `trackAt + day`; null to keep none
 */
export const advanceDays = (
  stands: Float64Array,
  at: number,
  drivers: Float64Array,
  from: number,
  count: number,
  traits: TurfTraits,
  track: DayTrack | null,
  trackAt: number,
): void => {
  const { growth, growthStop, leafRate, spreadRate, openedRate, rateLimit, lightNeed, nitrogenUse, dark } = traits;
  const { darkDays, q10, optimum, width, halfLight, holdLight, sealTemperature, growthBase, dormantSpan, dormantShare } =
    traits.reserve;
  const { sealLossWarm, sealLossCold } = traits.reserve;
  const { halfLeaf, leafSpread, halfCrowns, crownsSpread } = traits.starvation;
  const warmth = Math.log(q10) / 10;
  const clockWarmth = Math.log(dark.q10) / 10;
  const gainScale = (Math.exp(warmth * (optimum - 20)) * (holdLight + halfLight)) / (holdLight * darkDays);
  const fullLeaf = 1 + Math.exp((halfLeaf - 1) / leafSpread);
  const fullCrowns = 1 + Math.exp((halfCrowns - 1) / crownsSpread);
  const ground =
    1 -
    (1 - traits.compactionLeast) *
      clamp((stands[at + DENSITY]! - traits.compactionFree) / (traits.compactionStop - traits.compactionFree));
  let cover = stands[at + COVER]!;
  let crowns = stands[at + CROWNS]!;
  let reserve = stands[at + RESERVE]!;
  let opened = stands[at + OPENED]!;
  let nitrogen = stands[at + NITROGEN]!;
  let clock = stands[at + CLOCK]!;
  let fedLeaf = stands[at + FED_LEAF]!;
  let fedCrowns = stands[at + FED_CROWNS]!;
  if (fedLeaf === 0) fedLeaf = fullLeaf / (1 + Math.exp((halfLeaf - reserve) / leafSpread));
  if (fedCrowns === 0) fedCrowns = fullCrowns / (1 + Math.exp((halfCrowns - reserve) / crownsSpread));
  const plain = stands[at + SOD] === 0 && !isSown(stands, at);

  for (let day = 0; day < count; day++) {
    const now = (from + day) * driverStride;
    const temperature = drivers[now + driverLayout.temperature]!;
    const light = Math.max(0, drivers[now + driverLayout.light]!);
    let change = drivers[now + driverLayout.reserveChange]!;
    if (change !== change) {
      const offset = (temperature - optimum) / width;
      const gain = ((gainScale * light) / (light + halfLight)) * Math.exp(-0.5 * offset * offset);
      const seal = clamp(drivers[now + driverLayout.seal]!);
      const sealed = 1 + seal * (temperature > sealTemperature ? sealLossWarm : sealLossCold);
      const dormancy = dormantShare + (1 - dormantShare) * clamp(1 + (temperature - growthBase) / dormantSpan);
      change = gain - (Math.exp(warmth * (temperature - 20)) * sealed * dormancy) / darkDays;
    }
    reserve = clamp(reserve + change);
    let kept = 1;
    let leafBound = 1;
    let crownsBound = 1;
    if (reserve < 1) {
      leafBound = fullLeaf / (1 + Math.exp((halfLeaf - reserve) / leafSpread));
      crownsBound = fullCrowns / (1 + Math.exp((halfCrowns - reserve) / crownsSpread));
      if (fedCrowns > crownsBound) {
        crowns *= crownsBound / fedCrowns;
        stands[at + CROWNS_LOST]! -= Math.log(crownsBound / fedCrowns);
        fedCrowns = crownsBound;
      }
      if (fedLeaf > leafBound) {
        kept = leafBound / fedLeaf;
        // Dead crowns carry no leaf; only a stand that began with more leaf than its reserve feeds comes to this.
        if (cover * kept > crowns) kept = crowns / cover;
        cover *= kept;
        stands[at + LEAF_LOST]! -= Math.log(kept);
        fedLeaf = leafBound;
      }
    }
    if (drivers[now + driverLayout.covered]! > 0) {
      clock += clamp(1 - light / dark.holdLight) * Math.exp(clockWarmth * (temperature - dark.reference));
    } else if (clock > 0) clock = Math.max(0, clock - dark.unwind);

    const potential = growthPotential(temperature, growth);
    if (potential > growthStop) {
      const best = potential * Math.min(1, light / lightNeed);
      const leaf = Math.min(rateLimit, leafRate * best);
      const fed = traits.nitrogenUnfed + (1 - traits.nitrogenUnfed) * Math.min(1, nitrogen / traits.nitrogenFull);
      const spread = Math.min(rateLimit, spreadRate * best * fed * ground);
      if (fedLeaf === 1 && fedCrowns === 1) {
        if (cover < crowns) cover += leaf * (crowns - cover);
        if (crowns < 1) crowns += spread * crowns * (1 - crowns);
      } else {
        let beside = cover / fedLeaf;
        let besideCrowns = crowns / fedCrowns;
        const fedCeiling = fedCrowns * leafBound;
        if (beside < besideCrowns) beside += leaf * (besideCrowns - beside);
        if (fedLeaf < fedCeiling) fedLeaf += leaf * (fedCeiling - fedLeaf);
        besideCrowns *= Math.max(1, (1 + spread * (1 - crowns)) / (1 + spread * (1 - fedCrowns)));
        if (fedCrowns < crownsBound) fedCrowns = Math.min(crownsBound, fedCrowns + spread * fedCrowns * (1 - fedCrowns));
        crowns = Math.min(1, besideCrowns * fedCrowns);
        cover = Math.min(crowns, beside * fedLeaf);
      }
      if (opened > 0) opened *= Math.exp(-Math.min(rateLimit, openedRate * best));
      nitrogen = Math.max(0, nitrogen - nitrogenUse * potential);
    }
    let seedlings = 0;
    if (!plain) {
      stands[at + COVER] = cover;
      stands[at + CROWNS] = crowns;
      stands[at + FED_LEAF] = fedLeaf;
      stands[at + FED_CROWNS] = fedCrowns;
      if (stands[at + SOD]! > 0) ageSod(stands, at, drivers, now, traits);
      growSeedlings(stands, at, drivers, now, kept, traits);
      cover = stands[at + COVER]!;
      crowns = stands[at + CROWNS]!;
      fedLeaf = stands[at + FED_LEAF]!;
      fedCrowns = stands[at + FED_CROWNS]!;
      seedlings = seedlingsAt(stands, at);
    }
    if (track !== null) {
      track.cover[trackAt + day] = Math.min(1, cover + seedlings) * (1 - opened);
      track.crowns[trackAt + day] = crowns;
      track.reserve[trackAt + day] = reserve;
    }
  }
  stands[at + COVER] = cover;
  stands[at + CROWNS] = crowns;
  stands[at + RESERVE] = reserve;
  stands[at + FED_LEAF] = fedLeaf;
  stands[at + FED_CROWNS] = fedCrowns;
  stands[at + OPENED] = opened;
  stands[at + NITROGEN] = nitrogen;
  stands[at + CLOCK] = clock;
};

const clamp = (share: number): number => (share < 0 ? 0 : share > 1 ? 1 : share);

const isSown = (stands: Float64Array, at: number): boolean => {
  for (let slot = 0; slot < SLOTS; slot++) if (stands[at + SEEDLINGS + slot * SLOT + standLayout.seedSown]! > 0) return true;
  return false;
};

/** One day of sod: older, rooted further where it is watered, and dying back where it is not and has not rooted. */
const ageSod = (stands: Float64Array, at: number, drivers: Float64Array, now: number, traits: TurfTraits): void => {
  const age = stands[at + standLayout.sodAge]! + 1;
  const thickness = stands[at + standLayout.sodThickness]!;
  stands[at + standLayout.sodAge] = age;
  if (drivers[now + driverLayout.watered]! > 0) {
    stands[at + standLayout.sodThermalTime]! += Math.max(0, drivers[now + driverLayout.soilTemperature]! - traits.sod.rootBase);
    return;
  }
  const rooted = rootedShare(stands[at + standLayout.sodThermalTime]!, thickness, traits.sod);
  const warmth = Math.min(2, Math.max(0, drivers[now + driverLayout.temperature]! / 25));
  const lost = Math.min(0.95, traits.sodDryLoss * warmth * (1 - rooted));
  stands[at + COVER]! *= 1 - lost;
  stands[at + CROWNS]! *= 1 - lost / 2;
  stands[at + LEAF_LOST + WETNESS]! -= Math.log(1 - lost);
  stands[at + CROWNS_LOST + WETNESS]! -= Math.log(1 - lost / 2);
};

/** One day of every sowing: up out of the ground, over the free ground, and into the stand when it is old enough. */
const growSeedlings = (
  stands: Float64Array,
  at: number,
  drivers: Float64Array,
  now: number,
  kept: number,
  traits: TurfTraits,
): void => {
  const temperature = drivers[now + driverLayout.temperature]!;
  const light = drivers[now + driverLayout.light]!;
  for (let slot = 0; slot < SLOTS; slot++) {
    const from = at + SEEDLINGS + slot * SLOT;
    const sown = stands[from + standLayout.seedSown]!;
    if (sown <= 0) continue;
    const seed = traits.seeds[stands[from + standLayout.seedGrass]!]!;
    const before = stands[from + standLayout.seedThermalTime]!;
    const thermalTime = before + Math.max(0, drivers[now + driverLayout.soilTemperature]! - seed.base);
    const up = emergedShare(thermalTime, seed.emergence, seed.shape);
    const newly = up - emergedShare(before, seed.emergence, seed.shape);
    // Seedlings have no store to live on, so they lose what the leaf loses and as much again.
    let cover = stands[from + standLayout.seedCover]! * kept * kept;
    const others = seedlingsAt(stands, at) - stands[from + standLayout.seedCover]!;
    const free = Math.max(0, 1 - stands[at + COVER]! - others);
    const best = lightFactor(light, seed.lightNeed);
    const rate = recoveryRate(seed.fill, growthPotential(temperature, seed.growth), best, traits.growthStop, traits.rateLimit);
    cover += rate * cover * Math.max(0, free - cover);
    cover = Math.min(free, cover + newly * sown * seed.firstCover * free);
    const age = stands[from + standLayout.seedAge]! + (up >= 0.5 ? 1 : 0);
    stands[from + standLayout.seedThermalTime] = thermalTime;
    stands[from + standLayout.seedCover] = cover;
    stands[from + standLayout.seedAge] = age;
    if (age >= seed.matureAge) {
      stands[at + CROWNS] = Math.min(1, stands[at + CROWNS]! + cover);
      stands[at + COVER] = Math.min(stands[at + CROWNS]!, stands[at + COVER]! + cover);
      stands[at + FED_CROWNS] = Math.max(stands[at + FED_CROWNS]!, stands[at + CROWNS]!);
      stands[at + FED_LEAF] = Math.max(stands[at + FED_LEAF]!, stands[at + COVER]!);
      stands.fill(0, from, from + SLOT);
    }
  }
};

/** Anchorage of the sod of a flat stand, 0–1; 1 where there is none. */
export const anchorageAt = (stands: Float64Array, at: number, traits: TurfTraits): number =>
  stands[at + SOD]! > 0
    ? anchorage(
        stands[at + standLayout.sodAge]!,
        stands[at + standLayout.sodThermalTime]!,
        stands[at + standLayout.sodThickness]!,
        traits.sod,
      )
    : 1;
