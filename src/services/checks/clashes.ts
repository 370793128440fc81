import type { Problem } from '#shared/contract/failure.ts';
import type { Booking, Layer } from '#shared/vocabulary/booking.ts';
import { overlaps } from '#shared/geometry/rings.ts';

/** A layer of the booking asked about that lies on the same spot and in the same hours as one of another booking. */
export interface Clash {
  /** Index of the layer of the booking asked about. */
  readonly layer: number;
  readonly booking: Booking;
  readonly other: Layer;
}

/** Stages from which an event counts as sure. */
const sureStages: ReadonlySet<Booking['stage']> = new Set([
  'confirmed',
  'advanced',
  'building',
  'live',
  'striking',
  'handed-back',
  'recovering',
  'certified',
  'settled',
  'archived',
]);

/** Whether an event is sure enough to count: two holds may ask for the same days, two confirmed events may not. */
export const isSure = ({ stage }: Booking): boolean => sureStages.has(stage);

/** The covering that says turf is meant to stay bare. */
const bareGround = 'none';

/** Layers of a booking that would lie on the same turf in the same hours as a layer of another. Edges that only touch do not count. */
export const clashesWith = (booking: Booking, others: readonly Booking[]): readonly Clash[] => {
  const outlineOf = ({ zones }: Booking, letter: string) => zones.find((zone) => zone.letter === letter)?.outline ?? null;
  return booking.layers.flatMap((layer, index) => {
    const here = outlineOf(booking, layer.zone);
    if (here === null || layer.covering === bareGround) return [];
    for (const other of others)
      for (const there of other.layers) {
        if (there.covering === bareGround || !(there.on < layer.off && layer.on < there.off)) continue;
        const ground = outlineOf(other, there.zone);
        if (ground !== null && overlaps(here, ground)) return [{ layer: index, booking: other, other: there }];
      }
    return [];
  });
};

/** The same in words. @param field where the booking stands in the request */
export const clashProblems = (booking: Booking, others: readonly Booking[], field: string): readonly Problem[] =>
  clashesWith(booking, others).map(({ layer, booking: other, other: there }) => ({
    field: `${field}.layers.${layer}.on`,
    reason:
      `lies on the same turf and in the same hours as zone "${there.zone}" of the booking "${other.name}" ` +
      `(${there.on} to ${there.off})`,
  }));
