import { z } from 'zod';
import { costKinds, materialUnits } from '#shared/vocabulary/plan.ts';
import { Id, LocalDate, LocalTime, Name, Note, Revision, within } from '#shared/vocabulary/primitives.ts';
import { Money } from '#shared/vocabulary/resources.ts';
import { figure, minorDigits } from '#shared/units/quantity.ts';

/**
 * Money is a whole number of the smallest unit of the venue's currency. Quantities are counted in millionths, products are taken in
 * whole numbers and rounded once, half up: a line has one exact sum, and sums of lines add up without a cent lost.
 */

/** Everything that can have a price; the unit a price is for. */
export const priceUnits = {
  labour: 'h',
  overtime: 'h',
  sod: 'm²',
  freight: 'truck',
  ...materialUnits,
  'floor-hire': 'm²',
  overrun: 'h',
  testing: 'visit',
  practice: 'day',
  'outside-work': 'h',
} as const;
export type PriceKind = keyof typeof priceUnits;
export const priceKinds = Object.keys(priceUnits) as [PriceKind, ...PriceKind[]];
/** Kinds of a line of cost: those with a price, and anything else that was paid. */
export const entryKinds = [...priceKinds, 'other'] as [EntryKind, ...EntryKind[]];
export type EntryKind = PriceKind | 'other';

export const costWords: Readonly<Record<EntryKind, string>> = {
  labour: 'labour',
  overtime: 'overtime',
  sod: 'sod',
  freight: 'freight',
  seed: 'seed',
  sand: 'sand',
  feed: 'feed',
  carpet: 'carpet',
  disposal: 'disposal',
  'floor-hire': 'floor hire',
  overrun: 'load-out overrun',
  testing: 'surface tests',
  practice: 'lost practice',
  'outside-work': 'work by others',
  other: 'other',
};
/** Whether a kind of cost of a plan is one of ours. */
export const isPlanCost = (kind: string): kind is (typeof costKinds)[number] & PriceKind =>
  (costKinds as readonly string[]).includes(kind);

/** One price from a day to a day. */
export const PriceLine = z
  .strictObject({
    kind: z.enum(priceKinds),
    /** Farm of sod and freight, covering of floor hire; null: any. */
    of: Id.nullable(),
    /** Cut of sod; null: any. */
    cut: z.enum(['thin', 'thick']).nullable(),
    price: Money,
    /** First and last day it holds; null: until another takes over. */
    from: LocalDate,
    until: LocalDate.nullable(),
    /** Quotation, agreement, rate card. */
    origin: Note,
  })
  .refine((line) => line.until === null || line.until >= line.from, { path: ['until'], message: 'must not be before it begins' })
  .readonly();
export type PriceLine = z.infer<typeof PriceLine>;

export const PriceBook = z
  .strictObject({ venueId: Id, revision: Revision, lines: z.array(PriceLine).max(400).readonly() })
  .readonly();
export type PriceBook = z.infer<typeof PriceBook>;

const Percent = z.int().min(0).max(100);
const ClauseNumber = z.string().trim().min(1, 'must not be empty').max(20, 'must be at most 20 characters');

/** A clause of the contract that lets kinds of cost be charged, and which share of them. */
export const Clause = z
  .strictObject({
    number: ClauseNumber,
    words: Note,
    kinds: z.array(z.enum(entryKinds)).max(20).readonly(),
    /** % of the cost that the payer bears. */
    share: Percent,
  })
  .readonly();
export type Clause = z.infer<typeof Clause>;

/** What was agreed about money for one booking. */
export const MoneyTerms = z
  .strictObject({
    bookingId: Id,
    revision: Revision,
    /** Who pays what is charged. */
    payer: Name,
    deposit: Money,
    /** Most that can be charged; null: no limit. */
    cap: Money.nullable(),
    /** Part of the charge that the venue bears first. */
    excess: Money,
    /** Days after handback within which a claim is made, and within which damage that shows late can be added. */
    claimDays: z.int().min(0).max(400),
    lateDays: z.int().min(0).max(400),
    /** When the field was given back; null: when the last covering comes off as booked. */
    handedBack: LocalTime.nullable(),
    clauses: z.array(Clause).max(40).readonly(),
  })
  .refine((terms) => terms.lateDays >= terms.claimDays, { path: ['lateDays'], message: 'must not be fewer than claimDays' })
  .refine((terms) => new Set(terms.clauses.map((clause) => clause.number)).size === terms.clauses.length, {
    path: ['clauses'],
    message: 'must have a number each',
  })
  .readonly();
export type MoneyTerms = z.infer<typeof MoneyTerms>;

const thousandths = (value: number): boolean => Math.abs(value * 1000 - Math.round(value * 1000)) < 1e-6;

/** A line of cost as a person enters it. */
export const NewEntry = z
  .strictObject({
    bookingId: Id,
    /** Day of the work, the delivery or the finding. */
    date: LocalDate,
    kind: z.enum(entryKinds),
    zone: z.string().max(4).nullable(),
    words: Name,
    quantity: within(0, 1e6).refine(thousandths, 'must have at most three decimals'),
    unit: z.string().trim().min(1, 'must not be empty').max(12, 'must be at most 12 characters'),
    /** Price of one unit; null: the price book's on that day. */
    price: Money.nullable(),
    /** % charged to the payer; 0: not chargeable. */
    chargedShare: Percent,
    /** The clause it is charged by; needed where anything is charged. */
    clause: ClauseNumber.nullable(),
    /** Invoice, time sheet, photograph that proves it; empty: nothing is named yet. */
    evidence: z.string().trim().max(400, 'must be at most 400 characters'),
    /** Number of the line that this one puts right. */
    corrects: z.int().min(1).nullable(),
  })
  .refine((entry) => entry.chargedShare === 0 || entry.clause !== null, {
    path: ['clause'],
    message: 'must be named where anything is charged',
  })
  .readonly();
export type NewEntry = z.infer<typeof NewEntry>;

/** A kept line: never changed; a correction is a new line that names the old one. */
export const MoneyEntry = z
  .strictObject({
    bookingId: Id,
    /** 1, 2, 3 … within the booking. */
    number: z.int().min(1),
    enteredAt: z.iso.datetime(),
    currency: z.string(),
    date: LocalDate,
    kind: z.enum(entryKinds),
    zone: z.string().nullable(),
    words: z.string(),
    quantity: z.number(),
    unit: z.string(),
    price: Money,
    sum: z.int().min(0),
    chargedShare: Percent,
    clause: z.string().nullable(),
    evidence: z.string(),
    corrects: z.int().nullable(),
  })
  .readonly();
export type MoneyEntry = z.infer<typeof MoneyEntry>;

/**
 * What becomes of a line. `claimed`: charged in time and proven. `late`: found after the claim deadline and before the last one, so it
 * goes into the supplement. `unproven`: no evidence is named. `too-late`: after the last deadline. `own`: the venue's.
 */
export const lineFates = ['claimed', 'late', 'unproven', 'too-late', 'own', 'corrected'] as const;
export type LineFate = (typeof lineFates)[number];
export const fateWords: Readonly<Record<LineFate, string>> = {
  claimed: 'claimed',
  late: 'late-damage supplement',
  unproven: 'not claimed: no evidence is named',
  'too-late': 'not claimed: after the last day',
  own: 'venue',
  corrected: 'put right by a later line',
};

const minor = z.int();
export const AccountLine = z
  .strictObject({
    entry: MoneyEntry,
    fate: z.enum(lineFates),
    /** Charged part and the rest; they add up to the sum of the line. Both 0 on a corrected line. */
    charged: minor,
    own: minor,
  })
  .readonly();
export type AccountLine = z.infer<typeof AccountLine>;

/** The account of one booking. `claim + venueBears = total`; `deposit` is split into what is kept and what goes back. */
export const Account = z
  .strictObject({
    currency: z.string(),
    lines: z.array(AccountLine).readonly(),
    total: minor,
    byKind: z.array(z.strictObject({ kind: z.enum(entryKinds), total: minor, charged: minor, own: minor }).readonly()).readonly(),
    byClause: z.array(z.strictObject({ clause: z.string(), charged: minor }).readonly()).readonly(),
    /** Proven and in time; of that found late. */
    chargeable: minor,
    supplement: minor,
    unproven: minor,
    tooLate: minor,
    /** Taken off the chargeable part: the excess, and what is above the cap. */
    excess: minor,
    aboveCap: minor,
    claim: minor,
    depositKept: minor,
    depositReturned: minor,
    balanceDue: minor,
    venueBears: minor,
    handedBack: LocalTime.nullable(),
    claimBy: LocalDate.nullable(),
    lateBy: LocalDate.nullable(),
    /** Lines in another currency than the venue's; they are in no sum. */
    otherCurrency: z.int(),
  })
  .readonly();
export type Account = z.infer<typeof Account>;

export const cases = ['low', 'likely', 'high'] as const;
export type Case = (typeof cases)[number];
const perCase = <Value extends z.ZodType>(value: Value) => z.strictObject({ low: value, likely: value, high: value }).readonly();
const MinorByCase = perCase(minor);
export type MinorByCase = z.infer<typeof MinorByCase>;

export const EstimateLine = z
  .strictObject({
    kind: z.enum(priceKinds),
    words: z.string(),
    unit: z.string(),
    /** null: no price is known; the line is in no sum. */
    price: Money.nullable(),
    origin: z.string(),
    quantity: perCase(z.number()),
    sum: MinorByCase.nullable(),
    /** % charged and by which clause. */
    chargedShare: Percent,
    clause: z.string().nullable(),
  })
  .readonly();
export type EstimateLine = z.infer<typeof EstimateLine>;

/** What a plan costs in a kind, a usual and a hard season. `payer + venue = total` in each. */
export const Estimate = z
  .strictObject({
    planId: Id,
    currency: z.string(),
    /** m² replaced, and truckloads. */
    area: perCase(z.number()),
    trucks: perCase(z.int()),
    lines: z.array(EstimateLine).readonly(),
    total: MinorByCase,
    payer: MinorByCase,
    venue: MinorByCase,
    unpriced: z.array(z.string()).readonly(),
    /** What low and high follow: members of the forecast, and m² that the lowest and the highest tenth of them would have replaced. */
    basis: z.strictObject({ members: z.int(), replaceLow: z.number(), replaceHigh: z.number() }).readonly(),
  })
  .readonly();
export type Estimate = z.infer<typeof Estimate>;

/** Everything about the money of one booking. */
export const BookingMoney = z
  .strictObject({
    bookingId: Id,
    currency: z.string(),
    terms: MoneyTerms.nullable(),
    prices: PriceBook.nullable(),
    account: Account,
  })
  .readonly();
export type BookingMoney = z.infer<typeof BookingMoney>;

/** "USD 70,719.92": every minor unit, put together from whole numbers. */
export const exactMoney = (value: number, currency: string): string => {
  const digits = minorDigits(currency);
  const text = String(Math.abs(value)).padStart(digits + 1, '0');
  const whole = figure(Number(text.slice(0, text.length - digits)), 0);
  return `${currency} ${value < 0 ? '−' : ''}${whole}${digits === 0 ? '' : `.${text.slice(-digits)}`}`;
};

/** Quantity times price, exactly, rounded once half up. The quantity counts in millionths. */
export const sumOf = (quantity: number, price: number): number => {
  const product = BigInt(Math.round(quantity * 1e6)) * BigInt(price);
  return Number((product + 500_000n) / 1_000_000n);
};

/** The charged part of a sum by whole percent, rounded half up; the rest is the sum less that part. */
export const chargedPart = (sum: number, share: number): number => Number((BigInt(sum) * BigInt(share) + 50n) / 100n);
