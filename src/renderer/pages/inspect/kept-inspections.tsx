import { show as inUnits } from '#shared/units/quantity.ts';
import type { Inspection } from '#shared/vocabulary/inspection.ts';
import { defectCauseWords, defectWords, inspectionWords, spillWords } from '#shared/wording/inspections.ts';
import { useDesk } from '../../desk/desk.ts';
import { change, correct, useEvidence } from '../../desk/evidence.ts';
import { momentWords } from '../../desk/moments.ts';
import { spotWords } from './reading-kinds.ts';
import { SmallPicture } from './small-picture.tsx';

/** Everything that was kept, in the order it was made. What was put right stays, and says by which. */
export const KeptInspections = () => {
  const { lines } = useEvidence();
  if (lines.length === 0)
    return (
      <p className="empty">
        Nothing is kept yet. The baseline comes first: before the first truck, with a witness and photographs from fixed points.{' '}
        <button type="button" onClick={() => change({ part: 'write' })}>
          Write it down
        </button>
      </p>
    );
  return (
    <>
      {lines.map(({ inspection, correctedBy }) => (
        <details key={inspection.id} className={correctedBy === null ? 'kept' : 'kept past'} id={inspection.id}>
          <summary>
            {inspectionWords[inspection.kind]}, {momentWords(inspection.at)}, {inspection.inspector}
            {correctedBy !== null && <strong> — put right by {correctedBy.slice(0, 19)}</strong>}
            {inspection.corrects !== null && <span> (puts {inspection.corrects.slice(0, 19)} right)</span>}
          </summary>
          <One inspection={inspection} />
          {correctedBy === null && (
            <button type="button" onClick={() => correct(inspection)}>
              Put it right
            </button>
          )}
        </details>
      ))}
    </>
  );
};

const One = ({ inspection }: { inspection: Inspection }) => {
  const { units } = useDesk();
  const { weather, note, readings, defects, spills, witnesses, photographs } = inspection;
  return (
    <>
      <p>
        {inspection.id}. {weather} {note}
      </p>
      {readings.length > 0 && (
        <table>
          <caption>Readings</caption>
          <thead>
            <tr>
              <th scope="col">Zone</th>
              <th scope="col">Point</th>
              <th scope="col">Read</th>
            </tr>
          </thead>
          <tbody>
            {readings.map((spot, index) => (
              <tr key={index}>
                <th scope="row">{spot.zone}</th>
                <td>{spot.point ?? '–'}</td>
                <td>{spotWords(spot, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <ul>
        {defects.map((defect, index) => (
          <li key={`d${index}`}>
            {defect.zone}: {defectWords[defect.kind]}
            {defect.length !== null && `, ${inUnits(defect.length, 'length', units)} long`}
            {defect.area !== null && `, ${inUnits(defect.area, 'area', units)}`}
            {defect.depth !== null && `, ${inUnits(defect.depth, 'smallLength', units)} deep`}; cause{' '}
            {defectCauseWords[defect.cause]}
            {defect.chargeable && `; chargeable${defect.clause ? ` by clause ${defect.clause}` : ', no clause named'}`}.{' '}
            {defect.words}
          </li>
        ))}
        {spills.map((spill, index) => (
          <li key={`s${index}`}>
            {spill.zone}: {spillWords[spill.agent]} on {inUnits(spill.area, 'area', units, 1)}
            {spill.volume !== null && `, ${spill.volume} l`}. {spill.treatment}
          </li>
        ))}
        {witnesses.map((witness, index) => (
          <li key={`w${index}`}>
            Witness: {witness.answer === 'named' ? `${witness.name} (${witness.party})` : `declined by ${witness.party}`}
          </li>
        ))}
      </ul>
      {photographs.length > 0 && (
        <div className="pictures">
          {photographs.map((id) => (
            <SmallPicture key={id} id={id} />
          ))}
        </div>
      )}
    </>
  );
};
