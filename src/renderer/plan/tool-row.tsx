import { useDesk, type Desk } from '../desk/desk.ts';
import { takeTool, tools, useDrafting, type Drafting, type Tool } from './drafting.ts';
import { chosenShape, drawnOn, finish, shapeInHand, takeBackCorner } from './drawing.ts';
import { lengthWords, pointWords, ringWords } from './measure-words.ts';

const toolWords: Readonly<Record<Tool, string>> = {
  look: 'look',
  move: 'move',
  rectangle: 'rectangle',
  outline: 'outline',
  route: 'route',
  tape: 'tape',
  scale: 'two points',
  picture: 'site plan',
};

const hints: Readonly<Record<Tool, string>> = {
  look: '',
  move: 'Drag a shape, a corner or its turning point. Keys: arrows move, [ and ] turn, C copies, Delete removes.',
  rectangle: 'Two opposite corners: press, draw out, let go. Keys: arrows move the cross, Enter sets a corner.',
  outline: 'One corner after another; Enter twice or a double press ends it. Backspace takes one back.',
  route: 'Along its middle, one bend after another; Enter twice or a double press ends it.',
  tape: 'Two points: the distance between them is shown.',
  scale: 'Two points of the picture whose distance is known; then enter it beside.',
  picture: 'Drag the picture until its field lies on the field.',
};

/** What is in hand, in figures. */
const measured = (desk: Desk, drafting: Drafting): string => {
  const { tool, corners, cross, drawnTo } = drafting;
  const { units } = desk;
  if (tool === 'move') {
    const shape = chosenShape(desk, drafting);
    return shape ? `${shape.letter ?? ''} ${shape.name}: ${ringWords(shape.outline, units)}` : '';
  }
  const here = cross ? `${pointWords(cross, units)}${drawnTo ? `, ${drawnTo}` : ''}` : '';
  const ring = shapeInHand(drafting);
  if (ring) return `${ringWords(ring, units)}. ${here}`;
  const last = corners.at(-1);
  const to = tool === 'tape' || tool === 'scale' ? (corners.length === 2 ? corners[1] : cross) : cross;
  const from = tool === 'tape' || tool === 'scale' ? corners[0] : last;
  return from && to ? `${lengthWords(Math.hypot(from[0] - to[0], from[1] - to[1]), units)}. ${here}` : here;
};

/** The tools of the drawing board over the plan, what the one in hand wants, and its figures. */
export const ToolRow = ({ still }: { still: boolean }) => {
  const desk = useDesk();
  const drafting = useDrafting();
  const { tool, corners, said } = drafting;
  const on = drawnOn(desk);
  const idle = still || (on === 'event' && !desk.booking);
  const figures = measured(desk, drafting);
  return (
    <div className="tool-row">
      <div role="group" aria-label={on === 'event' ? 'Draw the event on the plan' : 'Draw the ground of the venue'}>
        {tools.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={tool === one}
            disabled={still || (idle && !['look', 'tape'].includes(one))}
            onClick={() => takeTool(one)}
          >
            {toolWords[one]}
          </button>
        ))}
      </div>
      {tool !== 'look' && (
        <>
          <p className="hint">
            {hints[tool]}
            {(tool === 'outline' || tool === 'route') && corners.length > 0 && (
              <>
                {' '}
                <button type="button" onClick={takeBackCorner}>
                  corner back
                </button>{' '}
                <button type="button" onClick={finish}>
                  done
                </button>
              </>
            )}
          </p>
          <p className="measures" role="status">
            {said !== '' ? `${said} ` : ''}
            {figures}
          </p>
        </>
      )}
    </div>
  );
};
