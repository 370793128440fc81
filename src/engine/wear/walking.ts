import { keptAfter } from '#engine/wear/wear-curve.ts';

/**
 * Walking on vegetation: half the cover of a mown lawn-grass sward is gone after 860 passes of a lane, of tussock grass after 360, of
 * fern understorey after 210.
 *
 *     footfalls per m² of one pass = 1/(step × lane)
 *
 * step length (m) and lane width (m) turn passes of a trial lane into footfalls per m², which is what a crowd leaves.
 *
 * @source hill-pickering-2009
 * @source cole-bayfield-1993
 */
export const vegetations = ['lawn', 'tussock', 'fern'] as const;
export type Vegetation = (typeof vegetations)[number];

export interface WalkingSettings {
  /** Passes to half cover. */
  readonly half: Readonly<Record<Vegetation, number>>;
  readonly shape: number;
  /** m */
  readonly step: number;
  /** m */
  readonly lane: number;
}

/** Share of cover kept after `passes` of one lane. */
export const coverAfterWalking = (passes: number, vegetation: Vegetation, settings: WalkingSettings): number =>
  keptAfter(passes, settings.half[vegetation], settings.shape);

/** Footfalls per m² that one pass of a lane makes. */
export const footfallsPerPass = (settings: Pick<WalkingSettings, 'step' | 'lane'>): number => {
  if (!(settings.step > 0 && settings.lane > 0)) throw new RangeError('step and lane: must be above 0');
  return 1 / (settings.step * settings.lane);
};
