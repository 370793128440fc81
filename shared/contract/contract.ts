import { z } from 'zod';
import { Job } from '#shared/contract/job.ts';
import { asks, changes, works } from '#shared/contract/operation.ts';
import { ForecastAnswers } from '#shared/vocabulary/answers.ts';
import { Booking, UnfinishedBooking, eventKinds, bookingStages } from '#shared/vocabulary/booking.ts';
import { Way, WayOutcome } from '#shared/vocabulary/comparison.ts';
import { Covering } from '#shared/vocabulary/covering.ts';
import { Forecast, ForecastRun } from '#shared/vocabulary/forecast.ts';
import { Polygon } from '#shared/vocabulary/geometry.ts';
import { InspectionLine, NewInspection } from '#shared/vocabulary/inspection.ts';
import { Assimilation, Proposal } from '#shared/vocabulary/learning.ts';
import { BookingMoney, Estimate, MoneyTerms, NewEntry, PriceBook } from '#shared/vocabulary/money.ts';
import { DoneJob, jobKinds, Lock, Mend, RecoveryPlan, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import {
  CoverMeasurement,
  FrameCorners,
  GreenThresholds,
  NewPhotograph,
  Photograph,
  photographTypes,
} from '#shared/vocabulary/photograph.ts';
import { Id, LocalDate, LocalTime, Name, Note, Revision, Share } from '#shared/vocabulary/primitives.ts';
import { SodDecision } from '#shared/vocabulary/sod.ts';
import { WeatherOfDay, WeatherReading, dayStandings } from '#shared/vocabulary/weather.ts';
import { unitSystems } from '#shared/units/quantity.ts';
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

/** Room on the disk, and how much of it lies free inside the file; bytes. */
const FileSize = z.strictObject({ bytes: z.int(), spare: z.int() }).readonly();
const CopyLine = z
  .strictObject({
    path: z.string(),
    /** UTC. */
    madeAt: z.string(),
    reason: z.enum(['scheduled', 'before-migration', 'asked']),
    bytes: z.int(),
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

/** A kept plan: made from one frozen forecast, never changed afterwards. */
export const PlanRun = z
  .strictObject({
    id: Id,
    forecastId: Id,
    venueId: Id,
    bookingId: Id.nullable(),
    fixtureId: Id,
    createdAt: z.string(),
    now: LocalTime,
    plan: RecoveryPlan,
  })
  .readonly();
export type PlanRun = z.infer<typeof PlanRun>;
const PlanLine = z
  .strictObject({
    id: Id,
    forecastId: Id,
    bookingId: Id.nullable(),
    fixtureId: Id,
    createdAt: z.string(),
    jobs: z.int(),
    orders: z.int(),
    total: z.number(),
  })
  .readonly();

/** What can be printed or exported from a plan. */
export const paperKinds = [
  'recovery-report',
  'meeting-sheet',
  'sod-order',
  'recovery-chart',
  'hold-answer',
  'field-use-conditions',
  'promoter-map',
  'night-before',
  'shift-sheet',
  'inspection-form',
  'test-sheet',
  'charge-back',
  'season-ledger',
  'calendar',
  'zone-table',
  'job-table',
  'sod-table',
  'cost-table',
] as const;
export type PaperKind = (typeof paperKinds)[number];

/** A photograph as it travels: the Base64 of a JPEG or PNG file of at most 6 MB. */
const PhotographBytes = z.string().min(1).max(8_388_608);
/** Of one event, or null for the whole venue. */
const ofEvent = z.strictObject({ venueId: Id, bookingId: Id.nullable() });
const Weighing = {
  /** A kept run of an event; a weighed one leads back to the run it came from. */
  forecastId: Id,
  /** Null: as many as the run had, at least 200. */
  members: z.int().min(50).max(1000).nullable(),
};

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
        size: FileSize,
      })
      .readonly(),
  ),
  'workspace/copies': asks('The copies beside the workspace, newest first', nothing, z.array(CopyLine)),
  'workspace/copy': changes('Copy the workspace now', nothing, CopyLine),
  'workspace/compact': changes(
    'Give free room inside the file back to the disk',
    nothing,
    z.strictObject({ before: FileSize, after: FileSize }).readonly(),
  ),
  'workspace/restore': changes(
    'Put a copy in the place of a workspace that cannot be opened; one that is whole is left as it is',
    z.strictObject({
      /** Path of a copy; null for the newest good one. */
      copy: z.string().min(1).max(4000).nullable(),
    }),
    z
      .strictObject({
        restored: z.boolean(),
        /** The copy that now stands in its place. */
        from: z.string().nullable(),
        /** Where the file that stood there was put. */
        putAside: z.string().nullable(),
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

  'draft/keep': changes(
    'Keep a booking as it is being changed, without storing it; one draft a booking',
    z.strictObject({ booking: UnfinishedBooking }),
    z.strictObject({ keptAt: z.string() }).readonly(),
  ),
  'draft/list': asks(
    'What was changed on bookings and not stored, newest first',
    byVenue,
    z.array(
      z
        .strictObject({
          /** UTC. */
          keptAt: z.string(),
          booking: UnfinishedBooking,
        })
        .readonly(),
    ),
  ),
  'draft/drop': changes('Let go of what was changed on a booking', z.strictObject({ bookingId: Id }), nothing),

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
  'forecast/answers': works(
    'Everything that can be asked of a kept forecast, or of a booking that need not be stored: ranges by zone and day, hardness, area to replace, the value of other days, hours and floors, and what reading would narrow it most; nothing is kept',
    z
      .strictObject({
        /** A kept run, answered from its frozen input; null where a booking is given. */
        forecastId: Id.nullable(),
        trial: z
          .strictObject({ venueId: Id, fixtureId: Id, booking: Booking.nullable(), members: Members, seed: Seed })
          .readonly()
          .nullable(),
      })
      .refine(({ forecastId, trial }) => (forecastId === null) !== (trial === null), {
        path: ['trial'],
        message: 'must be given where no kept forecast is named, and only there',
      }),
    ForecastAnswers,
  ),
  'forecast/list': asks('The kept runs of a venue, newest first', byVenue, z.array(RunLine)),
  'forecast/read': asks('One kept run', byId, ForecastRun),

  'plan/make': works(
    'Plan the recovery after a kept forecast, with its sod order',
    z.strictObject({
      /** The forecast to the next home date. */
      forecastId: Id,
      /** Forecasts to later home dates of the season, each after the one before. */
      further: z.array(Id).max(11).readonly().default([]),
      /** The moment from which something can still be decided; null: now. */
      now: LocalTime.nullable(),
      locks: z.array(Lock).max(60).readonly(),
      /** Jobs that are over or under way at that moment; those that begin later are held to their beginning. */
      done: z.array(DoneJob).max(400).readonly(),
      /** Sod that is released already: the farm's notice runs from there. */
      released: RecoveryProblem.unwrap().shape.released.default([]),
      /** Changes of the circumstances that are agreed on, as an answer that there is no plan offers them. */
      mends: z.array(Mend).max(6).readonly().default([]),
      /** The plan that this one replaces and prefers to keep. */
      instead: Id.nullable(),
    }),
    PlanRun,
  ),
  'plan/list': asks('The kept plans of a venue, newest first', byVenue, z.array(PlanLine)),
  'plan/read': asks('One kept plan', byId, PlanRun),
  'plan/recheck': asks(
    'Which rules jobs of a kept plan would break at other hours, all other jobs staying where they are',
    z.strictObject({ id: Id, moves: z.array(DoneJob).min(1).max(400).readonly() }),
    z.array(
      z.strictObject({ zone: z.string(), window: Id, job: z.enum(jobKinds), broken: z.array(z.string()).readonly() }).readonly(),
    ),
  ),
  'plan/compare': works(
    'Foresee several ways to do an event with the same draws, each with what the recovery after it comes to; nothing is kept',
    z.strictObject({
      venueId: Id,
      ways: z.array(Way).min(1).max(24).readonly(),
      members: Members,
      seed: Seed,
      /** Whether the recovery after each way is planned too. */
      recovery: z.boolean(),
    }),
    z.array(WayOutcome),
  ),
  'plan/sod': works('Lay the farms of a kept plan side by side, and weigh a reserve against the need', byId, SodDecision),

  'report/write': asks(
    'Write a paper or a table from a kept plan',
    z.strictObject({
      planId: Id,
      kind: z.enum(paperKinds),
      paper: z.enum(['letter', 'a4']),
      units: z.enum(unitSystems),
      /** Other kept plans of the venue that stand beside it where the paper compares. */
      alternatives: z.array(Id).max(4).readonly().default([]),
    }),
    WrittenFile,
  ),

  'money/read': asks('Terms, prices and the account of a booking', z.strictObject({ bookingId: Id }), BookingMoney),
  'money/terms': changes(
    'Keep what was agreed about money for a booking; revision 0 for the first time',
    z.strictObject({ terms: MoneyTerms }),
    MoneyTerms,
  ),
  'money/set-prices': changes(
    'Keep the price book of a venue; revision 0 for the first time',
    z.strictObject({ book: PriceBook }),
    PriceBook,
  ),
  'money/enter-actual': changes(
    'Add a line of cost to a booking; a correction names the line it puts right',
    z.strictObject({ entry: NewEntry }),
    BookingMoney,
  ),
  'money/estimate': asks(
    'What a kept plan costs in a kind, a usual and a hard season, and who bears it',
    z.strictObject({ planId: Id }),
    Estimate,
  ),

  'inspection/add': changes(
    'Add an inspection; a correction names the one it puts right, which stays',
    z.strictObject({ inspection: NewInspection }),
    InspectionLine,
  ),
  'inspection/list': asks(
    'The inspections of a venue or of one event, in the order they were made',
    ofEvent,
    z.array(InspectionLine),
  ),
  'inspection/read': asks('One inspection', byId, InspectionLine),

  'photograph/add': changes(
    'Keep a photograph: its bytes untouched beside the workspace, a small picture in it',
    z.strictObject({ photograph: NewPhotograph, base64: PhotographBytes }),
    Photograph,
  ),
  'photograph/list': asks('The photographs of a venue or of one event, without their pictures', ofEvent, z.array(Photograph)),
  'photograph/read': asks(
    'One photograph, small or as it was taken',
    z.strictObject({ id: Id, size: z.enum(['small', 'original']) }),
    z.strictObject({ photograph: Photograph, mediaType: z.enum(photographTypes), base64: z.string() }).readonly(),
  ),
  'photograph/measure': asks(
    'Green cover of a photograph with its limits and a preview; nothing is kept',
    z.strictObject({
      of: z.union([z.strictObject({ id: Id }), z.strictObject({ base64: PhotographBytes })]),
      thresholds: GreenThresholds.default('first'),
      frame: FrameCorners.nullable(),
    }),
    CoverMeasurement,
  ),

  'learning/assimilate': works(
    'Weigh the members of a kept forecast by inspections and keep the forecast that goes on with them',
    z.strictObject({
      ...Weighing,
      /** Null: all of the event that stand. */
      inspections: z.array(Id).min(1).max(200).readonly().nullable(),
    }),
    Assimilation,
  ),
  'learning/replay': works(
    'Forecast a past event with what was known at a moment; what was seen later stands beside; nothing is kept',
    z.strictObject({ ...Weighing, knownAt: LocalTime }),
    z.strictObject({ assimilation: Assimilation, forecast: Forecast }).readonly(),
  ),
  'learning/read': asks(
    'How a run was weighed, with what was seen against what was forecast',
    z.strictObject({ runId: Id }),
    Assimilation,
  ),
  'learning/list': asks(
    'Weighed runs of a venue, and proposals with what became of them, newest first',
    byVenue,
    z.strictObject({ assimilations: z.array(Assimilation).readonly(), proposals: z.array(Proposal).readonly() }).readonly(),
  ),
  'learning/propose': works(
    'Learn from past events what the numbers of a venue may be; nothing changes until somebody accepts',
    z.strictObject({
      venueId: Id,
      /** Weighed runs, one an event; null: the newest of each. */
      runs: z.array(Id).min(1).max(40).readonly().nullable(),
      members: z.int().min(50).max(1000).default(400),
      seed: Seed.default(1),
      /** Standard errors beyond which a number counts as moved; null: the venue's own care. */
      surety: z.number().min(1).max(10).nullable().default(null),
    }),
    Proposal,
  ),
  'learning/accept': changes(
    'Take numbers of a proposal over into the settings of the venue',
    z.strictObject({
      id: Id,
      /** Null: all. */
      names: z.array(z.string().max(200)).max(400).readonly().nullable(),
      by: Name,
      reason: Note,
    }),
    Proposal,
  ),
  'learning/refuse': changes('Leave the venue as it is', z.strictObject({ id: Id, by: Name, reason: Note }), Proposal),

  'light/month': asks(
    'Light on the turf by zone on the mean day of a month',
    z.strictObject({ venueId: Id, month: z.int().min(1).max(12) }),
    z
      .strictObject({
        month: z.int(),
        /** mol/m²/d on open ground. */
        open: z.number(),
        zones: z
          .array(
            z
              .strictObject({
                letter: z.string(),
                name: z.string(),
                area: z.number(),
                mean: z.number(),
                darkest: z.number(),
                brightest: z.number(),
              })
              .readonly(),
          )
          .readonly(),
        cells: z
          .strictObject({ size: z.number(), x: z.array(z.number()), y: z.array(z.number()), light: z.array(z.number()) })
          .readonly(),
      })
      .readonly(),
  ),
  'light/shadow': asks(
    'Where the stands throw their shadow at an hour',
    z.strictObject({ venueId: Id, at: LocalTime }),
    z
      .strictObject({
        altitude: z.number(),
        azimuth: z.number(),
        size: z.number(),
        x: z.array(z.number()),
        y: z.array(z.number()),
        lit: z.array(Share),
        /** Rings to fill together: the shadow itself. */
        pieces: z.array(Polygon),
      })
      .readonly(),
  ),
  'climate/day': asks(
    'Temperature of the crowns hour by hour under each covering on one day',
    z.strictObject({
      venueId: Id,
      date: LocalDate,
      /** Coverings to compare; empty for all. */
      coverings: z.array(Id).max(100).readonly(),
      /** °C; null for the usual day of the season. */
      maximum: z.number().min(-60).max(58).nullable(),
      minimum: z.number().min(-70).max(45).nullable(),
      /** Day of lying that is shown, 1 the first. */
      dayOfLying: z.int().min(1).max(30),
    }),
    z
      .strictObject({
        air: z.array(z.number()).readonly(),
        under: z
          .array(
            z
              .strictObject({
                covering: Id,
                name: z.string(),
                hourly: z.array(z.number()).readonly(),
                mean: z.number(),
                maximum: z.number(),
              })
              .readonly(),
          )
          .readonly(),
      })
      .readonly(),
  ),

  'weather/import': changes(
    'Take in observed years from a weather file (CSV or EPW)',
    z.strictObject({ venueId: Id, format: z.enum(['csv', 'epw']), fileName: z.string().min(1).max(200), text: z.string() }),
    WeatherReading,
  ),
  'weather/set-days': changes(
    'Log actual days, or enter the days expected next',
    z.strictObject({ venueId: Id, standing: z.enum(dayStandings), days: z.array(WeatherOfDay).max(400).readonly() }),
    z.strictObject({ days: z.int() }).readonly(),
  ),
  'weather/read': asks(
    'What weather is known at a venue',
    byVenue,
    z
      .strictObject({
        observed: z.array(WeatherReading).readonly(),
        actual: z.array(WeatherOfDay).readonly(),
        expected: z.array(WeatherOfDay).readonly(),
      })
      .readonly(),
  ),

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
