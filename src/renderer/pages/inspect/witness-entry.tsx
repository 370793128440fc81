import type { NewInspection, Witness } from '#shared/vocabulary/inspection.ts';
import { write } from '../../desk/evidence.ts';

/** Who stood by: a name, or that it was declined. A claim fails where nobody was asked. */
export const WitnessEntry = ({ draft }: { draft: NewInspection }) => {
  const set = (at: number, witness: Witness): void =>
    write({ ...draft, witnesses: draft.witnesses.map((one, index) => (index === at ? witness : one)) });
  return (
    <div className="witnesses">
      {draft.witnesses.map((witness, at) => (
        <div className="row" key={at}>
          <label>
            For{' '}
            <input
              type="text"
              aria-label={`Party of witness ${at + 1}`}
              maxLength={120}
              value={witness.party}
              onChange={(event) => set(at, { ...witness, party: event.target.value })}
            />
          </label>
          {witness.answer === 'named' ? (
            <label>
              Name{' '}
              <input
                type="text"
                aria-label={`Name of witness ${at + 1}`}
                maxLength={120}
                value={witness.name}
                onChange={(event) => set(at, { ...witness, name: event.target.value })}
              />
            </label>
          ) : (
            <strong>declined</strong>
          )}
          <button
            type="button"
            aria-pressed={witness.answer === 'declined'}
            onClick={() =>
              set(
                at,
                witness.answer === 'named'
                  ? { answer: 'declined', party: witness.party }
                  : { answer: 'named', party: witness.party, name: '' },
              )
            }
          >
            declined
          </button>
          <button
            type="button"
            aria-label={`Take out witness ${at + 1}`}
            onClick={() => write({ ...draft, witnesses: draft.witnesses.filter((_, index) => index !== at) })}
          >
            take out
          </button>
        </div>
      ))}
      <button
        type="button"
        onClick={() =>
          write({
            ...draft,
            witnesses: [
              ...draft.witnesses,
              { answer: 'named', party: draft.witnesses.length === 0 ? 'Promoter' : 'Operations', name: '' },
            ],
          })
        }
      >
        Add a witness
      </button>
    </div>
  );
};
