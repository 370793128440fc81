/** How covered time is counted. */
export interface DarkClockTraits {
  readonly q10: number;
  /** °C at which a dark day counts as one day */
  readonly reference: number;
  /** dark-equivalent days taken back by one uncovered day */
  readonly unwind: number;
  /** mol/m²/d from which a covered stand is not in the dark at all */
  readonly holdLight: number;
}

/** Dark-equivalent days at which a flag is raised, in rising order. */
export interface DarkLimits {
  readonly watch: number;
  readonly weak: number;
  readonly falling: number;
  readonly limit: number;
}
export type DarkFlag = 'watch' | 'weak' | 'falling' | 'limit';

/**
 * The dark clock after some covered hours, in dark-equivalent days.
 *
 *     clock + darkness · Q10^((T − Tref)/10) · hours/24,   darkness = 1 − L/Lc, from 0 to 1
 *
 * Never runs backwards under a covering; warmer is never slower.
 * @param temperature °C of the crowns @param light useful daily light under the covering, mol/m²/d
 * @source nebraska-tall-fescue-dark-1982 (the days of the flags); Q10 from memory
 */
export const darkClockCovered = (
  clock: number,
  hours: number,
  temperature: number,
  light: number,
  traits: DarkClockTraits,
): number => {
  const darkness = Math.min(1, Math.max(0, 1 - light / traits.holdLight));
  return clock + (darkness * traits.q10 ** ((temperature - traits.reference) / 10) * hours) / 24;
};

/** The clock after some uncovered hours: unwinds, never below 0. A field that was never covered stays at 0. */
export const darkClockUncovered = (clock: number, hours: number, traits: DarkClockTraits): number =>
  Math.max(0, clock - (traits.unwind * hours) / 24);

/** The highest flag a clock has reached, or null. A flag is up from its own day on. */
export const darkFlag = (clock: number, limits: DarkLimits): DarkFlag | null => {
  if (clock >= limits.limit) return 'limit';
  if (clock >= limits.falling) return 'falling';
  if (clock >= limits.weak) return 'weak';
  return clock >= limits.watch ? 'watch' : null;
};
