import { z } from 'zod';
import { Polygon } from '#shared/vocabulary/geometry.ts';
import { MaterialPrices } from '#shared/vocabulary/plan.ts';
import { Id, LocalDate, LocalTime, Name, Note, Revision, Share, within } from '#shared/vocabulary/primitives.ts';
import { Farm, Rules, Workforce } from '#shared/vocabulary/resources.ts';
import { RootZone, Sward, TurfState } from '#shared/vocabulary/turf.ts';

const zoneIds = new Set<string>(Intl.supportedValuesOf('timeZone'));

export const Place = z
  .strictObject({
    /** Degrees, north positive. */
    latitude: within(-66, 66, '°'),
    /** Degrees, east positive. */
    longitude: within(-180, 180, '°'),
    /** m above the sea. */
    elevation: within(-420, 4500, 'm'),
    timeZone: z
      .string()
      .refine((name) => name === 'UTC' || zoneIds.has(name), 'must be an IANA time zone such as America/Chicago'),
  })
  .readonly();
export type Place = z.infer<typeof Place>;

/** One block of seats: vertical faces on its outline, in tiers that step back, and perhaps a roof. */
export const Stand = z
  .strictObject({
    id: Id,
    name: Name,
    outline: Polygon,
    /** m above the field at the outline. */
    height: within(0, 120, 'm'),
    /** Higher tiers inside the outline: each with its own outline and height. */
    tiers: z
      .array(z.strictObject({ outline: Polygon, height: within(0, 120, 'm') }).readonly())
      .max(6)
      .readonly(),
    /** A roof hides the sky between its lower and upper edge over its own outline. */
    roof: z
      .strictObject({
        outline: Polygon,
        underside: within(0, 120, 'm'),
        top: within(0, 120, 'm'),
        /** Share of light passed. */ transmission: Share,
      })
      .readonly()
      .nullable(),
  })
  .readonly();
export type Stand = z.infer<typeof Stand>;

/** A standing part of the field that a person names: "north end", "centre". */
export const Zone = z
  .strictObject({
    id: Id,
    letter: z.string().regex(/^[A-Z][A-Z0-9]?$/, 'must be a capital letter, perhaps with one more letter or digit'),
    name: Name,
    outline: Polygon,
  })
  .readonly();
export type Zone = z.infer<typeof Zone>;

/** Games whose lines a field can carry. */
export const fieldCodes = [
  'association-football',
  'american-football',
  'canadian-football',
  'rugby-union',
  'rugby-league',
  'gaelic-games',
  'baseball',
  'australian-football',
  'cricket',
] as const;
export type FieldCode = (typeof fieldCodes)[number];

/** The lines painted on a field: of which game, and its two sizes, m, as the game's own rules name them. */
export const FieldLines = z
  .strictObject({ code: z.enum(fieldCodes), length: within(20, 250, 'm'), width: within(20, 250, 'm') })
  .readonly();
export type FieldLines = z.infer<typeof FieldLines>;

export const Field = z
  .strictObject({
    /** Edge of the turf. */
    outline: Polygon,
    /** Lines of the home game about the middle of the field; left out where none are entered. Nothing is reckoned from them. */
    lines: FieldLines.optional(),
    /** Bearing of the +y axis, degrees clockwise from north. */
    bearing: within(0, 360, '°'),
    /** Hard standing or track around the turf that footprints may use, m. */
    apron: within(0, 60, 'm'),
    sward: Sward,
    rootZone: RootZone,
    /** Height of cut, m. */
    mowingHeight: within(0.005, 0.12, 'm'),
    /** The stand on an ordinary day, from which a forecast starts. */
    usual: TurfState,
  })
  .readonly();
export type Field = z.infer<typeof Field>;

const twelve = (low: number, high: number, unit: string) =>
  z
    .array(within(low, high, unit))
    .length(12, 'must have twelve months')
    .readonly();

/** Mean weather by month, January first. */
export const Climate = z
  .strictObject({
    /** Where the figures come from and for which years. */
    origin: Note,
    /** °C */
    maximum: twelve(-60, 60, '°C'),
    /** °C */
    minimum: twelve(-70, 50, '°C'),
    /** mm in the month */
    rain: twelve(0, 3000, 'mm'),
    /** days with 0.25 mm or more */
    wetDays: twelve(0, 31, 'd'),
    /** Global radiation MJ/m²/d; null where only temperatures are known. */
    radiation: twelve(0, 45, 'MJ/m²/d').nullable(),
    /** Relative humidity, 0–1; null where unknown. */
    humidity: twelve(0, 1, '').nullable(),
    /** m/s at 2 m; null where unknown. */
    wind: twelve(0, 40, 'm/s').nullable(),
  })
  .refine((climate) => climate.maximum.every((high, month) => high >= climate.minimum[month]!), {
    path: ['maximum'],
    message: 'must not be below the minimum of the same month',
  })
  .readonly();
export type Climate = z.infer<typeof Climate>;

/** A rig of lamps over one polygon on its own days. */
export const LightRig = z
  .strictObject({
    id: Id,
    outline: Polygon,
    /** Photon flux at the canopy, µmol/m²/s. */
    flux: within(0, 2000, 'µmol/m²/s'),
    /** h lit a day */
    hours: within(0, 24, 'h'),
    from: LocalDate,
    until: LocalDate,
  })
  .readonly();
export type LightRig = z.infer<typeof LightRig>;

export const Venue = z
  .strictObject({
    id: Id,
    revision: Revision,
    name: Name,
    /** What this record is and where its figures come from. */
    about: Note,
    place: Place,
    field: Field,
    stands: z.array(Stand).max(40).readonly(),
    zones: z.array(Zone).max(40).readonly(),
    /** Rigs of lamps and the days they burn. */
    lights: z.array(LightRig).max(200).readonly(),
    climate: Climate,
    workforce: Workforce,
    farms: z.array(Farm).max(20).readonly(),
    /** Prices of materials; null where no quotation is entered. */
    prices: MaterialPrices,
    rules: Rules,
    /** Values of the catalogue that this venue has changed, by name. */
    settings: z
      .record(
        z.string(),
        z
          .strictObject({
            value: z.number(),
            /** Half-width of the 80 % range as a share of the value, where the venue's own events have taught it; else the catalogue's. */
            doubt: within(0, 10).optional(),
            reason: Note,
            since: LocalDate,
          })
          .readonly(),
      )
      .readonly(),
  })
  .readonly();
export type Venue = z.infer<typeof Venue>;

/** What fills a place in the calendar besides bookings. */
export const fixtureKinds = ['home-date', 'practice', 'blackout'] as const;
export const Fixture = z
  .strictObject({
    id: Id,
    revision: Revision,
    venueId: Id,
    kind: z.enum(fixtureKinds),
    name: Name,
    start: LocalTime,
    end: LocalTime,
  })
  .refine((fixture) => fixture.end > fixture.start, { path: ['end'], message: 'must be after the start' })
  .readonly();
export type Fixture = z.infer<typeof Fixture>;
