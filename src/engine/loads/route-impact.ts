import type { Ground, GroundState } from '#engine/loads/ground.ts';
import { type MachinePasses, type TrafficImpact, trafficImpact, type TrafficSettings } from '#engine/loads/machine-passes.ts';
import type { PanelPosition, SpreadingCovering } from '#engine/loads/panel/pressure-under.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';

/**
 * Stress and ruts cell by cell along a drawn route.
 *
 * The local width of the route at a cell is its shortest chord there. The two wheel tracks, each as wide as its patch and its
 * wander, touch a share of that width; where the route narrows they overlap, and every spot takes more passes. Inside a gate
 * throat each pass counts more; inside a turning spot machines turn.
 *
 *     swept = min(w, 2(b + wander)),  touched share = swept/w,  passes of a touched spot = N · 2b/swept
 *
 * w local width, b width of the widest wheel patch, both in m. Touched share × passes is N · 2b/w whatever the wander.
 */
export interface RouteSettings {
  /** m, both ways together */
  readonly wander: number;
  /** Ordinary passes that one pass through a gate counts as. */
  readonly gate: number;
}

/** A round spot of a route, m. */
export interface RouteSpot {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

export interface Route {
  readonly outline: Polygon;
  readonly gates: readonly RouteSpot[];
  readonly turns: readonly RouteSpot[];
}

export interface CellImpact extends TrafficImpact {
  /** Number of the cell in the list given. */
  readonly cell: number;
  /** Local width of the route, m. */
  readonly width: number;
  /** Share of the cell that wheels touch. */
  readonly touched: number;
  readonly gate: boolean;
  readonly turning: boolean;
}

/** Whether (`x`, `y`) lies in the ring; even–odd rule. */
const inside = (ring: Polygon, x: number, y: number): boolean => {
  let odd = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [xi, yi] = ring[i]!;
    const [xj, yj] = ring[j]!;
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) odd = !odd;
  }
  return odd;
};

const directions = 36;

/** m; the shortest chord of the ring through a point inside it, over 36 directions. */
export const localWidth = (ring: Polygon, x: number, y: number): number => {
  let shortest = Infinity;
  for (let d = 0; d < directions; d++) {
    const angle = (Math.PI * d) / directions;
    const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
    let [ahead, behind] = [Infinity, Infinity];
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [ax, ay] = [ring[j]![0] - x, ring[j]![1] - y];
      const [ex, ey] = [ring[i]![0] - ring[j]![0], ring[i]![1] - ring[j]![1]];
      const cross = dx * ey - dy * ex;
      if (Math.abs(cross) < 1e-12) continue;
      const along = (ax * ey - ay * ex) / cross;
      const onSide = (ax * dy - ay * dx) / cross;
      if (onSide < 0 || onSide > 1) continue;
      if (along >= 0) ahead = Math.min(ahead, along);
      if (along <= 0) behind = Math.min(behind, -along);
    }
    shortest = Math.min(shortest, ahead + behind);
  }
  return shortest;
};

const within = (spots: readonly RouteSpot[], x: number, y: number): boolean =>
  spots.some((spot) => Math.hypot(spot.x - x, spot.y - y) <= spot.radius);

/** m, the widest wheel patch of a machine. */
const patchWidth = (machine: MachinePasses): number =>
  Math.max(...machine.vehicle.axles.map((axle) => Math.sqrt(axle.load / axle.wheels / axle.contactPressure)));

/**
 * The passes that a touched spot takes where the way is `width` m wide, and the share of the width that wheels touch. Use it for a zone
 * as a whole with its mean width.
 */
export const passesAcross = (
  width: number,
  machines: readonly MachinePasses[],
  settings: Pick<RouteSettings, 'wander'>,
): { readonly touched: number; readonly machines: readonly MachinePasses[] } => {
  if (!(width > 0)) throw new RangeError('width: must be above 0');
  let touched = 0;
  const spots = machines.map((machine) => {
    const patch = patchWidth(machine);
    const swept = Math.min(width, 2 * (patch + settings.wander));
    if (machine.passes > 0) touched = Math.max(touched, swept / width);
    return { ...machine, passes: machine.passes * ((2 * patch) / swept) };
  });
  return { touched, machines: spots };
};

/**
 * The impact on every cell whose middle lies on the route; other cells are left out. `x` and `y` are the middles, m. Cells that meet
 * the same width, gate and turning share one calculation.
 */
export const routeImpact = (
  route: Route,
  x: Readonly<Float64Array>,
  y: Readonly<Float64Array>,
  machines: readonly MachinePasses[],
  covering: SpreadingCovering,
  position: PanelPosition,
  ground: Ground,
  state: GroundState,
  settings: TrafficSettings & RouteSettings,
): readonly CellImpact[] => {
  const found: CellImpact[] = [];
  const known = new Map<string, Omit<CellImpact, 'cell'>>();
  for (let cell = 0; cell < x.length; cell++) {
    if (!inside(route.outline, x[cell]!, y[cell]!)) continue;
    const width = Math.max(0.1, Math.round(localWidth(route.outline, x[cell]!, y[cell]!) * 10) / 10);
    const gate = within(route.gates, x[cell]!, y[cell]!);
    const turning = within(route.turns, x[cell]!, y[cell]!);
    const key = `${width} ${gate} ${turning}`;
    let impact = known.get(key);
    if (impact === undefined) {
      impact = { ...spotOf(width, gate, turning), width, gate, turning };
      known.set(key, impact);
    }
    found.push({ ...impact, cell });
  }
  return found;

  function spotOf(width: number, gate: boolean, turning: boolean): TrafficImpact & { readonly touched: number } {
    const across = passesAcross(width, machines, settings);
    const here = across.machines.map((machine) => ({
      ...machine,
      passes: machine.passes * (gate ? settings.gate : 1),
      turning: machine.turning || turning,
    }));
    return { ...trafficImpact(here, covering, position, ground, state, settings), touched: across.touched };
  }
};
