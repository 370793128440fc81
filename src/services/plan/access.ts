import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';

/** Apron that a machine can drive along, m. */
const drivable = 3;
/** What a way costs per cell: around the turf, over ground that was covered, over turf that was not, which is crossed last of all. */
const around = 0.2;
const overCovered = 1;
const overLive = 100;

type Cells = Forecast['cells'];
const keyOf = (column: number, row: number): string => `${column} ${row}`;
const beside = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

/** Cells of the turf by column and row, each with its zone; those of the apron beside it with −1, where a machine can drive there. */
const groundOf = (cells: Cells, apron: number): ReadonlyMap<string, number> => {
  const ground = new Map<string, number>();
  cells.x.forEach((x, cell) =>
    ground.set(keyOf(Math.floor(x / cells.size), Math.floor(cells.y[cell]! / cells.size)), cells.zone[cell]!),
  );
  if (apron < drivable) return ground;
  for (const key of [...ground.keys()]) {
    const [column, row] = key.split(' ').map(Number) as [number, number];
    // Corners too, so that the way around is not broken.
    for (let right = -1; right <= 1; right += 1)
      for (let up = -1; up <= 1; up += 1) {
        const next = keyOf(column + right, row + up);
        if (!ground.has(next)) ground.set(next, -1);
      }
  }
  return ground;
};

/**
 * The zones that a machine crosses on its way from the gate to each zone, own zone left out: the cheapest way over the cells of the
 * forecast, around the turf where the apron allows it. `covered` holds the letters of zones that are worked on.
 */
export const waysFrom = (
  gate: Point,
  { cells, zones }: Pick<Forecast, 'cells' | 'zones'>,
  apron: number,
  covered: ReadonlySet<string>,
): ReadonlyMap<string, readonly string[]> => {
  const ground = groundOf(cells, apron);
  const cost = (zone: number): number => (zone < 0 ? around : covered.has(zones[zone]!.letter) ? overCovered : overLive);
  const [gateX, gateY] = gate.map((metres) => metres / cells.size - 0.5) as [number, number];
  const distance = (key: string): number => {
    const [column, row] = key.split(' ').map(Number) as [number, number];
    return Math.hypot(column - gateX, row - gateY);
  };
  // Where there is an apron to drive on, a machine is on it before it is on the turf.
  const apronCells = [...ground.keys()].filter((key) => ground.get(key)! < 0);
  const start = (apronCells.length > 0 ? apronCells : [...ground.keys()]).reduce((best, key) =>
    distance(key) < distance(best) ? key : best,
  );
  const found = new Map<string, { readonly far: number; readonly from: string | null }>([
    [start, { far: cost(ground.get(start)!), from: null }],
  ]);
  const open = new Set([start]);
  const ways = new Map<string, readonly string[]>();
  while (open.size > 0) {
    const key = [...open].reduce((best, one) => (found.get(one)!.far < found.get(best)!.far ? one : best));
    open.delete(key);
    const zone = ground.get(key)!;
    const letter = zone < 0 ? null : zones[zone]!.letter;
    if (letter !== null && !ways.has(letter)) ways.set(letter, crossed(key, found, ground, zones, letter));
    const [column, row] = key.split(' ').map(Number) as [number, number];
    for (const [right, up] of beside) {
      const next = keyOf(column + right, row + up);
      const entered = ground.get(next);
      if (entered === undefined) continue;
      const far = found.get(key)!.far + cost(entered);
      if (far >= (found.get(next)?.far ?? Infinity) - 1e-9) continue;
      found.set(next, { far, from: key });
      open.add(next);
    }
  }
  return ways;
};

const crossed = (
  last: string,
  found: ReadonlyMap<string, { readonly from: string | null }>,
  ground: ReadonlyMap<string, number>,
  zones: Forecast['zones'],
  own: string,
): readonly string[] => {
  const letters = new Set<string>();
  for (let key: string | null = last; key !== null; key = found.get(key)!.from) {
    const zone = ground.get(key)!;
    if (zone >= 0 && zones[zone]!.letter !== own) letters.add(zones[zone]!.letter);
  }
  return [...letters].toSorted();
};

/**
 * The half-field method as a sequence: zones of the half away from the gate are laid before those of the half at the gate are opened, so
 * that nothing drives over new turf. Halves are cut across the longer axis (`ends`) or along it (`sides`), by the middle of each zone.
 */
export const halvesOf = (
  venue: Pick<Venue, 'rules' | 'field'>,
  { cells, zones }: Pick<Forecast, 'cells' | 'zones'>,
  letters: readonly { readonly own: string; readonly letter: string }[],
): RecoveryProblem['sequences'] => {
  const { halves, gateAt } = venue.rules;
  if (halves === undefined) return [];
  const extent = (axis: 0 | 1): number => {
    const all = venue.field.outline.map((point) => point[axis]);
    return Math.max(...all) - Math.min(...all);
  };
  const long = extent(0) >= extent(1) ? 0 : 1;
  const axis = halves === 'ends' ? long : ((1 - long) as 0 | 1);
  const along = axis === 0 ? cells.x : cells.y;
  const middle = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
  const split = middle(along);
  const gateSide = gateAt ? Math.sign(gateAt[axis] - split) || 1 : 1;
  const placed = letters.map(({ own, letter }) => {
    const index = zones.findIndex((zone) => zone.letter === own);
    return { letter, side: Math.sign(middle(along.filter((_, cell) => cells.zone[cell] === index)) - split) || -gateSide };
  });
  const before = placed.filter(({ side }) => side !== gateSide).map(({ letter }) => letter);
  const after = placed.filter(({ side }) => side === gateSide).map(({ letter }) => letter);
  return before.length > 0 && after.length > 0 ? [{ before, after }] : [];
};
