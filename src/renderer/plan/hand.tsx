import type { UnitSystem } from '#shared/units/quantity.ts';
import { pathOf } from '../drawings/frame.ts';
import { isDrawing, type Drafting } from './drafting.ts';
import { shapeInHand } from './drawing.ts';
import { Dimensions } from './dimensions.tsx';

/** What is being drawn: corners set, the cross where the next would lie, and the lengths so far. */
export const Hand = ({ drafting, scale, units }: { drafting: Drafting; scale: number; units: UnitSystem }) => {
  const { tool, corners, cross } = drafting;
  if (!isDrawing(tool)) return null;
  const ring = shapeInHand(drafting);
  const line = cross && corners.length > 0 && corners.length < 400 ? [...corners, cross] : corners;
  const shownRing = ring && tool !== 'route' ? ring : null;
  const path = line.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x} ${-y}`).join('');
  return (
    <g className="hand" strokeWidth={1.4 * scale}>
      {ring && <path d={pathOf([ring])} className="ring" />}
      {tool !== 'rectangle' && <path d={path} className="line" strokeDasharray={`${5 * scale} ${3 * scale}`} />}
      {corners.map(([x, y], at) => (
        <circle key={at} cx={x} cy={-y} r={3.5 * scale} className="set" />
      ))}
      {cross && (
        <path
          d={`M${cross[0] - 9 * scale} ${-cross[1]}h${18 * scale}M${cross[0]} ${-cross[1] - 9 * scale}v${18 * scale}`}
          className="cross"
        />
      )}
      <Dimensions points={shownRing ?? line} closed={shownRing !== null} scale={scale} units={units} />
    </g>
  );
};
