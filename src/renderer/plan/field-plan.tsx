import { useEffect, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent, type WheelEvent } from 'react';
import { figure, unitOf } from '#shared/units/quantity.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { coverColour, coverSteps } from '#shared/wording/cover-scale.ts';
import { verdictMarks, verdictWords } from '#shared/wording/words.ts';
import { barLength, boundsOf, grown, pathOf, type View } from '../drawings/frame.ts';
import { hatchFor, Hatches } from '../drawings/hatches.tsx';
import { show, useDesk } from '../sheet/desk.ts';

/** Cells of one colour as one path: a few paths redraw in a frame where thousands of squares do not. */
const cellPaths = (forecast: Forecast, state: 'after' | 'home'): readonly { colour: string; path: string }[] => {
  const { cells } = forecast;
  const cover = state === 'after' ? cells.coverAfter : cells.coverHome;
  const half = cells.size / 2 + 0.02;
  const paths = new Map<string, string[]>();
  cells.x.forEach((x, cell) => {
    const colour = coverColour(cover[cells.group[cell]!]!);
    const row = paths.get(colour) ?? [];
    row.push(`M${x - half} ${-cells.y[cell]! - half}h${2 * half}v${2 * half}h${-2 * half}z`);
    paths.set(colour, row);
  });
  return [...paths].map(([colour, parts]) => ({ colour, path: parts.join('') }));
};

/** Where a zone's letter stands: on its cell nearest to the middle of its turf. */
const letterPlaces = ({ cells, zones }: Forecast): ReadonlyMap<string, { x: number; y: number }> =>
  new Map(
    zones.map((zone, own) => {
      const inside = cells.x.map((_, cell) => cell).filter((cell) => cells.zone[cell] === own);
      const mean = (values: readonly number[]): number =>
        inside.reduce((sum, cell) => sum + values[cell]!, 0) / Math.max(1, inside.length);
      const [mx, my] = [mean(cells.x), mean(cells.y)];
      const far = (cell: number): number => Math.hypot(cells.x[cell]! - mx, cells.y[cell]! - my);
      const nearest = inside.reduce((best, cell) => (far(cell) < far(best) ? cell : best), inside[0] ?? 0);
      return [zone.letter, { x: cells.x[nearest]!, y: cells.y[nearest]! }];
    }),
  );

/** The field to scale: turf by live cover, zones lettered, footprints hatched by floor, stands and their shadow. */
export const FieldPlan = () => {
  const { venue, booking, preview, run, state, zone, shadow, units, cursor } = useDesk();
  const forecast = run?.result ?? preview;
  const home = useMemo<View>(
    () =>
      venue
        ? grown(boundsOf([venue.field.outline, ...(booking?.zones.map((one) => one.outline) ?? [])]), 14)
        : { x: -60, y: -60, width: 120, height: 120 },
    [venue, booking?.zones],
  );
  const [view, setView] = useState(home);
  useEffect(() => setView(home), [home]);
  const drag = useRef<{ x: number; y: number; view: View } | null>(null);
  const cells = useMemo(() => (forecast ? cellPaths(forecast, state) : []), [forecast, state]);
  const letters = useMemo(() => (forecast ? letterPlaces(forecast) : new Map<string, { x: number; y: number }>()), [forecast]);
  if (!venue) return <p className="empty">Opening the workspace …</p>;

  const zoom = (factor: number, cx = view.x + view.width / 2, cy = view.y + view.height / 2): void =>
    setView({
      x: cx - (cx - view.x) * factor,
      y: cy - (cy - view.y) * factor,
      width: view.width * factor,
      height: view.height * factor,
    });
  const pan = (right: number, up: number): void =>
    setView({ ...view, x: view.x + right * view.width, y: view.y + up * view.height });
  const onWheel = (event: WheelEvent<SVGSVGElement>): void => zoom(event.deltaY > 0 ? 1.1 : 1 / 1.1);
  const onPointerDown = (event: PointerEvent<SVGSVGElement>): void => {
    drag.current = { x: event.clientX, y: event.clientY, view };
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>): void => {
    if (!drag.current || event.buttons === 0) return;
    const box = event.currentTarget.getBoundingClientRect();
    const scale = Math.max(drag.current.view.width / box.width, drag.current.view.height / box.height);
    setView({
      ...drag.current.view,
      x: drag.current.view.x - (event.clientX - drag.current.x) * scale,
      y: drag.current.view.y + (event.clientY - drag.current.y) * scale,
    });
  };
  const order = forecast?.zones.map((one) => one.letter) ?? [];
  const onKeyDown = (event: KeyboardEvent<SVGSVGElement>): void => {
    const step = order.indexOf(zone ?? '');
    const keys: Record<string, () => void> = {
      '+': () => zoom(1 / 1.2),
      '-': () => zoom(1.2),
      '0': () => setView(home),
      ArrowLeft: () => pan(-0.1, 0),
      ArrowRight: () => pan(0.1, 0),
      ArrowUp: () => pan(0, 0.1),
      ArrowDown: () => pan(0, -0.1),
      PageDown: () => show({ zone: order[(step + 1) % order.length] ?? null }),
      PageUp: () => show({ zone: order[(step - 1 + order.length) % order.length] ?? null }),
    };
    const act = keys[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  };
  const bar = barLength(view, units === 'us' ? 0.3048 : 1);
  const layerOf = (letter: string): string | undefined => booking?.layers.find((layer) => layer.zone === letter)?.covering;
  const inset = view.width * 0.03;

  return (
    <figure className="field-plan">
      <svg
        viewBox={`${view.x} ${-(view.y + view.height)} ${view.width} ${view.height}`}
        role="img"
        aria-label={`Plan of ${venue.name}: ${order.length} zones. Plus and minus zoom, arrows move, 0 shows all, Page Up and Page Down choose a zone.`}
        tabIndex={0}
        onWheel={onWheel}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={() => (drag.current = null)}
        onKeyDown={onKeyDown}
      >
        <Hatches />
        {venue.stands.map((stand) => (
          <g key={stand.id}>
            <path d={pathOf([stand.outline])} className="stand" />
            {stand.tiers.map((tier, index) => (
              <path key={index} d={pathOf([tier.outline])} className="stand" />
            ))}
            {stand.roof && <path d={pathOf([stand.roof.outline])} className="roof" />}
          </g>
        ))}
        <path d={pathOf([venue.field.outline])} className="turf" />
        {cells.map(({ colour, path }) => (
          <path key={colour} d={path} fill={colour} />
        ))}
        <clipPath id="on-turf">
          <path d={pathOf([venue.field.outline])} />
        </clipPath>
        {shadow && shadow.pieces.length > 0 && (
          <path d={pathOf(shadow.pieces)} className="shadow" fillRule="nonzero" clipPath="url(#on-turf)" />
        )}
        {shadow && shadow.altitude <= 0 && <path d={pathOf([venue.field.outline])} className="shadow" />}
        {forecast?.zones
          .filter((one) => one.origin === 'venue')
          .map((one) => (
            <path key={one.letter} d={pathOf(one.outlines)} className="standing-zone" />
          ))}
        {booking?.zones.toReversed().map((one) => (
          <g
            key={one.letter}
            onClick={() => show({ zone: one.letter })}
            className={one.letter === zone ? 'event-zone chosen' : 'event-zone'}
          >
            <path d={pathOf([one.outline])} fill={hatchFor(layerOf(one.letter))} />
          </g>
        ))}
        <path d={pathOf([venue.field.outline])} className="edge" />
        {forecast?.zones.map((one) => {
          const place = letters.get(one.letter);
          if (!place) return null;
          const size = view.width / 42;
          const mark = `${one.letter} ${verdictMarks[one.verdict]}`;
          return (
            <g key={one.letter} onClick={() => show({ zone: one.letter })} className="letter">
              <rect
                x={place.x - mark.length * size * 0.31}
                y={-place.y - size * 0.75}
                width={mark.length * size * 0.62}
                height={size * 1.5}
                rx={size * 0.2}
                className={one.letter === zone ? 'plate chosen' : 'plate'}
              />
              <text x={place.x} y={-place.y + size * 0.36} fontSize={size} textAnchor="middle">
                {mark}
              </text>
            </g>
          );
        })}
        <g className="scale-bar" transform={`translate(${view.x + inset} ${-(view.y + inset)})`}>
          <path d={`M0 ${-view.width / 120}V0H${bar.metres}V${-view.width / 120}`} />
          <text x={bar.metres + view.width / 80} y={0} fontSize={view.width / 48}>
            {figure(bar.units, 0)} {unitOf('length', units)}
          </text>
        </g>
        <g
          className="north"
          transform={`translate(${view.x + view.width - 2 * inset} ${-(view.y + view.height) + 2.2 * inset}) rotate(${-venue.field.bearing}) scale(${view.width / 110})`}
        >
          <path d="M0 4V-5M-1.4 -1.8L0 -5L1.4 -1.8" />
          <text y={-6} fontSize={2.6} textAnchor="middle">
            N
          </text>
        </g>
      </svg>
      <figcaption>
        <span className="legend" aria-label="Live cover">
          {coverSteps.map((step) => (
            <span key={step.words}>
              <i style={{ background: step.colour }} />
              {step.words}
            </span>
          ))}
        </span>
        <span className="states" role="group" aria-label="State that is drawn">
          {(['after', 'home'] as const).map((one) => (
            <button key={one} type="button" aria-pressed={state === one} onClick={() => show({ state: one })}>
              {one === 'after' ? 'last layer off' : 'home date'}
            </button>
          ))}
        </span>
        <span>
          Marks:{' '}
          {Object.entries(verdictMarks)
            .map(([verdict, mark]) => `${mark} = ${verdictWords[verdict as keyof typeof verdictWords]}`)
            .join(', ')}
          .{' '}
          {shadow && cursor
            ? shadow.altitude > 0
              ? `Shadow at ${cursor.replace('T', ' ')}.`
              : `Night at ${cursor.replace('T', ' ')}.`
            : ''}
        </span>
      </figcaption>
    </figure>
  );
};
