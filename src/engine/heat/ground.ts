/** A layer of ground as the heat solver sees it. */
export interface GroundLayer {
  /** m; the last layer reaches down to the deep temperature whatever its thickness. */
  readonly thickness: number;
  /** W/(m K) */
  readonly thawedConductivity: number;
  readonly frozenConductivity: number;
  /** J/(m³ K) */
  readonly thawedHeatCapacity: number;
  readonly frozenHeatCapacity: number;
  /** J/m³ released when all its water freezes. */
  readonly latentHeat: number;
}

/** The ground cut into cells, from the top down. */
export interface Ground {
  readonly cells: number;
  /** Thickness of each cell and depth of its middle, m. */
  readonly thickness: Float64Array;
  readonly depth: Float64Array;
  readonly thawedConductivity: Float64Array;
  readonly frozenConductivity: Float64Array;
  readonly thawedHeatCapacity: Float64Array;
  readonly frozenHeatCapacity: Float64Array;
  readonly latentHeat: Float64Array;
  /** Upper end of the freezing interval, °C, and its width, K. */
  readonly upper: number;
  readonly interval: number;
  /** Temperature held at the deep end, °C; null for a base that passes no heat. */
  readonly deepTemperature: number | null;
  /** m from the bottom of the last cell to where the deep temperature is held. */
  readonly deepDistance: number;
}

/**
 * Cell thicknesses from `first` growing by `growth` up to `largest`, m, until `depth` is filled; the last cell takes the rest.
 */
export const growingCells = (depth: number, first: number, growth: number, largest: number): Float64Array => {
  const cells: number[] = [];
  let filled = 0;
  for (let next = first; filled < depth - 1e-9; next = Math.min(largest, next * growth)) {
    const rest = depth - filled;
    cells.push(rest < 1.5 * next ? rest : next);
    filled += cells[cells.length - 1]!;
  }
  return Float64Array.from(cells);
};

export interface GroundPlan {
  readonly layers: readonly GroundLayer[];
  readonly cells: Float64Array;
  /** Middle of the freezing interval, °C, and its width, K. */
  readonly freezing: number;
  readonly interval: number;
  readonly deepTemperature: number | null;
  readonly deepDistance: number;
}

/**
 * Lays a plan of layers on a grid of cells. A cell takes the layer its middle lies in.
 * @throws RangeError without a layer, without a cell, or with a freezing interval of zero.
 */
export const groundOf = (plan: GroundPlan): Ground => {
  const { layers, cells } = plan;
  if (layers.length === 0) throw new RangeError('layers: at least one is needed');
  if (cells.length === 0) throw new RangeError('cells: at least one is needed');
  if (!(plan.interval > 0)) throw new RangeError('interval: must be more than 0 K');
  const depth = new Float64Array(cells.length);
  const pick = (of: (layer: GroundLayer) => number): Float64Array =>
    depth.map((middle) => {
      let bottom = 0;
      for (const layer of layers) {
        bottom += layer.thickness;
        if (middle < bottom) return of(layer);
      }
      return of(layers[layers.length - 1]!);
    });
  let top = 0;
  for (let i = 0; i < cells.length; i++) {
    depth[i] = top + cells[i]! / 2;
    top += cells[i]!;
  }
  return {
    cells: cells.length,
    thickness: cells,
    depth,
    thawedConductivity: pick((layer) => layer.thawedConductivity),
    frozenConductivity: pick((layer) => layer.frozenConductivity),
    thawedHeatCapacity: pick((layer) => layer.thawedHeatCapacity),
    frozenHeatCapacity: pick((layer) => layer.frozenHeatCapacity),
    latentHeat: pick((layer) => layer.latentHeat),
    upper: plan.freezing + plan.interval / 2,
    interval: plan.interval,
    deepTemperature: plan.deepTemperature,
    deepDistance: plan.deepDistance,
  };
};
