import { wholeNumberUp } from '#engine/works/customary-units.ts';

/** Sand for one topdressing. */
export interface SandOrder {
  /** m³ */
  readonly volume: number;
  /** kg */
  readonly mass: number;
}

/**
 * Sand for a depth on an area, with what is lost to settling: `volume = area · depth · (1 + settling)`.
 * @param area m² @param depth m @param density kg/m³, loose dry sand 1,602 (100 lb/ft³) @param settling share, 0.10–0.20 when filling
 * @source sand-math-2011
 */
export const sandFor = (area: number, depth: number, density: number, settling = 0): SandOrder => {
  const volume = area * depth * (1 + settling);
  return { volume, mass: volume * density };
};

/** Applications that bring a depth on without ever exceeding the most in one: `ceil(depth/most)`. @source kowalewski-2010 */
export const applicationsFor = (depth: number, most: number): number => wholeNumberUp(depth / most);

/** Trucks for a mass by payload; kg. @throws RangeError when the payload is not above 0 */
export const trucksFor = (mass: number, payload: number): number => {
  if (!(payload > 0)) throw new RangeError(`payload: must be above 0 kg, not ${payload}`);
  return wholeNumberUp(mass / payload);
};

/** Drain pipe under an area, m: `area/spacing`. */
export const drainPipe = (area: number, spacing: number): number => area / spacing;

/** A layer of the root zone or its gravel, m³. */
export const layerVolume = (area: number, thickness: number): number => area * thickness;

/** Bulk density at a porosity, in the unit of the particle density: `ρs · (1 − porosity)`. */
export const bulkDensityAt = (porosity: number, particleDensity: number): number => particleDensity * (1 - porosity);
