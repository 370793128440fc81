import { zoneUses } from '#shared/vocabulary/booking.ts';
import { zoneUseWords } from '#shared/wording/words.ts';
import { unitOf } from '#shared/units/quantity.ts';
import { Choice, QuantityField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import type { DrawnOn } from '../../desk/shapes.ts';
import { draw, useDrafting } from '../drafting.ts';

/** What the next shape is, and what draws its corners. */
export const HowItIsDrawn = ({ on }: { on: DrawnOn }) => {
  const { units } = useDesk();
  const { snap, grid, routeWidth, newUse, newPart } = useDrafting();
  const check = (name: keyof typeof snap, words: string) => (
    <label>
      <input
        type="checkbox"
        checked={snap[name]}
        onChange={(event) => draw({ snap: { ...snap, [name]: event.target.checked } })}
      />{' '}
      {words}
    </label>
  );
  return (
    <div className="row how-drawn">
      {on === 'event' ? (
        <label>
          New footprints are for{' '}
          <Choice
            label="Use of new footprints"
            value={newUse}
            words={zoneUses.map((use) => [use, zoneUseWords[use]] as const)}
            change={(use) => draw({ newUse: use })}
          />
        </label>
      ) : (
        <label>
          New shapes are{' '}
          <Choice
            label="What new shapes of the ground are"
            value={newPart}
            words={{ 'standing-zone': 'standing zones', stand: 'stands' }}
            change={(part) => draw({ newPart: part })}
          />
        </label>
      )}
      <label>
        Routes <QuantityField label="Width of new routes" value={routeWidth} quantity="length" change={set('routeWidth')} />{' '}
        {unitOf('length', units)} wide
      </label>
      <span role="group" aria-label="What draws a corner">
        Drawn to {check('shapes', 'corners and edges')} {check('marks', 'field lines')} {check('grid', 'the grid')}
      </span>
      <label>
        Grid and step of keys{' '}
        <QuantityField label="Step of the grid" value={grid} quantity="length" digits={2} change={set('grid')} />{' '}
        {unitOf('length', units)}
      </label>
    </div>
  );
};

/** m; a grid finer than a centimetre or a route wider than the field is a slip. */
const set =
  (name: 'grid' | 'routeWidth') =>
  (metres: number): void => {
    if (metres >= 0.01 && metres <= 100) draw({ [name]: metres });
  };
