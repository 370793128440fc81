/**
 * Growth of sinkage or density change with repeated passes: z_N = z₁ N^(1/a).
 *
 * N passes (0 gives 0), a = 2–3 on loose soil under light loads, 3–5 on firmer soil or heavier loads. For a > 1 each pass adds
 * less than the one before. Part passes below one count in proportion.
 *
 * @source abebe-1989
 */
export const multipassFactor = (passes: number, exponent: number): number => {
  if (!(exponent >= 1)) throw new RangeError('multi-pass exponent: must be at least 1');
  if (!(passes > 0)) return 0;
  return passes < 1 ? passes : passes ** (1 / exponent);
};
