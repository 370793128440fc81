import { cosOf } from '#engine/sun/degrees.ts';

/**
 * Light on a slope β under an evenly bright sky over evenly bright ground:
 *
 *   sky    = D (1 + cos β)/2
 *   ground = ρ G (1 − cos β)/2
 *
 * @source liu-jordan-1960
 */

/** @param diffuse D on level ground; @param slope °; same unit out as in */
export const skyOnSlope = (diffuse: number, slope: number): number => (diffuse * (1 + cosOf(slope))) / 2;

/** @param global G on level ground; @param albedo ρ; @param slope °; same unit out as in */
export const groundOnSlope = (global: number, albedo: number, slope: number): number =>
  (albedo * global * (1 - cosOf(slope))) / 2;
