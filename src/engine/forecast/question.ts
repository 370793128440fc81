import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import type { ForecastDay } from '#engine/weather/near-term.ts';
import type { DatedWeatherDay } from '#engine/weather/weather-day.ts';

/** Everything a forecast depends on: the same question gives the same bytes. */
export interface ForecastQuestion {
  readonly venue: Venue;
  /** The home date that counts. */
  readonly homeDate: Fixture;
  /** The event, or null for the field left alone. */
  readonly booking: Booking | null;
  /** Other events of the venue that fall into the same weeks; their stress is added on the same cells. */
  readonly others: readonly Booking[];
  /** Play and practice; those between the event and the home date wear the turf. */
  readonly fixtures: readonly Fixture[];
  readonly coverings: readonly Covering[];
  readonly vehicles: readonly Vehicle[];
  /** The catalogue's values with the venue's own settings laid over them. */
  readonly parameters: ParameterValues;
  /** 1 is the usual season without chance; more are drawn members. */
  readonly members: number;
  readonly seed: number;
  /**
   * Where a run was weighed by readings: which of `from` draws make its members, by index; one that agrees well stands several times.
   * Left out, the members are the draws 0 to `members` − 1.
   */
  readonly draws?: { readonly from: number; readonly index: readonly number[] };
  /** Factor on the doubt of every number; 1 where left out. */
  readonly widened?: number;
  /** m */
  readonly cellSize: 1 | 2 | 4;
  /** Days of observed years that members are resampled from; empty where only monthly normals are known. */
  readonly observed: readonly DatedWeatherDay[];
  /** Days that were logged; they replace those days in every member. */
  readonly actual: readonly DatedWeatherDay[];
  /**
   * The moment that counts as the first thing that happens, where an option must share its days with another; left out: what is booked
   * says it.
   */
  readonly begin?: string | null;
  /** Days expected next; members spread about them. */
  readonly expected: readonly ForecastDay[];
}
