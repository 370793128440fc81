import { useDesk } from '../../desk/desk.ts';
import { saveGround } from '../../desk/venue-keeping.ts';
import { redo, undo } from '../../desk/editing.ts';
import { useDrafting } from '../drafting.ts';
import { drawnOn } from '../drawing.ts';
import { ChosenShape } from './chosen-shape.tsx';
import { FieldLayoutPart } from './field-layout.tsx';
import { GeoJsonFiles } from './geojson-files.tsx';
import { HowItIsDrawn } from './how-it-is-drawn.tsx';
import { ShapeTable } from './shape-table.tsx';
import { SitePlanPart } from './site-plan-part.tsx';

/** Beside the plan while something is drawn: every shape and corner as a figure, and what lies beneath. */
export const DrawingBoard = () => {
  const desk = useDesk();
  const { tool } = useDrafting();
  const { venue, ground, before, after } = desk;
  if (tool === 'look' || !venue) return null;
  const on = drawnOn(desk);
  return (
    <section className="drawing-board" aria-labelledby="drawing-board">
      <h2 id="drawing-board">{on === 'event' ? 'Drawing: the event' : 'Drawing: the ground of the venue'}</h2>
      <div className="row">
        <button type="button" disabled={before.length === 0} onClick={undo}>
          Take back
        </button>
        <button type="button" disabled={after.length === 0} onClick={redo}>
          Put again
        </button>
        {ground && (
          <>
            <button type="button" className="main" onClick={() => void saveGround()}>
              Store the ground
            </button>
            <span>Drawn, not stored: figures and shadow follow when it is stored.</span>
          </>
        )}
      </div>
      <HowItIsDrawn on={on} />
      <ChosenShape />
      <ShapeTable on={on} />
      {on === 'venue' && <FieldLayoutPart />}
      <SitePlanPart />
      <GeoJsonFiles on={on} />
      <p className="caution">
        Stages, cranes, loads and anchors belong to the responsible engineer; locate buried services before anything is driven in.
      </p>
    </section>
  );
};
