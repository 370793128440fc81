/** A solid layer: thickness m and conductivity W/(m K). */
export interface Slab {
  readonly thickness: number;
  readonly conductivity: number;
}

/** R = d/k, m² K/W. */
export const slabResistance = (slab: Slab): number => slab.thickness / slab.conductivity;

/** Layers one on another add: R = Σ d/k, m² K/W. @source iso-6946 */
export const seriesResistance = (slabs: readonly Slab[]): number => slabs.reduce((sum, slab) => sum + slabResistance(slab), 0);

/** Steady heat flow through a resistance, W/m², from the warm side to the cold. */
export const heatFlow = (difference: number, resistance: number): number => difference / resistance;
