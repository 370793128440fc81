import { clearnessIndex, diffuseShareOfHour } from '#engine/sky/diffuse-fraction.ts';
import { cosOf } from '#engine/sun/degrees.ts';

/**
 * Splits an hour's measured global radiation into beam and diffuse:
 *
 *   kt = G/(Gon max(cos θz, floor)),   diffuse = f(kt) G,   beam normal = (G − diffuse)/cos θz
 *
 * with Erbs' f. The floor under the cosine keeps kt sober at sunrise. Beam is left out beyond 87° of zenith, where the
 * quotient says nothing; all light is diffuse there.
 * @param global G, W/m²; @param zenith θz, °; @param normal Gon, W/m²; @param lowestCosine the floor
 * @returns kt, and W/m²
 * @source erbs-1982
 */
export const splitHour = (
  global: number,
  zenith: number,
  normal: number,
  lowestCosine: number,
): { clearness: number; diffuse: number; beamNormal: number } => {
  const cosine = cosOf(zenith);
  const clearness = clearnessIndex(Math.max(0, global), normal * Math.max(cosine, lowestCosine));
  if (zenith > 87) return { clearness, diffuse: Math.max(0, global), beamNormal: 0 };
  const diffuse = diffuseShareOfHour(clearness) * Math.max(0, global);
  return { clearness, diffuse, beamNormal: (Math.max(0, global) - diffuse) / cosine };
};
