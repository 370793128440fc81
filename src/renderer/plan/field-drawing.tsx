import { memo, useId, useMemo, type ReactNode } from 'react';
import type { ReplyOf } from '#shared/contract/contract.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import type { ShownState } from '../desk/desk.ts';
import type { Ground } from '../desk/ground.ts';
import { pathOf } from '../drawings/frame.ts';
import { hatchFor } from '../drawings/hatches.tsx';
import { cellPaths } from '../drawings/turf-cells.ts';
import { FieldLines } from './field-lines.tsx';

interface Drawn {
  readonly ground: Ground;
  readonly booking: Booking | null;
  readonly forecast: Forecast | null;
  readonly state: ShownState;
  readonly day: number;
  readonly shadow: ReplyOf<'light/shadow'> | null;
  readonly chosen: string | null;
  readonly choose: (letter: string) => void;
  /** Laid over the turf and beneath every line. */
  readonly beneath?: ReactNode;
}

const Turf = memo(({ forecast, state, day }: { forecast: Forecast; state: ShownState; day: number }) => {
  const paths = useMemo(() => cellPaths(forecast, state, day), [forecast, state, day]);
  return (
    <g shapeRendering="crispEdges">
      {paths.map(({ colour, path }) => (
        <path key={colour} d={path} fill={colour} />
      ))}
    </g>
  );
});

const Stands = memo(({ stands }: { stands: Venue['stands'] }) => (
  <g>
    {stands.map((stand) => (
      <g key={stand.id}>
        <path d={pathOf([stand.outline])} className="stand" />
        {stand.tiers.map((tier, index) => (
          <path key={index} d={pathOf([tier.outline])} className="stand" />
        ))}
        {stand.roof && <path d={pathOf([stand.roof.outline])} className="roof" />}
        <title>{stand.name}</title>
      </g>
    ))}
  </g>
));

/** Everything that lies on the ground, to scale. Letters, scale bar and north are drawn over it. */
export const FieldDrawing = ({ ground, booking, forecast, state, day, shadow, chosen, choose, beneath }: Drawn) => {
  const clip = useId();
  const field = pathOf([ground.outline]);
  const floorOf = (letter: string): string | undefined => booking?.layers.find((layer) => layer.zone === letter)?.covering;
  return (
    <>
      <Stands stands={ground.stands} />
      <path d={field} className="turf" />
      <clipPath id={clip}>
        <path d={field} />
      </clipPath>
      {/* Cells are whole squares; where the edge of the turf runs aslant or in an arc, they end with it. */}
      <g clipPath={`url(#${clip})`}>{forecast && <Turf forecast={forecast} state={state} day={day} />}</g>
      {beneath}
      {shadow && (
        <path
          d={shadow.altitude <= 0 ? field : pathOf(shadow.pieces)}
          className="shadow"
          fillRule="nonzero"
          clipPath={`url(#${clip})`}
        />
      )}
      {ground.lines && <FieldLines lines={ground.lines} />}
      {ground.zones.map((zone) => (
        <path key={zone.id} d={pathOf([zone.outline])} className="standing-zone" />
      ))}
      {booking?.zones.toReversed().map((zone) => (
        <path
          key={zone.letter}
          d={pathOf([zone.outline])}
          fill={hatchFor(floorOf(zone.letter))}
          className={zone.letter === chosen ? 'event-zone chosen' : 'event-zone'}
          onClick={() => choose(zone.letter)}
        />
      ))}
      <path d={field} className="edge" />
    </>
  );
};
