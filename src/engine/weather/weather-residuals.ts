/**
 * How a warm day follows a warm day: standardised departures of maximum, minimum and radiation from their season.
 *
 * x(i) = A x(i−1) + B e(i)        x order: maximum, minimum, radiation; e three independent standard normals, not cut off
 * M = A M Aᵀ + B Bᵀ               the covariance it settles to: unit variances, correlations 0.633, 0.186, −0.193
 * Cutting off |e| > 2.5, as the original program does, would take the variances to 0.911; it is not done here.
 * @source richardson-wright-1984
 * @source richardson-1981
 */
import { normal, type Stream } from '#engine/chance/stream.ts';

/** Nine numbers by row. */
export type Matrix3 = readonly number[];

export const persistenceMatrix: Matrix3 = [0.567, 0.086, -0.002, 0.253, 0.504, -0.05, -0.006, -0.039, 0.244];
export const noiseMatrix: Matrix3 = [0.781, 0, 0, 0.328, 0.637, 0, 0.238, -0.341, 0.873];

const times = (a: Matrix3, b: Matrix3): number[] =>
  Array.from({ length: 9 }, (_, k) => {
    const row = 3 * Math.floor(k / 3);
    const column = k % 3;
    return a[row]! * b[column]! + a[row + 1]! * b[column + 3]! + a[row + 2]! * b[column + 6]!;
  });

const transposed = (a: Matrix3): number[] => [0, 3, 6, 1, 4, 7, 2, 5, 8].map((k) => a[k]!);

/** The covariance M that the recursion settles to. */
export const settledCovariance = (persistence: Matrix3 = persistenceMatrix, noise: Matrix3 = noiseMatrix): number[] => {
  const fresh = times(noise, transposed(noise));
  let covariance = fresh;
  for (let i = 0; i < 400; i++) {
    const carried = times(times(persistence, covariance), transposed(persistence));
    covariance = carried.map((value, k) => value + fresh[k]!);
  }
  return covariance;
};

/** Covariance of a day with the day before, A M; row: today, column: yesterday. */
export const lagOneCovariance = (persistence: Matrix3 = persistenceMatrix, noise: Matrix3 = noiseMatrix): number[] =>
  times(persistence, settledCovariance(persistence, noise));

/** Lower triangle whose product with its transpose is a symmetric positive matrix. */
const rootOf = (m: Matrix3): number[] => {
  const l11 = Math.sqrt(m[0]!);
  const l21 = m[3]! / l11;
  const l31 = m[6]! / l11;
  const l22 = Math.sqrt(m[4]! - l21 * l21);
  const l32 = (m[7]! - l31 * l21) / l22;
  return [l11, 0, 0, l21, l22, 0, l31, l32, Math.sqrt(m[8]! - l31 * l31 - l32 * l32)];
};

const startRoot = rootOf(settledCovariance());

/** x ← L e, the first day of a run, drawn from the settled state so that no warm-up is needed. `x` has three places. */
export const startResiduals = (x: Float64Array, stream: Stream): void => {
  const e1 = normal(stream);
  const e2 = normal(stream);
  const e3 = normal(stream);
  x[0] = startRoot[0]! * e1;
  x[1] = startRoot[3]! * e1 + startRoot[4]! * e2;
  x[2] = startRoot[6]! * e1 + startRoot[7]! * e2 + startRoot[8]! * e3;
};

/** x ← A x + B e, the next day, in place. */
export const nextResiduals = (x: Float64Array, stream: Stream): void => {
  const a = persistenceMatrix;
  const b = noiseMatrix;
  const e1 = normal(stream);
  const e2 = normal(stream);
  const e3 = normal(stream);
  const [x1, x2, x3] = [x[0]!, x[1]!, x[2]!];
  x[0] = a[0]! * x1 + a[1]! * x2 + a[2]! * x3 + b[0]! * e1;
  x[1] = a[3]! * x1 + a[4]! * x2 + a[5]! * x3 + b[3]! * e1 + b[4]! * e2;
  x[2] = a[6]! * x1 + a[7]! * x2 + a[8]! * x3 + b[6]! * e1 + b[7]! * e2 + b[8]! * e3;
};

/** `days` days of residuals, three numbers a day. */
export const residualSeries = (days: number, stream: Stream): Float64Array => {
  const all = new Float64Array(3 * days);
  const x = new Float64Array(3);
  for (let i = 0; i < days; i++) {
    if (i === 0) startResiduals(x, stream);
    else nextResiduals(x, stream);
    all.set(x, 3 * i);
  }
  return all;
};
