import type { Polygon } from '#shared/vocabulary/geometry.ts';
import type { MachinePasses } from '#engine/loads/machine-passes.ts';

/**
 * How wide the ground is where machines cross it, and how their passes spread over that width.
 *
 * The two wheel tracks, each as wide as its patch and its wander, touch a share of the width; where a way narrows they overlap, and
 * every spot takes more passes.
 *
 *     swept = min(w, 2(b + wander)),  touched share = swept/w,  passes of a touched spot = N · 2b/swept
 *
 * w local width, b width of the widest wheel patch, both in m. Touched share × passes is N · 2b/w whatever the wander.
 */
export interface Across {
  /** Share of the width that wheels touch. */
  readonly touched: number;
  /** The machine with the passes that a touched spot takes. */
  readonly machine: MachinePasses;
}

const directions = 36;
/** Cosine of the angle between the outward normals of two edges from which on they count as facing each other. */
const facing = -0.5;

/**
 * m; the shortest chord of the ring through a point inside it that runs between two edges facing each other, over 36 directions. A chord
 * that only cuts off a corner is no width; where nothing faces anything it has to do.
 */
export const localWidth = (ring: Polygon, x: number, y: number): number => {
  let [shortest, cutting] = [Infinity, Infinity];
  for (let d = 0; d < directions; d++) {
    const angle = (Math.PI * d) / directions;
    const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
    let [ahead, behind, edgeAhead, edgeBehind] = [Infinity, Infinity, -1, -1];
    for (let i = 0; i < ring.length; i++) {
      const along = crossing(ring, i, x, y, dx, dy);
      if (along >= 0 && along < ahead) [ahead, edgeAhead] = [along, i];
      if (along <= 0 && -along < behind) [behind, edgeBehind] = [-along, i];
    }
    const chord = ahead + behind;
    if (!(chord < Infinity)) continue;
    cutting = Math.min(cutting, chord);
    if (chord < shortest && normalsOf(ring, edgeAhead, edgeBehind, dx, dy) <= facing) shortest = chord;
  }
  return shortest < Infinity ? shortest : cutting;
};

const edgeOf = (ring: Polygon, i: number): readonly [number, number] => {
  const [from, to] = [ring[(i + ring.length - 1) % ring.length]!, ring[i]!];
  return [to[0] - from[0], to[1] - from[1]];
};

/** m along the ray at which it meets an edge; NaN where it does not. */
const crossing = (ring: Polygon, i: number, x: number, y: number, dx: number, dy: number): number => {
  const from = ring[(i + ring.length - 1) % ring.length]!;
  const [ax, ay] = [from[0] - x, from[1] - y];
  const [ex, ey] = edgeOf(ring, i);
  const cross = dx * ey - dy * ex;
  if (Math.abs(cross) < 1e-12) return NaN;
  const onEdge = (ax * dy - ay * dx) / cross;
  return onEdge < 0 || onEdge > 1 ? NaN : (ax * ey - ay * ex) / cross;
};

/** Cosine between the outward normals of the edges that a chord meets ahead and behind. */
const normalsOf = (ring: Polygon, ahead: number, behind: number, dx: number, dy: number): number => {
  const normal = (i: number, sign: number): readonly [number, number] => {
    const [ex, ey] = edgeOf(ring, i);
    const length = Math.hypot(ex, ey);
    const side = Math.sign((ey * dx - ex * dy) * sign);
    return [(side * ey) / length, (-side * ex) / length];
  };
  const [a, b] = [normal(ahead, 1), normal(behind, -1)];
  return a[0] * b[0] + a[1] * b[1];
};

/** Widths kept for whole half metres: cells of one width go one way. */
export const widthStep = 0.5;
export const steppedWidth = (width: number): number =>
  Math.max(widthStep, Math.min(200, Math.round(width / widthStep) * widthStep));

/** m, the widest wheel patch of a machine. */
const patchWidth = ({ vehicle }: MachinePasses): number =>
  Math.max(...vehicle.axles.map((axle) => Math.sqrt(axle.load / axle.wheels / axle.contactPressure)));

/** How a machine's passes spread over a width of `width` m; `wander` in m, both ways together. */
export const passesAcross = (width: number, machine: MachinePasses, wander: number): Across => {
  if (!(width > 0)) throw new RangeError('width: must be above 0');
  const patch = patchWidth(machine);
  const swept = Math.min(width, 2 * (patch + wander));
  return {
    touched: machine.passes > 0 ? swept / width : 0,
    machine: { ...machine, passes: (machine.passes * 2 * patch) / swept },
  };
};
