import { z } from 'zod';
import { within } from '#shared/vocabulary/primitives.ts';

/**
 * A point in the field's own axes, m: the origin is the middle of the field, +y points along the field axis (its bearing is
 * `Field.bearing`, degrees clockwise from north), +x to the right of it.
 */
export const Point = z.tuple([within(-1000, 1000, 'm'), within(-1000, 1000, 'm')]).readonly();
export type Point = z.infer<typeof Point>;

/** A simple ring of corners, m, either way round; the last corner joins the first. */
export const Polygon = z
  .array(Point)
  .min(3, 'must have at least three corners')
  .max(400, 'must have at most 400 corners')
  .readonly();
export type Polygon = z.infer<typeof Polygon>;
