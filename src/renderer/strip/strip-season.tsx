import { memo } from 'react';
import type { ReplyOf } from '#shared/contract/contract.ts';
import { momentWords } from '../desk/moments.ts';
import { percent } from '../components/numbers.ts';
import { rowHeight } from './strip-booking.tsx';
import type { StackedCover } from './season-stack.ts';
import type { StripScale } from './strip-scale.ts';

/** Every booking of the season in a row of its own; choosing one opens it. */
export const SeasonBookings = memo(
  ({
    bookings,
    scale,
    top,
    chosen,
    open,
  }: {
    bookings: readonly ReplyOf<'booking/list'>[number][];
    scale: StripScale;
    top: number;
    chosen: string | undefined;
    open: (id: string) => void;
  }) => (
    <g>
      {bookings.map((line, row) =>
        line.firstOn && line.lastOff ? (
          <rect
            key={line.id}
            x={scale.x(line.firstOn)}
            y={top + row * rowHeight + 1}
            width={Math.max(3, scale.x(line.lastOff) - scale.x(line.firstOn))}
            height={rowHeight - 3}
            className={line.id === chosen ? 'layer loaded' : 'layer'}
            onPointerDown={() => line.id !== chosen && open(line.id)}
          >
            <title>{line.name}</title>
          </rect>
        ) : null,
      )}
    </g>
  ),
);

/** What all bookings lay on each standing zone, one over the other: the darker, the more of the zone and the oftener. */
export const SeasonStack = memo(
  ({
    covers,
    zones,
    scale,
    top,
  }: {
    covers: readonly StackedCover[];
    zones: readonly string[];
    scale: StripScale;
    top: number;
  }) => (
    <g>
      {covers.map((cover, index) => (
        <rect
          key={index}
          x={scale.x(cover.on)}
          y={top + zones.indexOf(cover.zone) * rowHeight + 1}
          width={Math.max(2, scale.x(cover.off) - scale.x(cover.on))}
          height={rowHeight - 3}
          className="stacked"
          opacity={0.25 + 0.6 * cover.share}
        >
          <title>{`${cover.zone}: ${cover.name}, ${percent(cover.share)} of it from ${momentWords(cover.on)} to ${momentWords(cover.off)}`}</title>
        </rect>
      ))}
    </g>
  ),
);
