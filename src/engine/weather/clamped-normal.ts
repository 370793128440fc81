/**
 * Where to centre a normal draw so that, after clamping it to 0–`ceiling`, its mean is still the climate's.
 *
 * E[clamp(N(μ, σ), 0, c)] = σ [φ(a) − φ(b)] + μ [Φ(b) − Φ(a)] + c [1 − Φ(b)],  a = −μ/σ, b = (c − μ)/σ
 * φ and Φ are the standard normal density and distribution.
 */

/** Φ(z), to about 1e-12 by its series near 0 and its continued fraction in the tails. */
export const normalProbability = (z: number): number => {
  if (z > 38) return 1;
  if (z < -38) return 0;
  const density = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  const size = Math.abs(z);
  if (size < 3) {
    let term = size;
    let sum = size;
    for (let n = 1; n < 200 && term > 1e-17; n++) {
      term *= (size * size) / (2 * n + 1);
      sum += term;
    }
    return z >= 0 ? 0.5 + density * sum : 0.5 - density * sum;
  }
  let fraction = size;
  for (let n = 60; n >= 1; n--) fraction = size + n / fraction;
  return z >= 0 ? 1 - density / fraction : density / fraction;
};

/** Mean of a normal draw clamped to 0–ceiling. */
export const clampedMean = (centre: number, deviation: number, ceiling: number): number => {
  if (deviation <= 0) return Math.max(0, Math.min(ceiling, centre));
  const a = -centre / deviation;
  const b = (ceiling - centre) / deviation;
  const density = (z: number) => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  const inside = normalProbability(b) - normalProbability(a);
  return deviation * (density(a) - density(b)) + centre * inside + ceiling * (1 - normalProbability(b));
};

/** Centre whose clamped mean is `mean`; `mean` is first held inside 1–99 % of the ceiling, beyond which no centre serves. */
export const centreForMean = (mean: number, deviation: number, ceiling: number): number => {
  if (ceiling <= 0) return 0;
  const goal = Math.max(0.01 * ceiling, Math.min(0.99 * ceiling, mean));
  if (deviation <= 0) return goal;
  let low = -8 * deviation;
  let high = ceiling + 8 * deviation;
  for (let i = 0; i < 60 && high - low > 1e-10 * ceiling; i++) {
    const middle = (low + high) / 2;
    if (clampedMean(middle, deviation, ceiling) < goal) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};
