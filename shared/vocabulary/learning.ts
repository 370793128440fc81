import { z } from 'zod';
import { Range } from '#shared/vocabulary/forecast.ts';
import { Id, LocalDate, LocalTime, Name, Note } from '#shared/vocabulary/primitives.ts';

/** Quantities the forecast and a reading both speak of. */
export const seenQuantities = ['cover', 'ruts'] as const;
export type SeenQuantity = (typeof seenQuantities)[number];

/** One line of "seen against forecast": the mean reading of a zone beside what was forecast before and after it was learnt from. */
export const SeenAgainstForecast = z
  .strictObject({
    inspectionId: Id,
    zone: z.string(),
    at: LocalTime,
    /** The evening of the forecast the reading is held against. */
    evening: LocalDate,
    quantity: z.enum(seenQuantities),
    /** Cover 0–1; ruts m. */
    seen: z.number(),
    readings: z.int(),
    /** Standard deviation of the mean reading, the model's own included. */
    error: z.number(),
    before: Range,
    after: Range,
    /** Share of the members below what was seen, before anything was learnt from it. */
    place: z.number(),
    /** Whether the members were weighed by it; readings later than a replay's moment only stand beside. */
    used: z.boolean(),
  })
  .readonly();
export type SeenAgainstForecast = z.infer<typeof SeenAgainstForecast>;

/** A reading of an inspection that could not be held against the forecast, and why. */
export const LeftOut = z.strictObject({ inspectionId: Id, reason: z.string() }).readonly();
export type LeftOut = z.infer<typeof LeftOut>;

/** How a run was weighed by what was seen. */
export const Assimilation = z
  .strictObject({
    /** The new frozen run; null for a replay, which keeps nothing. */
    runId: Id.nullable(),
    /** The run it came from, as it was asked without readings. */
    parentId: Id,
    venueId: Id,
    bookingId: Id.nullable(),
    createdAt: z.iso.datetime(),
    /** Only what was read up to here was used; null: everything. */
    knownAt: LocalTime.nullable(),
    inspections: z.array(Id).readonly(),
    leftOut: z.array(LeftOut).readonly(),
    members: z.int(),
    /** Members that still count, of `members`: (Σw)²/Σw². */
    effectiveSize: z.number(),
    /** Factor by which doubts were widened because too few members agreed; 1 where they were not. */
    widened: z.number(),
    /** The effective size before they were widened. */
    firstEffectiveSize: z.number(),
    seen: z.array(SeenAgainstForecast).readonly(),
    /** m² to be replaced and chance that all is ready, before and after. */
    replaceArea: z.strictObject({ before: Range, after: Range }).readonly(),
    chanceAllReady: z.strictObject({ before: z.number(), after: z.number() }).readonly(),
  })
  .readonly();
export type Assimilation = z.infer<typeof Assimilation>;

const ValueRange = z
  .strictObject({
    value: z.number(),
    low: z.number(),
    high: z.number(),
    /** Half-width of the 80 % range as a share of the value. */
    doubt: z.number(),
  })
  .readonly();

/** One number of the venue that past events speak about: where it stood, and where they put it. `low` to `high` is the 80 % range. */
export const ProposedChange = z
  .strictObject({
    name: z.string(),
    unit: z.string(),
    before: ValueRange,
    after: ValueRange,
    /** Share of the spread that went: 1 − sd after / sd before. */
    narrowed: z.number(),
  })
  .readonly();
export type ProposedChange = z.infer<typeof ProposedChange>;

/** What became of a proposal. */
export const ProposalDecision = z
  .strictObject({
    answer: z.enum(['accepted', 'refused']),
    /** Names that were taken over; empty for a refusal. */
    names: z.array(z.string()).readonly(),
    by: Name,
    reason: Note,
    decidedAt: z.iso.datetime(),
  })
  .readonly();
export type ProposalDecision = z.infer<typeof ProposalDecision>;

/** Numbers of a venue moved or narrowed by its own past events; in force only once somebody accepts. */
export const Proposal = z
  .strictObject({
    id: Id,
    venueId: Id,
    createdAt: z.iso.datetime(),
    /** The assimilated runs it was learnt from, and how many readings of zones that makes. */
    runs: z.array(Id).readonly(),
    readings: z.int(),
    members: z.int(),
    effectiveSize: z.number(),
    /** Weight the readings were given so that enough members count: 1 is full. */
    trust: z.number(),
    changes: z.array(ProposedChange).readonly(),
    decision: ProposalDecision.nullable(),
  })
  .readonly();
export type Proposal = z.infer<typeof Proposal>;
