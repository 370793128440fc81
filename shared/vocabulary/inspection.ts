import { z } from 'zod';
import { spillAgents } from '#shared/vocabulary/booking.ts';
import { Id, LocalTime, Name, Note, Share, within } from '#shared/vocabulary/primitives.ts';

/** When an inspection is made: before the first layer, at handing back, some time after it, or whenever somebody looks. */
export const inspectionKinds = ['baseline', 'handback', 'after-24-h', 'after-72-h', 'after-7-d', 'free'] as const;
export type InspectionKind = (typeof inspectionKinds)[number];

/** Who or what caused a defect. */
export const defectCauses = ['production', 'crowd', 'weather', 'venue', 'unknown'] as const;
export type DefectCause = (typeof defectCauses)[number];

/** What is met on the ground, as the trade names it. */
export const defectKinds = [
  'cover-loss',
  'yellowing',
  'heat-scald',
  'winter-death',
  'compaction',
  'rut',
  'pad-mark',
  'torn-turf',
  'too-wet',
  'too-dry',
  'disease',
  'poor-footing',
  'open-seam',
  'debris',
  'spill-burn',
  'ice-melt',
  'paint',
  'irrigation-or-drain',
  'other',
] as const;
export type DefectKind = (typeof defectKinds)[number];

/** A zone of the event or of the venue by its letter. */
const ZoneLetter = z.string().regex(/^[A-Z][A-Z0-9]?$/, 'must be the letter of a zone');

/** Surface hardness: a figure says nothing without the hammer, the height and which drop on one spot it was. */
export const Hardness = z
  .strictObject({
    /** Peak deceleration, multiples of g. */
    peak: within(1, 1000, 'g'),
    hammerMass: within(0.1, 20, 'kg'),
    dropHeight: within(0.05, 3, 'm'),
    dropNumber: z.int().min(1, 'must be at least 1').max(20, 'must be at most 20'),
  })
  .readonly();
export type Hardness = z.infer<typeof Hardness>;

/** Everything read at one spot; null for what was not read. At least one reading stands. */
export const SpotReading = z
  .strictObject({
    zone: ZoneLetter,
    /** The fixed point that is gone back to every time; null for any place in the zone. */
    point: Name.nullable(),
    /** Live green cover, 0–1. */
    cover: Share.nullable(),
    /** Colour by eye, 1 straw to 9 dark green. */
    colour: within(1, 9).nullable(),
    /** Dark green colour index of a photograph. */
    greenIndex: within(-1, 2.7).nullable(),
    /** Water by volume, 0–1. */
    moisture: Share.nullable(),
    hardness: Hardness.nullable(),
    /** N·m of the studded disc. */
    traction: within(0, 200, 'N·m').nullable(),
    /** kPa on the cone. */
    penetration: within(0, 20000, 'kPa').nullable(),
    /** mm/h */
    infiltration: within(0, 5000, 'mm/h').nullable(),
    /** Depth of the deepest rut, m. */
    rut: within(0, 1, 'm').nullable(),
    /** °C */
    canopyTemperature: within(-60, 90, '°C').nullable(),
    soilTemperature: within(-40, 70, '°C').nullable(),
  })
  .refine((spot) => Object.entries(spot).some(([name, value]) => name !== 'zone' && name !== 'point' && value !== null), {
    path: ['zone'],
    message: 'has no reading at all',
  })
  .readonly();
export type SpotReading = z.infer<typeof SpotReading>;

export const Defect = z
  .strictObject({
    zone: ZoneLetter,
    kind: z.enum(defectKinds),
    /** m, m², m; null where not measured. */
    length: within(0, 500, 'm').nullable(),
    area: within(0, 20000, 'm²').nullable(),
    depth: within(0, 2, 'm').nullable(),
    cause: z.enum(defectCauses),
    chargeable: z.boolean(),
    /** Number of the clause it is charged under; null where none is named. */
    clause: z.string().trim().min(1).max(40).nullable(),
    words: Note,
  })
  .readonly();
export type Defect = z.infer<typeof Defect>;

export const SpillFound = z
  .strictObject({
    zone: ZoneLetter,
    agent: z.enum(spillAgents),
    /** l; null where nobody knows. */
    volume: within(0, 100000, 'l').nullable(),
    area: within(0.01, 20000, 'm²'),
    /** When it happened; null where nobody knows. */
    at: LocalTime.nullable(),
    /** What was done about it. */
    treatment: Note,
  })
  .readonly();
export type SpillFound = z.infer<typeof SpillFound>;

/** Who stood by: a name, or that a name was declined. */
export const Witness = z.discriminatedUnion('answer', [
  z.strictObject({ answer: z.literal('named'), party: Name, name: Name }),
  z.strictObject({ answer: z.literal('declined'), party: Name }),
]);
export type Witness = z.infer<typeof Witness>;

const entered = {
  venueId: Id,
  /** The event it belongs to; null for the field as it is. */
  bookingId: Id.nullable(),
  kind: z.enum(inspectionKinds),
  at: LocalTime,
  inspector: Name,
  /** Weather and ground in words. */
  weather: Note,
  note: Note,
  readings: z.array(SpotReading).max(400).readonly(),
  defects: z.array(Defect).max(200).readonly(),
  spills: z.array(SpillFound).max(100).readonly(),
  witnesses: z.array(Witness).max(20).readonly(),
  photographs: z.array(Id).max(200).readonly(),
  /** The inspection this one puts right, which stays where it is; null for a first writing. */
  corrects: Id.nullable(),
};

/** An inspection as it is entered. */
export const NewInspection = z.strictObject(entered).readonly();
export type NewInspection = z.infer<typeof NewInspection>;

/** A kept inspection. It is never changed: a correction is another one that names it. */
export const Inspection = z
  .strictObject({
    id: Id,
    ...entered,
    /** UTC */
    enteredAt: z.iso.datetime(),
  })
  .readonly();
export type Inspection = z.infer<typeof Inspection>;

/** In a list an inspection says whether it still stands. */
export const InspectionLine = z
  .strictObject({
    inspection: Inspection,
    /** The later inspection that puts it right; null while it stands. */
    correctedBy: Id.nullable(),
  })
  .readonly();
export type InspectionLine = z.infer<typeof InspectionLine>;
