import { causes, logLoss, type Cause } from '#engine/injury/causes.ts';
import { standLayout, standStride } from '#engine/recovery/stand-layout.ts';
import { readStand, writeStand, type Stand } from '#engine/recovery/stand.ts';

/** What one cause left of leaf and crowns, as shares of what was there. */
export interface Injury {
  readonly cause: Cause;
  /** 0–1 */
  readonly leafKept: number;
  /** 0–1 */
  readonly crownsKept: number;
}

/** Index of a cause in the flat form. */
export const causeIndex = (cause: Cause): number => causes.indexOf(cause);

const layout = standLayout;

/**
 * Applies one injury to a stand of the flat form, in place. Kept shares multiply, so the order of injuries does not matter. Dead crowns
 * carry no leaf: leaf is kept at most as far as crowns. Seedlings lose what the leaf loses and as much again.
 * @param cause index in `causes` @param leafKept @param crownsKept shares 0–1; clamped
 */
export const injureAt = (stands: Float64Array, at: number, cause: number, leafKept: number, crownsKept: number): void => {
  const crowns = Math.min(1, Math.max(0, crownsKept));
  const leaf = Math.min(crowns, Math.max(0, leafKept));
  if (leaf === 1) return;
  stands[at + layout.cover]! *= leaf;
  stands[at + layout.crowns]! *= crowns;
  for (let slot = 0; slot < layout.seedSlots; slot++) {
    stands[at + layout.seedlings + slot * layout.seedStride + layout.seedCover]! *= leaf * leaf;
  }
  stands[at + layout.leafLost + cause]! += logLoss(leaf);
  stands[at + layout.crownsLost + cause]! += logLoss(crowns);
};

/** The same for a single stand. */
export const injureStand = (stand: Stand, injuries: readonly Injury[]): Stand => {
  if (injuries.length === 0) return stand;
  const flat = new Float64Array(standStride);
  writeStand(flat, 0, stand);
  for (const injury of injuries) injureAt(flat, 0, causeIndex(injury.cause), injury.leafKept, injury.crownsKept);
  return readStand(flat, 0);
};
