import { useState } from 'react';
import { fieldLayouts, turfAround } from '#shared/geometry/field-layouts.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { sources } from '#shared/sources/sources.ts';
import { show as inUnits } from '#shared/units/quantity.ts';
import { fieldCodes, type FieldCode, type FieldLines } from '#shared/vocabulary/venue.ts';
import { Choice, Part, QuantityField } from '../../components/fields.tsx';
import { drawnGround, useDesk } from '../../desk/desk.ts';
import { editGround } from '../../desk/editing.ts';
import { areaWords } from '../measure-words.ts';

const usual = (code: FieldCode): FieldLines => ({
  code,
  length: fieldLayouts[code].length.usual,
  width: fieldLayouts[code].width.usual,
});

/** Sets the field out by the rules of a game: its lines, and the turf around them. */
export const FieldLayoutPart = () => {
  const desk = useDesk();
  const ground = drawnGround(desk);
  const [lines, setLines] = useState<FieldLines>(ground?.lines ?? usual('association-football'));
  const [beyond, setBeyond] = useState(fieldLayouts[lines.code].beyond);
  if (!ground) return null;
  const layout = fieldLayouts[lines.code];
  const source = sources[layout.source];
  const turf = turfAround(lines, beyond);
  const odd = (['length', 'width'] as const).filter(
    (side) => lines[side] < layout[side].low - 0.005 || lines[side] > layout[side].high + 0.005,
  );
  const words = (metres: number): string => inUnits(metres, 'length', desk.units, 1);
  const side = (name: 'length' | 'width') => (
    <label>
      {layout[name].words}{' '}
      <QuantityField
        label={layout[name].words}
        value={lines[name]}
        quantity="length"
        digits={2}
        change={(value) => value >= 20 && value <= 250 && setLines({ ...lines, [name]: value })}
      />
    </label>
  );
  return (
    <Part title="Set the field out by the rules of a game">
      <div className="row">
        <Choice
          label="Game"
          value={lines.code}
          words={fieldCodes.map((code) => [code, fieldLayouts[code].name] as const)}
          change={(code) => {
            setLines(usual(code));
            setBeyond(fieldLayouts[code].beyond);
          }}
        />
        {side('length')}
        {side('width')}
        <label>
          {layout.shape === 'diamond' ? 'foul ground' : 'grass beyond the lines'}{' '}
          <QuantityField
            label={layout.shape === 'diamond' ? 'foul ground' : 'grass beyond the lines'}
            value={beyond}
            quantity="length"
            change={(value) => value >= 0 && value <= 60 && setBeyond(value)}
          />
        </label>
      </div>
      {odd.map((name) => (
        <p key={name}>
          The rules have {words(layout[name].low)}
          {layout[name].high > layout[name].low && <> to {words(layout[name].high)}</>} for {layout[name].words}.
        </p>
      ))}
      <div className="row">
        <button type="button" className="main" onClick={() => editGround({ ...ground, lines, outline: turf })}>
          Lay out turf and lines, {areaWords(polygonArea(turf))}
        </button>
        <button type="button" onClick={() => editGround({ ...ground, lines })}>
          Lines only
        </button>
        {ground.lines && (
          <button type="button" onClick={() => editGround({ ...ground, lines: undefined })}>
            No lines
          </button>
        )}
      </div>
      <p className="caution">
        {source.authors}: {source.title} ({layout.standing}
        {layout.standing === 'recalled' && '; put it right against the book'}). Grass beyond the lines is common practice, no
        source.{' '}
        {layout.shape === 'diamond' &&
          'The dirt of the infield lies inside the edge and counts as turf: give it a standing zone. '}
        {layout.shape === 'oval' && 'The oval is an ellipse; the rules leave its curve free. '}
        Standing zones and stands keep their places.
      </p>
    </Part>
  );
};
