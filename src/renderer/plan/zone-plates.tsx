import { useMemo } from 'react';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Bounds } from '../drawings/frame.ts';
import { verdictMarks } from '#shared/wording/words.ts';
import { letterPlaces } from '../drawings/turf-cells.ts';

const isWithin = ({ x, y, width, height }: Bounds, place: { readonly x: number; readonly y: number }, by: number): boolean =>
  place.x > x - by && place.x < x + width + by && place.y > y - by && place.y < y + height + by;

/** Letter and verdict of every zone, always of the same size on the screen. */
export const ZonePlates = ({
  forecast,
  scale,
  chosen,
  choose,
  without = null,
}: {
  forecast: Forecast;
  /** m to a pixel */
  scale: number;
  chosen: string | null;
  choose: (letter: string) => void;
  /** Ground on which lengths are written, m: no plate stands there. */
  without?: Bounds | null;
}) => {
  const places = useMemo(() => letterPlaces(forecast), [forecast]);
  const size = 11 * scale;
  return (
    <g>
      {forecast.zones.map((zone) => {
        const place = places.get(zone.letter);
        if (!place || (without && isWithin(without, place, 22 * scale))) return null;
        const mark = `${zone.letter} ${verdictMarks[zone.verdict]}`;
        const width = (mark.length * 0.5 + 0.7) * size;
        return (
          <g
            key={zone.letter}
            className={`plate ${zone.verdict}${zone.letter === chosen ? ' chosen' : ''}`}
            transform={`translate(${place.x} ${-place.y})`}
            onClick={() => choose(zone.letter)}
          >
            <rect x={-width / 2} y={-0.72 * size} width={width} height={1.44 * size} rx={0.15 * size} strokeWidth={scale} />
            <text y={0.34 * size} fontSize={size} textAnchor="middle">
              {mark}
            </text>
          </g>
        );
      })}
    </g>
  );
};
