import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { dateOf } from '#shared/calendar/local-time.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { useBoxSize } from '../components/box-size.ts';
import { drawnBooking, drawnForecast, drawnGround, show, useDesk } from '../desk/desk.ts';
import { groundOf } from '../desk/ground.ts';
import { shapesOf } from '../desk/shapes.ts';
import { boundsOf, viewBoxOf } from '../drawings/frame.ts';
import { Hatches } from '../drawings/hatches.tsx';
import { BesideRow } from './beside-row.tsx';
import { TwoWays } from './two-ways.tsx';
import { isDrawing, takeTool, useDrafting } from './drafting.ts';
import { chosenKey, chosenShape, drawnOn } from './drawing.ts';
import { DrawnShapes } from './drawn-shapes.tsx';
import { FieldDrawing } from './field-drawing.tsx';
import { Hand } from './hand.tsx';
import { Legend } from './legend.tsx';
import { PictureBeneath } from './picture-beneath.tsx';
import { SheetMarks } from './sheet-marks.tsx';
import { laySitePlan, sitePlanKey } from './site-plan.ts';
import { ToolRow } from './tool-row.tsx';
import { useKeys } from './use-keys.ts';
import { usePointer } from './use-pointer.ts';
import { useView } from './use-view.ts';
import { ZonePlates } from './zone-plates.tsx';
import './plan.css';

/** m of ground around what is drawn: with shapes in hand there is room for the arm that turns them. */
const marginOf = (tool: string): number => (tool === 'move' ? 18 : 9);

/** The plan, once there is a venue to draw. */
export const FieldPlan = () => {
  const { venue } = useDesk();
  return venue ? <DrawnField venue={venue} /> : <figure className="field-plan" />;
};

/** The field to scale: turf by live cover, zones lettered, footprints hatched by floor, stands and their shadow; and where they are drawn. */
const DrawnField = ({ venue }: { venue: Venue }) => {
  const desk = useDesk();
  const drafting = useDrafting();
  const { state, zone, shadow, units, cursor } = desk;
  const { tool, sitePlan, beside } = drafting;
  const booking = drawnBooking(desk);
  const forecast = drawnForecast(desk);
  const ground = drawnGround(desk) ?? groundOf(venue);
  const on = drawnOn(desk);
  const svg = useRef<SVGSVGElement>(null);
  const keys = useId();
  const box = useBoxSize(svg, { width: 360, height: 420 });
  const halves = beside?.way === 'halves';
  // What is dragged does not move the paper under the hand: the view follows what has been put down.
  const outlines = desk.booking?.zones;
  const around = useMemo(() => {
    const put = desk.ground ?? groundOf(venue);
    const stands = on === 'venue' ? put.stands : [];
    return boundsOf([put.outline, ...[...(outlines ?? []), ...stands].map((one) => one.outline)]);
  }, [venue, desk.ground, outlines, on]);
  // While something is drawn the paper lies still, however far the drawing grows.
  const [lying, layAnew] = useState(around);
  const shown = tool === 'look' ? around : lying;
  useEffect(() => layAnew(around), [tool, on, venue]);
  const planView = useView(svg, halves ? { ...box, width: box.width / 2 } : box, shown, marginOf(tool));
  const { view, moved, set, zoom } = planView;
  const pointer = usePointer(planView);
  const key = useKeys(planView, pointer);
  const day = Math.max(0, forecast && cursor ? forecast.days.indexOf(dateOf(cursor)) : 0);

  useEffect(() => takeTool('look'), [on]);
  const picture = sitePlanKey(desk);
  useEffect(() => {
    if (picture) void laySitePlan(picture);
  }, [picture]);

  const plot = { booking, ground };
  const choose = (letter: string): void => {
    if (!pointer.wasDragged()) show({ zone: letter });
  };
  const inHand = tool === 'move' ? chosenShape(desk, drafting) : undefined;
  const drawing = { ground, state, day, shadow, chosen: zone, choose };
  const order = forecast?.zones.length ?? 0;
  const one = (
    <>
      <FieldDrawing {...drawing} booking={booking} forecast={forecast} beneath={sitePlan && <PictureBeneath plan={sitePlan} />} />
      {forecast && (
        <ZonePlates
          forecast={forecast}
          scale={view.scale}
          chosen={zone}
          choose={choose}
          without={inHand ? boundsOf([inHand.outline]) : null}
        />
      )}
    </>
  );
  return (
    <figure className="field-plan" data-part="plan">
      <ToolRow still={halves} />
      <div className={`drawing ${tool}`} onKeyDown={key.onKeyDown} onKeyUp={key.onKeyUp} onBlur={key.onBlur}>
        <svg
          ref={svg}
          viewBox={viewBoxOf(view, box)}
          role={tool === 'look' ? 'img' : 'group'}
          aria-label={`Plan of ${venue.name}: ${order} zones. Plus and minus zoom, arrows move, 0 shows all, Page Up and Page Down choose a zone. The table of zones holds the same figures.`}
          aria-describedby={tool === 'look' ? undefined : keys}
          tabIndex={0}
          {...pointer.handlers}
        >
          <Hatches />
          {beside ? (
            <TwoWays beside={beside} view={view} box={box} sheet={one}>
              <FieldDrawing {...drawing} booking={beside.booking} forecast={beside.forecast} />
              {tool === 'look' && <ZonePlates forecast={beside.forecast} scale={view.scale} chosen={zone} choose={choose} />}
            </TwoWays>
          ) : (
            one
          )}
          {tool === 'move' && (
            <DrawnShapes shapes={shapesOf(plot, on)} chosen={chosenKey(desk, drafting)} scale={view.scale} units={units} />
          )}
          {isDrawing(tool) && <Hand drafting={drafting} scale={view.scale} units={units} />}
          <SheetMarks view={view} box={box} bearing={venue.field.bearing} units={units} />
        </svg>
        <p id={keys} className="for-readers">
          Keys: plus and minus zoom. With move: arrows move the chosen shape, square brackets turn it, C copies, Delete removes.
          With rectangle, outline, route and tape: arrows move a cross, Shift by ten steps, Enter sets a corner, Backspace takes
          it back, End finishes, Escape stops. The drawing board beside the plan holds every corner as a figure.
        </p>
        <div className="zoom" role="group" aria-label="Scale of the plan">
          <button type="button" aria-label="Closer" onClick={() => zoom(1 / 1.3)}>
            +
          </button>
          <button type="button" aria-label="Further" onClick={() => zoom(1.3)}>
            −
          </button>
          <button
            type="button"
            aria-label="Show the whole field"
            disabled={!moved && shown === around}
            onClick={() => {
              layAnew(around);
              set(null);
            }}
          >
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
      <Legend>
        <BesideRow />
      </Legend>
    </figure>
  );
};
