import { z } from 'zod';
import { Forecast, Range, RangeSeries } from '#shared/vocabulary/forecast.ts';
import { Id } from '#shared/vocabulary/primitives.ts';

/**
 * What could be done otherwise: laid a day earlier or later, struck half a day earlier or later, lifted at night, another class of floor.
 * Each is foreseen with the same draws, so that what differs is the option alone.
 */
export const optionKinds = ['day-more', 'day-less', 'strike-earlier', 'strike-later', 'lift-at-night', 'floor'] as const;
export type OptionKind = (typeof optionKinds)[number];

/** Against the booking as it is: chance, middle of the members' own differences of cover, middle of those of the area, m². */
const Change = z.strictObject({ chanceReady: z.number(), coverHome: z.number(), replaceArea: z.number() }).readonly();

export const ZoneOption = z
  .strictObject({
    letter: z.string(),
    /** False where the option leaves the zone as it is; `reason` says why. */
    applies: z.boolean(),
    reason: z.string(),
    chanceReady: z.number(),
    coverHome: Range,
    /** m² of the zone that would need replacing. */
    replaceArea: Range,
    change: Change,
  })
  .readonly();
export type ZoneOption = z.infer<typeof ZoneOption>;

export const ForecastOption = z
  .strictObject({
    kind: z.enum(optionKinds),
    /** The class of floor of a `floor` option. */
    covering: Id.nullable(),
    name: z.string(),
    zones: z.array(ZoneOption).readonly(),
    chanceAllReady: z.number(),
    replaceArea: Range,
    change: Change,
  })
  .readonly();
export type ForecastOption = z.infer<typeof ForecastOption>;

/** Bands of the 2.25 kg hammer, softest first. */
export const hardnessBandNames = ['unacceptably-low', 'low', 'preferred', 'high', 'unacceptably-high'] as const;
const Band = z.enum(hardnessBandNames);
const Bands = z.array(Band).readonly();

export const ZoneAnswer = z
  .strictObject({
    letter: z.string(),
    name: z.string(),
    /** g of the first drop of the 2.25 kg hammer, estimated from density, wetness and cover. */
    hardness: RangeSeries,
    /** The band of each of those figures, by day. */
    hardnessBands: z.strictObject({ p10: Bands, p50: Bands, p90: Bands }).readonly(),
    /** On the eve of the home date: the figures, their bands, and the share of members in each band. */
    hardnessHome: z.strictObject({ value: Range, p10: Band, p50: Band, p90: Band, share: z.record(Band, z.number()) }).readonly(),
    chanceReady: z.number(),
    /** Lowest tenth to highest tenth in steps of ten: days after the last layer until ready; null where never within the forecast. */
    daysToReady: z.array(z.number().nullable()).length(9).readonly(),
    /** The same of m² that would need replacing. */
    replaceArea: z.array(z.number()).length(9).readonly(),
  })
  .readonly();
export type ZoneAnswer = z.infer<typeof ZoneAnswer>;

/** What somebody could measure on the day the last layer is off. */
export const readings = ['cover', 'soil-moisture', 'hardness', 'crown-temperature'] as const;
export type Reading = (typeof readings)[number];

/** How much of the spread of a zone's answer a reading would take away, 0–1. */
export const Narrowing = z
  .strictObject({
    zone: z.string(),
    reading: z.enum(readings),
    /** Of the variance of ready or not, and of the cover on the home date. */
    ofReady: z.number(),
    ofCover: z.number(),
    /** m² of turf whose answer hangs on it: area times what it explains times what is open. Decides the order. */
    weight: z.number(),
  })
  .readonly();
export type Narrowing = z.infer<typeof Narrowing>;

export const ForecastAnswers = z
  .strictObject({
    forecast: Forecast,
    zones: z.array(ZoneAnswer).readonly(),
    /** m² in all, lowest tenth to highest tenth in steps of ten. */
    replaceArea: z.array(z.number()).length(9).readonly(),
    options: z.array(ForecastOption).readonly(),
    /** What reading would narrow it, the best first. Empty where nothing is open. */
    narrowing: z.array(Narrowing).readonly(),
  })
  .readonly();
export type ForecastAnswers = z.infer<typeof ForecastAnswers>;
