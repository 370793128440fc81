import { Temporal } from 'temporal-polyfill';
import type { Cells } from '#engine/ground/cells.ts';
import { cellsInside } from '#engine/ground/cells.ts';
import { lightFromFlux } from '#engine/light/photons.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import type { LightRig } from '#shared/vocabulary/venue.ts';

/**
 * Lamps over part of the turf: each cell whose middle lies under a rig gains flux × hours × 0.0036 mol/m² on the rig's days,
 * first and last included. A rig that moves is several rigs with days of their own; rigs that overlap add up.
 */

/** Whether a rig burns on a day of the calendar. */
export const burnsOn = (rig: LightRig, date: string): boolean => rig.from <= date && date <= rig.until;

/** Light added to each cell on a day, mol/m². */
export const rigLight = (cells: Cells, rigs: readonly LightRig[], date: string): Float64Array => {
  const added = new Float64Array(cells.count);
  for (const rig of rigs) {
    if (!burnsOn(rig, date)) continue;
    for (const cell of cellsInside(cells, rig.outline)) added[cell]! += lightFromFlux(rig.flux, rig.hours);
  }
  return added;
};

/** One rig over several days: by rig the cells it lights, worked out once for a run of days. */
export type RigReach = { readonly rig: LightRig; readonly cells: Int32Array; readonly light: number };

/** @returns for each rig its cells and the mol/m² it adds to them on each of its days */
export const rigReaches = (cells: Cells, rigs: readonly LightRig[]): readonly RigReach[] =>
  rigs.map((rig) => ({ rig, cells: cellsInside(cells, rig.outline), light: lightFromFlux(rig.flux, rig.hours) }));

export type Rotation = {
  /** Stem of the ids of the rigs made, such as `north-rig`. */
  readonly id: string;
  /** Where the rig stands in turn. */
  readonly positions: readonly Polygon[];
  /** µmol/m²/s */ readonly flux: number;
  /** h lit a day */ readonly hours: number;
  /** Days at each position before it moves on. */ readonly daysEach: number;
  readonly from: string;
  readonly until: string;
};

/**
 * One rig wheeled from position to position, round and round until its last day, as rigs with days of their own. The last stay
 * may be cut short.
 * @throws RangeError where there is no position, less than a day each, or the last day is before the first
 */
export const rotateRig = (rotation: Rotation): readonly LightRig[] => {
  const { id, positions, flux, hours, daysEach, from, until } = rotation;
  if (positions.length === 0) throw new RangeError('positions: must hold at least one');
  if (!Number.isInteger(daysEach) || daysEach < 1) throw new RangeError(`daysEach: ${daysEach} must be a whole number from 1`);
  if (until < from) throw new RangeError(`until: ${until} is before ${from}`);
  const stays: LightRig[] = [];
  const last = Temporal.PlainDate.from(until);
  let first = Temporal.PlainDate.from(from);
  for (let stay = 0; Temporal.PlainDate.compare(first, last) <= 0; stay++) {
    const next = first.add({ days: daysEach });
    const end = Temporal.PlainDate.compare(next, last) > 0 ? last : next.subtract({ days: 1 });
    const outline = positions[stay % positions.length]!;
    stays.push({ id: `${id}-${stay + 1}`, outline, flux, hours, from: first.toString(), until: end.toString() });
    first = next;
  }
  return stays;
};
