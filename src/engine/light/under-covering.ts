import type { loadings } from '#shared/vocabulary/booking.ts';

/** What stands on a covering, as a layer of a booking says. */
export type Loading = (typeof loadings)[number];

/**
 * Share of light that reaches the turf through one covering: what it passes when clean, times what dirt leaves, and nothing at
 * all under chairs, stage, deck, plant, ice or fill, whatever the covering below them would pass.
 * @param lightTransmission 0–1; @param cleanliness 0–1; values outside are taken at the nearer limit
 */
export const lightThrough = (lightTransmission: number, cleanliness: number, loading: Loading): number =>
  loading === 'open' ? Math.min(1, Math.max(0, lightTransmission)) * Math.min(1, Math.max(0, cleanliness)) : 0;

/** Coverings lying on each other: their shares multiply. No covering passes everything. */
export const lightThroughAll = (
  layers: readonly { readonly lightTransmission: number; readonly cleanliness: number; readonly loading: Loading }[],
): number => layers.reduce((share, layer) => share * lightThrough(layer.lightTransmission, layer.cleanliness, layer.loading), 1);
