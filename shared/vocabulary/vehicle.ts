import { z } from 'zod';
import { Id, Name, within } from '#shared/vocabulary/primitives.ts';

/** A mat under the pad of an outrigger: a stiff square; its own bending counts where its modulus is known. */
export const Mat = z
  .strictObject({
    /** m */
    side: within(0.2, 6, 'm'),
    thickness: within(0.01, 1, 'm'),
    /** MPa; null counts as rigid. */
    modulus: within(1, 250000, 'MPa').nullable(),
  })
  .readonly();
export type Mat = z.infer<typeof Mat>;

/** One axle (or one row of outriggers): its load is shared evenly by its wheels. */
export const Axle = z
  .strictObject({
    /** kN on the whole axle. */
    load: within(0.1, 1500, 'kN'),
    wheels: z.int().min(1).max(16),
    /** Mean pressure under one wheel or pad, kPa. */
    contactPressure: within(5, 5000, 'kPa'),
    /** What the pads of outriggers stand on. Left out: on the covering itself. */
    mat: Mat.optional(),
  })
  .readonly();

/** A class of machine that crosses or stands on the field. */
export const Vehicle = z
  .strictObject({
    id: Id,
    name: Name,
    /** kN, all axles and load together. */
    weight: within(0.1, 5000, 'kN'),
    axles: z.array(Axle).min(1, 'must have at least one axle').max(12).readonly(),
    /** m between the outer wheels of one axle. */
    track: within(0.3, 6, 'm'),
    /** Whether it turns by skidding (tracked, skid-steer). */
    skids: z.boolean(),
    /** h it stands where it is set up. Left out: it rolls. */
    standing: within(0.1, 2000, 'h').optional(),
  })
  .refine(
    (vehicle) => Math.abs(vehicle.axles.reduce((sum, axle) => sum + axle.load, 0) - vehicle.weight) <= 0.02 * vehicle.weight,
    {
      path: ['weight'],
      message: 'the axle loads must add to the weight (within 2 %)',
    },
  )
  .readonly();
export type Vehicle = z.infer<typeof Vehicle>;
