import { memo } from 'react';
import { addDays, dateOf, midnight, weekdayOf } from '#shared/calendar/local-time.ts';
import type { Fixture } from '#shared/vocabulary/venue.ts';
import { monthNames, weekdayNames } from '#shared/wording/moments.ts';
import { momentWords } from '../desk/moments.ts';
import type { StripScale } from './strip-scale.ts';

/** px of a day from which it has room for its name, and for the weekday as well. */
const roomForDay = 15;
const roomForName = 34;

/** The ruled paper of the strip: days, weekends, months. */
export const StripDays = memo(({ scale, height }: { scale: StripScale; height: number }) => (
  <g>
    {Array.from({ length: scale.count }, (_, day) => {
      const date = addDays(scale.first, day);
      const x = scale.x(midnight(date));
      const number = Number(date.slice(8));
      const month = monthNames[Number(date.slice(5, 7)) - 1]!;
      const words =
        scale.dayWidth >= roomForName
          ? day === 0 || number === 1
            ? `${number} ${month}`
            : `${weekdayNames[weekdayOf(date) - 1]!.slice(0, 2)} ${number}`
          : scale.dayWidth >= roomForDay
            ? number === 1 || day === 0
              ? month
              : String(number)
            : number === 1
              ? month
              : '';
      const ruled = scale.dayWidth >= 5 || number === 1;
      return (
        <g key={date}>
          {weekdayOf(date) > 5 && <rect x={x} y={0} width={scale.dayWidth} height={height} className="weekend" />}
          {ruled && <path d={`M${x} 0V${height}`} className={number === 1 ? 'month' : 'day'} />}
          {words !== '' && (
            <text x={x + 3} y={10} className="day-name">
              {words}
            </text>
          )}
        </g>
      );
    })}
  </g>
));

/** Home dates, practice and blackouts: they run through all rows. The name stands left of its bar where there is room. */
export const StripFixtures = ({
  fixtures,
  scale,
  top,
  height,
  chosen,
}: {
  fixtures: readonly Fixture[];
  scale: StripScale;
  top: number;
  height: number;
  chosen: string | null;
}) => (
  <g>
    {fixtures
      .filter((fixture) => scale.holds(dateOf(fixture.start)))
      .map((fixture) => {
        const x = scale.x(fixture.start);
        return (
          <g key={fixture.id} className={`fixture ${fixture.kind}${fixture.id === chosen ? ' chosen' : ''}`}>
            <title>{`${fixture.name}, ${momentWords(fixture.start)}`}</title>
            <rect x={x} y={top} width={Math.max(2, scale.x(fixture.end) - x)} height={height - top} />
            {fixture.kind === 'home-date' && scale.dayWidth >= 4 && (
              <text x={x - 3} y={top + 9} textAnchor="end">
                {scale.dayWidth >= 12 ? fixture.name : fixture.name.replace(/[^\d]+/g, '')}
              </text>
            )}
          </g>
        );
      })}
  </g>
);
