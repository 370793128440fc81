import { useEffect, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import {
  addDays,
  addHours,
  atClock,
  clockOf,
  dateOf,
  daysBetween,
  hoursBetween,
  midnight,
  weekdayOf,
} from '#shared/calendar/local-time.ts';
import { figure, toShown, unitOf } from '#shared/units/quantity.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { jobWords } from '#shared/wording/words.ts';
import { edit, moved, pointAt, stretched, useDesk } from '../sheet/desk.ts';

const days = ['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'];
const rowHeight = 12;

/** First and last day on the strip: the booking with some days around it, and the home date. */
const rangeOf = (booking: Booking | null, home: string | null): { first: string; count: number } => {
  const times = [...(booking?.layers.flatMap((layer) => [layer.on, layer.off]) ?? []), ...(home ? [home] : [])]
    .map(dateOf)
    .toSorted();
  const first = addDays(times[0] ?? '2027-07-01', -4);
  return { first, count: Math.max(14, daysBetween(first, times.at(-1) ?? first) + 3) };
};

/** The calendar: home dates, the booking layer by layer, jobs, trucks, decisions, weather; its cursor is the hour of the plan. */
export const Strip = () => {
  const { venue, booking, fixtures, homeId, preview, run, plan, cursor, units } = useDesk();
  const home = fixtures.find((fixture) => fixture.id === homeId);
  const forecast = run?.result ?? preview;
  const { first, count } = useMemo(() => rangeOf(booking, home?.start ?? null), [booking, home?.start]);
  const drag = useRef<{ x: number; what: 'move' | 'stretch'; booking: Booking; days: number } | null>(null);
  const svg = useRef<SVGSVGElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(1000);
  useEffect(() => {
    if (!box.current) return;
    // One unit of the drawing is one pixel, so that letters keep their shape on any screen.
    const watch = new ResizeObserver(([entry]) => setWidth(Math.max(400, Math.round(entry!.contentRect.width))));
    watch.observe(box.current);
    return () => watch.disconnect();
  }, [venue !== null && booking !== null]);
  if (!venue || !booking) return <p className="empty">Choose a booking, or begin a new one: its days stand here.</p>;

  const zoneName = venue.place.timeZone;
  const x = (time: string): number => (hoursBetween(midnight(first), time, zoneName) / (count * 24)) * width;
  const dayWidth = width / count;
  const letters = booking.zones.map((zone) => zone.letter);
  const top = 40;
  const jobsTop = top + letters.length * rowHeight + 4;
  const height = jobsTop + rowHeight * 2 + 46;
  const span = booking.layers.flatMap((layer) => [layer.on, layer.off]).toSorted();

  const dayAt = (event: PointerEvent): number => {
    const box = svg.current!.getBoundingClientRect();
    return ((event.clientX - box.left) / box.width) * count;
  };
  const grab = (what: 'move' | 'stretch') => (event: PointerEvent<SVGElement>) => {
    event.stopPropagation();
    (event.target as Element).setPointerCapture(event.pointerId);
    drag.current = { x: dayAt(event), what, booking, days: 0 };
  };
  const pull = (event: PointerEvent<SVGElement>): void => {
    const held = drag.current;
    if (!held) return;
    const by = Math.round(dayAt(event) - held.x);
    if (by === held.days) return;
    edit(held.what === 'move' ? moved(held.booking, by) : stretched(held.booking, by), held.days === 0);
    drag.current = { ...held, days: by };
  };
  const point = (event: PointerEvent<SVGElement>): void => {
    const hours = dayAt(event) * 24;
    pointAt(addHours(midnight(first), Math.max(0, Math.round(hours)), zoneName));
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && drag.current) {
      edit(drag.current.booking, false);
      drag.current = null;
      return;
    }
    const far = event.shiftKey ? 24 : 1;
    const by = { ArrowLeft: -far, ArrowRight: far, Home: 0, End: 0 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    if (event.altKey && (event.key === 'ArrowLeft' || event.key === 'ArrowRight'))
      return edit(event.shiftKey ? stretched(booking, Math.sign(by)) : moved(booking, Math.sign(by)));
    pointAt(event.key === 'Home' ? span[0]! : event.key === 'End' ? span.at(-1)! : addHours(cursor ?? span[0]!, by, zoneName));
  };

  return (
    <div
      className="strip"
      ref={box}
      tabIndex={0}
      onKeyDown={onKeyDown}
      role="group"
      aria-label={`Calendar from ${first}, ${count} days. Arrows move the cursor by an hour, with Shift by a day; Alt and arrows move the booking, Alt and Shift stretch its end.`}
    >
      <svg
        ref={svg}
        viewBox={`0 0 ${width} ${height}`}
        role="presentation"
        onPointerDown={point}
        onPointerMove={(event) => (drag.current ? pull(event) : event.buttons === 1 && point(event))}
        onPointerUp={() => (drag.current = null)}
      >
        {Array.from({ length: count }, (_, day) => {
          const date = addDays(first, day);
          return (
            <g key={date}>
              <rect
                x={day * dayWidth}
                y={0}
                width={dayWidth}
                height={height}
                className={weekdayOf(date) > 5 ? 'weekend' : 'day'}
              />
              <text x={day * dayWidth + 3} y={10} className="day-name">
                {days[weekdayOf(date) - 1]} {Number(date.slice(8))}
                {(day === 0 || date.endsWith('-01')) &&
                  ` ${['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'][Number(date.slice(5, 7)) - 1]}`}
              </text>
            </g>
          );
        })}
        {fixtures
          .filter((fixture) => dateOf(fixture.start) >= first && dateOf(fixture.start) < addDays(first, count))
          .map((fixture) => (
            <g key={fixture.id}>
              <rect
                x={x(fixture.start)}
                y={14}
                width={Math.max(3, x(fixture.end) - x(fixture.start))}
                height={height - 14}
                className={fixture.kind === 'home-date' ? 'home-date' : 'practice'}
              />
              <title>{fixture.name}</title>
              {fixture.kind === 'home-date' && (
                <text x={x(fixture.start) - 3} y={22} textAnchor="end" className="mark">
                  {fixture.name}
                </text>
              )}
            </g>
          ))}
        <rect
          x={x(span[0]!)}
          y={26}
          width={x(span.at(-1)!) - x(span[0]!)}
          height={10}
          className="booking-bar"
          onPointerDown={grab('move')}
        />
        <text x={x(span[0]!) + 3} y={34} className="bar-name">
          {booking.name}: {clockOf(span[0]!)} load-in to {clockOf(span.at(-1)!)} out
        </text>
        <rect x={x(span.at(-1)!) - 2} y={24} width={6} height={14} className="handle" onPointerDown={grab('stretch')} />
        {booking.layers.map((layer, index) => {
          const row = letters.indexOf(layer.zone);
          return (
            <rect
              key={index}
              x={x(layer.on)}
              y={top + row * rowHeight + 1}
              width={Math.max(1, x(layer.off) - x(layer.on))}
              height={rowHeight - 3}
              className={layer.loading === 'open' ? 'layer' : 'layer loaded'}
            />
          );
        })}
        {letters.map((letter, row) => (
          <text key={letter} x={x(span[0]!) - 5} y={top + row * rowHeight + 9} textAnchor="end" className="mark">
            {letter}
          </text>
        ))}
        {booking.crowds.map((crowd, index) => (
          <rect
            key={index}
            x={x(crowd.from)}
            y={top + letters.indexOf(crowd.zone) * rowHeight + rowHeight - 3}
            width={Math.max(1, x(crowd.until) - x(crowd.from))}
            height={2}
            className="crowd"
          />
        ))}
        {plan?.plan.zones.flatMap((zone) =>
          zone.jobs.map((job, index) => (
            <rect
              key={`${zone.zone}-${index}`}
              x={x(job.start)}
              y={jobsTop}
              width={Math.max(1.5, x(job.end) - x(job.start))}
              height={rowHeight - 3}
              className="job"
            >
              <title>{`${zone.zone} ${jobWords[job.job]}`}</title>
            </rect>
          )),
        )}
        {plan?.plan.orders.flatMap((order) =>
          order.trucks.map((truck) => (
            <rect
              key={`${order.farm}-${truck.number}`}
              x={x(truck.arrive)}
              y={jobsTop + rowHeight}
              width={2}
              height={rowHeight - 3}
              className="truck"
            />
          )),
        )}
        {plan?.plan.decisions
          .filter((decision) => decision.at >= midnight(first))
          .map((decision) => (
            <g key={decision.name}>
              <path d={`M${x(decision.at)} ${jobsTop - 2}V${height}`} className="decision" />
              <text x={x(decision.at) + 3} y={jobsTop + 2 * rowHeight + 4} className="mark">
                {decision.name}
              </text>
            </g>
          ))}
        {forecast?.days.map((date, day) => {
          if (date < first || date >= addDays(first, count)) return null;
          const left = x(atClock(date, '00:00'));
          const rain = forecast.weather.rain[day]!;
          return (
            <g key={date}>
              {rain > 0.2 && (
                <rect
                  x={left + dayWidth * 0.35}
                  y={height - 16 - Math.min(14, rain)}
                  width={dayWidth * 0.3}
                  height={Math.min(14, rain)}
                  className="rain"
                />
              )}
              <text x={left + dayWidth / 2} y={height - 4} textAnchor="middle" className="weather">
                {figure(toShown(forecast.weather.maximum[day]!, 'temperature', units), 0)}/
                {figure(toShown(forecast.weather.minimum[day]!, 'temperature', units), 0)}
              </text>
            </g>
          );
        })}
        {cursor && <path d={`M${x(cursor)} 12V${height}`} className="cursor" />}
      </svg>
      <p className="strip-note">
        Bars: layers by zone, darker under chairs, stage or plant; thin lines: people. Below: jobs
        {plan ? ' and trucks of the plan' : ' once planned'}, rain and {unitOf('temperature', units)} of the usual season. Drag
        the booking or its end; cursor {cursor?.replace('T', ' ') ?? '–'}.
      </p>
    </div>
  );
};
