import { useState } from 'react';
import { paperKinds } from '#shared/contract/contract.ts';
import { cautions, paperWords } from '#shared/wording/words.ts';
import { Choice } from '../components/fields.tsx';
import { show, useDesk } from '../desk/desk.ts';
import { writePaper } from '../desk/recovering.ts';

/** The papers: each from the kept plan, so that the same plan always gives the same paper. */
export const Report = () => {
  const { plan, units } = useDesk();
  const [paper, setPaper] = useState<'letter' | 'a4' | null>(null);
  const size = paper ?? (units === 'us' ? 'letter' : 'a4');
  return (
    <section aria-labelledby="report">
      <h2 id="report">Report</h2>
      {plan ? (
        <>
          <p>
            All papers speak of the kept plan {plan.id.slice(0, 13)} and the forecast it was made from; written again, they are
            the same.
          </p>
          <label>
            Paper <Choice label="Size of paper" value={size} words={{ letter: 'Letter', a4: 'A4' }} change={setPaper} />
          </label>
          <table className="papers">
            <thead>
              <tr>
                <th scope="col">Paper</th>
                <th scope="col">For</th>
                <th scope="col">
                  <span className="for-readers">Write</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {paperKinds.map((kind) => (
                <tr key={kind}>
                  <th scope="row">{paperWords[kind].name}</th>
                  <td>{paperWords[kind].purpose}</td>
                  <td>
                    <button
                      type="button"
                      aria-label={`Write ${paperWords[kind].name}`}
                      onClick={() => void writePaper(kind, size)}
                    >
                      Write
                    </button>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      ) : (
        <p className="empty">
          Papers are written from a kept plan: the recovery report, the meeting sheet, the sod order and the others.{' '}
          <button type="button" onClick={() => show({ verb: 'recover' })}>
            Plan the recovery first
          </button>
        </p>
      )}
      <p className="caution">
        {cautions.surface} {cautions.people}
      </p>
    </section>
  );
};
