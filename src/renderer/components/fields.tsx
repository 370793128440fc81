import { useState, type KeyboardEvent, type ReactNode } from 'react';
import { addHours, shiftDays } from '#shared/calendar/local-time.ts';
import { figure, toShown, toSI, unitOf, type Quantity } from '#shared/units/quantity.ts';
import { clockWords, type Clock } from '#shared/wording/moments.ts';
import { useDesk } from '../desk/desk.ts';
import { momentOf } from '../desk/pasted-schedule.ts';

/** "2027-07-12 10:00", or by the twelve-hour clock "2027-07-12 10:00 AM": the same on every machine, sorted as it reads. */
const asTyped = (time: string, clock: Clock): string => `${time.slice(0, 10)} ${clockWords(time, clock)}`;

/**
 * A wall-clock minute. What is half typed changes nothing. Arrows up and down go by an hour, with Shift by a day.
 */
export const TimeField = ({ label, value, change }: { label: string; value: string; change: (value: string) => void }) => {
  const { venue, clock } = useDesk();
  const [draft, setDraft] = useState<string | null>(null);
  const typed = draft === null ? value : momentOf(draft, true);
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (step === undefined || typed === null) return;
    event.preventDefault();
    setDraft(null);
    change(event.shiftKey ? shiftDays(typed, step) : addHours(typed, step, venue?.place.timeZone ?? 'UTC'));
  };
  return (
    <input
      type="text"
      className="time"
      inputMode="numeric"
      autoComplete="off"
      spellCheck={false}
      aria-label={label}
      aria-invalid={typed === null}
      title="Day and time as 2027-07-12 10:00; arrows move it by an hour, with Shift by a day"
      value={draft ?? asTyped(value, clock)}
      onChange={(event) => {
        setDraft(event.target.value);
        const moment = momentOf(event.target.value, true);
        if (moment !== null && moment !== value) change(moment);
      }}
      onBlur={() => setDraft(null)}
      onKeyDown={onKeyDown}
    />
  );
};

/** An hour of any day. What is half typed changes nothing. */
export const ClockField = ({ label, value, change }: { label: string; value: string; change: (value: string) => void }) => {
  const { clock } = useDesk();
  const [draft, setDraft] = useState<string | null>(null);
  /** Any day serves: only its hour is kept. */
  const someDay = '2000-01-01';
  const hourOf = (text: string): string | null => momentOf(`${someDay} ${text}`, true)?.slice(11) ?? null;
  return (
    <input
      type="text"
      className="clock"
      inputMode="numeric"
      autoComplete="off"
      spellCheck={false}
      aria-label={label}
      aria-invalid={draft !== null && hourOf(draft) === null}
      title="Hour of the day as 23:00"
      value={draft ?? clockWords(`${someDay}T${value}`, clock)}
      onChange={(event) => {
        setDraft(event.target.value);
        const hour = hourOf(event.target.value);
        if (hour !== null && hour !== value) change(hour);
      }}
      onBlur={() => setDraft(null)}
    />
  );
};

/** A plain number; empty or half typed changes nothing. */
export const NumberField = ({
  label,
  value,
  change,
  low,
  high,
  step = 'any',
}: {
  label: string;
  value: number;
  change: (value: number) => void;
  low?: number;
  high?: number;
  step?: number | 'any';
}) => {
  const [draft, setDraft] = useState<string | null>(null);
  return (
    <input
      type="number"
      aria-label={label}
      value={draft ?? String(value)}
      min={low}
      max={high}
      step={step}
      onChange={(event) => {
        setDraft(event.target.value);
        const typed = event.target.valueAsNumber;
        if (Number.isFinite(typed) && typed !== value) change(typed);
      }}
      onBlur={() => setDraft(null)}
    />
  );
};

/** A number in the reader's units, kept in SI. A switch of units changes the text, never the value. */
export const QuantityField = ({
  label,
  value,
  quantity,
  digits = 1,
  change,
}: {
  label: string;
  value: number;
  quantity: Quantity;
  digits?: number;
  change: (si: number) => void;
}) => {
  const { units } = useDesk();
  const shown = Number(
    figure(toShown(value, quantity, units), digits)
      .replaceAll(',', '')
      .replace('−', '-'),
  );
  return (
    <NumberField
      label={`${label}, ${unitOf(quantity, units)}`}
      value={shown}
      change={(typed) => change(toSI(typed, quantity, units))}
    />
  );
};

/** A line of text that is taken when the person leaves it. */
export const TextField = ({ label, value, change }: { label: string; value: string; change: (value: string) => void }) => {
  const [draft, setDraft] = useState<string | null>(null);
  const take = (): void => {
    if (draft !== null && draft.trim() !== '' && draft !== value) change(draft.trim());
    setDraft(null);
  };
  return (
    <input
      type="text"
      aria-label={label}
      value={draft ?? value}
      onChange={(event) => setDraft(event.target.value)}
      onBlur={take}
      onKeyDown={(event) => event.key === 'Enter' && take()}
    />
  );
};

/** A choice out of named values. */
export const Choice = <Value extends string>({
  label,
  value,
  words,
  change,
}: {
  label: string;
  value: Value;
  words: Readonly<Record<Value, string>> | readonly (readonly [Value, string])[];
  change: (value: Value) => void;
}) => {
  const all = (Array.isArray(words) ? words : Object.entries(words)) as readonly (readonly [Value, string])[];
  return (
    <select aria-label={label} value={value} onChange={(event) => change(event.target.value as Value)}>
      {all.map(([key, text]) => (
        <option key={key} value={key}>
          {text}
        </option>
      ))}
    </select>
  );
};

/** A part of a page with its own heading. */
export const Part = ({ title, children }: { title: string; children: ReactNode }) => (
  <section className="part">
    <h3>{title}</h3>
    {children}
  </section>
);

/**
 * A table whose cells are fields, one row to an entry. Beside the drawing board of a small window it makes way: half a row says nothing.
 * @param end what the buttons of the last column do, for readers; none where every column has a head
 */
export const EntryTable = ({
  caption,
  heads,
  end,
  name = '',
  children,
}: {
  caption: string;
  heads: readonly string[];
  end?: string;
  name?: string;
  children: ReactNode;
}) => (
  <>
    <p className="empty no-room">This table needs more room than the drawing board leaves. It is back with “look”.</p>
    <div className="scroll entries">
      <table className={`schedule ${name}`}>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th scope="col" key={head}>
                {head}
              </th>
            ))}
            {end !== undefined && (
              <th scope="col">
                <span className="for-readers">{end}</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  </>
);

export const RemoveButton = ({ label, remove }: { label: string; remove: () => void }) => (
  <button type="button" aria-label={label} onClick={remove}>
    ×
  </button>
);
