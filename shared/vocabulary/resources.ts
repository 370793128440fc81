import { z } from 'zod';
import { Point } from '#shared/vocabulary/geometry.ts';
import { ClockTime, Id, LocalDate, Name, Share, within } from '#shared/vocabulary/primitives.ts';
import { grasses } from '#shared/vocabulary/turf.ts';

/** Money in the smallest unit of the venue's currency (cents). */
export const Money = z.int().min(0, 'must not be negative').max(1e12);
export type Money = z.infer<typeof Money>;

/** Machines the recovery jobs ask for. */
export const machineKinds = [
  'aerator',
  'topdresser',
  'seeder',
  'sprayer',
  'mower',
  'stripper',
  'sod-installer',
  'roller',
  'grader',
  'light-rig',
  'growth-cover',
  'loader',
] as const;
export type MachineKind = (typeof machineKinds)[number];

/** What only some of the crew may do: by licence, by training or by the rules of the competition. */
export const skillKinds = ['spraying', 'ground-machines', 'sod-machines', 'electrical', 'surface-testing'] as const;
export type SkillKind = (typeof skillKinds)[number];

export const Workforce = z
  .strictObject({
    /** People on a day shift (06:00–18:00) and on a night shift (18:00–06:00). */
    dayCrew: z.int().min(0).max(200),
    nightCrew: z.int().min(0).max(200),
    /** Further people who can be called in for a shift at the overtime price. */
    overtimeCrew: z.int().min(0).max(200),
    /** Price of one person for one hour, and of the same hour as overtime; null where no price is entered. */
    hourPrice: Money.nullable(),
    overtimePrice: Money.nullable(),
    /** How many of each machine the venue owns or has on call. */
    machines: z.partialRecord(z.enum(machineKinds), z.int().min(0).max(50)).readonly(),
    /** People of a shift who may do what asks for a skill; a skill left out: everybody may. */
    skills: z.partialRecord(z.enum(skillKinds), z.int().min(0).max(200)).readonly().optional(),
    /** kW that the field's supply gives to light rigs; absent: as much as they draw. */
    lightPower: within(0, 20000, 'kW').optional(),
    /** No noisy work or trucks from this hour to that hour; crosses midnight when `from` is later than `until`. */
    curfew: z.strictObject({ from: ClockTime, until: ClockTime }).readonly().nullable(),
  })
  .readonly();
export type Workforce = z.infer<typeof Workforce>;

/** What a farm can deliver and on which terms. */
export const Farm = z
  .strictObject({
    id: Id,
    name: Name,
    grass: z.enum(grasses),
    /** Sand share of the soil the sod grows in, 0–1. */
    sandShare: within(0, 1),
    /** Soil thickness of the thin and the thick cut, m; null where the farm does not cut it. */
    thinCut: within(0.005, 0.1, 'm').nullable(),
    thickCut: within(0.005, 0.1, 'm').nullable(),
    /** m² open for order, and m² it can harvest in a day. */
    stock: within(0, 200000, 'm²'),
    harvestPerDay: within(0, 50000, 'm²'),
    /** h between the release and the first cut. */
    notice: within(0, 24 * 60, 'h'),
    /** h on the road. */
    haul: within(0, 96, 'h'),
    /** kg on one truck, and how many trucks the farm can send in a day. */
    payload: within(1000, 60000, 'kg'),
    trucksPerDay: z.int().min(0).max(200),
    /** Roll width and length, m. */
    rollWidth: within(0.2, 3, 'm'),
    rollLength: within(0.5, 60, 'm'),
    /** Months (1–12) in which the ground is usually frozen or the farm does not cut. */
    closedMonths: z.array(z.int().min(1).max(12)).max(12).readonly(),
    /** Single days without harvest. */
    blockedDays: z.array(LocalDate).max(400).readonly(),
    /** First day on which the crop is old enough to be cut and carried; absent: it is by now. */
    cutFrom: LocalDate.optional(),
    /** Prices per m² by cut, per truck, and the fee for a release called off, as a share of the sod price; null where no quotation is entered. */
    thinPrice: Money.nullable(),
    thickPrice: Money.nullable(),
    truckPrice: Money.nullable(),
    cancelShare: within(0, 1),
    /** Fee per m² to hold sod in reserve, and the price per m² of a rush order. */
    reservePrice: Money.nullable(),
    rushPrice: Money.nullable(),
  })
  .readonly();
export type Farm = z.infer<typeof Farm>;

/** What the venue asks of the surface and of its own work. */
export const Rules = z
  .strictObject({
    /** Live cover a zone needs to count as ready, 0–1. */
    coverNeeded: within(0.3, 1),
    /** Deepest rut allowed, m. */
    rutAllowed: within(0, 0.1, 'm'),
    /** Chance of being ready that a plan must reach, 0–1. */
    chanceNeeded: within(0.5, 0.999),
    /** h before the home date when the surface is tested, and h that painting and settling take before. */
    certifyLead: within(0, 240, 'h'),
    paint: within(0, 96, 'h'),
    settle: within(0, 96, 'h'),
    /** h closed after a covering comes off. */
    rest: within(0, 168, 'h'),
    /** h kept in hand. */
    contingency: within(0, 240, 'h'),
    /** Pressure above which nothing drives straight on turf, kPa. */
    groundPressure: within(5, 500, 'kPa'),
    /** Trucks the gate takes in a day, from whatever farm; absent: as many as come. */
    gateTrucks: z.int().min(1, 'no truck would come in').max(200).optional(),
    /** Hours of the day in which the gate lets trucks in, and how many it lets in within one hour; absent: any, as many as come. */
    gateHours: z.strictObject({ from: ClockTime, until: ClockTime }).readonly().optional(),
    gateTrucksPerHour: z.int().min(1, 'no truck would come in').max(60).optional(),
    /** Where machines come onto the turf, m in the field's axes; absent: every zone is reached from outside. */
    gateAt: Point.optional(),
    /** Boards are there for heavy machines over live turf; absent: they are. */
    boards: z.boolean().optional(),
    /** Half-field method: one end, or one side, is laid before the other is opened; absent: both at once. */
    halves: z.enum(['ends', 'sides']).optional(),
    /** Most by which the sand share of sod may differ from that of the root zone; absent: what the catalogue says. */
    sandGap: Share.optional(),
    /** Share of sod ordered beyond the measured area. */
    sodWaste: within(0, 0.3),
    /** ISO 4217 code of the currency all prices are in. */
    currency: z.string().regex(/^[A-Z]{3}$/, 'must be a three-letter currency code'),
  })
  .readonly();
export type Rules = z.infer<typeof Rules>;
