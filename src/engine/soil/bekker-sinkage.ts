/**
 * How deep a plate or wheel sinks: p = (k_c/b + k_φ) zⁿ.
 *
 * p pressure (kPa), b the smaller side of the patch (m), k_c (kN/m^(n+1)) and k_φ (kN/m^(n+2)) moduli, n exponent, z sinkage (m).
 * Valid for p ≥ 0, b > 0 and a positive modulus; outside RangeError.
 *
 * @source wong-2008
 */
export interface SinkageModuli {
  readonly kc: number;
  readonly kphi: number;
  readonly n: number;
}

export const bekkerSinkage = (pressure: number, width: number, moduli: SinkageModuli): number => {
  if (!(pressure >= 0)) throw new RangeError('pressure: must be at least 0');
  if (!(width > 0)) throw new RangeError('width: must be above 0');
  const modulus = moduli.kc / width + moduli.kphi;
  if (!(modulus > 0 && moduli.n > 0)) throw new RangeError('moduli: must be above 0');
  return (pressure / modulus) ** (1 / moduli.n);
};
