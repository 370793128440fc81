/**
 * The gamma distribution, turned round: one uniform number gives one amount, so members stay in step and a larger scale gives a
 * larger amount from the same draw.
 *
 * P(a, x) = (1/Γ(a)) ∫₀ˣ t^(a−1) e^(−t) dt          by its series for x < a + 1, by its continued fraction above
 * Shape a > 0; x ≥ 0. The inverse is good to about 1e-10 of the amount.
 */

const stirling = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188];

/** ln Γ(a) for a > 0: Stirling's series after raising the argument above 10. */
export const logGamma = (a: number): number => {
  let raised = a;
  let product = 1;
  while (raised < 10) product *= raised++;
  const square = 1 / (raised * raised);
  let power = 1 / raised;
  let tail = 0;
  for (const coefficient of stirling) {
    tail += coefficient * power;
    power *= square;
  }
  return (raised - 0.5) * Math.log(raised) - raised + 0.5 * Math.log(2 * Math.PI) + tail - Math.log(product);
};

/** P(a, x), 0–1. */
export const gammaProbability = (a: number, x: number, logGammaOfA = logGamma(a)): number => {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - logGammaOfA);
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < 500 && term > sum * 1e-16; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return Math.min(1, front * sum);
  }
  // Continued fraction of the upper tail, evaluated from the front by ratios.
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < 500; n++) {
    const numerator = -n * (n - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    const ratio = c * d;
    fraction *= ratio;
    if (Math.abs(ratio - 1) < 1e-15) break;
  }
  return Math.max(0, 1 - front * fraction);
};

/** The x with P(a, x) = u, for 0 ≤ u < 1. Bracketed Newton steps in ln x. */
export const gammaQuantile = (a: number, u: number, logGammaOfA = logGamma(a)): number => {
  if (u <= 0) return 0;
  const small = (Math.log(u) + Math.log(a) + logGammaOfA) / a;
  let y = Math.min(small, Math.log(a - Math.log(1 - u) + 1));
  let low = small - 1;
  let high = Math.log(a + 60 + 4 * Math.sqrt(60 * a));
  for (let i = 0; i < 60; i++) {
    const x = Math.exp(y);
    const miss = gammaProbability(a, x, logGammaOfA) - u;
    if (miss > 0) high = Math.min(high, y);
    else low = Math.max(low, y);
    const density = Math.exp(a * y - x - logGammaOfA);
    let next = y - miss / density;
    if (!(next > low && next < high)) next = (low + high) / 2;
    // The steps converge quadratically: after one this small the next would be lost in rounding.
    if (Math.abs(next - y) < 1e-7) return Math.exp(next);
    y = next;
  }
  return Math.exp(y);
};
