import type { Grass } from '#shared/vocabulary/turf.ts';

/** Daily light of a clear half-sine day: `(2/π) · Pmax · daylength · 0.0036`, mol/m²/d from µmol/m²/s and h. */
export const dailyLightOfHalfSine = (peakFlux: number, daylength: number): number =>
  (2 / Math.PI) * peakFlux * daylength * 0.0036;

/** Daily light under a covering: `DLI · τ`. Measured light drives the model, never the nominal shade of a cloth. */
export const lightBelow = (light: number, transmission: number): number => light * transmission;

/** Transmission a covering needs so that a daily light reaches the turf; above 1 it cannot. Infinity where there is no light. */
export const transmissionNeeded = (needed: number, light: number): number => (light > 0 ? needed / light : Infinity);

/**
 * Daily light for acceptable turf at a height of cut.
 * @param need mol/m²/d at sports height @param lowCut further need of a low cut @param low whether it is cut low
 * @source glenn-2014
 */
export const lightNeedAt = (need: number, lowCut: number, low: boolean): number => need + (low ? lowCut : 0);

/** Grasses with a light need of their own; the others carry the general rule of their group. */
const withOwnSource: readonly Grass[] = ['perennial-ryegrass', 'bermudagrass-common', 'bermudagrass-hybrid', 'zoysiagrass'];

/** What to print beside the light need of a grass. */
export const lightNeedFlag = (grass: Grass): 'no species-specific source' | null =>
  withOwnSource.includes(grass) ? null : 'no species-specific source';
