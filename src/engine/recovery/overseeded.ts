import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import { type Grass, seasonOf, type Sward, type TurfState } from '#shared/vocabulary/turf.ts';

/** One stand of grass on ground that it may share: what it is made of, and how it stands before anything happens. */
export interface Side {
  /** Shares add to 1. */
  readonly sward: Sward;
  readonly usual: TurfState;
}

/** Whether a sward is warm-season turf with cool-season grass in it. */
export const isOverseeded = (sward: Sward): boolean =>
  seasonOf(sward[0]!.grass) === 'warm' && sward.some((part) => seasonOf(part.grass) === 'cool');

/**
 * The stands that make up a sward: one for a pure stand or a mixture that grows as one; two where warm-season turf is overseeded with
 * a cool-season grass, since the two green up, starve and die at different temperatures.
 *
 *     green = base + (1 − base) · overseed,   overseed's part of the green = its share of the sward
 *
 * The crowns of the base stand beneath the overseed as the venue says, also while they carry little leaf. The overseed is no thicker
 * than its leaf. Both begin with the venue's reserve.
 */
export const sidesOf = (sward: Sward, usual: TurfState): { readonly base: Side; readonly overseed: Side | null } => {
  if (!isOverseeded(sward)) return { base: { sward, usual }, overseed: null };
  const only = (season: 'warm' | 'cool') => {
    const parts = sward.filter((part) => seasonOf(part.grass) === season);
    const total = parts.reduce((sum, part) => sum + part.share, 0);
    return { total, sward: parts.map((part) => ({ ...part, share: part.share / total })) };
  };
  const [warm, cool] = [only('warm'), only('cool')];
  const green = Math.min(usual.cover, usual.crowns);
  const base = green * (1 - cool.total);
  const leaf = base >= 1 ? 0 : (green * cool.total) / (1 - base);
  return {
    base: { sward: warm.sward, usual: { ...usual, cover: base } },
    overseed: { sward: cool.sward, usual: { ...usual, cover: leaf, crowns: leaf } },
  };
};

/** What is sown to bring a sward back: the overseed where there is one; ryegrass where the base grows in the cool, since it is up first; else the base. */
export const sownGrass = (sward: Sward): Grass => {
  if (isOverseeded(sward)) return sward.find((part) => seasonOf(part.grass) === 'cool')!.grass;
  return seasonOf(sward[0]!.grass) === 'cool' ? 'perennial-ryegrass' : sward[0]!.grass;
};

/** What two stands on one ground cover together, of leaf or of crowns, 0–1: the overseed fills what the base leaves open. */
export const together = (base: number, overseed: number): number => base + (1 - base) * overseed;

/** Share of the light that an overseed of so much leaf leaves to the base beneath it. */
export const lightLeft = (overseed: number, values: Pick<ParameterValues, 'overseed.shading'>): number =>
  1 - values['overseed.shading'] * overseed;

/** What one side holds of what two hold together, as their means by the ground each covers. */
export const meanOfSides = (base: number, overseed: number, ofBase: number, ofOverseed: number): number => {
  const beside = (1 - base) * overseed;
  return base + beside > 0 ? (base * ofBase + beside * ofOverseed) / (base + beside) : ofBase;
};
