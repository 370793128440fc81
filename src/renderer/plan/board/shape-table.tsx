import { useMemo } from 'react';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { show as inUnits } from '#shared/units/quantity.ts';
import { Part } from '../../components/fields.tsx';
import { drawnGround, useDesk } from '../../desk/desk.ts';
import { isSame, shapesOf, withPlace, type DrawnOn, type Shape } from '../../desk/shapes.ts';
import { takeTool, useDrafting } from '../drafting.ts';
import { change, choose, chosenKey } from '../drawing.ts';
import { groundSums, type GroundSum } from '../ground-sums.ts';

const both = (area: number) => (
  <td>
    {inUnits(area, 'area', 'us')}
    <br />
    {inUnits(area, 'area', 'si')}
  </td>
);

/** Every shape with its areas, and their sums. */
export const ShapeTable = ({ on }: { on: DrawnOn }) => {
  const desk = useDesk();
  const drafting = useDrafting();
  const ground = drawnGround(desk);
  const { booking } = desk;
  const shapes = useMemo(() => (ground ? shapesOf({ booking, ground }, on) : []), [booking, ground, on]);
  const sums = useMemo(
    () =>
      ground
        ? groundSums(
            shapes.flatMap(({ letter, name, outline }) => (letter === null ? [] : [{ letter, name, outline }])),
            ground.outline,
          )
        : [],
    [shapes, ground],
  );
  if (!ground || shapes.length === 0) return null;
  const chosen = chosenKey(desk, drafting);
  const total = (pick: (sum: GroundSum) => number): number => sums.reduce((all, sum) => all + pick(sum), 0);
  const row = (shape: Shape) => {
    const sum = sums.find((one) => one.letter === shape.letter);
    const mine = isSame(shape.key, chosen);
    const take = (): void => {
      takeTool('move');
      choose(shape.key);
    };
    return (
      <tr key={`${shape.key.part} ${shape.key.id}`} className={mine ? 'chosen' : ''}>
        <th scope="row">
          <button type="button" className="plain" aria-pressed={mine} onClick={take}>
            {shape.letter} {shape.name}
          </button>
        </th>
        {both(polygonArea(shape.outline))}
        {sum ? both(sum.turf) : <td>{shape.part === 'field' ? 'all of it' : '–'}</td>}
        <td className="tight">
          {sum && (
            <>
              <Order shape={shape} step={-1} words="earlier" />
              <Order shape={shape} step={1} words="later" />
            </>
          )}
        </td>
      </tr>
    );
  };
  return (
    <Part title="Shapes and their ground">
      <div className="scroll">
        <table className="shapes">
          <caption>Ground that two share belongs to the one listed first.</caption>
          <thead>
            <tr>
              <th scope="col">Shape</th>
              <th scope="col">As drawn</th>
              <th scope="col">Turf of its own</th>
              <th scope="col">
                <span className="for-readers">Order</span>
              </th>
            </tr>
          </thead>
          <tbody>{shapes.map(row)}</tbody>
          {sums.length > 0 && (
            <tfoot>
              <tr>
                <th scope="row">Sum</th>
                {both(total((sum) => sum.drawn))}
                {both(total((sum) => sum.turf))}
                <td />
              </tr>
              <tr>
                <th scope="row">Beside the turf</th>
                <td />
                {both(total((sum) => sum.beside))}
                <td />
              </tr>
              <tr>
                <th scope="row">Turf left bare</th>
                <td />
                {both(polygonArea(ground.outline) - total((sum) => sum.turf))}
                <td />
              </tr>
            </tfoot>
          )}
        </table>
      </div>
    </Part>
  );
};

const Order = ({ shape, step, words }: { shape: Shape; step: 1 | -1; words: string }) => (
  <button
    type="button"
    aria-label={`List ${shape.letter} ${words}`}
    title={`List it ${words}`}
    onClick={() => {
      choose(shape.key);
      change((plot) => withPlace(plot, shape.key, step));
    }}
  >
    {step < 0 ? '↑' : '↓'}
  </button>
);
