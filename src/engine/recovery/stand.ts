import type { Grass, TurfState } from '#shared/vocabulary/turf.ts';
import { causes, eachCause, noCauses, type ByCause } from '#engine/injury/causes.ts';
import { seedIndex, standLayout, standStride, type SeedGrassIndex } from '#engine/recovery/stand-layout.ts';

/** Seed of one sowing. */
export interface SeedCohort {
  readonly grass: Grass;
  /** pure live seed as a share of the full rate of its grass */
  readonly sown: number;
  /** °C d since sowing */
  readonly thermalTime: number;
  /** ground covered by its seedlings, 0–1 */
  readonly cover: number;
  /** d since half of it emerged; 0 before */
  readonly age: number;
}

/** Sod laid here and not yet forgotten. */
export interface Sod {
  /** d since laying */
  readonly age: number;
  /** m of soil */
  readonly thickness: number;
  /** °C d at 50 mm in watered ground since laying */
  readonly thermalTime: number;
}

/** The state of one class of ground. Never changed in place. */
export interface Stand {
  /** live leaf of established plants, 0–1, never above `crowns` */
  readonly cover: number;
  /** living crowns, rhizomes, stolons against a full stand, 0–1 */
  readonly crowns: number;
  /** stored carbohydrate against full, 0–1 */
  readonly reserve: number;
  /**
   * shares of leaf and crowns that hunger has left, 0–1: fall with the reserve, come back only as leaf and crowns grow; 0 where it is not
   * known yet and is taken from the reserve
   */
  readonly fedLeaf: number;
  readonly fedCrowns: number;
  /** Mg/m³ of the top 75 mm */
  readonly bulkDensity: number;
  /** m */
  readonly ruts: number;
  /** surface opened or sanded over by jobs and not yet closed, 0–1: hides cover, harms nothing */
  readonly opened: number;
  /** g/m² on hand */
  readonly nitrogen: number;
  /** dark-equivalent days */
  readonly darkClock: number;
  /** at most three; a fourth sowing joins the youngest */
  readonly seedlings: readonly SeedCohort[];
  readonly sod: Sod | null;
  /** −ln of the leaf, and of the crowns, that each cause left since the beginning */
  readonly leafLost: ByCause;
  readonly crownsLost: ByCause;
}

/** A stand as the venue describes it. A cover above the crowns counts as the crowns. */
export const standOf = (state: TurfState, bulkDensity: number, nitrogen: number): Stand => ({
  cover: Math.min(state.cover, state.crowns),
  crowns: state.crowns,
  reserve: state.reserve,
  fedLeaf: 0,
  fedCrowns: 0,
  bulkDensity,
  ruts: 0,
  opened: 0,
  nitrogen,
  darkClock: 0,
  seedlings: [],
  sod: null,
  leafLost: noCauses,
  crownsLost: noCauses,
});

/** Ground covered by seedlings of all sowings, 0–1. */
export const seedlingCover = (stand: Stand): number => stand.seedlings.reduce((sum, cohort) => sum + cohort.cover, 0);

/** Ground covered by seedlings that do not take play yet, 0–1. @param playAge d after emergence by grass */
export const youngSeedlingCover = (stand: Stand, playAge: (grass: Grass) => number): number =>
  stand.seedlings.reduce((sum, cohort) => sum + (cohort.age < playAge(cohort.grass) ? cohort.cover : 0), 0);

/** What a quadrat photograph measures: leaf and seedlings, less what is opened or sanded over. */
export const greenCover = (stand: Stand): number => Math.min(1, stand.cover + seedlingCover(stand)) * (1 - stand.opened);

const layout = standLayout;

/** Writes a stand into the flat form at an offset (see `standLayout`). */
export const writeStand = (stands: Float64Array, at: number, stand: Stand): void => {
  stands.fill(0, at, at + standStride);
  stands[at + layout.cover] = stand.cover;
  stands[at + layout.crowns] = stand.crowns;
  stands[at + layout.reserve] = stand.reserve;
  stands[at + layout.fedLeaf] = stand.fedLeaf;
  stands[at + layout.fedCrowns] = stand.fedCrowns;
  stands[at + layout.bulkDensity] = stand.bulkDensity;
  stands[at + layout.ruts] = stand.ruts;
  stands[at + layout.opened] = stand.opened;
  stands[at + layout.nitrogen] = stand.nitrogen;
  stands[at + layout.darkClock] = stand.darkClock;
  if (stand.sod) {
    stands[at + layout.sodLaid] = 1;
    stands[at + layout.sodAge] = stand.sod.age;
    stands[at + layout.sodThickness] = stand.sod.thickness;
    stands[at + layout.sodThermalTime] = stand.sod.thermalTime;
  }
  if (stand.seedlings.length > layout.seedSlots)
    throw new RangeError(`seedlings: at most ${layout.seedSlots} sowings, not ${stand.seedlings.length}`);
  stand.seedlings.forEach((cohort, slot) => {
    const from = at + layout.seedlings + slot * layout.seedStride;
    stands[from + layout.seedGrass] = seedIndex(cohort.grass);
    stands[from + layout.seedSown] = cohort.sown;
    stands[from + layout.seedThermalTime] = cohort.thermalTime;
    stands[from + layout.seedCover] = cohort.cover;
    stands[from + layout.seedAge] = cohort.age;
  });
  causes.forEach((cause, index) => {
    stands[at + layout.leafLost + index] = stand.leafLost[cause];
    stands[at + layout.crownsLost + index] = stand.crownsLost[cause];
  });
};

const readCauses = (stands: Float64Array, from: number): ByCause => eachCause((_, place) => stands[from + place]!);

/** Reads a stand back from the flat form. */
export const readStand = (stands: Float64Array, at: number): Stand => {
  const seedlings: SeedCohort[] = [];
  for (let slot = 0; slot < layout.seedSlots; slot++) {
    const from = at + layout.seedlings + slot * layout.seedStride;
    if (stands[from + layout.seedSown]! <= 0) continue;
    seedlings.push({
      grass: layout.grasses[stands[from + layout.seedGrass]! as SeedGrassIndex]!,
      sown: stands[from + layout.seedSown]!,
      thermalTime: stands[from + layout.seedThermalTime]!,
      cover: stands[from + layout.seedCover]!,
      age: stands[from + layout.seedAge]!,
    });
  }
  return {
    cover: stands[at + layout.cover]!,
    crowns: stands[at + layout.crowns]!,
    reserve: stands[at + layout.reserve]!,
    fedLeaf: stands[at + layout.fedLeaf]!,
    fedCrowns: stands[at + layout.fedCrowns]!,
    bulkDensity: stands[at + layout.bulkDensity]!,
    ruts: stands[at + layout.ruts]!,
    opened: stands[at + layout.opened]!,
    nitrogen: stands[at + layout.nitrogen]!,
    darkClock: stands[at + layout.darkClock]!,
    seedlings,
    sod:
      stands[at + layout.sodLaid]! > 0
        ? {
            age: stands[at + layout.sodAge]!,
            thickness: stands[at + layout.sodThickness]!,
            thermalTime: stands[at + layout.sodThermalTime]!,
          }
        : null,
    leafLost: readCauses(stands, at + layout.leafLost),
    crownsLost: readCauses(stands, at + layout.crownsLost),
  };
};
