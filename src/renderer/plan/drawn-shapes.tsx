import type { UnitSystem } from '#shared/units/quantity.ts';
import { polygonArea, bounds } from '#shared/geometry/polygon.ts';
import { middleOf } from '#shared/geometry/moving.ts';
import { isSame, type Shape, type ShapeKey } from '../desk/shapes.ts';
import { pathOf } from '../drawings/frame.ts';
import { choose } from './drawing.ts';
import { Dimensions } from './dimensions.tsx';
import { areaWords } from './measure-words.ts';

const nameOf = (shape: Shape): string => `${shape.letter === null ? '' : `${shape.letter} `}${shape.name}`;

/** Shapes that can be taken hold of, each with a place in the tab order; the chosen one with its corners and its turning point. */
export const DrawnShapes = ({
  shapes,
  chosen,
  scale,
  units,
}: {
  shapes: readonly Shape[];
  chosen: ShapeKey | null;
  scale: number;
  units: UnitSystem;
}) => {
  const mine = shapes.find((shape) => isSame(shape.key, chosen));
  return (
    <g className="drawn-shapes">
      {/* What is listed first owns shared ground and lies on top; screen readers and Tab meet the shapes in the same order of drawing. */}
      {shapes.toReversed().map((shape) => (
        <path
          key={`${shape.key.part} ${shape.key.id}`}
          d={pathOf([shape.outline])}
          className={isSame(shape.key, chosen) ? `drawn ${shape.part} chosen` : `drawn ${shape.part}`}
          data-shape={`${shape.key.part} ${shape.key.id}`}
          role="button"
          tabIndex={0}
          aria-pressed={isSame(shape.key, chosen)}
          aria-label={`${nameOf(shape)}, ${areaWords(polygonArea(shape.outline))}`}
          onFocus={() => choose(shape.key)}
        />
      ))}
      {mine && <Handles shape={mine} scale={scale} units={units} />}
    </g>
  );
};

/** px between a shape and its turning point. */
const armLength = 26;

const Handles = ({ shape, scale, units }: { shape: Shape; scale: number; units: UnitSystem }) => {
  const { outline } = shape;
  const [mx] = middleOf(outline);
  const top = bounds(outline).top;
  const few = outline.length <= 60;
  return (
    <g className="handles" strokeWidth={1.2 * scale}>
      {/* An arc has a corner every few degrees; its handles would hide it. The table of corners still has them all. */}
      {few &&
        outline.map(([x, y], at) => {
          const [nx, ny] = outline[(at + 1) % outline.length]!;
          const long = Math.hypot(nx - x, ny - y) / scale > 40;
          return (
            <g key={at}>
              {long && (
                <circle cx={(x + nx) / 2} cy={-(y + ny) / 2} r={3.5 * scale} data-side={at} className="side">
                  <title>Drag to put a corner here</title>
                </circle>
              )}
              <rect
                x={x - 4.5 * scale}
                y={-y - 4.5 * scale}
                width={9 * scale}
                height={9 * scale}
                data-corner={at}
                className="corner"
              >
                <title>{`Corner ${at + 1}`}</title>
              </rect>
            </g>
          );
        })}
      {shape.part !== 'field' && (
        <g className="turn">
          <path d={`M${mx} ${-top}V${-top - armLength * scale}`} />
          <circle cx={mx} cy={-top - armLength * scale} r={6 * scale} data-turn="">
            <title>Drag to turn it about its middle</title>
          </circle>
        </g>
      )}
      <Dimensions points={outline} closed scale={scale} units={units} />
    </g>
  );
};
