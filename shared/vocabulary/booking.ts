import { z } from 'zod';
import { Polygon } from '#shared/vocabulary/geometry.ts';
import { plainReason } from '#shared/vocabulary/plain-reason.ts';
import { Id, LocalDate, LocalTime, Name, Note, Revision, Share, within } from '#shared/vocabulary/primitives.ts';

export const eventKinds = ['concert', 'concert-in-the-round', 'festival', 'rink', 'dirt-show', 'ceremony', 'other'] as const;
export type EventKind = (typeof eventKinds)[number];

/** How far a booking has come, in the order it usually goes. */
export const bookingStages = [
  'enquiry',
  'hold',
  'offered',
  'confirmed',
  'advanced',
  'building',
  'live',
  'striking',
  'handed-back',
  'recovering',
  'certified',
  'settled',
  'archived',
  'cancelled',
] as const;

/** What a zone of an event is for; each has its own stress. */
export const zoneUses = [
  'stage',
  'wings',
  'crane-pad',
  'pit',
  'thrust',
  'standing',
  'seating',
  'mix-position',
  'tower',
  'haul-route',
  'gate',
  'cable-run',
  'catering',
  'egress',
  'rink',
  'rink-walk',
  'chiller-line',
  'dirt-track',
  'other',
] as const;
export type ZoneUse = (typeof zoneUses)[number];

/** The ground one part of the event takes. A spot that lies in several belongs to the one listed first. */
export const EventZone = z
  .strictObject({
    letter: z.string().regex(/^[A-Z][A-Z0-9]?$/, 'must be a capital letter, perhaps with one more letter or digit'),
    name: Name,
    use: z.enum(zoneUses),
    outline: Polygon,
  })
  .readonly();
export type EventZone = z.infer<typeof EventZone>;

/** What stands on the covering. Anything but `open` shuts out all light, whatever the covering passes. */
export const loadings = ['open', 'chairs', 'stage', 'deck', 'plant', 'ice', 'fill'] as const;

/** Things done to a covering between its on and its off, each from hour to hour, every day it lies. */
export const careKinds = ['lift', 'prop', 'mist', 'sub-surface-air', 'soil-heating'] as const;
export const Care = z
  .strictObject({ kind: z.enum(careKinds), from: LocalTime, until: LocalTime, /** Share of the zone it reaches. */ share: Share })
  .refine((care) => care.until > care.from, { path: ['until'], message: 'must be after it starts' })
  .readonly();
export type Care = z.infer<typeof Care>;

/** One covering on one zone from hour to hour. */
export const Layer = z
  .strictObject({
    zone: z.string(),
    covering: Id,
    on: LocalTime,
    off: LocalTime,
    loading: z.enum(loadings),
    /** Share of light left by dirt on the covering. */
    cleanliness: Share,
    /** Leg load on one base plate and the plate's side; null where nothing stands on legs. */
    legs: z
      .strictObject({ load: within(0, 500, 'kN'), plate: within(0.05, 3, 'm'), spacing: within(0.3, 20, 'm') })
      .readonly()
      .nullable(),
    /** °C the ice is held at; null where there is none. */
    iceTemperature: within(-20, 0, '°C').nullable(),
    care: z.array(Care).max(60).readonly(),
  })
  .refine((layer) => layer.off > layer.on, { path: ['off'], message: 'must be after it goes on' })
  .readonly();
export type Layer = z.infer<typeof Layer>;

export const activities = ['seated', 'standing', 'dancing', 'walking', 'skating', 'working'] as const;

/** People in a zone for some hours. */
export const Crowd = z
  .strictObject({
    zone: z.string(),
    from: LocalTime,
    until: LocalTime,
    /** people per m² */ density: within(0, 6, 'people/m²'),
    activity: z.enum(activities),
  })
  .refine((crowd) => crowd.until > crowd.from, { path: ['until'], message: 'must be after it starts' })
  .readonly();
export type Crowd = z.infer<typeof Crowd>;

/** One class of machine crossing a zone a number of times. */
export const Traffic = z
  .strictObject({
    zone: z.string(),
    vehicle: Id,
    at: LocalTime,
    passes: z.int().min(1).max(5000),
    /** Whether it turns there. */ turning: z.boolean(),
  })
  .readonly();
export type Traffic = z.infer<typeof Traffic>;

/** What can be spilt on turf. The first five are the agents of a published trial on bermudagrass. */
export const spillAgents = [
  'petrol',
  'motorOil',
  'hydraulicOil',
  'brakeFluid',
  'grease',
  'propyleneGlycol',
  'ethyleneGlycol',
  'salt',
  'iceMelt',
  'drink',
] as const;
export type SpillAgent = (typeof spillAgents)[number];

/** What can go wrong on a zone: something spilt, or water that ran onto the turf and froze there. */
export const incidentKinds = [...spillAgents, 'ice'] as const;
export const Incident = z
  .strictObject({
    zone: z.string(),
    kind: z.enum(incidentKinds),
    at: LocalTime,
    /** m² of turf it lies on. */
    area: within(0.01, 20000, 'm²'),
    /** min until a spill was treated (detergent for oils, flushing for the rest); null where it was not, and for ice. */
    treatedAfter: within(0, 100000, 'min').nullable(),
    /** When ice had gone from the turf; null for a spill. */
    until: LocalTime.nullable(),
  })
  .refine((incident) => incident.kind !== 'ice' || (incident.until !== null && incident.until > incident.at), {
    path: ['until'],
    message: 'must say when the ice had gone, after it formed',
  })
  .refine((incident) => incident.kind === 'ice' || incident.until === null, {
    path: ['until'],
    message: 'is for ice only; a spill stays until the turf is back',
  })
  .refine((incident) => incident.kind !== 'ice' || incident.treatedAfter === null, {
    path: ['treatedAfter'],
    message: 'is for spills only',
  })
  .readonly();
export type Incident = z.infer<typeof Incident>;

/** What is asked before an event is answered for. A blank is an assumption, and is shown as one. */
export const intakeQuestions = [
  'first-truck',
  'load-out',
  'spare-day',
  'nights',
  'structure',
  'cranes',
  'trucks',
  'night-moves',
  'floor',
  'cleanliness',
  'services',
  'water-and-ice',
  'fire-and-confetti',
  'crowd',
  'money',
  'contact',
  'afterwards',
] as const;
export type IntakeQuestion = (typeof intakeQuestions)[number];

export const Booking = z
  .strictObject({
    id: Id,
    revision: Revision,
    venueId: Id,
    name: Name,
    kind: z.enum(eventKinds),
    stage: z.enum(bookingStages),
    note: Note,
    zones: z.array(EventZone).max(40).readonly(),
    layers: z.array(Layer).max(200).readonly(),
    crowds: z.array(Crowd).max(200).readonly(),
    traffic: z.array(Traffic).max(200).readonly(),
    /** What went wrong. Left out in files of earlier versions: nothing did. */
    incidents: z.array(Incident).max(100).readonly().default([]),
    /** Other days asked for in the same enquiry, by their first day, best liked first. */
    otherDates: z.array(LocalDate).max(12).readonly().optional(),
    /** Answers to the intake questions; what is left out was not answered. */
    intake: z.partialRecord(z.enum(intakeQuestions), Note).readonly().optional(),
  })
  .readonly();
export type Booking = z.infer<typeof Booking>;

/** What need not hold yet while a booking is being changed: what one field says of another, and the limits of one. */
const mayStillBreak: ReadonlySet<string> = new Set(['custom', 'too_small', 'too_big']);

/**
 * A booking as it is being changed. It has a key, its venue and the shape of a booking; it may contradict itself or leave a limit, as
 * happens half way through a change.
 */
export const UnfinishedBooking = z
  .looseObject(Booking.unwrap().pick({ id: true, venueId: true, revision: true }).shape)
  .transform((written, context): Booking => {
    const read = Booking.safeParse(written, { error: plainReason });
    if (read.success) return read.data;
    for (const issue of read.error.issues.filter(({ code }) => !mayStillBreak.has(code))) {
      const path = issue.code === 'unrecognized_keys' ? [...issue.path, ...issue.keys.slice(0, 1)] : issue.path;
      context.addIssue({ code: 'custom', path, message: issue.message });
    }
    return { incidents: [], ...written } as unknown as Booking;
  });
