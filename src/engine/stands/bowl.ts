import { lastFew } from '#shared/last-few.ts';
import type { Cells } from '#engine/ground/cells.ts';
import { layCells } from '#engine/ground/cells.ts';
import { blocksOf, roofsOf } from '#engine/stands/blocks.ts';
import type { Horizons } from '#engine/stands/horizon.ts';
import { horizonsOf } from '#engine/stands/horizon.ts';
import { skyViewOf } from '#engine/stands/sky-view.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import type { Stand } from '#shared/vocabulary/venue.ts';

/** A field among its stands, worked out once per geometry: the cells, their horizons, their view of the sky. */
export type Bowl = {
  readonly cells: Cells;
  /** Of the field's +y axis, ° clockwise from north. */
  readonly bearing: number;
  readonly horizons: Horizons;
  /** Ψ by cell. */
  readonly skyView: Float64Array;
};

export type BowlChoices = {
  /** Side of a cell, m. */ readonly cellSize?: number;
  /** Directions of the horizon profile, a multiple of 4. */ readonly bins?: number;
};

export type BowlField = { readonly outline: Polygon; readonly bearing: number };

/** @throws RangeError where cell size or bins do not fit */
export const bowlOf = (field: BowlField, stands: readonly Stand[], choices: BowlChoices = {}): Bowl => {
  const cells = layCells(field.outline, choices.cellSize ?? 2);
  const horizons = horizonsOf(cells.x, cells.y, blocksOf(stands), roofsOf(stands), choices.bins ?? 360);
  return { cells, bearing: field.bearing, horizons, skyView: skyViewOf(horizons) };
};

/** Two venues with the same key have the same bowl: names, ids and everything that casts no shadow are left out. */
export const bowlKey = (field: BowlField, stands: readonly Stand[], choices: BowlChoices = {}): string =>
  JSON.stringify([field.outline, field.bearing, blocksOf(stands), roofsOf(stands), choices.cellSize ?? 2, choices.bins ?? 360]);

/**
 * A way to ask for bowls that keeps the last few by their geometry, so that a year of light, a forecast and the plan of the same
 * venue share one.
 * @param keep how many to hold
 */
export const bowlKeeper = (keep = 4): typeof bowlOf => {
  const held = lastFew<Bowl>(keep);
  return (field, stands, choices = {}) => held(bowlKey(field, stands, choices), () => bowlOf(field, stands, choices));
};
