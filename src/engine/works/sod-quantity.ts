import { wholeNumberUp } from '#engine/works/customary-units.ts';

/** Sod as it is cut: soil thickness m, moist density kg/m³. @returns kg/m² */
export const sodMassPerArea = (thickness: number, density: number): number => thickness * density;

/** Area that one payload carries by weight alone, m². */
export const areaPerLoad = (payload: number, massPerArea: number): number => payload / massPerArea;

/** Area to order for a measured area: `area · (1 + waste)`, m². */
export const areaWithWaste = (area: number, waste: number): number => area * (1 + waste);

/** Whole rolls, slabs or pieces for a measured area, taken up after the waste. @param pieceArea m² */
export const piecesFor = (area: number, waste: number, pieceArea: number): number => {
  if (!(pieceArea > 0)) throw new RangeError(`pieceArea: must be above 0 m², not ${pieceArea}`);
  return wholeNumberUp(areaWithWaste(area, waste) / pieceArea);
};

export interface SodCut {
  /** m of soil */
  readonly thickness: number;
  /** kg/m³ moist */
  readonly density: number;
  /** m */
  readonly rollWidth: number;
  readonly rollLength: number;
}

export interface SodOrder {
  /** m² with waste, as whole rolls */
  readonly area: number;
  readonly rolls: number;
  /** kg */
  readonly rollMass: number;
  readonly mass: number;
  readonly rollsPerTruck: number;
  readonly trucks: number;
  /** rolls on each truck; no truck above its payload */
  readonly loads: readonly number[];
}

/**
 * The order for a measured area: rolls are whole after the waste, trucks carry whole rolls within their payload.
 * @param area m² measured @param waste share beyond it @param payload kg
 * @throws RangeError when an amount is not above 0 or one roll is heavier than a truck carries
 */
export const sodOrder = (area: number, waste: number, cut: SodCut, payload: number): SodOrder => {
  if (!(area >= 0)) throw new RangeError(`area: must not be negative, not ${area}`);
  for (const field of ['thickness', 'density', 'rollWidth', 'rollLength'] as const) {
    if (!(cut[field] > 0)) throw new RangeError(`${field}: must be above 0, not ${cut[field]}`);
  }
  const rollArea = cut.rollWidth * cut.rollLength;
  const rollMass = rollArea * sodMassPerArea(cut.thickness, cut.density);
  const rollsPerTruck = Math.floor(payload / rollMass + 1e-9);
  if (rollsPerTruck < 1)
    throw new RangeError(`payload: one roll of ${Math.round(rollMass)} kg is more than a truck carries (${payload} kg)`);
  const rolls = piecesFor(area, waste, rollArea);
  const trucks = Math.ceil(rolls / rollsPerTruck);
  const loads = Array.from({ length: trucks }, (_, truck) => Math.min(rollsPerTruck, rolls - truck * rollsPerTruck));
  return { area: rolls * rollArea, rolls, rollMass, mass: rolls * rollMass, rollsPerTruck, trucks, loads };
};

/** Trucks by the area one truck carries, up to the next whole truck. */
export const trucksByArea = (area: number, areaPerTruck: number): number => wholeNumberUp(area / areaPerTruck);

/** Truckloads of a thick cut for one of a thin cut, by weight: the ratio of the thicknesses. */
export const thickToThinTrucks = (thick: number, thin: number): number => thick / thin;

/** Seam along the rolls, m: `area/width`. */
export const longSeam = (area: number, rollWidth: number): number => area / rollWidth;

/** Diameter of a coil, m: turf of one thickness round a core. `√(core² + 4 · length · thickness/π)` */
export const coilDiameter = (length: number, thickness: number, core: number): number =>
  Math.sqrt(core * core + (4 * length * thickness) / Math.PI);
