import { wholeNumberUp } from '#engine/works/customary-units.ts';

/** A tine on its grid; m. The inside diameter removes, the outside diameter disturbs: say which one is asked about. */
export interface TineGrid {
  readonly diameter: number;
  /** m between holes along and across */
  readonly along: number;
  readonly across: number;
}

const checked = (grid: TineGrid): TineGrid => {
  for (const field of ['diameter', 'along', 'across'] as const) {
    if (!(grid[field] > 0)) throw new RangeError(`${field}: must be above 0 m, not ${grid[field]}`);
  }
  return grid;
};

/**
 * Share of the surface that one pass takes: `A = (π d²/4)/(s1 · s2)`.
 * @throws RangeError when a length is not above 0
 * @source woods-2009
 */
export const surfaceShare = (grid: TineGrid): number => {
  const { diameter, along, across } = checked(grid);
  return (Math.PI * diameter * diameter) / 4 / (along * across);
};

/** Holes per m² of one pass. */
export const holesPerArea = (grid: TineGrid): number => 1 / (checked(grid).along * grid.across);

/** Passes until a share of the surface is taken: goal over share, up to the next whole pass. @throws RangeError for a goal outside 0–1 */
export const passesFor = (goal: number, grid: TineGrid): number => {
  if (!(goal >= 0 && goal <= 1)) throw new RangeError(`goal: must lie between 0 and 1, not ${goal}`);
  return wholeNumberUp(goal / surfaceShare(grid));
};

/** Sand that fills the holes of some passes, m³: `area · A · depth · passes`. @param area m² @param depth m */
export const sandToFill = (area: number, grid: TineGrid, depth: number, passes = 1): number =>
  area * surfaceShare(grid) * depth * passes;

/** How a year's aeration stands against the goals, all as shares of the surface. @source woods-2009 */
export const judgeYear = (
  removed: number,
  goals: { readonly least: number; readonly low: number; readonly high: number },
): 'below the least' | 'below the goal' | 'within the goal' | 'above the goal' => {
  if (removed < goals.least - 1e-9) return 'below the least';
  if (removed < goals.low - 1e-9) return 'below the goal';
  return removed <= goals.high + 1e-9 ? 'within the goal' : 'above the goal';
};
