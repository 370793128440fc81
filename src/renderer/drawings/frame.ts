import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';

/** A part of the ground, m, in the field's own axes: x to the right, y up the field. */
export interface Bounds {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What a drawing shows: its middle, m, and how many metres one pixel is. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

export const boundsOf = (rings: readonly Polygon[]): Bounds => {
  const xs = rings.flat().map(([x]) => x);
  const ys = rings.flat().map(([, y]) => y);
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { x: left, y: bottom, width: right - left, height: top - bottom };
};

/** The view that shows all of some ground with a margin around it, m. */
export const viewOf = (bounds: Bounds, box: { width: number; height: number }, margin: number): View => ({
  x: bounds.x + bounds.width / 2,
  y: bounds.y + bounds.height / 2,
  scale: Math.max((bounds.width + 2 * margin) / box.width, (bounds.height + 2 * margin) / box.height),
});

/** Closer or further by a factor, while one point of the ground stays where it is. */
export const zoomed = (view: View, factor: number, [px, py]: Point = [view.x, view.y]): View => ({
  x: px + (view.x - px) * factor,
  y: py + (view.y - py) * factor,
  scale: view.scale * factor,
});

/** SVG's y runs down the sheet, the field's +y up: drawings are written with −y. */
export const viewBoxOf = (view: View, box: { width: number; height: number }): string =>
  `${view.x - (box.width * view.scale) / 2} ${-view.y - (box.height * view.scale) / 2} ${box.width * view.scale} ${box.height * view.scale}`;

export const pathOf = (rings: readonly Polygon[]): string =>
  rings.map((ring) => `M${ring.map(([x, y]: Point) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}Z`).join('');

/** A round length, m, of at most a given one: 10, 20, 50 … of the reader's unit. */
export const barLength = (most: number, metresPerUnit: number): { metres: number; units: number } => {
  const wanted = most / metresPerUnit;
  const ten = 10 ** Math.floor(Math.log10(wanted));
  const units = [5, 2, 1].map((step) => step * ten).find((length) => length <= wanted) ?? ten;
  return { metres: units * metresPerUnit, units };
};
