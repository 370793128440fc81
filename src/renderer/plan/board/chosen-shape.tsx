import { useState } from 'react';
import {
  middleOf,
  shift,
  sideLengths,
  turn,
  withCorner,
  withCornerAfter,
  withoutCorner,
  withSide,
} from '#shared/geometry/moving.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { unitOf } from '#shared/units/quantity.ts';
import { zoneUseWords } from '#shared/wording/words.ts';
import { Choice, NumberField, Part, QuantityField, TextField } from '../../components/fields.tsx';
import { drawnGround, useDesk } from '../../desk/desk.ts';
import { withHeight, withMove, withName, withUse, type Shape } from '../../desk/shapes.ts';
import { useDrafting } from '../drafting.ts';
import { change, changeOutline, chosenShape, copyChosen, removeChosen } from '../drawing.ts';
import { areaWords } from '../measure-words.ts';

/** The chosen shape in figures: what it is, where it lies, every corner and side; and what can be done with it. */
export const ChosenShape = () => {
  const desk = useDesk();
  const shape = chosenShape(desk, useDrafting());
  if (!shape) return <p className="empty">Choose a shape on the plan or in the list, or draw one with a tool above the plan.</p>;
  const { outline, key } = shape;
  const middle = middleOf(outline);
  const stand = drawnGround(desk)?.stands.find((one) => key.part === 'stand' && one.id === key.id);
  const to = (x: number, y: number): void => change((plot) => withMove(plot, key, shift(x - middle[0], y - middle[1])));
  return (
    <Part title={`${shape.letter ?? ''} ${shape.name}: ${areaWords(polygonArea(outline))}`}>
      <div className="row">
        {key.part !== 'field' && (
          <label>
            Name{' '}
            <TextField
              label="Name of the chosen shape"
              value={shape.name}
              change={(name) => change((plot) => withName(plot, key, name))}
            />
          </label>
        )}
        {shape.use !== null && (
          <label>
            Use{' '}
            <Choice
              label="Use of the chosen shape"
              value={shape.use}
              words={zoneUseWords}
              change={(use) => change((plot) => withUse(plot, key, use))}
            />
          </label>
        )}
        {stand && (
          <label>
            Height{' '}
            <QuantityField
              label="Height of the stand at its outline"
              value={stand.height}
              quantity="length"
              change={(height) => change((plot) => withHeight(plot, key, height))}
            />{' '}
            {unitOf('length', desk.units)}
          </label>
        )}
        <label>
          Middle <QuantityField label="Middle across" value={middle[0]} quantity="length" change={(x) => to(x, middle[1])} />{' '}
          <QuantityField label="Middle along" value={middle[1]} quantity="length" change={(y) => to(middle[0], y)} />{' '}
          {unitOf('length', desk.units)}
        </label>
      </div>
      {key.part !== 'field' && <Turned shape={shape} />}
      <Corners shape={shape} />
    </Part>
  );
};

const Turned = ({ shape }: { shape: Shape }) => {
  const [degrees, setDegrees] = useState(90);
  const by = (angle: number): void => change((plot) => withMove(plot, shape.key, turn(angle, middleOf(shape.outline))));
  return (
    <div className="row">
      <label>
        <NumberField label="Degrees to turn, anticlockwise" value={degrees} low={-360} high={360} change={setDegrees} /> °
      </label>
      <button type="button" onClick={() => by(degrees)}>
        Turn anticlockwise
      </button>
      <button type="button" onClick={() => by(-degrees)}>
        Turn clockwise
      </button>
      <button type="button" onClick={copyChosen}>
        Copy
      </button>
      <button type="button" onClick={removeChosen}>
        Remove
      </button>
    </div>
  );
};

/** Every corner: the twin of the drawing for a keyboard and a screen reader. */
const Corners = ({ shape: { outline } }: { shape: Shape }) => {
  const { units } = useDesk();
  const sides = sideLengths(outline);
  return (
    <div className="corners-scroll" tabIndex={0} role="region" aria-label="Corners of the chosen shape">
      <table className="schedule corners">
        <caption>Corners from the middle of the field, {unitOf('length', units)}; a side runs to the next corner.</caption>
        <thead>
          <tr>
            <th scope="col">Corner</th>
            <th scope="col">Across</th>
            <th scope="col">Along</th>
            <th scope="col">Side</th>
            <th scope="col">
              <span className="for-readers">Add or remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {outline.map(([x, y], at) => (
            <tr key={at}>
              <th scope="row">{at + 1}</th>
              <td>
                <QuantityField
                  label={`Corner ${at + 1} across`}
                  value={x}
                  quantity="length"
                  digits={2}
                  change={(value) => changeOutline((ring) => withCorner(ring, at, [value, y]))}
                />
              </td>
              <td>
                <QuantityField
                  label={`Corner ${at + 1} along`}
                  value={y}
                  quantity="length"
                  digits={2}
                  change={(value) => changeOutline((ring) => withCorner(ring, at, [x, value]))}
                />
              </td>
              <td>
                <QuantityField
                  label={`Side after corner ${at + 1}`}
                  value={sides[at]!}
                  quantity="length"
                  digits={2}
                  change={(value) => changeOutline((ring) => withSide(ring, at, value))}
                />
              </td>
              <td className="tight">
                <button
                  type="button"
                  aria-label={`Add a corner after corner ${at + 1}`}
                  onClick={() => changeOutline((ring) => withCornerAfter(ring, at))}
                >
                  +
                </button>
                <button
                  type="button"
                  aria-label={`Remove corner ${at + 1}`}
                  disabled={outline.length <= 3}
                  onClick={() => changeOutline((ring) => withoutCorner(ring, at))}
                >
                  ×
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};
