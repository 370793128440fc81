/**
 * Kelvin functions of order zero, which describe how a plate on springs bends under one load.
 *
 *     ker x + i kei x = K₀(x e^{iπ/4})
 *
 * Power series to x = 9, then the asymptotic series; both give kei and ker to better than 1e-10. kei(0) = −π/4, ker(0) = +∞.
 * Valid for x ≥ 0; below it RangeError.
 *
 * @source abramowitz-stegun-1964
 */
interface Kelvin {
  readonly ker: number;
  readonly kei: number;
  /** d ker/dx */
  readonly kerSlope: number;
}

const eulerGamma = 0.5772156649015329;

const bySeries = (x: number): Kelvin => {
  // Term k of I₀ is tᵏ/(k!)² · iᵏ with t = x²/4; iᵏ cycles through 1, i, −1, −i.
  const t = (x * x) / 4;
  let term = 1;
  let harmonic = 0;
  let [ber, bei, berSlope, beiSlope] = [0, 0, 0, 0];
  let [realSum, imaginarySum, realSlope] = [0, 0, 0];
  for (let k = 0; k < 60; k++) {
    if (k > 0) {
      term *= t / (k * k);
      harmonic += 1 / k;
    }
    const signed = k % 4 < 2 ? term : -term;
    const slope = (signed * 2 * k) / x;
    if (k % 2 === 0) {
      ber += signed;
      berSlope += slope;
      realSum += harmonic * signed;
      realSlope += harmonic * slope;
    } else {
      bei += signed;
      beiSlope += slope;
      imaginarySum += harmonic * signed;
    }
    if (term < 1e-22 && k > 4) break;
  }
  const log = Math.log(x / 2) + eulerGamma;
  const quarter = Math.PI / 4;
  return {
    ker: -log * ber + quarter * bei + realSum,
    kei: -log * bei - quarter * ber + imaginarySum,
    kerSlope: -ber / x - log * berSlope + quarter * beiSlope + realSlope,
  };
};

/** K of order 0 or 1 at z = x e^{iπ/4}: √(π/2z) e^{−z} Σ aₖ/zᵏ, stopped at its smallest term. */
const asymptotic = (x: number, order: 0 | 1): readonly [real: number, imaginary: number] => {
  let [real, imaginary] = [1, 0];
  let [a, size] = [1, 1];
  for (let k = 1; k < 40; k++) {
    a *= (4 * order * order - (2 * k - 1) ** 2) / (8 * k);
    const next = Math.abs(a) / x ** k;
    if (next > size || next < 1e-18) break;
    size = next;
    const phase = (-k * Math.PI) / 4;
    real += (a / x ** k) * Math.cos(phase);
    imaginary += (a / x ** k) * Math.sin(phase);
  }
  const scale = Math.sqrt(Math.PI / (2 * x)) * Math.exp(-x / Math.SQRT2);
  const turn = -x / Math.SQRT2 - Math.PI / 8;
  const [cosine, sine] = [scale * Math.cos(turn), scale * Math.sin(turn)];
  return [real * cosine - imaginary * sine, real * sine + imaginary * cosine];
};

const kelvin = (x: number): Kelvin => {
  if (x <= 9) return bySeries(x);
  const [ker, kei] = asymptotic(x, 0);
  // d/dx K₀(x e^{iπ/4}) = −e^{iπ/4} K₁.
  const [real, imaginary] = asymptotic(x, 1);
  return { ker, kei, kerSlope: -(real - imaginary) / Math.SQRT2 };
};

export const kei = (x: number): number => {
  if (!(x >= 0)) throw new RangeError('x: must be at least 0');
  return x === 0 ? -Math.PI / 4 : x > 700 ? 0 : kelvin(x).kei;
};

export const ker = (x: number): number => {
  if (!(x > 0)) throw new RangeError('x: must be above 0');
  return x > 700 ? 0 : kelvin(x).ker;
};

/** x · d ker/dx; −1 at 0. */
export const kerSlopeTimes = (x: number): number => {
  if (!(x >= 0)) throw new RangeError('x: must be at least 0');
  return x === 0 ? -1 : x > 700 ? 0 : x * kelvin(x).kerSlope;
};
