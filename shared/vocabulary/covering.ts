import { z } from 'zod';
import { standings } from '#shared/sources/standing.ts';
import { Id, Name, Share, within } from '#shared/vocabulary/primitives.ts';

/** How a covering carries a wheel or a leg to the ground. */
export const spreads = ['none', 'plate', 'beam', 'rigid-pad'] as const;

/** A class of floor, sheet or deck that can lie on turf. A venue edits its own copies. */
export const Covering = z
  .strictObject({
    id: Id,
    name: Name,
    /** m */
    thickness: within(0, 3, 'm'),
    /** Thermal conductivity, W/(m K). */
    conductivity: within(0.001, 500, 'W/(m K)'),
    /** Volumetric heat capacity, MJ/(m³ K). */
    heatCapacity: within(0, 5, 'MJ/(m³ K)'),
    /** Share of solar radiation passed, clean and unshaded. */
    solarTransmission: Share,
    /** Share of photosynthetic light passed, clean and unshaded. */
    lightTransmission: Share,
    /** Share of solar radiation absorbed at the top. */
    absorptance: Share,
    /** Resistance of the air between covering and canopy, m² K/W. */
    gapResistance: within(0, 5, 'm² K/W'),
    /** Heat exchange of that air with outside air, W/(m² K). */
    ventilation: within(0, 200, 'W/(m² K)'),
    /** How far gas exchange is stopped: 0 open, 1 sealed. */
    seal: Share,
    /** Share of rain that reaches the turf. */
    rainThrough: Share,
    /** Share of foot wear that reaches the turf. */
    wearThrough: Share,
    spread: z.enum(spreads),
    /** Elastic modulus of the panel, MPa; short-term. Ribbed panels carry an equivalent for their thickness. */
    modulus: within(0, 250000, 'MPa'),
    /** m; the shorter side of one panel. 0 for sheets and meshes. */
    panelWidth: within(0, 10, 'm'),
    /** Largest wheel load the maker's class allows, kN; 0 means feet only. The venue enters its supplier's sheet. */
    wheelRating: within(0, 500, 'kN'),
    /** m² laid by one person in one hour. */
    layingRate: within(0.1, 1000, 'm²/h'),
    /** m² carried by one truck. */
    perTruck: within(1, 10000, 'm²'),
    /** Price of hire per m² and event in the venue's currency; null where no quotation is entered. */
    hirePrice: within(0, 1000).nullable(),
    /** d it may lie with little lasting loss, as the trade tells it, in cool and in hot weather. Left out where nobody says. */
    usualDays: z
      .strictObject({ cool: within(0, 60, 'd'), hot: within(0, 60, 'd') })
      .readonly()
      .optional(),
    /** Rolled out for the hours of traffic and taken up again. Left out: it is not. */
    rolledOut: z.boolean().optional(),
    standing: z.enum(standings),
  })
  .refine((covering) => covering.solarTransmission + covering.absorptance <= 1 + 1e-9, {
    path: ['absorptance'],
    message: 'transmission and absorptance together must not exceed 1',
  })
  .readonly();
export type Covering = z.infer<typeof Covering>;
