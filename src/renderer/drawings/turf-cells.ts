import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { coverColour } from '#shared/wording/cover-scale.ts';
import type { ShownState } from '../desk/desk.ts';

/**
 * Turf cells of one colour as one path: a few paths redraw in a frame where thousands of squares do not. On the two evenings that the
 * forecast keeps by cell each cell has its own cover; on the day of the cursor a cell shows the middle of its zone.
 * @param day index into the days of the forecast, for `cursor`
 */
export const cellPaths = (
  forecast: Forecast,
  state: ShownState,
  day: number,
): readonly { readonly colour: string; readonly path: string }[] => {
  const { cells, zones } = forecast;
  const byGroup = state === 'after' ? cells.coverAfter : cells.coverHome;
  const half = cells.size / 2 + 0.02;
  const paths = new Map<string, string[]>();
  cells.x.forEach((x, cell) => {
    const cover = state === 'cursor' ? (zones[cells.zone[cell]!]?.cover.p50[day] ?? 0) : byGroup[cells.group[cell]!]!;
    const colour = coverColour(cover);
    const row = paths.get(colour) ?? [];
    row.push(`M${x - half} ${-cells.y[cell]! - half}h${2 * half}v${2 * half}h${-2 * half}z`);
    paths.set(colour, row);
  });
  return [...paths].map(([colour, parts]) => ({ colour, path: parts.join('') }));
};

/** Where a zone's letter stands: on its cell nearest to the middle of its turf. */
export const letterPlaces = ({ cells, zones }: Forecast): ReadonlyMap<string, { readonly x: number; readonly y: number }> =>
  new Map(
    zones.flatMap((zone, own) => {
      const inside = cells.x.map((_, cell) => cell).filter((cell) => cells.zone[cell] === own);
      if (inside.length === 0) return [];
      const mean = (values: readonly number[]): number => inside.reduce((sum, cell) => sum + values[cell]!, 0) / inside.length;
      const [mx, my] = [mean(cells.x), mean(cells.y)];
      const far = (cell: number): number => Math.hypot(cells.x[cell]! - mx, cells.y[cell]! - my);
      const nearest = inside.reduce((best, cell) => (far(cell) < far(best) ? cell : best), inside[0]!);
      return [[zone.letter, { x: cells.x[nearest]!, y: cells.y[nearest]! }] as const];
    }),
  );
