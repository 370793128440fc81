import type { SourceId } from '#shared/sources/sources.ts';
import type { Standing } from '#shared/sources/standing.ts';

/** Where a value comes from. A standing that claims a source must name it; one that does not must not. */
export type Origin =
  | { readonly standing: Extract<Standing, 'published' | 'derived' | 'recalled'>; readonly source: SourceId }
  | { readonly standing: Extract<Standing, 'common practice' | 'our assumption'>; readonly source?: never };

/** One number the engine or the planner uses, with everything a reader needs to judge it. */
export type Parameter = Origin & {
  /** What it is, in words a head of grounds reads: "Days of darkness at 20 °C that empty a full reserve". */
  readonly meaning: string;
  readonly value: number;
  /** SI or the trade's unit as printed on screen: "d", "mol/m²/d", "°C", "1" for a ratio. */
  readonly unit: string;
  /** Lowest and highest value a venue may set. Member draws stay inside. `low ≤ value ≤ high`. */
  readonly low: number;
  readonly high: number;
  /**
   * Half-width of the 80 % range that members are drawn from, as a share of `value`; 0 when the number is not in doubt
   * (a constant, a limit, a choice of the venue).
   */
  readonly doubt: number;
  /** What the simplest honest content leaves out, where it does. */
  readonly note?: string;
};

/** Checks the shape of a family of parameters while keeping the literal names. Names read `family.what.variant`. */
export const parametersOf = <const Names extends string>(
  parameters: Readonly<Record<Names, Parameter>>,
): Readonly<Record<Names, Parameter>> => parameters;
