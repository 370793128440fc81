import { readings, type Narrowing, type Reading } from '#shared/vocabulary/answers.ts';

/** One zone's members: what could be read at uncovering, and what came of it on the home date. */
export interface ZoneMembers {
  readonly letter: string;
  /** m² */
  readonly area: number;
  readonly read: Readonly<Record<Reading, Float64Array>>;
  /** 1 where ready. */
  readonly ready: Float64Array;
  readonly cover: Float64Array;
}

/** Fewer members say nothing about what explains what. */
const fewest = 20;

/**
 * Share of the variance of `y` that a curve in `x` explains, 0–1: least squares on x and x², taken down for its two free numbers,
 *
 *     R² = 1 − (SSE/(n − 3))/(SST/(n − 1))
 *
 * 0 where either does not vary.
 */
export const explained = (x: Float64Array, y: Float64Array): number => {
  const n = x.length;
  if (n < 4) return 0;
  const mean = (values: ArrayLike<number>): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += values[i]!;
    return sum / n;
  };
  const centre = mean(x);
  const spread = Math.sqrt(mean(x.map((value) => (value - centre) ** 2)));
  const middle = mean(y);
  const total = y.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  if (spread < 1e-9 * (1 + Math.abs(centre)) || total < 1e-12) return 0;
  const first = x.map((value) => (value - centre) / spread);
  const squares = first.map((value) => value * value);
  const level = mean(squares);
  // Made to stand at right angles to x, so that the two shares add.
  const slope = mean(first.map((value, i) => value * (squares[i]! - level)));
  const second = squares.map((value, i) => value - level - slope * first[i]!);
  const fit = (basis: Float64Array): number => {
    const size = basis.reduce((sum, value) => sum + value * value, 0);
    if (size < 1e-9 * n) return 0;
    const along = basis.reduce((sum, value, i) => sum + value * (y[i]! - middle), 0);
    return (along * along) / size;
  };
  const left = Math.max(0, total - fit(first) - fit(second));
  return Math.max(0, 1 - left / (n - 3) / (total / (n - 1)));
};

const varianceOf = (values: Float64Array): number => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
};

/**
 * What reading would narrow it most: for each zone and reading the share of the variance of ready or not, and of the cover on the home
 * date, that knowing it would take away. In the order of the turf whose answer hangs on it: area times the variance of ready taken away
 * (in fourths, since ¼ is the most there is), or that of cover against its own tenth squared where readiness is settled.
 */
export const narrowingOf = (zones: readonly ZoneMembers[]): readonly Narrowing[] =>
  zones
    .flatMap(({ letter, area, read, ready, cover }) => {
      if (ready.length < fewest) return [];
      const openReady = 4 * varianceOf(ready);
      const openCover = Math.min(1, varianceOf(cover) / 0.01);
      return readings.map((reading): Narrowing => {
        const ofReady = openReady > 0 ? explained(read[reading], ready) : 0;
        const ofCover = openCover > 1e-6 ? explained(read[reading], cover) : 0;
        return {
          zone: letter,
          reading,
          ofReady: rounded(ofReady),
          ofCover: rounded(ofCover),
          weight: rounded(area * Math.max(openReady * ofReady, openCover * ofCover)),
        };
      });
    })
    .filter((one) => one.weight > 0)
    .toSorted((one, other) => other.weight - one.weight);

const rounded = (value: number): number => Math.round(value * 1e4) / 1e4;
