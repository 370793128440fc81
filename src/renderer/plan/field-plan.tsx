import { useEffect, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import { dateOf } from '#shared/calendar/local-time.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import { useBoxSize } from '../components/box-size.ts';
import { drawnBooking, drawnForecast, show, useDesk } from '../desk/desk.ts';
import { boundsOf, viewBoxOf, viewOf, zoomed, type View } from '../drawings/frame.ts';
import { Hatches } from '../drawings/hatches.tsx';
import { FieldDrawing } from './field-drawing.tsx';
import { Legend } from './legend.tsx';
import { SheetMarks } from './sheet-marks.tsx';
import { ZonePlates } from './zone-plates.tsx';

/** m of ground shown around field and footprints. */
const around = 9;

/** The field to scale: turf by live cover, zones lettered, footprints hatched by floor, stands and their shadow. */
export const FieldPlan = () => {
  const desk = useDesk();
  const { venue, state, zone, shadow, units, cursor } = desk;
  const booking = drawnBooking(desk);
  const forecast = drawnForecast(desk);
  const svg = useRef<SVGSVGElement>(null);
  const box = useBoxSize(svg, { width: 360, height: 420 });
  const ground = useMemo(
    () => (venue ? boundsOf([venue.field.outline, ...(booking?.zones.map((one) => one.outline) ?? [])]) : null),
    [venue, booking?.zones],
  );
  const home = useMemo<View>(() => (ground ? viewOf(ground, box, around) : { x: 0, y: 0, scale: 0.4 }), [ground, box]);
  const [moved, setMoved] = useState<View | null>(null);
  const view = moved ?? home;
  const drag = useRef<{ x: number; y: number; view: View; far: boolean } | null>(null);
  const day = Math.max(0, forecast && cursor ? forecast.days.indexOf(dateOf(cursor)) : 0);

  const pointOf = (clientX: number, clientY: number): Point => {
    const edge = svg.current!.getBoundingClientRect();
    return [
      view.x + (clientX - edge.left - edge.width / 2) * view.scale,
      view.y - (clientY - edge.top - edge.height / 2) * view.scale,
    ];
  };
  const zoomNow = useRef((_event: WheelEvent): void => undefined);
  zoomNow.current = (event) => {
    event.preventDefault();
    setMoved(zoomed(view, event.deltaY > 0 ? 1.12 : 1 / 1.12, pointOf(event.clientX, event.clientY)));
  };
  useEffect(() => {
    const drawing = svg.current;
    // React listens to the wheel without the right to hold the page still.
    const onWheel = (event: WheelEvent): void => zoomNow.current(event);
    drawing?.addEventListener('wheel', onWheel, { passive: false });
    return () => drawing?.removeEventListener('wheel', onWheel);
  }, [venue === null]);

  if (!venue) return <figure className="field-plan" />;

  const pan = (right: number, up: number): void =>
    setMoved({ ...view, x: view.x + right * box.width * view.scale, y: view.y + up * box.height * view.scale });
  const onPointerDown = (event: PointerEvent<SVGSVGElement>): void => {
    drag.current = { x: event.clientX, y: event.clientY, view, far: false };
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>): void => {
    const held = drag.current;
    if (!held || event.buttons === 0) return;
    const [dx, dy] = [event.clientX - held.x, event.clientY - held.y];
    // A click that trembles is still a click.
    if (!held.far && Math.hypot(dx, dy) < 4) return;
    held.far = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    setMoved({ ...held.view, x: held.view.x - dx * held.view.scale, y: held.view.y + dy * held.view.scale });
  };
  const order = forecast?.zones.map((one) => one.letter) ?? [];
  const choose = (step: number): void => {
    const at = order.indexOf(zone ?? '');
    show({ zone: order[(at + step + order.length) % order.length] ?? null });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const keys: Record<string, () => void> = {
      '+': () => setMoved(zoomed(view, 1 / 1.2)),
      '=': () => setMoved(zoomed(view, 1 / 1.2)),
      '-': () => setMoved(zoomed(view, 1.2)),
      '0': () => setMoved(null),
      ArrowLeft: () => pan(-0.1, 0),
      ArrowRight: () => pan(0.1, 0),
      ArrowUp: () => pan(0, 0.1),
      ArrowDown: () => pan(0, -0.1),
      PageDown: () => choose(1),
      PageUp: () => choose(-1),
    };
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act();
  };

  return (
    <figure className="field-plan">
      <div className="drawing" onKeyDown={onKeyDown}>
        <svg
          ref={svg}
          viewBox={viewBoxOf(view, box)}
          role="img"
          aria-label={`Plan of ${venue.name}: ${order.length} zones. Plus and minus zoom, arrows move, 0 shows all, Page Up and Page Down choose a zone. The table of zones holds the same figures.`}
          tabIndex={0}
          onPointerDown={onPointerDown}
          onPointerMove={onPointerMove}
          onPointerUp={() => (drag.current = null)}
        >
          <Hatches />
          <FieldDrawing
            venue={venue}
            booking={booking}
            forecast={forecast}
            state={state}
            day={day}
            shadow={shadow}
            chosen={zone}
            choose={(letter) => !drag.current?.far && show({ zone: letter })}
          />
          {forecast && (
            <ZonePlates forecast={forecast} scale={view.scale} chosen={zone} choose={(letter) => show({ zone: letter })} />
          )}
          <SheetMarks view={view} box={box} bearing={venue.field.bearing} units={units} />
        </svg>
        <div className="zoom" role="group" aria-label="Scale of the plan">
          <button type="button" aria-label="Closer" onClick={() => setMoved(zoomed(view, 1 / 1.3))}>
            +
          </button>
          <button type="button" aria-label="Further" onClick={() => setMoved(zoomed(view, 1.3))}>
            −
          </button>
          <button type="button" aria-label="Show the whole field" disabled={moved === null} onClick={() => setMoved(null)}>
            ▣
          </button>
          <button
            type="button"
            aria-label={desk.wide ? 'Narrow plan' : 'Wide plan'}
            aria-pressed={desk.wide}
            onClick={() => show({ wide: !desk.wide })}
          >
            ↔
          </button>
        </div>
      </div>
      <Legend />
    </figure>
  );
};
