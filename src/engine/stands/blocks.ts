import { contains } from '#shared/geometry/polygon.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';
import type { Stand } from '#shared/vocabulary/venue.ts';

/**
 * What stands around the field, as light meets it: solid blocks from the ground up to a height, and roofs as slabs between their
 * underside and top. A stand is its lower block and one more block for each tier. Heights are m above the field, and light is
 * looked at on the level of the field.
 */
export type Block = { readonly outline: Polygon; readonly height: number };

export type RoofSlab = {
  readonly outline: Polygon;
  readonly underside: number;
  readonly top: number;
  /** Share of light that passes. */ readonly transmission: number;
};

/** Every block of every stand, those of no height left out. */
export const blocksOf = (stands: readonly Stand[]): readonly Block[] =>
  stands
    .flatMap((stand) => [{ outline: stand.outline, height: stand.height }, ...stand.tiers])
    .filter((block) => block.height > 0 && block.outline.length >= 3)
    .map(({ outline, height }) => ({ outline, height }));

/** Every roof; one whose top is entered below its underside is taken as a thin sheet at the underside. */
export const roofsOf = (stands: readonly Stand[]): readonly RoofSlab[] =>
  stands
    .flatMap((stand) => stand.roof ?? [])
    .filter((roof) => roof.transmission < 1)
    .map((roof) => ({ ...roof, top: Math.max(roof.top, roof.underside) }));

/**
 * Where a ray over the ground meets a ring: distances in front of the eye, nearest first, an odd count where the eye is inside.
 * A corner belongs to the side it falls on, the same for both edges that share it, so that crossings always pair up.
 * @param x @param y the eye, m; @param dx @param dy unit direction; @param found emptied and filled, m
 */
export const crossings = (ring: Polygon, x: number, y: number, dx: number, dy: number, found: number[]): void => {
  found.length = 0;
  let [bx, by] = offset(ring.at(-1)!, x, y);
  let bSide = dx * by - dy * bx;
  for (const corner of ring) {
    const [ax, ay] = [bx, by];
    const aSide = bSide;
    bx = corner[0] - x;
    by = corner[1] - y;
    bSide = dx * by - dy * bx;
    if (aSide >= 0 === bSide >= 0) continue;
    const along = dx * ax + dy * ay + ((dx * (bx - ax) + dy * (by - ay)) * aSide) / (aSide - bSide);
    if (along >= 0) found.push(along);
  }
  if (found.length === 2 && found[0]! > found[1]!) found.reverse();
  if (found.length > 2) found.sort((a, b) => a - b);
};

const offset = (corner: Point, x: number, y: number): [number, number] => [corner[0] - x, corner[1] - y];

/** Share of beam that reaches a spot, 0 to 1, by exact rays. */
export type Sight = {
  /** Tangent of the sun's altitude, above 0. */ readonly tanAltitude: number;
  /** Unit direction over the ground to the sun, field axes. */ readonly dx: number;
  readonly dy: number;
};

/**
 * What the blocks and roofs let through of a ray from a spot to the sun. A block stops it where the ray stands no higher than its
 * top at the near face; a roof weakens it where it passes between underside and top within the outline. From inside a block
 * nothing is seen.
 */
export const passToSun = (blocks: readonly Block[], roofs: readonly RoofSlab[], x: number, y: number, sight: Sight): number => {
  const found: number[] = [];
  for (const block of blocks) {
    if (contains(block.outline, x, y)) return 0;
    crossings(block.outline, x, y, sight.dx, sight.dy, found);
    if (found.length > 0 && sight.tanAltitude * found[0]! <= block.height) return 0;
  }
  let pass = 1;
  for (const roof of roofs) {
    crossings(roof.outline, x, y, sight.dx, sight.dy, found);
    if (found.length % 2 === 1) found.unshift(0);
    for (let i = 0; i + 1 < found.length; i += 2) {
      if (sight.tanAltitude * found[i]! <= roof.top && sight.tanAltitude * found[i + 1]! >= roof.underside) {
        pass *= roof.transmission;
        break;
      }
    }
  }
  return pass;
};
