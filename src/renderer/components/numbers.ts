import type { Cause, Range, ZoneForecast } from '#shared/vocabulary/forecast.ts';

/** "85 %", with a space that does not break. */
export const percent = (share: number): string => `${Math.round(100 * share)}\u00a0%`;

/** "55–92": the range that eight of ten members fall into, in per cent. */
export const eightOfTen = (range: Range): string => `${Math.round(100 * range.p10)}–${Math.round(100 * range.p90)}`;

/** The causes of a zone's loss, largest first, as shares of the loss; those under a hundredth are left out. */
export const rankedCauses = (causes: ZoneForecast['causes']): readonly { readonly cause: Cause; readonly share: number }[] => {
  const all = Object.entries(causes) as [Cause, number][];
  const total = all.reduce((sum, [, loss]) => sum + loss, 0);
  if (total < 0.01) return [];
  return all
    .map(([cause, loss]) => ({ cause, share: loss / total }))
    .filter(({ share }) => share >= 0.01)
    .toSorted((a, b) => b.share - a.share);
};
