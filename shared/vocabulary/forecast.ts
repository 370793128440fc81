import { z } from 'zod';
import { Polygon } from '#shared/vocabulary/geometry.ts';
import { zoneUses } from '#shared/vocabulary/booking.ts';
import { Id, LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';

/** Why live cover is lost. Each zone's causes are logarithmic shares of its loss and add to it. */
export const causes = ['light', 'heat', 'frost', 'wear', 'load', 'wetness', 'spill'] as const;
export type Cause = (typeof causes)[number];

/** What an inspector would see. `stretched-leaf` is the long pale leaf of turf grown in the dark. */
export const symptoms = [
  'ruts',
  'compaction',
  'worn',
  'torn',
  'yellowing',
  'stretched-leaf',
  'scald',
  'winter-death',
  'wilting',
  'spill-burn',
  'disease',
  'too-wet',
] as const;
export type Symptom = (typeof symptoms)[number];

/** What a reader must be warned of, each with its zone and figure. */
export const warnings = [
  'park-rule',
  'bearing-strength',
  'covering-feet-only',
  'covering-rating',
  'wheel-load',
  'weight-off-axles',
  'lorry-route-used-again',
  'covered-longer-than-usual',
  'aluminium-too-long',
  'aluminium-at-midday',
  'used-too-soon',
] as const;
/** Runs kept by engines before 1.2 hold a sentence that begins with the subject. */
const withSubject = (kept: unknown): unknown => {
  if (typeof kept !== 'object' || kept === null || !('detail' in kept)) return kept;
  const { detail, ...rest } = kept;
  return { ...rest, subject: String(detail).split(': ')[0] };
};
export const Warning = z.preprocess(
  withSubject,
  z
    .strictObject({
      kind: z.enum(warnings),
      zone: z.string(),
      /** What it is about, by name: a machine, a floor, people. */
      subject: z.string(),
      /** What was found and the limit it passes: kPa, kN, h, d or passes, by the kind. */
      value: z.number().nullable(),
      limit: z.number().nullable(),
    })
    .readonly(),
);
export type Warning = z.infer<typeof Warning>;

const series = z.array(z.number()).readonly();

/** Lowest tenth, middle and highest tenth of the members; all three equal when there is one member. */
export const Range = z.strictObject({ p10: z.number(), p50: z.number(), p90: z.number() }).readonly();
export type Range = z.infer<typeof Range>;
export const RangeSeries = z.strictObject({ p10: series, p50: series, p90: series }).readonly();
export type RangeSeries = z.infer<typeof RangeSeries>;

/** A zone needs nothing, mending in place, or new turf to be ready on the home date. */
export const verdicts = ['play', 'patch', 'replace'] as const;
export type Verdict = (typeof verdicts)[number];

export const ZoneForecast = z
  .strictObject({
    letter: z.string(),
    name: z.string(),
    /** A zone of the event, a standing zone of the venue, or the turf that belongs to neither. */
    origin: z.enum(['event', 'venue', 'rest']),
    use: z.enum(zoneUses).nullable(),
    outlines: z.array(Polygon).readonly(),
    /** m² of turf. */
    area: z.number(),
    /** h with anything lying on it, h of that without any light, and the coverings met. */
    hoursCovered: z.number(),
    hoursDark: z.number(),
    coverings: z.array(z.string()).readonly(),
    firstOn: LocalTime.nullable(),
    lastOff: LocalTime.nullable(),
    /** °C at the crowns while covered: mean and hottest hour of the median member; null where never covered. */
    crownTemperature: z.strictObject({ mean: z.number(), highest: z.number() }).readonly().nullable(),
    /** mol/m²/d on an ordinary day in the open and as the mean while covered. */
    light: z.strictObject({ open: z.number(), covered: z.number().nullable() }).readonly(),
    /** kPa on the turf and m of rut: the worst of the event. */
    pressure: z.number(),
    footfalls: z.number(),
    /** Live cover, living crowns, reserve (0–1) and ruts (m) at the end of every day of the forecast. */
    cover: RangeSeries,
    crowns: RangeSeries,
    reserve: RangeSeries,
    ruts: RangeSeries,
    /** Live cover: before the first layer, when the last one is off, on the home date with nothing done. */
    coverBefore: Range,
    coverAfter: Range,
    coverHome: Range,
    /** Logarithmic loss of cover by cause from the first layer to the last one off, usual season; growth between is not counted. */
    causes: z.record(z.enum(causes), z.number()).readonly(),
    /** Chance of being ready on the home date with nothing done. */
    chanceReady: z.number(),
    /** Days after the last layer until ready with nothing done; null where it is not within the forecast. */
    daysToReady: z
      .strictObject({ p10: z.number().nullable(), p50: z.number().nullable(), p90: z.number().nullable() })
      .readonly(),
    verdict: z.enum(verdicts),
    /** What an inspector would see: the days after the last layer and how bad, 0–1. */
    seen: z.array(z.strictObject({ date: LocalDate, symptom: z.enum(symptoms), severity: z.number() }).readonly()).readonly(),
  })
  .readonly();
export type ZoneForecast = z.infer<typeof ZoneForecast>;

/** The drawing grid: cells of one size, row by row from the south-west corner of the field's own axes. */
export const CellMap = z
  .strictObject({
    size: z.number(),
    x: series,
    y: series,
    /** m² of turf in the cell. */
    area: series,
    /** Index into `zones`. */
    zone: z.array(z.int()).readonly(),
    /** Class of equal exposure and shade the cell belongs to. */
    group: z.array(z.int()).readonly(),
    /** Median live cover by group: when the last layer is off, and on the home date. */
    coverAfter: series,
    coverHome: series,
  })
  .readonly();
export type CellMap = z.infer<typeof CellMap>;

export const Forecast = z
  .strictObject({
    /** First and last day; index 0 of every series is the first day. */
    days: z.array(LocalDate).readonly(),
    homeDate: z.strictObject({ name: z.string(), start: LocalTime }).readonly(),
    members: z.int(),
    seed: z.int(),
    engineVersion: z.string(),
    zones: z.array(ZoneForecast).readonly(),
    cells: CellMap,
    /** m² that would need replacing to be ready. */
    replaceArea: Range,
    /** Chance that every zone is ready with nothing done. */
    chanceAllReady: z.number(),
    /** Daily weather of the median member for the strip: °C, mm, MJ/m². */
    weather: z
      .strictObject({ maximum: series, minimum: series, rain: series, radiation: series, growthPotential: series })
      .readonly(),
    warnings: z.array(Warning).readonly(),
    /** Blanks of the booking that were filled, in plain words. */
    assumptions: z.array(z.string()).readonly(),
  })
  .readonly();
export type Forecast = z.infer<typeof Forecast>;

/** A frozen forecast: the same input and seed give the same result again. */
export const ForecastRun = z
  .strictObject({
    id: Id,
    bookingId: Id.nullable(),
    venueId: Id,
    fixtureId: Id,
    createdAt: z.iso.datetime(),
    engineVersion: z.string(),
    parameterVersion: z.string(),
    seed: z.int(),
    inputHash: z.string(),
    result: Forecast,
  })
  .readonly();
export type ForecastRun = z.infer<typeof ForecastRun>;
