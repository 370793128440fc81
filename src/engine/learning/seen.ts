import type { SeenQuantity } from '#shared/vocabulary/learning.ts';

/** What was read of one zone at one time, ready to be held against the members of a forecast. */
export interface Seen {
  /** Letter of the zone. */
  readonly zone: string;
  /** The evening of the forecast it belongs to, a date. */
  readonly evening: string;
  readonly quantity: SeenQuantity;
  /** Cover 0–1, or ruts in m. */
  readonly value: number;
  /** Standard deviation of the reading and the model together, in the unit of the value. */
  readonly error: number;
}

/**
 * Standard deviation of the mean of several readings beside a model that has an error of its own:
 *
 *     s = √(s_r²/n + s_m²)
 */
export const errorOfMean = (reading: number, readings: number, model: number): number =>
  Math.sqrt((reading * reading) / Math.max(1, readings) + model * model);
