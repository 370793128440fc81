/**
 * A plate on an elastic solid instead of springs, for deep firm ground.
 *
 *     l_e = (2D(1 − ν²)/E_s)^(1/3),  w₀ = P l_e²/(3√3 D)
 *
 * D plate stiffness (kN m), E_s modulus (kPa) and ν Poisson's ratio of the ground, P load (kN); w₀ in m. Valid for positive input.
 *
 * @source hogg-1938
 */
export const plateOnSolid = (
  stiffness: number,
  load: number,
  groundModulus: number,
  groundPoisson: number,
): { readonly elasticLength: number; readonly settlement: number } => {
  if (!(stiffness > 0 && groundModulus > 0)) throw new RangeError('stiffness and ground modulus: must be above 0');
  const elasticLength = ((2 * stiffness * (1 - groundPoisson ** 2)) / groundModulus) ** (1 / 3);
  return { elasticLength, settlement: (load * elasticLength ** 2) / (3 * Math.sqrt(3) * stiffness) };
};
