import type { Grass } from '#shared/vocabulary/turf.ts';
import { grasses } from '#shared/vocabulary/turf.ts';
import { standLayout } from '#engine/recovery/stand-layout.ts';
import type { SeedCohort, Stand } from '#engine/recovery/stand.ts';
import type { JobTraits, TurfTraits } from '#engine/recovery/turf-traits.ts';

/** Work that changes the state of a stand on the day it is done. */
export type Job =
  /** nitrogen, g/m² */
  | { readonly kind: 'feed'; readonly rate: number }
  /** share of the surface that the tines take out (inside diameter) */
  | { readonly kind: 'hollow-core'; readonly removed: number }
  /** share of the surface that solid tines pierce */
  | { readonly kind: 'solid-tine'; readonly pierced: number }
  | { readonly kind: 'decompact' }
  /** m of sand */
  | { readonly kind: 'topdress'; readonly depth: number }
  | { readonly kind: 'roll' }
  /** share of the rut depth taken out by lifting or filling, 0–1 */
  | { readonly kind: 'level'; readonly share: number }
  /** pure live seed, g/m² */
  | { readonly kind: 'seed'; readonly grass: Grass; readonly rate: number }
  | { readonly kind: 'strip' }
  /** m of soil on the sod */
  | { readonly kind: 'lay-sod'; readonly thickness: number }
  /** share of the standing leaf cut off, 0–1 */
  | { readonly kind: 'mow'; readonly removed: number };

const outside = (value: number, low: number, high: number): boolean => !(value >= low && value <= high + 1e-12);

/** Why a job may not be done on this stand, with the field and the reason; null when it may. */
export const refuseJob = (stand: Stand, job: Job, traits: TurfTraits): string | null => {
  switch (job.kind) {
    case 'feed':
      if (!(job.rate > 0)) return `rate: nitrogen must be above 0 g/m², not ${job.rate}`;
      return job.rate > traits.job.nitrogenCap + 1e-9
        ? `rate: ${job.rate.toFixed(2)} g/m² of nitrogen is above the cap of ${traits.job.nitrogenCap.toFixed(2)} g/m² in one application`
        : null;
    case 'hollow-core':
      return outside(job.removed, 0, 0.6) ? `removed: coring takes 0 to 60 % of the surface, not ${job.removed * 100} %` : null;
    case 'solid-tine':
      return outside(job.pierced, 0, 0.6)
        ? `pierced: solid tines pierce 0 to 60 % of the surface, not ${job.pierced * 100} %`
        : null;
    case 'topdress':
      if (!(job.depth > 0)) return `depth: topdressing must be above 0 m, not ${job.depth}`;
      return job.depth > traits.job.topdressMost + 1e-9
        ? `depth: ${(job.depth * 1000).toFixed(1)} mm of sand is above the limit of ${(traits.job.topdressMost * 1000).toFixed(1)} mm in one application`
        : null;
    case 'level':
      return outside(job.share, 0, 1) ? `share: must lie between 0 and 1, not ${job.share}` : null;
    case 'seed':
      return outside(job.rate, 1e-9, 200) ? `rate: seed must be above 0 and up to 200 g/m², not ${job.rate}` : null;
    case 'lay-sod':
      if (outside(job.thickness, 0.005, 0.1)) return `thickness: sod is 5 to 100 mm thick, not ${job.thickness * 1000} mm`;
      return stand.crowns > 0 || stand.cover > 0 ? 'lay-sod: the ground is not stripped' : null;
    case 'mow':
      return outside(job.removed, 0, 0.99) ? `removed: must lie between 0 and 0.99, not ${job.removed}` : null;
    default:
      return null;
  }
};

/** Two transient openings of the surface together. */
const openedBy = (stand: Stand, share: number): number => 1 - (1 - stand.opened) * (1 - Math.min(0.99, Math.max(0, share)));

/** Density after a share of its excess over loose ground is taken away. */
const loosened = (stand: Stand, share: number, job: JobTraits): number =>
  stand.bulkDensity - Math.min(1, share) * Math.max(0, stand.bulkDensity - job.looseDensity);

const sown = (stand: Stand, grass: Grass, share: number): readonly SeedCohort[] => {
  const cohort: SeedCohort = { grass, sown: share, thermalTime: 0, cover: 0, age: 0 };
  if (stand.seedlings.length < standLayout.seedSlots) return [...stand.seedlings, cohort];
  const youngest = stand.seedlings.toSorted((a, b) => a.thermalTime - b.thermalTime)[0]!;
  return stand.seedlings.map((one) => (one === youngest ? { ...one, sown: one.sown + share } : one));
};

/** Cut beyond the one-third rule: leaf is scalped and the store is drawn on. */
const mown = (stand: Stand, removed: number, job: JobTraits): Stand => {
  const beyond = Math.max(0, removed - job.mowRemoved);
  if (beyond === 0) return stand;
  return {
    ...stand,
    cover: stand.cover * (1 - beyond),
    reserve: stand.reserve * Math.max(0, 1 - job.mowReserve * beyond * 10),
    leafLost: { ...stand.leafLost, wear: stand.leafLost.wear - Math.log(1 - beyond) },
  };
};

/**
 * The stand after a job.
 *
 * Coring and sand open or hide the surface for some days without harming the turf; hollow coring, solid tines and decompaction take a
 * share of the excess density; topdressing fills ruts by its own depth; rolling flattens ruts and firms; nitrogen is put on hand; seed
 * becomes a sowing; stripping takes turf, sod and seedlings away; sod brings a young stand.
 * @throws RangeError with the reason when the job is refused
 */
export const applyJob = (stand: Stand, job: Job, traits: TurfTraits): Stand => {
  const refusal = refuseJob(stand, job, traits);
  if (refusal !== null) throw new RangeError(refusal);
  const effects = traits.job;
  switch (job.kind) {
    case 'feed':
      return { ...stand, nitrogen: stand.nitrogen + job.rate };
    case 'hollow-core':
      return {
        ...stand,
        opened: openedBy(stand, job.removed * effects.disturbance),
        bulkDensity: loosened(stand, effects.loosenHollow * (job.removed / 0.1), effects),
      };
    case 'solid-tine':
      return {
        ...stand,
        opened: openedBy(stand, job.pierced * effects.solidOpening),
        bulkDensity: loosened(stand, effects.loosenSolid, effects),
      };
    case 'decompact':
      return { ...stand, bulkDensity: loosened(stand, effects.loosenDeep, effects) };
    case 'topdress':
      return {
        ...stand,
        opened: openedBy(stand, 1 - Math.exp(-job.depth / effects.hideDepth)),
        ruts: Math.max(0, stand.ruts - job.depth),
      };
    case 'roll':
      return { ...stand, ruts: stand.ruts * effects.rollRuts, bulkDensity: stand.bulkDensity + effects.rollDensity };
    case 'level':
      return { ...stand, ruts: stand.ruts * (1 - job.share) };
    case 'seed':
      return { ...stand, seedlings: sown(stand, job.grass, job.rate / traits.seeds[grasses.indexOf(job.grass)]!.fullRate) };
    case 'strip':
      return {
        ...stand,
        cover: 0,
        crowns: 0,
        reserve: 0,
        fedLeaf: 0,
        fedCrowns: 0,
        opened: 0,
        ruts: 0,
        darkClock: 0,
        seedlings: [],
        sod: null,
      };
    case 'lay-sod':
      return {
        ...stand,
        cover: effects.sodCover,
        crowns: effects.sodCover,
        reserve: effects.sodReserve,
        fedLeaf: 0,
        fedCrowns: 0,
        opened: 0,
        ruts: 0,
        sod: { age: 0, thickness: job.thickness, thermalTime: 0 },
      };
    case 'mow':
      return mown(stand, job.removed, effects);
  }
};
