import type { Booking } from '#shared/vocabulary/booking.ts';
import { costWords, entryKinds, type BookingMoney, type NewEntry } from '#shared/vocabulary/money.ts';
import { Choice, NumberField, Part } from '../../components/fields.tsx';
import { PriceField } from '../../components/setting.tsx';
import { change, emptyEntry, enterCost, unitFor, useSettling } from '../../desk/settling.ts';

const kinds = entryKinds.map((kind) => [kind, costWords[kind]] as const);

/** One line of cost or hours: what, how much, whose, by which clause, and what proves it. */
export const CostEntry = ({ booking, money }: { booking: Booking; money: BookingMoney }) => {
  const { entry: written } = useSettling();
  const entry = written ?? emptyEntry(booking.id);
  const set = (changed: Partial<NewEntry>): void => change({ entry: { ...entry, ...changed } });
  const clauses = money.terms?.clauses ?? [];
  const charge = (number: string): void => {
    const clause = clauses.find((one) => one.number === number);
    set(clause ? { clause: clause.number, chargedShare: clause.share } : { clause: null, chargedShare: 0 });
  };
  return (
    <Part title="Enter a cost or hours">
      {entry.corrects !== null && (
        <p role="note">
          This puts line {entry.corrects} right; that line stays and counts no more.{' '}
          <button type="button" onClick={() => change({ entry: null })}>
            Enter another instead
          </button>
        </p>
      )}
      <div className="form">
        <label>
          <span>Day</span>
          <input type="date" value={entry.date} onChange={(event) => event.target.value && set({ date: event.target.value })} />
        </label>
        <label>
          <span>Kind</span>
          <Choice label="Kind of cost" value={entry.kind} words={kinds} change={(kind) => set({ kind, unit: unitFor(kind) })} />
        </label>
        <label className="wide">
          <span>In words</span>
          <input type="text" maxLength={120} value={entry.words} onChange={(event) => set({ words: event.target.value })} />
        </label>
        <label>
          <span>Quantity, {entry.unit}</span>
          <NumberField
            label={`Quantity, ${entry.unit}`}
            low={0}
            value={entry.quantity}
            change={(quantity) => set({ quantity })}
          />
        </label>
        <label>
          <span>Price of one, {money.currency}</span>
          <PriceField
            label={`Price of one, ${money.currency}`}
            empty="by the price book"
            value={entry.price}
            change={(price) => set({ price })}
          />
        </label>
        <label>
          <span>Zone</span>
          <Choice
            label="Zone of the cost"
            value={entry.zone ?? ''}
            words={[['', 'the field'], ...booking.zones.map(({ letter, name }) => [letter, `${letter} ${name}`] as const)]}
            change={(zone) => set({ zone: zone === '' ? null : zone })}
          />
        </label>
        <label>
          <span>Charged by clause</span>
          <Choice
            label="Charged by clause"
            value={entry.clause ?? ''}
            words={[['', 'not chargeable'], ...clauses.map(({ number, share }) => [number, `${number} (${share} %)`] as const)]}
            change={charge}
          />
        </label>
        {entry.clause !== null && (
          <label>
            <span>Charged, %</span>
            <NumberField
              label="Charged share, %"
              low={0}
              high={100}
              step={1}
              value={entry.chargedShare}
              change={(share) => set({ chargedShare: Math.round(share) })}
            />
          </label>
        )}
        <label className="wide">
          <span>Proof: invoice, time sheet, photograph</span>
          <input type="text" maxLength={400} value={entry.evidence} onChange={(event) => set({ evidence: event.target.value })} />
        </label>
      </div>
      <button
        type="button"
        className="main"
        disabled={entry.words.trim() === ''}
        onClick={() => {
          change({ entry });
          void enterCost();
        }}
      >
        Keep this line
      </button>
      {entry.words.trim() === '' && <span className="caution"> Say in words what it was.</span>}
      {entry.clause !== null && entry.evidence.trim() === '' && (
        <span className="caution"> Without proof it is not claimed.</span>
      )}
    </Part>
  );
};
