import type { Booking } from '#shared/vocabulary/booking.ts';
import { costWords, entryKinds, type Clause, type MoneyTerms } from '#shared/vocabulary/money.ts';
import { NumberField, Part, TimeField } from '../../components/fields.tsx';
import { PriceField } from '../../components/setting.tsx';
import { spanOf } from '../../desk/booking-shapes.ts';
import { useDesk } from '../../desk/desk.ts';
import { change, keepTerms, termsOf, useSettling } from '../../desk/settling.ts';

/** What was agreed: who pays, deposit, cap, the days that count, and the clauses that let costs be charged. */
export const TermsPart = ({ booking }: { booking: Booking }) => {
  const { venue } = useDesk();
  const settling = useSettling();
  const terms = termsOf(settling, booking.id);
  const currency = venue!.rules.currency;
  const set = (changed: Partial<MoneyTerms>): void => change({ terms: { ...terms, ...changed } });
  const off = spanOf(booking)?.last ?? null;
  return (
    <Part title="Terms">
      <div className="form">
        <label className="wide">
          <span>Who pays what is charged</span>
          <input type="text" maxLength={120} value={terms.payer} onChange={(event) => set({ payer: event.target.value })} />
        </label>
        <label>
          <span>Deposit, {currency}</span>
          <PriceField
            label={`Deposit, ${currency}`}
            empty="none"
            value={terms.deposit}
            change={(sum) => set({ deposit: sum ?? 0 })}
          />
        </label>
        <label>
          <span>Cap, {currency}</span>
          <PriceField label={`Cap, ${currency}`} empty="no cap" value={terms.cap} change={(cap) => set({ cap })} />
        </label>
        <label>
          <span>The venue bears first, {currency}</span>
          <PriceField
            label={`The venue bears first, ${currency}`}
            empty="nothing"
            value={terms.excess}
            change={(sum) => set({ excess: sum ?? 0 })}
          />
        </label>
        <label>
          <span>Claim within, days of handback</span>
          <NumberField
            label="Claim within, days of handback"
            low={0}
            high={400}
            step={1}
            value={terms.claimDays}
            change={(days) => set({ claimDays: Math.round(days), lateDays: Math.max(terms.lateDays, Math.round(days)) })}
          />
        </label>
        <label>
          <span>Late damage within, days</span>
          <NumberField
            label="Late damage within, days"
            low={terms.claimDays}
            high={400}
            step={1}
            value={terms.lateDays}
            change={(days) => set({ lateDays: Math.round(days) })}
          />
        </label>
        <label>
          <span>Handed back</span>
          {terms.handedBack === null ? (
            <button type="button" disabled={off === null} onClick={() => set({ handedBack: off })}>
              {off === null ? 'no floor is booked' : 'as booked: enter the hour in fact'}
            </button>
          ) : (
            <TimeField label="Handed back" value={terms.handedBack} change={(handedBack) => set({ handedBack })} />
          )}
        </label>
      </div>
      {terms.clauses.map((clause, index) => (
        <ClauseEntry
          key={index}
          clause={clause}
          number={index + 1}
          set={(changed) => set({ clauses: terms.clauses.map((one, at) => (at === index ? { ...one, ...changed } : one)) })}
          remove={() => set({ clauses: terms.clauses.filter((_, at) => at !== index) })}
        />
      ))}
      <div className="row">
        <button
          type="button"
          onClick={() =>
            set({
              clauses: [
                ...terms.clauses,
                { number: String(terms.clauses.length + 1), words: '', kinds: ['sod', 'freight'], share: 100 },
              ],
            })
          }
        >
          Add a clause
        </button>
        <button
          type="button"
          className="main"
          disabled={settling.terms === null || terms.payer.trim() === ''}
          onClick={() => void keepTerms()}
        >
          Keep the terms
        </button>
        {settling.terms !== null && (
          <button type="button" onClick={() => change({ terms: null })}>
            Leave the terms as kept
          </button>
        )}
      </div>
      {terms.payer.trim() === '' && <p className="caution">Without a payer nothing can be charged to anybody.</p>}
    </Part>
  );
};

const ClauseEntry = ({
  clause,
  number,
  set,
  remove,
}: {
  clause: Clause;
  number: number;
  set: (changed: Partial<Clause>) => void;
  remove: () => void;
}) => (
  <fieldset>
    <legend>Clause {clause.number}</legend>
    <div className="form">
      <label>
        <span>Number in the contract</span>
        <input
          type="text"
          aria-label={`Number of clause ${number}`}
          maxLength={20}
          value={clause.number}
          onChange={(event) => set({ number: event.target.value })}
        />
      </label>
      <label>
        <span>Charged, %</span>
        <NumberField
          label={`Share of clause ${number}, %`}
          low={0}
          high={100}
          step={1}
          value={clause.share}
          change={(share) => set({ share: Math.round(share) })}
        />
      </label>
      <label className="wide">
        <span>Words</span>
        <input
          type="text"
          aria-label={`Words of clause ${number}`}
          maxLength={4000}
          value={clause.words}
          onChange={(event) => set({ words: event.target.value })}
        />
      </label>
    </div>
    <div className="kinds" role="group" aria-label={`What clause ${number} covers`}>
      {entryKinds.map((kind) => (
        <label key={kind}>
          <input
            type="checkbox"
            checked={clause.kinds.includes(kind)}
            onChange={(event) =>
              set({ kinds: event.target.checked ? [...clause.kinds, kind] : clause.kinds.filter((one) => one !== kind) })
            }
          />{' '}
          {costWords[kind]}
        </label>
      ))}
    </div>
    <button type="button" aria-label={`Remove clause ${number}`} onClick={remove}>
      Remove
    </button>
  </fieldset>
);
