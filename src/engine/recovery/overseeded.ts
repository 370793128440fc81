import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import { seasonOf, type Sward } from '#shared/vocabulary/turf.ts';
import { noActions, stepDay, type DayActions, type DayDrivers } from '#engine/recovery/step-day.ts';
import { greenCover, type Stand } from '#engine/recovery/stand.ts';
import { turfTraitsOfSward, type TurfTraits } from '#engine/recovery/turf-traits.ts';

/** Warm-season turf with a cool-season grass sown into it: two stands on the same ground. */
export interface OverseededStand {
  readonly base: Stand;
  readonly overseed: Stand;
}
export interface OverseededTraits {
  readonly base: TurfTraits;
  readonly overseed: TurfTraits;
}

/** Whether a sward is warm-season turf with cool-season grass in it. */
export const isOverseeded = (sward: Sward): boolean =>
  seasonOf(sward[0]!.grass) === 'warm' && sward.some((part) => seasonOf(part.grass) === 'cool');

/**
 * The two sides of an overseeded sward, each with shares that add to 1, and the share of the green the overseed makes up.
 * @throws RangeError when the sward is not overseeded warm-season turf
 */
export const overseededParts = (
  sward: Sward,
): { readonly base: Sward; readonly overseed: Sward; readonly overseedShare: number } => {
  if (!isOverseeded(sward)) throw new RangeError('sward: is not warm-season turf overseeded with a cool-season grass');
  const side = (season: 'warm' | 'cool') => {
    const parts = sward.filter((part) => seasonOf(part.grass) === season);
    const total = parts.reduce((sum, part) => sum + part.share, 0);
    return { total, parts: parts.map((part) => ({ ...part, share: part.share / total })) };
  };
  const cool = side('cool');
  return { base: side('warm').parts, overseed: cool.parts, overseedShare: cool.total };
};

export const overseededTraitsOf = (values: ParameterValues, sward: Sward): OverseededTraits => {
  const parts = overseededParts(sward);
  return { base: turfTraitsOfSward(values, parts.base), overseed: turfTraitsOfSward(values, parts.overseed) };
};

/** Green cover of both: the overseed fills what the base leaves open. */
export const overseededCover = (stand: OverseededStand): number => {
  const base = greenCover(stand.base);
  return base + (1 - base) * greenCover(stand.overseed);
};

/** Share of the light the overseed takes from the base where it stands thick. Our assumption. */
const shading = 0.4;

/** Both stands after one day; the base stands in the shade of the overseed. The overseed is a stand of its own and takes its own injuries. */
export const stepOverseeded = (
  stand: OverseededStand,
  drivers: DayDrivers,
  actions: { readonly base: DayActions; readonly overseed: DayActions },
  traits: OverseededTraits,
): OverseededStand => ({
  base: stepDay(
    stand.base,
    { ...drivers, light: drivers.light * (1 - shading * greenCover(stand.overseed)) },
    actions.base,
    traits.base,
  ),
  overseed: stepDay(stand.overseed, drivers, actions.overseed, traits.overseed),
});

/** A day with nothing done to either. */
export const nothingOnEither = { base: noActions, overseed: noActions } as const;
