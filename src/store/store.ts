import type { z } from 'zod';
import type { contract, PlanRun } from '#shared/contract/contract.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { Inspection, InspectionLine } from '#shared/vocabulary/inspection.ts';
import type { Assimilation, Proposal, ProposalDecision } from '#shared/vocabulary/learning.ts';
import type { MoneyEntry, MoneyTerms, PriceBook } from '#shared/vocabulary/money.ts';
import type { Photograph } from '#shared/vocabulary/photograph.ts';
import type { Id, LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import type { WeatherOfDay, WeatherReading } from '#shared/vocabulary/weather.ts';
import type { KeptDayStanding } from '#store/tables.ts';

type LineOf<Name extends 'venue/list' | 'booking/list' | 'forecast/list' | 'plan/list'> = z.infer<
  (typeof contract)[Name]['reply']
>[number];
export type VenueLine = LineOf<'venue/list'>;
export type BookingLine = LineOf<'booking/list'>;
export type RunLine = LineOf<'forecast/list'>;
export type PlanLine = LineOf<'plan/list'>;
export type Draft = z.infer<(typeof contract)['draft/list']['reply']>[number];

/** What became of a save or a removal of a thing that carries a revision. */
export type Stored<Value> =
  | { readonly outcome: 'stored'; readonly value: Value }
  /** Another revision stands in the file than the one named. */
  | { readonly outcome: 'stale'; readonly standing: number }
  | { readonly outcome: 'missing' };

/** Things of one kind that carry a revision: revision 0 makes a new one, any other must be the one in the file. */
export interface Revised<Value> {
  find(id: Id): Promise<Value | null>;
  save(value: Value): Promise<Stored<Value>>;
  remove(id: Id, revision: number): Promise<Stored<null>>;
}

/** Classes without a revision: the last save stands. */
export interface Classes<Value> {
  list(): Promise<readonly Value[]>;
  save(value: Value): Promise<void>;
}

/** A frozen run with what it was made from. */
export interface KeptRun {
  readonly run: ForecastRun;
  readonly members: number;
  readonly cellSize: number;
  /** Canonical JSON of the question; `run.inputHash` is its SHA-256. */
  readonly input: string;
}

/** Everything in a workspace, as one transaction sees it. */
export interface Contents {
  readonly venues: Revised<Venue> & { list(): Promise<readonly VenueLine[]> };
  readonly coverings: Classes<Covering>;
  readonly vehicles: Classes<Vehicle>;
  readonly fixtures: Revised<Fixture> & { ofVenue(venueId: Id): Promise<readonly Fixture[]> };
  readonly bookings: Revised<Booking> & {
    /** In the order they begin; those without a covering come last. */
    linesOfVenue(venueId: Id): Promise<readonly BookingLine[]>;
    ofVenue(venueId: Id): Promise<readonly Booking[]>;
    /** Those of which something lies on the turf between two moments, or at no known time. */
    near(venueId: Id, from: LocalTime, until: LocalTime): Promise<readonly Booking[]>;
  };
  readonly drafts: {
    /** Newest first. */
    ofVenue(venueId: Id): Promise<readonly Draft[]>;
    /** Puts a draft in the place of the one before of the same booking. */
    keep(draft: Draft): Promise<void>;
    drop(bookingId: Id): Promise<void>;
  };
  readonly runs: {
    find(id: Id): Promise<ForecastRun | null>;
    /** Canonical JSON of what a run was made from. */
    inputOf(id: Id): Promise<string | null>;
    linesOfVenue(venueId: Id): Promise<readonly RunLine[]>;
    keep(run: KeptRun): Promise<void>;
  };
  readonly plans: {
    find(id: Id): Promise<PlanRun | null>;
    /** Canonical JSON of the problem a plan answers. */
    inputOf(id: Id): Promise<string | null>;
    linesOfVenue(venueId: Id): Promise<readonly PlanLine[]>;
    /** The newest plan, none newer than `until`, of every event whose home date lies in a year: "2027". */
    newestOfYear(venueId: Id, year: string, until: string): Promise<readonly { readonly id: Id; readonly bookingId: Id }[]>;
    /** @param input canonical JSON of the problem the plan answers */
    keep(run: PlanRun, input: string): Promise<void>;
  };
  readonly weather: {
    readings(venueId: Id): Promise<readonly WeatherReading[]>;
    days(venueId: Id, standing: KeptDayStanding): Promise<readonly WeatherOfDay[]>;
    /** Takes in the days of a file; days of the same date give way. */
    takeIn(venueId: Id, reading: WeatherReading, days: readonly WeatherOfDay[]): Promise<void>;
    /** Puts days in the place of those with the same date; expected days are replaced as a whole. */
    setDays(venueId: Id, standing: 'actual' | 'expected', days: readonly WeatherOfDay[]): Promise<void>;
  };
  readonly money: {
    priceBook(venueId: Id): Promise<PriceBook | null>;
    savePriceBook(book: PriceBook): Promise<Stored<PriceBook>>;
    terms(bookingId: Id): Promise<MoneyTerms | null>;
    saveTerms(venueId: Id, terms: MoneyTerms): Promise<Stored<MoneyTerms>>;
    /** Lines of cost of a booking in the order they were entered. */
    entries(bookingId: Id): Promise<readonly MoneyEntry[]>;
    /** Adds one line; the number must be the next. */
    enter(venueId: Id, entry: MoneyEntry): Promise<void>;
  };
  readonly inspections: {
    find(id: Id): Promise<InspectionLine | null>;
    /** In the order they were made; all of the venue, or those of one event. */
    list(venueId: Id, bookingId: Id | null): Promise<readonly InspectionLine[]>;
    add(inspection: Inspection): Promise<void>;
  };
  readonly photographs: {
    find(id: Id): Promise<Photograph | null>;
    /** In the order they were taken, without their pictures. */
    list(venueId: Id, bookingId: Id | null): Promise<readonly Photograph[]>;
    thumbnail(id: Id): Promise<Uint8Array | null>;
    add(photograph: Photograph, thumbnail: Uint8Array): Promise<void>;
  };
  readonly learning: {
    assimilation(runId: Id): Promise<Assimilation | null>;
    /** Newest first. */
    assimilations(venueId: Id): Promise<readonly Assimilation[]>;
    keepAssimilation(assimilation: Assimilation & { readonly runId: Id }): Promise<void>;
    proposal(id: Id): Promise<Proposal | null>;
    /** Newest first, with what became of each. */
    proposals(venueId: Id): Promise<readonly Proposal[]>;
    keepProposal(proposal: Proposal): Promise<void>;
    /** Decides a proposal that stands open. */
    decide(proposal: Proposal, decision: ProposalDecision): Promise<void>;
  };
}

/** A copy beside the workspace file. */
export interface CopyLine {
  readonly path: string;
  /** UTC, ISO 8601. */
  readonly madeAt: string;
  readonly reason: 'scheduled' | 'before-migration' | 'asked';
  readonly bytes: number;
}

/** How much room the file takes on the disk, and how much of it lies free inside; bytes. */
export interface FileSize {
  readonly bytes: number;
  readonly spare: number;
}

/** One open workspace file. Errors of the database itself are thrown as they are (`SqliteError`). */
export interface Store {
  readonly file: string;
  /** Name of the last migration the file has. */
  readonly schemaVersion: string;
  size(): Promise<FileSize>;
  /** The copies beside the file, newest first. */
  copies(): readonly CopyLine[];
  /** Copies the workspace now; answers the copy. */
  copyNow(reason: 'asked' | 'scheduled'): Promise<CopyLine>;
  /** Gives free room inside the file back to the disk. */
  compact(): Promise<{ readonly before: FileSize; readonly after: FileSize }>;
  /** Reads inside one transaction: everything is seen as of one moment. */
  read<Result>(work: (contents: Contents) => Promise<Result>): Promise<Result>;
  /** Writes inside one transaction. Rolls back when `work` throws or answers `{ ok: false }`. Waits while another program writes. */
  write<Result>(work: (contents: Contents) => Promise<Result>): Promise<Result>;
}
