import { memo, type PointerEvent } from 'react';
import { clockOf } from '#shared/calendar/local-time.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { RecoveryPlan } from '#shared/vocabulary/plan.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { momentWords } from '../desk/moments.ts';
import { jobWords, loadingWords } from '#shared/wording/words.ts';
import { spanOf } from '../desk/booking-shapes.ts';
import type { StripScale } from './strip-scale.ts';

export const rowHeight = 11;

/** The whole booking from load-in to load-out; it can be taken and moved, and its end drawn out. */
export const BookingBar = ({
  booking,
  scale,
  top,
  grab,
}: {
  booking: Booking;
  scale: StripScale;
  top: number;
  grab: (what: 'move' | 'stretch') => (event: PointerEvent<SVGElement>) => void;
}) => {
  const span = spanOf(booking);
  if (!span) return null;
  const [from, until] = [scale.x(span.first), scale.x(span.last)];
  const words = `${booking.name}: in ${dayWords(span.first.slice(0, 10))} ${clockOf(span.first)}, out ${dayWords(span.last.slice(0, 10))} ${clockOf(span.last)}`;
  const inside = until - from > words.length * 4.9;
  return (
    <g>
      <rect x={from} y={top} width={Math.max(4, until - from)} height={12} className="booking-bar" onPointerDown={grab('move')}>
        <title>{words}. Drag to move it by days.</title>
      </rect>
      <rect x={until - 3} y={top - 1} width={7} height={14} className="handle" onPointerDown={grab('stretch')}>
        <title>Drag to stretch the end.</title>
      </rect>
      <text x={inside ? from + 4 : until + 8} y={top + 9.5} className={inside ? 'bar-name' : ''}>
        {words}
      </text>
    </g>
  );
};

/** Layers zone by zone: open ones light, loaded ones dark; people as a thin line under them. */
export const LayerRows = memo(
  ({
    booking,
    scale,
    top,
    chosen,
    choose,
  }: {
    booking: Booking;
    scale: StripScale;
    top: number;
    chosen: string | null;
    choose: (zone: string) => void;
  }) => {
    const letters = booking.zones.map((zone) => zone.letter);
    const rowOf = (zone: string): number => top + letters.indexOf(zone) * rowHeight;
    return (
      <g>
        {letters.includes(chosen ?? '') && (
          <rect x={0} y={rowOf(chosen!)} width={scale.width} height={rowHeight} className="chosen-row" />
        )}
        {booking.layers.map((layer, index) => (
          <rect
            key={index}
            x={scale.x(layer.on)}
            y={rowOf(layer.zone) + 1}
            width={Math.max(1, scale.x(layer.off) - scale.x(layer.on))}
            height={rowHeight - 3}
            className={layer.loading === 'open' ? 'layer' : 'layer loaded'}
            onPointerDown={() => choose(layer.zone)}
          >
            <title>{`${layer.zone}: ${layer.covering}, ${loadingWords[layer.loading]}, ${momentWords(layer.on)} to ${momentWords(layer.off)}`}</title>
          </rect>
        ))}
        {booking.crowds.map((crowd, index) => (
          <rect
            key={index}
            x={scale.x(crowd.from)}
            y={rowOf(crowd.zone) + rowHeight - 3}
            width={Math.max(1, scale.x(crowd.until) - scale.x(crowd.from))}
            height={2}
            className="crowd"
          />
        ))}
      </g>
    );
  },
);

/** Whether there is more room for a name before an hour than after it. */
const isLate = (at: string, scale: StripScale): boolean => scale.x(at) > 0.6 * scale.width;

/** Jobs of the plan, deliveries, and the hours of decision. */
export const PlanRows = memo(
  ({ plan, scale, top, height }: { plan: RecoveryPlan; scale: StripScale; top: number; height: number }) => (
    <g>
      {[...plan.zones.flatMap((zone) => zone.jobs), ...plan.fieldJobs].map((job, index) => (
        <rect
          key={index}
          x={scale.x(job.start)}
          y={top + 1}
          width={Math.max(1.5, scale.x(job.end) - scale.x(job.start))}
          height={rowHeight - 3}
          className={job.zone === null ? 'job field-job' : 'job'}
        >
          <title>{`${job.zone ?? 'field'}: ${jobWords[job.job]}, ${momentWords(job.start)} to ${momentWords(job.end)}`}</title>
        </rect>
      ))}
      {plan.orders.flatMap((order) =>
        order.trucks.map((truck) => (
          <rect
            key={`${order.farm}-${order.cut}-${truck.number}`}
            x={scale.x(truck.arrive)}
            y={top + rowHeight + 1}
            width={2.5}
            height={rowHeight - 3}
            className="truck"
          >
            <title>{`Truck ${truck.number} arrives ${momentWords(truck.arrive)}`}</title>
          </rect>
        )),
      )}
      {plan.decisions
        .toSorted((a, b) => (a.at < b.at ? -1 : 1))
        .map((decision, index) => (
          <g key={`${decision.name}-${decision.at}`}>
            <path d={`M${scale.x(decision.at)} ${top - 2}V${height}`} className="decision" />
            <text
              x={scale.x(decision.at) + (isLate(decision.at, scale) ? -3 : 3)}
              y={top + (2 + (index % 2)) * rowHeight + 8}
              textAnchor={isLate(decision.at, scale) ? 'end' : 'start'}
              className="plan-name"
            >
              {decision.name}
            </text>
          </g>
        ))}
    </g>
  ),
);
