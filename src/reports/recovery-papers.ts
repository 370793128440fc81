import type { PlanRun } from '#shared/contract/contract.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { BookingMoney, Estimate } from '#shared/vocabulary/money.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';

/** One kept plan with the frozen things it was made from. */
export interface KeptPlan {
  readonly booking: Booking;
  readonly forecast: ForecastRun;
  readonly plan: PlanRun;
  readonly estimate: Estimate;
}

/** One reading at a point of a zone, in words and units as it was taken. */
export interface SeenReading {
  readonly zone: string;
  readonly point: string;
  readonly what: string;
  readonly value: string;
  /** What the forecast had for that day; empty where it says nothing of it. */
  readonly forecast: string;
  /** What the venue asks for; empty where it asks nothing. */
  readonly required: string;
  /** Whether it is met; null where nothing is asked. */
  readonly met: boolean | null;
}

/** A defect or a spill as it was recorded. */
export interface SeenDefect {
  readonly zone: string;
  readonly words: string;
  /** Length, area, depth in words. */
  readonly size: string;
  readonly cause: string;
  readonly clause: string;
}

export interface SeenPicture {
  readonly caption: string;
  /** JPEG or PNG; null where only the record is there. */
  readonly bytes: Uint8Array | null;
}

/** One walk over the field. */
export interface SeenInspection {
  /** Baseline, handback, +24 h … in words. */
  readonly stage: string;
  readonly at: LocalTime;
  readonly by: string;
  readonly witness: string;
  readonly weather: string;
  readonly readings: readonly SeenReading[];
  readonly defects: readonly SeenDefect[];
  readonly pictures: readonly SeenPicture[];
  /** Mean live cover seen by zone, 0–1. */
  readonly cover: Readonly<Record<string, number>>;
  readonly note: string;
}

/** Hours in fact of everything that lay on a zone, beside those of the first kept plan. */
export interface SeenHours {
  readonly zone: string;
  readonly on: LocalTime;
  readonly off: LocalTime;
  /** null: the zone was not booked then. */
  readonly bookedOn: LocalTime | null;
  readonly bookedOff: LocalTime | null;
}

/** What was seen and done, as far as it is recorded. Empty lists mean that nothing is. */
export interface Evidence {
  readonly inspections: readonly SeenInspection[];
  readonly hours: readonly SeenHours[];
  /** What was learnt from this event, in words. */
  readonly lessons: readonly string[];
  /** Settings of the venue that changed after this event, in words. */
  readonly changedSettings: readonly string[];
  /** Past events here: forecast against fact, in words. */
  readonly pastCases: readonly string[];
}

export const nothingSeen: Evidence = { inspections: [], hours: [], lessons: [], changedSettings: [], pastCases: [] };

/** One event of the season with what is kept of it. */
export interface SeasonEvent {
  readonly kept: KeptPlan;
  readonly money: BookingMoney;
}

/** Everything the papers of one plan are written from: frozen runs and records that only grow, so that the same run gives the same bytes. */
export interface RecoveryPapers extends KeptPlan {
  readonly venue: Venue;
  readonly coverings: readonly Covering[];
  readonly vehicles: readonly Vehicle[];
  readonly fixtures: readonly Fixture[];
  /** Other events of the venue. */
  readonly others: readonly Booking[];
  readonly money: BookingMoney;
  readonly alternatives: readonly KeptPlan[];
  /** Plans of the same booking kept before this one, newest first. */
  readonly earlier: readonly PlanRun[];
  /** Newest plan of every event of the year, up to this plan; for the ledger of the season alone. */
  readonly season: readonly SeasonEvent[];
  readonly evidence: Evidence;
}
