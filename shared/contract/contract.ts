import { z } from 'zod';
import { Job } from '#shared/contract/job.ts';
import { asks, changes, works } from '#shared/contract/operation.ts';
import { Booking, eventKinds, bookingStages } from '#shared/vocabulary/booking.ts';
import { Covering } from '#shared/vocabulary/covering.ts';
import { Forecast, ForecastRun } from '#shared/vocabulary/forecast.ts';
import { Id, LocalTime, Revision } from '#shared/vocabulary/primitives.ts';
import { Vehicle } from '#shared/vocabulary/vehicle.ts';
import { Fixture, Venue } from '#shared/vocabulary/venue.ts';

const nothing = z.strictObject({});
const byId = z.strictObject({ id: Id });
const byVenue = z.strictObject({ venueId: Id });
const Removal = z.strictObject({ id: Id, revision: Revision });
const Seed = z
  .int()
  .min(0)
  .max(2 ** 31 - 1);
/** 1 is the venue's usual season without chance; more are drawn members. */
const Members = z.int().min(1).max(1000);

const VenueLine = z.strictObject({ id: Id, name: z.string(), revision: Revision }).readonly();
const BookingLine = z
  .strictObject({
    id: Id,
    venueId: Id,
    name: z.string(),
    kind: z.enum(eventKinds),
    stage: z.enum(bookingStages),
    firstOn: LocalTime.nullable(),
    lastOff: LocalTime.nullable(),
    revision: Revision,
  })
  .readonly();
const RunLine = z
  .strictObject({
    id: Id,
    bookingId: Id.nullable(),
    venueId: Id,
    fixtureId: Id,
    createdAt: z.string(),
    members: z.int(),
    seed: z.int(),
  })
  .readonly();

/** A venue with all that belongs to it, as one document that another workspace can take in. */
export const VenueDocument = z
  .strictObject({
    format: z.literal('fieldback-venue'),
    version: z.literal(1),
    venue: Venue,
    coverings: z.array(Covering).max(100).readonly(),
    vehicles: z.array(Vehicle).max(200).readonly(),
    fixtures: z.array(Fixture).max(2000).readonly(),
    bookings: z.array(Booking).max(1000).readonly(),
  })
  .readonly();
export type VenueDocument = z.infer<typeof VenueDocument>;

/** A file the application wrote; `base64` holds its bytes. */
export const WrittenFile = z.strictObject({ fileName: z.string(), mediaType: z.string(), base64: z.string() }).readonly();
export type WrittenFile = z.infer<typeof WrittenFile>;

/** What a forecast is asked of: a stored booking, one not stored (to try something), or none. */
const ForecastQuestion = {
  venueId: Id,
  /** The home date that counts. */
  fixtureId: Id,
  bookingId: Id.nullable(),
};

/** Every operation, by name. Doors, services and tests all read this one list. */
export const contract = {
  'workspace/about': asks(
    'What this workspace is',
    nothing,
    z
      .strictObject({
        version: z.string(),
        engineVersion: z.string(),
        parameterVersion: z.string(),
        schemaVersion: z.string(),
        file: z.string(),
        venues: z.int(),
      })
      .readonly(),
  ),
  'catalogue/read': asks(
    'Every number the engine uses, with unit, range, standing and source',
    nothing,
    z.strictObject({ parameters: z.record(z.string(), z.unknown()), sources: z.record(z.string(), z.unknown()) }).readonly(),
  ),

  'venue/list': asks('All venues', nothing, z.array(VenueLine)),
  'venue/read': asks('One venue', byId, Venue),
  'venue/save': changes('Store a venue; revision 0 makes a new one', z.strictObject({ venue: Venue }), Venue),
  'venue/remove': changes('Remove a venue with all that belongs to it', Removal, nothing),
  'venue/export': asks('A venue with all that belongs to it as one document', byId, VenueDocument),
  'venue/import': changes('Take in an exported venue under its own id', z.strictObject({ document: VenueDocument }), Venue),

  'covering/list': asks('The covering classes', nothing, z.array(Covering)),
  'covering/save': changes('Store a covering class', z.strictObject({ covering: Covering }), Covering),
  'vehicle/list': asks('The machine classes', nothing, z.array(Vehicle)),
  'vehicle/save': changes('Store a machine class', z.strictObject({ vehicle: Vehicle }), Vehicle),

  'fixture/list': asks('Home dates, practice and blackouts of a venue', byVenue, z.array(Fixture)),
  'fixture/save': changes('Store a home date, practice or blackout', z.strictObject({ fixture: Fixture }), Fixture),
  'fixture/remove': changes('Remove one', Removal, nothing),

  'booking/list': asks('The bookings of a venue in the order they begin', byVenue, z.array(BookingLine)),
  'booking/read': asks('One booking', byId, Booking),
  'booking/save': changes('Store a booking; revision 0 makes a new one', z.strictObject({ booking: Booking }), Booking),
  'booking/remove': changes('Remove a booking', Removal, nothing),

  'forecast/run': works(
    'Foresee a booking on a home date and keep the run',
    z.strictObject({ ...ForecastQuestion, members: Members, seed: Seed }),
    ForecastRun,
  ),
  'forecast/preview': asks(
    'The usual season of a booking that need not be stored; nothing is kept',
    z.strictObject({
      venueId: Id,
      fixtureId: Id,
      booking: Booking.nullable(),
      cellSize: z.union([z.literal(1), z.literal(2), z.literal(4)]),
    }),
    Forecast,
  ),
  'forecast/list': asks('The kept runs of a venue, newest first', byVenue, z.array(RunLine)),
  'forecast/read': asks('One kept run', byId, ForecastRun),

  'job/read': asks('How far long work has come, and its result', z.strictObject({ id: z.string() }), Job),
  'job/cancel': asks('Stop long work', z.strictObject({ id: z.string() }), Job),
} as const;

export type Contract = typeof contract;
export type OperationName = keyof Contract;
export type RequestOf<Name extends OperationName> = z.input<Contract[Name]['request']>;
/** The value a good answer carries; long work carries a job instead, whose `value` is this. */
export type ReplyOf<Name extends OperationName> = z.output<Contract[Name]['reply']>;
export type ValueOf<Name extends OperationName> = Contract[Name]['long'] extends true ? Job : ReplyOf<Name>;

export const operationNames = Object.keys(contract) as readonly OperationName[];
