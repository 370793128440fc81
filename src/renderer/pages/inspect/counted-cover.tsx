import { useState } from 'react';
import { figure } from '#shared/units/quantity.ts';
import type { FrameCorners, Photograph } from '#shared/vocabulary/photograph.ts';
import { percent } from '../../components/numbers.ts';
import { count, useEvidence, write } from '../../desk/evidence.ts';
import { Pressed } from './pressed.tsx';
import { SteppedField } from './stepped-field.tsx';

const bands = [
  ['first', 'hue 57–107°'],
  ['later', 'hue 45–140°, saturation from 10 %'],
] as const;

/** A frame in the picture as what is cut off each side, per cent; none where nothing is. */
type Cut = Readonly<Record<'left' | 'right' | 'top' | 'bottom', number>>;
const cornersOf = ({ left, right, top, bottom }: Cut): FrameCorners | null =>
  left + right + top + bottom === 0
    ? null
    : [
        [left / 100, top / 100],
        [1 - right / 100, top / 100],
        [1 - right / 100, 1 - bottom / 100],
        [left / 100, 1 - bottom / 100],
      ];

/** Green cover of one photograph: what was counted, the number, and everything that limits it. */
export const CountedCover = ({ photograph }: { photograph: Photograph }) => {
  const { counted, draft } = useEvidence();
  const [band, setBand] = useState<'first' | 'later'>('first');
  const [cut, setCut] = useState<Cut>({ left: 0, right: 0, top: 0, bottom: 0 });
  const take = (): void => {
    if (!counted || !draft || photograph.zone === null) return;
    const spot = {
      zone: photograph.zone,
      point: photograph.point,
      cover: Math.round(1000 * counted.cover) / 1000,
      colour: null,
      greenIndex: counted.greenIndex === null ? null : Math.round(1000 * counted.greenIndex) / 1000,
      moisture: null,
      hardness: null,
      traction: null,
      penetration: null,
      infiltration: null,
      rut: null,
      canopyTemperature: null,
      soilTemperature: null,
    };
    write({ ...draft, readings: [...draft.readings, spot] });
  };
  return (
    <>
      <Pressed label="What counts as green" value={band} choices={bands} change={setBand} />
      <div className="readings">
        {(['left', 'right', 'top', 'bottom'] as const).map((side) => (
          <SteppedField
            key={side}
            label={`Cut off ${side}, to the inside of the frame`}
            unit="%"
            value={cut[side]}
            step={5}
            digits={0}
            begin={5}
            change={(value) => setCut({ ...cut, [side]: Math.min(45, Math.max(0, value ?? 0)) })}
          />
        ))}
      </div>
      <button type="button" className="main wide" onClick={() => void count(photograph.id, band, cornersOf(cut))}>
        Count the green
      </button>
      {counted && (
        <div className="counted">
          <img
            src={`data:image/png;base64,${counted.preview.base64}`}
            alt="What was counted: green where it counted as green, grey where not, black outside the frame"
          />
          <div>
            <p className="number" role="status">
              Live cover <strong>{percent(counted.cover)}</strong>, between {percent(counted.least)} and {percent(counted.most)}{' '}
              for what is too dark or too bright to tell; {percent(counted.coverByOther)} by the other band.
            </p>
            <p>
              {counted.greenIndex === null
                ? 'Nothing green to take a colour from.'
                : `Dark green colour index ${figure(counted.greenIndex, 2)}.`}{' '}
              {counted.counted.toLocaleString('en')} pixels counted; {percent(counted.straw)} of them straw or sand.
            </p>
            {counted.limits.length > 0 ? (
              <ul aria-label="Limits of the number">
                {counted.limits.map((limit) => (
                  <li key={limit.kind}>{limit.words}</li>
                ))}
              </ul>
            ) : (
              <p>Nothing in the picture speaks against the number.</p>
            )}
            <button type="button" disabled={photograph.zone === null} onClick={take}>
              Write it down as a reading of {photograph.zone ?? 'a zone'}
            </button>
          </div>
        </div>
      )}
    </>
  );
};
