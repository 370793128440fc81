import type { Booking, Incident } from '#shared/vocabulary/booking.ts';

/** Runs that were frozen before incidents could be entered have none. */
export const incidentsOf = (booking: Booking): readonly Incident[] =>
  (booking as { readonly incidents?: Booking['incidents'] }).incidents ?? [];
