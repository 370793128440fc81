import type { Problem } from '#shared/contract/failure.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import type { Field } from '#shared/vocabulary/venue.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { farthestFrom, overlaps, selfCrossing } from '#shared/geometry/rings.ts';

/** m²; anything smaller is a slip of the hand. */
const smallestArea = 0.01;

/** Whether a ring is simple and has ground inside. Corners and sides are numbered from 0, as in the field's path. */
export const outlineProblems = (ring: Polygon, field: string): readonly Problem[] => {
  const crossing = selfCrossing(ring);
  if (crossing) {
    const [one, other] = crossing;
    return [{ field, reason: `crosses or touches itself: the side after corner ${one} meets the side after corner ${other}` }];
  }
  return polygonArea(ring) < smallestArea ? [{ field, reason: `encloses no ground (${polygonArea(ring).toFixed(3)} m²)` }] : [];
};

const metres = (length: number): string => `${length.toFixed(1)} m`;

/** Whether ground that an event or a zone takes is a simple ring, within the field and its apron, and on the turf somewhere. */
export const groundProblems = (ring: Polygon, venueField: Field, field: string): readonly Problem[] => {
  const shape = outlineProblems(ring, field);
  if (shape.length > 0) return shape;
  const { corner, distance } = farthestFrom(venueField.outline, ring);
  if (distance > venueField.apron + 1e-6) {
    const [x, y] = ring[corner]!;
    return [
      {
        field: `${field}.${corner}`,
        reason:
          `lies outside the field: corner ${corner} at (${x}, ${y}) or the side after it is ${metres(distance)} from the turf, ` +
          `and the apron is ${metres(venueField.apron)}`,
      },
    ];
  }
  return overlaps(ring, venueField.outline) ? [] : [{ field, reason: 'lies beside the turf and touches none of it' }];
};
