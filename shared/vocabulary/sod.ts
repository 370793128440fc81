import { z } from 'zod';
import { Range } from '#shared/vocabulary/forecast.ts';
import { RecoveryPlan } from '#shared/vocabulary/plan.ts';
import { Id, LocalTime, Share } from '#shared/vocabulary/primitives.ts';

/** An amount of sod ordered firmly and one held in reserve, and what both come to over the members of a forecast. Areas in m². */
export const ReserveCost = z
  .strictObject({
    ordered: z.number().min(0),
    reserved: z.number().min(0),
    /** Mean over the members, in the smallest unit of the currency. */
    expectedCost: z.number().min(0),
    /** Chance that both together are less than the need. */
    chanceShort: Share,
  })
  .readonly();
export type ReserveCost = z.infer<typeof ReserveCost>;

export const reservePrices = ['sod', 'reserve', 'rush order'] as const;

/** How much of one cut to order from one farm, and to hold in reserve. */
export const SodReserve = z
  .strictObject({
    farm: Id,
    cut: z.enum(['thin', 'thick']),
    /** Prices that are not entered. Without that of the sod and of a rush order nothing can be weighed. */
    missing: z.array(z.enum(reservePrices)).readonly(),
    best: ReserveCost.nullable(),
    /** The best reserve for each amount ordered, rising. */
    curve: z.array(ReserveCost).readonly(),
  })
  .readonly();
export type SodReserve = z.infer<typeof SodReserve>;

/** What the recovery becomes with the sod of one farm alone. */
export const FarmPlan = z
  .strictObject({
    /** null: without sod. */
    farm: Id.nullable(),
    /** null: there is none, for the reason given. */
    plan: z
      .strictObject({
        total: RecoveryPlan.unwrap().shape.cost.unwrap().shape.total,
        unpriced: z.array(z.string()).readonly(),
        gap: z.number().min(0),
        /** m² with waste, and truckloads. */
        ordered: z.number().min(0),
        trucks: z.int().min(0),
        /** The first release; null where nothing is ordered. */
        releaseBy: LocalTime.nullable(),
        /** h between now and that release. */
        slack: z.number().nullable(),
        /** Chance of the zone that is least likely to be ready. */
        leastChance: Share,
      })
      .readonly()
      .nullable(),
    reason: z.string().nullable(),
  })
  .readonly();
export type FarmPlan = z.infer<typeof FarmPlan>;

/** The sod of a kept plan laid open: how much may be needed, from whom, and how much of it to hold in reserve. */
export const SodDecision = z
  .strictObject({
    planId: Id,
    /** m² with waste that the members of the forecast would order. */
    need: Range,
    farms: z.array(FarmPlan).readonly(),
    reserves: z.array(SodReserve).readonly(),
  })
  .readonly();
export type SodDecision = z.infer<typeof SodDecision>;
