import { z } from 'zod';
import { Share, within } from '#shared/vocabulary/primitives.ts';

/** The grasses a stand can be made of. */
export const grasses = [
  'kentucky-bluegrass',
  'perennial-ryegrass',
  'tall-fescue',
  'bermudagrass-common',
  'bermudagrass-hybrid',
  'zoysiagrass',
  'seashore-paspalum',
] as const;
export type Grass = (typeof grasses)[number];

/** Cool-season (C3) or warm-season (C4). */
export type Season = 'cool' | 'warm';
export const seasonOf = (grass: Grass): Season =>
  grass === 'kentucky-bluegrass' || grass === 'perennial-ryegrass' || grass === 'tall-fescue' ? 'cool' : 'warm';

/** What the stand is made of: shares of green cover that add to one. The first is the base grass. */
export const Sward = z
  .array(z.strictObject({ grass: z.enum(grasses), share: Share }).readonly())
  .min(1, 'must name at least one grass')
  .max(4)
  .refine((parts) => Math.abs(parts.reduce((sum, part) => sum + part.share, 0) - 1) < 1e-6, 'the shares must add to 1')
  .readonly();
export type Sward = z.infer<typeof Sward>;

/** How the ground is built; decides which recoveries are offered. */
export const constructions = ['sand-over-gravel', 'native-soil', 'stitched-hybrid', 'carpet-hybrid'] as const;
export type Construction = (typeof constructions)[number];

/** The soil the roots stand in. */
export const soils = ['sand', 'loamy-sand', 'sandy-loam', 'silt-loam', 'clay-loam'] as const;
export type Soil = (typeof soils)[number];

export const RootZone = z
  .strictObject({
    construction: z.enum(constructions),
    soil: z.enum(soils),
    /** Share of sand by mass, 0–1. */
    sandShare: Share,
    /** m */
    depth: within(0.05, 1.5, 'm'),
    /** Gravel blanket under the root zone, m; 0 where there is none. */
    gravelDepth: within(0, 0.5, 'm'),
    /** m between lateral drains; 0 where there are none. */
    drainSpacing: within(0, 60, 'm'),
    /** Saturated conductivity, mm/h. */
    conductivity: within(0.1, 2000, 'mm/h'),
  })
  .readonly();
export type RootZone = z.infer<typeof RootZone>;

/** What is standing on the field before anything happens. */
export const TurfState = z
  .strictObject({
    /** Live green cover, what a quadrat photograph measures, 0–1. */
    cover: Share,
    /** Living crowns relative to a full stand, 0–1. */
    crowns: Share,
    /** Stored carbohydrate relative to full, 0–1. */
    reserve: Share,
  })
  .readonly();
export type TurfState = z.infer<typeof TurfState>;
