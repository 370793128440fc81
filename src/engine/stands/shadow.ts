import type { Cells } from '#engine/ground/cells.ts';
import { signedArea } from '#shared/geometry/polygon.ts';
import { blocksOf, passToSun, roofsOf } from '#engine/stands/blocks.ts';
import { cosOf, sinOf, tanOf } from '#engine/sun/degrees.ts';
import type { Ground } from '#engine/sun/position.ts';
import { sunPosition } from '#engine/sun/position.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';
import type { Stand } from '#shared/vocabulary/venue.ts';

/** The shadow on the field at one instant, by exact rays, for the plan. */
export type Shadow = {
  /** The sun, ° above the horizon without refraction and ° clockwise from north. */
  readonly altitude: number;
  readonly azimuth: number;
  /** By cell the share of beam that arrives; all 0 with the sun down. */
  readonly pass: Float64Array;
  /** By cell 1 where more than half of the beam arrives. */
  readonly lit: Uint8Array;
};

/** Length of the shadow of an upright edge on level ground: height/tan(altitude); Infinity with the sun down. */
export const shadowLength = (height: number, altitude: number): number => (altitude > 0 ? height / tanOf(altitude) : Infinity);

/**
 * @param bearing of the field's +y axis, ° clockwise from north; @param altitude @param azimuth of the sun, °
 */
export const shadowUnder = (
  cells: Cells,
  stands: readonly Stand[],
  bearing: number,
  altitude: number,
  azimuth: number,
): Shadow => {
  const pass = new Float64Array(cells.count);
  if (altitude > 0) {
    const [blocks, roofs] = [blocksOf(stands), roofsOf(stands)];
    const sight = { tanAltitude: tanOf(altitude), dx: sinOf(azimuth - bearing), dy: cosOf(azimuth - bearing) };
    for (let i = 0; i < cells.count; i++) pass[i] = passToSun(blocks, roofs, cells.x[i]!, cells.y[i]!, sight);
  }
  return { altitude, azimuth, pass, lit: Uint8Array.from(pass, (share) => (share > 0.5 ? 1 : 0)) };
};

/** @param instant UTC epoch milliseconds */
export const shadowAt = (
  cells: Cells,
  field: { readonly bearing: number },
  stands: readonly Stand[],
  place: Ground,
  instant: number,
): Shadow => {
  const sun = sunPosition(instant, place);
  return shadowUnder(cells, stands, field.bearing, sun.altitude, sun.azimuth);
};

/**
 * The shadows as pieces to draw: for each block its outline, its outline moved by the shadow of its top, and the sweep of
 * every edge between; for each roof the sweep from the shadow of its underside to that of its top. All pieces run anticlockwise,
 * so that one path filled by the non-zero rule is their union. Empty with the sun down.
 */
export const shadowPieces = (
  stands: readonly Stand[],
  bearing: number,
  altitude: number,
  azimuth: number,
): readonly Polygon[] => {
  if (altitude <= 0) return [];
  const [dx, dy] = [-sinOf(azimuth - bearing), -cosOf(azimuth - bearing)];
  const sweep = (outline: Polygon, low: number, high: number): Polygon[] => {
    const [near, far] = [shadowLength(low, altitude), shadowLength(high, altitude)];
    const moved = (corner: Point, by: number): Point => [corner[0] + dx * by, corner[1] + dy * by];
    const sides = outline.map((corner, i): Polygon => {
      const next = outline[(i + 1) % outline.length]!;
      return [moved(corner, near), moved(next, near), moved(next, far), moved(corner, far)];
    });
    return [outline.map((corner) => moved(corner, near)), outline.map((corner) => moved(corner, far)), ...sides];
  };
  const pieces = [
    ...blocksOf(stands).flatMap((block) => sweep(block.outline, 0, block.height)),
    ...roofsOf(stands).flatMap((roof) => sweep(roof.outline, roof.underside, roof.top)),
  ];
  return pieces
    .filter((piece) => Math.abs(signedArea(piece)) > 1e-9)
    .map((piece) => (signedArea(piece) > 0 ? piece : [...piece].reverse()));
};
