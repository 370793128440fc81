import { z } from 'zod';
import { Id, LocalTime, Name, Note, Share, within } from '#shared/vocabulary/primitives.ts';

export const photographTypes = ['image/jpeg', 'image/png'] as const;
export type PhotographType = (typeof photographTypes)[number];

const entered = {
  venueId: Id,
  bookingId: Id.nullable(),
  /** Letter of the zone and name of the fixed point it was taken from; null where it has none. */
  zone: z.string().min(1).max(2).nullable(),
  point: Name.nullable(),
  takenAt: LocalTime,
  /** Where the camera looked, degrees clockwise from north; null for straight down or unknown. */
  bearing: within(0, 360, '°').nullable(),
  fileName: Name,
  words: Note,
};

/** What the camera noted in the file itself; its clock and its compass may be wrong, so it stands beside what a person entered. */
export const CameraNote = z
  .strictObject({
    /** Wall clock of the camera to the second, `2027-07-19T15:20:31`; null where it noted none. */
    takenAt: z
      .string()
      .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/)
      .nullable(),
    /** Hours of that clock ahead of universal time, `-05:00`; null where it noted none. */
    offset: z
      .string()
      .regex(/^[+-]\d\d:\d\d$/)
      .nullable(),
    /** Degrees clockwise from the north it names; null where it noted none. */
    bearing: within(0, 360, '°').nullable(),
    north: z.enum(['true', 'magnetic']).nullable(),
  })
  .readonly();
export type CameraNote = z.infer<typeof CameraNote>;

export const NewPhotograph = z
  .strictObject({
    ...entered,
    /** Time and bearing that the camera noted in the file go before those entered here. */
    fromCamera: z.boolean().default(false),
  })
  .readonly();
export type NewPhotograph = z.infer<typeof NewPhotograph>;

/** A kept photograph. Its bytes lie untouched in a folder beside the workspace under the name of their hash. */
export const Photograph = z
  .strictObject({
    id: Id,
    ...entered,
    mediaType: z.enum(photographTypes),
    /** Pixels as the file stores them. */
    width: z.int().min(1),
    height: z.int().min(1),
    bytes: z.int().min(1),
    /** SHA-256 of the bytes, 64 hexadecimal digits. */
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
    enteredAt: z.iso.datetime(),
    /** Null where the file holds no note, and for photographs kept before notes were read. */
    camera: CameraNote.nullable().default(null),
  })
  .readonly();
export type Photograph = z.infer<typeof Photograph>;

/** What counts as a green pixel: hue in degrees, saturation 0–1, both ends included. */
export const GreenBandSetting = z
  .strictObject({
    hueLow: within(0, 360, '°'),
    hueHigh: within(0, 360, '°'),
    saturationLow: Share,
    saturationHigh: Share,
  })
  .refine((band) => band.hueHigh > band.hueLow && band.saturationHigh > band.saturationLow, {
    path: ['hueHigh'],
    message: 'must be above the low end',
  })
  .readonly();

/** A named preset of thresholds, or one's own. */
export const GreenThresholds = z.union([z.enum(['first', 'later']), GreenBandSetting]);
export type GreenThresholds = z.infer<typeof GreenThresholds>;

/** The inside of a quadrat frame: its four corners in turn, as shares of the picture's width and height from the top left. */
export const FrameCorners = z
  .array(z.tuple([Share, Share]).readonly())
  .length(4, 'must have four corners')
  .readonly();
export type FrameCorners = z.infer<typeof FrameCorners>;

/** What the picture itself says against the number. */
export const photographLimits = [
  'shadow',
  'glare',
  'dead-leaf',
  'blur',
  'few-pixels',
  'thresholds-disagree',
  'no-frame',
] as const;
export type PhotographLimit = (typeof photographLimits)[number];

/** Green cover of a photograph, with everything that limits it. */
export const CoverMeasurement = z
  .strictObject({
    /** Pixels as seen, turned upright. */
    width: z.int(),
    height: z.int(),
    /** Pixels that were looked at: inside the frame. */
    counted: z.int(),
    /** Green pixels over counted ones, 0–1. */
    cover: z.number(),
    /** The same by the other preset of thresholds: how far the number hangs on the setting. */
    coverByOther: z.number(),
    /** Mean dark green colour index of the green pixels; null where there are none. */
    greenIndex: z.number().nullable(),
    /** Shares of the counted pixels: too dark to have a hue one can trust, washed out, and of the colour of straw or sand. */
    dark: z.number(),
    bright: z.number(),
    straw: z.number(),
    /** The cover if every pixel that is too dark or too bright were bare, and if every one were green. */
    least: z.number(),
    most: z.number(),
    /** Step of brightness from pixel to pixel as a share of that over eight pixels: an eighth where all is blurred; null on one even tone. */
    sharpness: z.number().nullable(),
    limits: z.array(z.strictObject({ kind: z.enum(photographLimits), words: z.string() }).readonly()).readonly(),
    /** The picture, made small: what counted as green is green, the rest grey, outside the frame black. */
    preview: z.strictObject({ mediaType: z.literal('image/png'), base64: z.string() }).readonly(),
  })
  .readonly();
export type CoverMeasurement = z.infer<typeof CoverMeasurement>;
