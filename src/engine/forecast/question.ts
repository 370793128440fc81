import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { LocalDate } from '#shared/vocabulary/primitives.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';

/** One day of weather at the venue. */
export interface KnownDay {
  readonly date: LocalDate;
  /** °C */
  readonly maximum: number;
  readonly minimum: number;
  /** mm */
  readonly rain: number;
  /** MJ/m²/d */
  readonly radiation: number;
  /** kPa */
  readonly vapourPressure: number;
  /** m/s at 2 m */
  readonly wind: number;
}

/** Everything a forecast depends on: the same question gives the same bytes. */
export interface ForecastQuestion {
  readonly venue: Venue;
  /** The home date that counts. */
  readonly homeDate: Fixture;
  /** The event, or null for the field left alone. */
  readonly booking: Booking | null;
  readonly coverings: readonly Covering[];
  readonly vehicles: readonly Vehicle[];
  /** The catalogue's values with the venue's own settings laid over them. */
  readonly parameters: ParameterValues;
  /** 1 is the usual season without chance; more are drawn members. */
  readonly members: number;
  readonly seed: number;
  /** m */
  readonly cellSize: 1 | 2 | 4;
  /** Observed years that members are resampled from; empty where only monthly normals are known. */
  readonly observedYears: readonly (readonly KnownDay[])[];
  /** Days that are known: logged actuals, then a forecast typed in. They replace those days in every member. */
  readonly knownDays: readonly KnownDay[];
}
