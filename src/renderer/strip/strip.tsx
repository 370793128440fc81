import { useEffect, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import { addHours, dateOf, midnight } from '#shared/calendar/local-time.ts';
import { show as inUnits } from '#shared/units/quantity.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { fullMoment, momentWords, nowAtVenue } from '../desk/moments.ts';
import { useBoxSize } from '../components/box-size.ts';
import { moved, spanOf, stretched } from '../desk/booking-shapes.ts';
import { drawnBooking, drawnForecast, keep, keptIn, show, useDesk } from '../desk/desk.ts';
import { drop, edit, hold, letGo } from '../desk/editing.ts';
import { openBooking } from '../desk/opening.ts';
import { pointAt } from '../desk/previewing.ts';
import { BookingBar, LayerRows, PlanRows, rowHeight } from './strip-booking.tsx';
import { StripDays, StripFixtures } from './strip-days.tsx';
import { groundOf, stackedCovers } from './season-stack.ts';
import { SeasonBookings, SeasonStack } from './strip-season.tsx';
import { bookingDays, bookingsWithin, monthsFrom, stripRanges, stripScale, type StripRange } from './strip-scale.ts';
import './strip.css';
import { WeatherRows, weatherHeights } from './strip-weather.tsx';

/** px at the left where the rows are named: by a letter, or by the booking’s name. */
const namesFor = { booking: 58, months: 122 } as const;
/** Letters of a name that fit there. */
const mostLetters = 20;
const top = { bar: 26, rows: 42 };

const shortName = (name: string): string => (name.length > mostLetters ? `${name.slice(0, mostLetters - 1)}…` : name);

/** The range that was looked at last. */
const keptRange = (): StripRange => stripRanges.find((one) => String(one) === keptIn('strip')) ?? 'booking';

interface Drag {
  readonly x: number;
  readonly what: 'move' | 'stretch';
  readonly booking: Booking;
  readonly days: number;
  /** As it is drawn under the hand. */
  readonly shown: Booking;
  /** m² not ready by itself before the drag, in the usual season. */
  readonly open: number | null;
}

/** The calendar: home dates, the booking layer by layer, jobs, trucks, decisions, weather. Its cursor is the hour of the plan. */
export const Strip = () => {
  const desk = useDesk();
  const { venue, booking: kept, bookings, season, fixtures, homeId, plan, cursor, units, zone, preview, previewing } = desk;
  const forecast = drawnForecast(desk);
  const home = fixtures.find((fixture) => fixture.id === homeId);
  const [range, setRange] = useState(keptRange);
  const whole = range !== 'booking';
  const names = whole ? namesFor.months : namesFor.booking;
  const [drag, setDrag] = useState<Drag | null>(null);
  const booking = drag?.shown ?? drawnBooking(desk);
  const svg = useRef<SVGSVGElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const { width } = useBoxSize(box, { width: 900, height: 200 });
  const today = dateOf(nowAtVenue());
  const around = dateOf((kept && spanOf(kept)?.first) ?? home?.start ?? fixtures[0]?.start ?? today);
  const days = useMemo(
    () => (range === 'booking' ? bookingDays(kept, home?.start ?? null, today) : monthsFrom(around, range)),
    [range, kept, home?.start, around, today],
  );
  const scale = useMemo(
    () => stripScale(days, Math.max(200, width - names - 2), venue?.place.timeZone ?? 'UTC'),
    [days, width, names, venue?.place.timeZone],
  );
  useEffect(() => {
    if (!drag) return;
    const onKey = (event: globalThis.KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      setDrag(null);
      letGo();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [drag]);
  const letters = booking?.zones.map((one) => one.letter) ?? [];
  const inRange = useMemo(() => bookingsWithin(bookings, days), [bookings, days]);
  const stack = useMemo(() => (venue && whole ? stackedCovers(venue, season) : []), [venue, whole, season]);
  const grounds = venue && whole ? groundOf(venue).map((ground) => ground.letter) : [];
  const rows = whole ? inRange.length + grounds.length : letters.length;
  if (!venue) return <div className="strip" ref={box} />;

  const planTop = top.rows + rows * rowHeight + 4;
  const planHeight = plan ? rowHeight * 4 : 0;
  const weatherTop = planTop + planHeight;
  const height = weatherTop + weatherHeights.temperature + weatherHeights.rain + weatherHeights.growth + 3;
  const span = booking && spanOf(booking);

  const across = (event: PointerEvent): number => event.clientX - svg.current!.getBoundingClientRect().left - names;
  const grab = (what: Drag['what']) => (event: PointerEvent<SVGElement>) => {
    if (!kept) return;
    event.stopPropagation();
    svg.current!.setPointerCapture(event.pointerId);
    setDrag({ x: across(event), what, booking: kept, days: 0, shown: kept, open: preview?.replaceArea.p50 ?? null });
  };
  const pull = (event: PointerEvent): void => {
    if (!drag) return;
    const by = Math.round((across(event) - drag.x) / scale.dayWidth);
    if (by === drag.days) return;
    const shown = by === 0 ? drag.booking : drag.what === 'move' ? moved(drag.booking, by) : stretched(drag.booking, by);
    setDrag({ ...drag, days: by, shown });
    if (by === 0) letGo();
    else hold(shown);
  };
  const point = (event: PointerEvent): void => {
    const hour = Math.round(scale.hourAt(Math.max(0, Math.min(scale.width, across(event)))));
    pointAt(addHours(midnight(scale.first), hour, venue.place.timeZone));
  };
  const release = (): void => {
    setDrag(null);
    drop();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.target !== event.currentTarget) return;
    const sideways = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (sideways !== undefined && event.altKey && kept) {
      event.preventDefault();
      return edit(event.shiftKey ? stretched(kept, sideways) : moved(kept, sideways));
    }
    const from = cursor ?? span?.first ?? midnight(scale.first);
    const to =
      sideways !== undefined
        ? addHours(from, sideways * (event.shiftKey ? 24 : 1), venue.place.timeZone)
        : { Home: span?.first, End: span?.last }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    pointAt(to);
  };
  const name = (text: string, y: number, chosen = false) => (
    <text key={`${text}-${y}`} x={names - 5} y={y} textAnchor="end" className={chosen ? 'row-name chosen' : 'row-name'}>
      {text}
    </text>
  );

  return (
    <div className="strip">
      <div
        ref={box}
        className="strip-drawing"
        tabIndex={0}
        onKeyDown={onKeyDown}
        role="group"
        aria-label={`Calendar from ${scale.first}, ${scale.count} days. Arrows move the cursor by an hour, with Shift by a day; Alt and arrows move the booking by a day, Alt and Shift and arrows stretch its end; Home and End go to load-in and load-out.`}
      >
        <svg
          ref={svg}
          viewBox={`0 0 ${width} ${height}`}
          height={height}
          role="presentation"
          onPointerDown={(event) => {
            svg.current!.setPointerCapture(event.pointerId);
            point(event);
          }}
          onPointerMove={(event) => (drag ? pull(event) : event.buttons === 1 && point(event))}
          onPointerUp={release}
          onPointerCancel={() => {
            setDrag(null);
            letGo();
          }}
        >
          {booking && !whole && name('booking', top.bar + 9)}
          {whole
            ? [
                ...inRange.map((line, row) => name(shortName(line.name), top.rows + row * rowHeight + 8, line.id === kept?.id)),
                ...grounds.map((letter, row) => name(`zone ${letter}`, top.rows + (inRange.length + row) * rowHeight + 9)),
              ]
            : letters.map((letter, row) => name(letter, top.rows + row * rowHeight + 9, letter === zone))}
          {planHeight > 0 && [
            name('jobs', planTop + 9),
            name('trucks', planTop + rowHeight + 9),
            name('decide', planTop + 2 * rowHeight + 9),
          ]}
          {forecast && [
            name(units === 'us' ? '°F' : '°C', weatherTop + 16),
            name('rain', weatherTop + weatherHeights.temperature + 10),
            name('growth', weatherTop + weatherHeights.temperature + weatherHeights.rain + 10),
          ]}
          <svg x={names} width={scale.width} height={height} overflow="hidden">
            <StripDays scale={scale} height={height} />
            <StripFixtures fixtures={fixtures} scale={scale} top={14} height={height} chosen={homeId} />
            {booking && !whole && <BookingBar booking={booking} scale={scale} top={top.bar} grab={grab} />}
            {booking && !whole && (
              <LayerRows
                booking={booking}
                scale={scale}
                top={top.rows}
                chosen={zone}
                choose={(letter) => show({ zone: letter })}
              />
            )}
            {whole && (
              <>
                <SeasonBookings
                  bookings={inRange}
                  scale={scale}
                  top={top.rows}
                  chosen={kept?.id}
                  open={(id) => void openBooking(id)}
                />
                <SeasonStack covers={stack} zones={grounds} scale={scale} top={top.rows + inRange.length * rowHeight} />
              </>
            )}
            {plan && planHeight > 0 && <PlanRows plan={plan.plan} scale={scale} top={planTop} height={weatherTop} />}
            {forecast && <WeatherRows forecast={forecast} scale={scale} top={weatherTop} units={units} />}
            {cursor && scale.holds(dateOf(cursor)) && (
              <path d={`M${scale.x(cursor)} 12V${height}M${scale.x(cursor) - 4} 12h8l-4 5z`} className="cursor" />
            )}
          </svg>
        </svg>
      </div>
      <div className="strip-note">
        <div className="states" role="group" aria-label="Days that are shown">
          {stripRanges.map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={range === one}
              aria-label={one === 'booking' ? undefined : `${one} months`}
              onClick={() => {
                setRange(one);
                keep('strip', String(one));
              }}
            >
              {one === 18 ? '18 months' : one}
            </button>
          ))}
        </div>
        <p className="cursor-words">{cursor ? `Cursor ${fullMoment(cursor)}.` : 'No cursor.'}</p>
        <p>
          {drag && drag.days !== 0 ? (
            <strong>
              {drag.what === 'move' ? 'Moved' : 'Stretched'} by {drag.days} {Math.abs(drag.days) === 1 ? 'day' : 'days'}
              {span && `: ${momentWords(span.first)} to ${momentWords(span.last)}`}. Not ready by itself:{' '}
              {preview && !previewing ? inUnits(preview.replaceArea.p50, 'area', units) : '…'}
              {drag.open !== null && ` (was ${inUnits(drag.open, 'area', units)})`}. Escape lets go.
            </strong>
          ) : whole ? (
            'Bookings, then what they lay on each standing zone, darker where more and oftener. Choose a booking to open it.'
          ) : (
            'Bars: layers, dark under chairs, stage or goods; thin lines: people. Drag the booking, or its end.'
          )}
        </p>
      </div>
    </div>
  );
};
