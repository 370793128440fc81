import { useEffect, useState } from 'react';
import { spillAgents, type SpillAgent } from '#shared/vocabulary/booking.ts';
import {
  defectCauses,
  defectKinds,
  type Defect,
  type DefectKind,
  type NewInspection,
  type SpillFound,
} from '#shared/vocabulary/inspection.ts';
import type { Clause } from '#shared/vocabulary/money.ts';
import { show as inUnits, toShown, toSI, unitOf, type Quantity } from '#shared/units/quantity.ts';
import { defectCauseWords, defectWords, spillWords } from '#shared/wording/inspections.ts';
import { Choice } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { write } from '../../desk/evidence.ts';
import { ask } from '../../transport/ask.ts';
import { SteppedField } from './stepped-field.tsx';

/** A measure in the reader's units. */
const Measure = ({
  label,
  quantity,
  value,
  step,
  digits,
  change,
}: {
  label: string;
  quantity: Quantity;
  value: number | null;
  step: number;
  digits: number;
  change: (si: number | null) => void;
}) => {
  const { units } = useDesk();
  return (
    <SteppedField
      label={label}
      unit={unitOf(quantity, units)}
      value={value === null ? null : toShown(value, quantity, units)}
      step={step}
      digits={digits}
      begin={step}
      change={(typed) => change(typed === null ? null : toSI(typed, quantity, units))}
    />
  );
};

/** Clauses that were agreed for the event on the sheet. */
const useClauses = (bookingId: string | null): readonly Clause[] => {
  const [clauses, setClauses] = useState<readonly Clause[]>([]);
  useEffect(() => {
    setClauses([]);
    if (bookingId !== null)
      void ask('money/read', { bookingId }).then((answer) => answer.ok && setClauses(answer.value.terms?.clauses ?? []));
  }, [bookingId]);
  return clauses;
};

const found = (zone: string, kind: DefectKind): Defect => ({
  zone,
  kind,
  length: null,
  area: null,
  depth: null,
  cause: 'unknown',
  chargeable: false,
  clause: null,
  words: '',
});

/** What is broken in the zone one stands in: kind, size, cause, and whether somebody else pays. */
export const DefectEntry = ({ draft, zone }: { draft: NewInspection; zone: string }) => {
  const { units } = useDesk();
  const clauses = useClauses(draft.bookingId);
  const set = (at: number, changed: Partial<Defect>): void =>
    write({ ...draft, defects: draft.defects.map((one, index) => (index === at ? { ...one, ...changed } : one)) });
  return (
    <div className="defects">
      <div className="row">
        <label>
          Add a defect in {zone}{' '}
          <select
            aria-label={`Add a defect in ${zone}`}
            value=""
            onChange={(event) =>
              event.target.value &&
              write({ ...draft, defects: [...draft.defects, found(zone, event.target.value as DefectKind)] })
            }
          >
            <option value="">choose its kind</option>
            {defectKinds.map((kind) => (
              <option key={kind} value={kind}>
                {defectWords[kind]}
              </option>
            ))}
          </select>
        </label>
      </div>
      {draft.defects.map((defect, at) => (
        <fieldset key={at}>
          <legend>
            {defect.zone} {defectWords[defect.kind]}
          </legend>
          <div className="readings">
            <Measure
              label="Length"
              quantity="length"
              value={defect.length}
              step={1}
              digits={1}
              change={(length) => set(at, { length })}
            />
            <Measure
              label="Area"
              quantity="area"
              value={defect.area}
              step={units === 'us' ? 10 : 1}
              digits={1}
              change={(area) => set(at, { area })}
            />
            <Measure
              label="Depth"
              quantity="smallLength"
              value={defect.depth}
              step={units === 'us' ? 0.25 : 5}
              digits={units === 'us' ? 2 : 0}
              change={(depth) => set(at, { depth })}
            />
          </div>
          <div className="row">
            <label>
              Cause{' '}
              <Choice
                label={`Cause of defect ${at + 1}`}
                value={defect.cause}
                words={defectCauses.map((cause) => [cause, defectCauseWords[cause]] as const)}
                change={(cause) => set(at, { cause })}
              />
            </label>
            <label className="tick">
              <input
                type="checkbox"
                checked={defect.chargeable}
                onChange={(event) =>
                  set(at, { chargeable: event.target.checked, ...(event.target.checked ? {} : { clause: null }) })
                }
              />{' '}
              chargeable
            </label>
            {defect.chargeable &&
              (clauses.length > 0 ? (
                <Choice
                  label={`Clause of defect ${at + 1}`}
                  value={defect.clause ?? ''}
                  words={[
                    ['', 'no clause yet'] as const,
                    ...clauses.map((clause) => [clause.number, `clause ${clause.number}`] as const),
                  ]}
                  change={(clause) => set(at, { clause: clause === '' ? null : clause })}
                />
              ) : (
                <span className="caution">No clause is entered with the terms of this event.</span>
              ))}
          </div>
          <label>
            In words{' '}
            <input
              type="text"
              className="words"
              value={defect.words}
              maxLength={400}
              onChange={(event) => set(at, { words: event.target.value })}
            />
          </label>
          <button
            type="button"
            aria-label={`Take out defect ${at + 1}`}
            onClick={() => write({ ...draft, defects: draft.defects.filter((_, index) => index !== at) })}
          >
            take out
          </button>
        </fieldset>
      ))}
    </div>
  );
};

/** What was spilt in the zone one stands in, and what was done about it. */
export const SpillEntry = ({ draft, zone }: { draft: NewInspection; zone: string }) => {
  const { units } = useDesk();
  const set = (at: number, changed: Partial<SpillFound>): void =>
    write({ ...draft, spills: draft.spills.map((one, index) => (index === at ? { ...one, ...changed } : one)) });
  const add = (agent: SpillAgent): void =>
    write({ ...draft, spills: [...draft.spills, { zone, agent, volume: null, area: 1, at: draft.at, treatment: '' }] });
  return (
    <div className="spills">
      <div className="row">
        <label>
          Add a spill in {zone}{' '}
          <select
            aria-label={`Add a spill in ${zone}`}
            value=""
            onChange={(event) => event.target.value && add(event.target.value as SpillAgent)}
          >
            <option value="">choose what was spilt</option>
            {spillAgents.map((agent) => (
              <option key={agent} value={agent}>
                {spillWords[agent]}
              </option>
            ))}
          </select>
        </label>
      </div>
      {draft.spills.map((spill, at) => (
        <fieldset key={at}>
          <legend>
            {spill.zone} {spillWords[spill.agent]}, {inUnits(spill.area, 'area', units, 1)}
          </legend>
          <div className="readings">
            <SteppedField
              label="Volume"
              unit="l"
              value={spill.volume}
              step={1}
              digits={1}
              begin={1}
              change={(volume) => set(at, { volume })}
            />
            <Measure
              label="Area"
              quantity="area"
              value={spill.area}
              step={units === 'us' ? 10 : 1}
              digits={1}
              change={(area) => area !== null && set(at, { area })}
            />
          </div>
          <label>
            What was done about it{' '}
            <input
              type="text"
              className="words"
              value={spill.treatment}
              maxLength={400}
              onChange={(event) => set(at, { treatment: event.target.value })}
            />
          </label>
          <button
            type="button"
            aria-label={`Take out spill ${at + 1}`}
            onClick={() => write({ ...draft, spills: draft.spills.filter((_, index) => index !== at) })}
          >
            take out
          </button>
        </fieldset>
      ))}
    </div>
  );
};
