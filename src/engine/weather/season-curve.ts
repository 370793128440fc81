import { daysBeforeMonth, monthLengths } from '#engine/weather/calendar-day.ts';

/**
 * A smooth course through the year from twelve monthly means, whose own monthly means are exactly those given.
 *
 * The running total C(t) of the quantity is known at the thirteen month boundaries; a cubic spline through it, with a slope that
 * repeats after a year, is differentiated by taking C(end of day) − C(start of day). So every month adds up exactly and the course
 * has no steps. Between very uneven months it may swing past their values; the caller clamps where a limit exists.
 */

/** Solves the ring of equations for the slopes of C at the boundaries: a cubic spline whose second derivative is continuous. */
const boundaryValues = (means: readonly number[]): number[] => {
  const n = 12;
  const rows = Array.from({ length: n }, (_, i) => {
    const before = monthLengths[(i + n - 1) % n]!;
    const after = monthLengths[i]!;
    const row = new Array<number>(n + 1).fill(0);
    row[(i + n - 1) % n]! += 1 / before;
    row[i]! += 2 / before + 2 / after;
    row[(i + 1) % n]! += 1 / after;
    row[n] = (3 * means[(i + n - 1) % n]!) / before + (3 * means[i]!) / after;
    return row;
  });
  // The matrix is dominated by its diagonal, so plain elimination is stable.
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const factor = rows[j]![i]! / rows[i]![i]!;
      if (factor !== 0) for (let k = i; k <= n; k++) rows[j]![k]! -= factor * rows[i]![k]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
};

/** Value of each of the 365 days of a common year. @throws RangeError unless twelve finite numbers are given */
export const seasonCurve = (monthlyMeans: readonly number[]): Float64Array => {
  if (monthlyMeans.length !== 12 || !monthlyMeans.every(Number.isFinite)) {
    throw new RangeError('monthlyMeans: must be twelve numbers, January first');
  }
  const edge = boundaryValues(monthlyMeans);
  const days = new Float64Array(365);
  for (let month = 0; month < 12; month++) {
    const length = monthLengths[month]!;
    const [from, to, mean] = [edge[month]!, edge[(month + 1) % 12]!, monthlyMeans[month]!];
    // C(s)/length for s in 0–1: the cubic with slopes `from`, `to` and rise `mean`.
    const total = (s: number) => s * (from + s * (3 * mean - 2 * from - to + s * (from + to - 2 * mean)));
    for (let day = 0; day < length; day++) {
      days[daysBeforeMonth[month]! + day] = length * (total((day + 1) / length) - total(day / length));
    }
  }
  return days;
};
