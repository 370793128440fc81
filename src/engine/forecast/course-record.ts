import { causes } from '#engine/injury/causes.ts';
import type { DayTrack } from '#engine/recovery/advance-days.ts';

/** What one group leaves behind besides its daily track. */
export interface CourseNotes {
  /** °C at the crowns while covered. */
  crownSum: number;
  crownHours: number;
  crownHighest: number;
  /** Light that reached the turf while covered, mol/m², and the days that make it up. */
  lightSum: number;
  lightDays: number;
  /** kPa */
  pressure: number;
  footfalls: number;
  /** Logarithm of leaf lost by cause at the end of every day, at [day·causes + cause]; null when nobody asks. */
  lost: Float64Array | null;
}

export const blankNotes = (days: number | null): CourseNotes => ({
  crownSum: 0,
  crownHours: 0,
  crownHighest: -Infinity,
  lightSum: 0,
  lightDays: 0,
  pressure: 0,
  footfalls: 0,
  lost: days === null ? null : new Float64Array(days * causes.length),
});

/** Notes to be written anew. */
export const clearNotes = (notes: CourseNotes): void => {
  notes.crownSum = notes.crownHours = notes.lightSum = notes.lightDays = notes.pressure = notes.footfalls = 0;
  notes.crownHighest = -Infinity;
};

/** A stand to be kept as it is on one evening. */
export interface Snapshot {
  readonly day: number;
  readonly into: Float64Array;
  /** For the grass sown in; left alone where there is none. */
  readonly overseed: Float64Array;
}

/** Where a group's days are written, one number a day. */
export interface CourseTrack extends DayTrack {
  readonly ruts: Float32Array;
  readonly density: Float32Array;
}
