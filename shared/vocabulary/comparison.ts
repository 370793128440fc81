import { z } from 'zod';
import { Booking } from '#shared/vocabulary/booking.ts';
import { Forecast } from '#shared/vocabulary/forecast.ts';
import { Id, Name } from '#shared/vocabulary/primitives.ts';
import { FarmPlan } from '#shared/vocabulary/sod.ts';

/** One way to do an event: another floor, date or place of the stage. It need not be stored. */
export const Way = z.strictObject({ name: Name, fixtureId: Id, booking: Booking }).readonly();
export type Way = z.infer<typeof Way>;

/** What one way comes to. */
export const WayOutcome = z
  .strictObject({
    name: z.string(),
    /** null where the way cannot be reckoned, for the reason given. */
    forecast: Forecast.nullable(),
    /** The recovery after it as the planner would have it; null where none was asked for or none exists, for the reason given. */
    recovery: FarmPlan.unwrap().shape.plan,
    reason: z.string().nullable(),
  })
  .readonly();
export type WayOutcome = z.infer<typeof WayOutcome>;
