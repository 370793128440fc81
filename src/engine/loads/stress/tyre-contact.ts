import { pointStress } from '#engine/loads/stress/point-stress.ts';

/**
 * Stress under a farm or turf tyre from what stands on its side wall.
 *
 *     peak stress      34.4 + 1.13 p + 0.72 F − 33.4 ln(p/p_rec)      kPa
 *     footprint length 0.47 + 0.11 D² − 0.16 ln(p/p_rec)              m
 *     super-ellipse    n = 2.1 (w D)² + 2
 *     across, at y     u e^(−δu) scaled to a peak of 1, u = w/2 − |y|, δ = 9.3 − 7.3 w
 *     along, at x      1 − (x/l(y))^α, l(y) the half length of the super-ellipse at y
 *
 * p inflation and p_rec recommended inflation (kPa), F wheel load (kN), D tyre diameter (m), w tyre width (m). α is fitted in
 * 1–16 so that the stress over the patch adds to F; when no α in that range comes within 2 % the tyre data do not belong
 * together and `fits` is false. Fitted on farm tyres 0.4–1.05 m wide with 11–76 kN; outside that it is an extrapolation.
 * At depth every element of the patch is a point load with the concentration factor.
 *
 * @source keller-2005
 * @source de-lima-2021
 */
export interface Tyre {
  /** kPa */
  readonly inflation: number;
  /** kPa */
  readonly recommendedInflation: number;
  /** m */
  readonly diameter: number;
  /** m */
  readonly width: number;
  /** kN */
  readonly wheelLoad: number;
}

export interface TyreContact {
  /** Peak of the contact stress, kPa. */
  readonly peak: number;
  /** m */
  readonly length: number;
  /** Exponent n of the super-ellipse. */
  readonly ellipse: number;
  /** m² */
  readonly area: number;
  /** Wheel load over area, kPa. */
  readonly mean: number;
  /** Exponent α of the stress along the length. */
  readonly along: number;
  /** Whether the stress adds to the wheel load within 2 %. */
  readonly fits: boolean;
  /** kN on each grid element with its place; x along the length, y across, m. */
  readonly elements: { readonly x: Float64Array; readonly y: Float64Array; readonly load: Float64Array };
}

interface Grid {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Share of the half length at which the element lies, 0–1. */
  readonly outward: Float64Array;
  /** Stress of the row's middle over the peak. */
  readonly across: Float64Array;
  /** m² of each element. */
  readonly area: Float64Array;
}

/** Rows across the tyre, each cut into elements over its own length, so that the patch area closes. */
const gridOf = (length: number, width: number, ellipse: number, step: number): Grid => {
  const delta = 9.3 - 7.3 * width;
  const rows = Math.max(8, Math.ceil(width / step));
  const columns = Math.max(8, Math.ceil(length / step));
  const size = rows * columns;
  const grid = {
    x: new Float64Array(size),
    y: new Float64Array(size),
    outward: new Float64Array(size),
    across: new Float64Array(size),
    area: new Float64Array(size),
  };
  const crest = delta > 0 ? Math.min(width / 2, 1 / delta) : width / 2;
  const scale = crest * Math.exp(-delta * crest);
  for (let row = 0; row < rows; row++) {
    const y = ((row + 0.5) / rows - 0.5) * width;
    const half = (length / 2) * (1 - Math.abs((2 * y) / width) ** ellipse) ** (1 / ellipse);
    const u = width / 2 - Math.abs(y);
    for (let column = 0; column < columns; column++) {
      const i = row * columns + column;
      const outward = (2 * (column + 0.5)) / columns - 1;
      grid.x[i] = outward * half;
      grid.y[i] = y;
      grid.outward[i] = Math.abs(outward);
      grid.across[i] = (u * Math.exp(-delta * u)) / scale;
      grid.area[i] = (width / rows) * ((2 * half) / columns);
    }
  }
  return grid;
};

const forceOf = (grid: Grid, peak: number, along: number): number => {
  let sum = 0;
  for (let i = 0; i < grid.x.length; i++) sum += grid.area[i]! * grid.across[i]! * (1 - grid.outward[i]! ** along);
  return peak * sum;
};

/** The contact patch of one tyre. `step` is the grid in m. Throws RangeError for tyre data outside the formulas. */
export const tyreContact = (tyre: Tyre, step = 0.01): TyreContact => {
  for (const [name, value] of Object.entries(tyre)) if (!(value > 0)) throw new RangeError(`${name}: must be above 0`);
  const overInflation = Math.log(tyre.inflation / tyre.recommendedInflation);
  const peak = 34.4 + 1.13 * tyre.inflation + 0.72 * tyre.wheelLoad - 33.4 * overInflation;
  const length = 0.47 + 0.11 * tyre.diameter ** 2 - 0.16 * overInflation;
  if (!(peak > 0 && length > 0)) throw new RangeError('inflation: too far above the recommended pressure for the formulas');
  const ellipse = 2.1 * (tyre.width * tyre.diameter) ** 2 + 2;
  const grid = gridOf(length, tyre.width, ellipse, step);
  let low = 1;
  let high = 16;
  for (let pass = 0; pass < 60; pass++) {
    const middle = (low + high) / 2;
    if (forceOf(grid, peak, middle) < tyre.wheelLoad) low = middle;
    else high = middle;
  }
  const along = (low + high) / 2;
  const load = new Float64Array(grid.x.length);
  let area = 0;
  for (let i = 0; i < load.length; i++) {
    load[i] = peak * grid.area[i]! * grid.across[i]! * (1 - grid.outward[i]! ** along);
    area += grid.area[i]!;
  }
  return {
    peak,
    length,
    ellipse,
    area,
    mean: tyre.wheelLoad / area,
    along,
    fits: Math.abs(forceOf(grid, peak, along) - tyre.wheelLoad) <= 0.02 * tyre.wheelLoad,
    elements: { x: grid.x, y: grid.y, load },
  };
};

/** kPa in the ground at (`x`, `y`, depth `z`), m, under that patch; x along the tyre, y across, from the middle. */
export const stressUnderTyre = (contact: TyreContact, x: number, y: number, z: number, concentration: number): number => {
  const { x: xs, y: ys, load } = contact.elements;
  let sum = 0;
  for (let i = 0; i < load.length; i++) sum += pointStress(load[i]!, Math.hypot(xs[i]! - x, ys[i]! - y), z, concentration);
  return sum;
};
