/**
 * Rain that runs off a whole catchment in one storm: for the ground around a field, not for its root zone.
 *
 * Q = (P − λS)²/(P + (1 − λ) S) for P > λS, else 0;  S = 25400/CN − 254        mm; λ 0.2
 * P storm rain, CN curve number in (0, 100]; 100 is a sealed surface where Q = P. Outside: RangeError.
 * @source usda-tr-55-1986
 */
export const stormRunoff = (rain: number, curveNumber: number, initialShare = 0.2): number => {
  if (!(curveNumber > 0 && curveNumber <= 100)) throw new RangeError(`curveNumber: ${curveNumber} must lie in 0–100`);
  if (!(rain >= 0)) throw new RangeError(`rain: ${rain} mm must be 0 or more`);
  const retention = 25400 / curveNumber - 254;
  const excess = rain - initialShare * retention;
  return excess <= 0 ? 0 : (excess * excess) / (excess + retention);
};
