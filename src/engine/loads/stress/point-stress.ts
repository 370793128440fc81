/**
 * Vertical stress in the ground under one point load; every other case is an integral of this one.
 *
 *     σ = I P / z²,  I = 3/(2π) [1 + (r/z)²]^(−5/2)                       Boussinesq, elastic ground
 *     σ = ν P / (2π z²) cos^(ν+2) β,  tan β = r/z                         Fröhlich, concentration factor ν
 *
 * P load (kN), r horizontal distance (m), z depth (m), σ vertical stress (kPa, compression positive). ν = 3 is Boussinesq; a
 * larger ν (softer, wetter soil) sends more of the load straight down. Both carry exactly P through any horizontal plane.
 * Valid for z > 0 and ν > 0; at z = 0 the stress of a point load has no value: RangeError.
 *
 * @source boussinesq-1885
 * @source froehlich-1934
 */
export const pointInfluence = (radiusOverDepth: number): number =>
  (3 / (2 * Math.PI)) * (1 + radiusOverDepth * radiusOverDepth) ** -2.5;

/** kPa at depth `z` m and distance `r` m under a point load of `load` kN, for the concentration factor `concentration`. */
export const pointStress = (load: number, r: number, z: number, concentration = 3): number => {
  if (!(z > 0)) throw new RangeError('depth: must be above 0 under a point load');
  if (!(concentration > 0)) throw new RangeError('concentration: must be above 0');
  const cosine = z / Math.hypot(r, z);
  return ((concentration * load) / (2 * Math.PI * z * z)) * cosine ** (concentration + 2);
};
