import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';

/** Part of the ground that is in view, m, and how it lies on the drawing. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const boundsOf = (rings: readonly Polygon[]): View => {
  const xs = rings.flat().map(([x]) => x);
  const ys = rings.flat().map(([, y]) => y);
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { x: left, y: bottom, width: right - left, height: top - bottom };
};

export const grown = (view: View, by: number): View => ({
  x: view.x - by,
  y: view.y - by,
  width: view.width + 2 * by,
  height: view.height + 2 * by,
});

/** SVG's y runs down the sheet, the field's +y up: drawings are written with −y. */
export const pathOf = (rings: readonly Polygon[]): string =>
  rings.map((ring) => `M${ring.map(([x, y]: Point) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}Z`).join('');

/** A round length, m, that fills about a fifth of the view: 10, 20, 50 … of the reader's unit. */
export const barLength = (view: View, metresPerUnit: number): { metres: number; units: number } => {
  const wanted = view.width / 5 / metresPerUnit;
  const ten = 10 ** Math.floor(Math.log10(wanted));
  const units = [5, 2, 1].map((step) => step * ten).find((length) => length <= wanted) ?? ten;
  return { metres: units * metresPerUnit, units };
};
