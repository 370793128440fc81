import { keptAfter } from '#engine/wear/wear-curve.ts';

/**
 * Play in studs. Half the cover of hybrid bermudagrass is gone after about 18 simulated games on sand and about 10 on silt loam; wet
 * cohesive soil multiplies the games, tolerance of the grass divides them.
 *
 *     cover kept = 2^(−events × wet/(tolerance × half))
 *
 * No published curve links stud marks to cover of other grasses: their tolerance is an assumption.
 *
 * @source thoms-2016
 * @source dickson-2018
 */
export const coverAfterGames = (events: number, halfEvents: number, wet: number, tolerance: number): number =>
  keptAfter(events * wet, halfEvents * tolerance);

/** Passes of the Brinkman simulator that `cts` passes of the Cady simulator equal. @source vanini-2007 */
export const brinkmanPasses = (cts: number, btsPerCts: number): number => cts * btsPerCts;

/** Games that passes of the Cady simulator stand for. @source henderson-2005-traffic */
export const gamesOfCadyPasses = (cts: number, passesPerGame: number): number => {
  if (!(passesPerGame > 0)) throw new RangeError('passes of a game: must be above 0');
  return cts / passesPerGame;
};

/** Games that passes of the Brinkman simulator stand for, through the Cady simulator. */
export const gamesOfBrinkmanPasses = (bts: number, btsPerCts: number, passesPerGame: number): number => {
  if (!(btsPerCts > 0)) throw new RangeError('equivalence: must be above 0');
  return gamesOfCadyPasses(bts / btsPerCts, passesPerGame);
};
