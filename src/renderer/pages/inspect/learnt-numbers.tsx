import { useState } from 'react';
import { figure } from '#shared/units/quantity.ts';
import type { Proposal } from '#shared/vocabulary/learning.ts';
import { keptIn, useDesk } from '../../desk/desk.ts';
import { decide, propose, useEvidence } from '../../desk/evidence.ts';

/** What past events say of the venue's own numbers: proposed, taken over or refused by a person, and never lost. */
export const LearntNumbers = () => {
  const { job } = useDesk();
  const { proposals, assimilations } = useEvidence();
  return (
    <>
      <p>
        Each event whose forecast was weighed by inspections speaks about the doubtful numbers of this venue. What moved or
        narrowed by more than chance is proposed; nothing changes until somebody takes it over, and without readings nothing
        narrows.
      </p>
      <button type="button" className="main" disabled={job !== null} onClick={() => void propose()}>
        Propose from past events
      </button>
      {proposals.length === 0 && (
        <p className="empty">
          No proposal yet. {assimilations.length === 0 && 'Weigh at least one event first, under “Seen against forecast”.'}
        </p>
      )}
      {proposals.map((proposal) => (
        <One key={proposal.id} proposal={proposal} />
      ))}
    </>
  );
};

const One = ({ proposal }: { proposal: Proposal }) => {
  const { catalogue } = useDesk();
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [by, setBy] = useState(keptIn('inspector') ?? '');
  const [reason, setReason] = useState('');
  const { id, changes, decision, readings, runs, effectiveSize, members, trust } = proposal;
  const chosen = changes.map((change) => change.name).filter((name) => !left.has(name));
  const toggle = (name: string): void => {
    const next = new Set(left);
    if (!next.delete(name)) next.add(name);
    setLeft(next);
  };
  const meaningOf = (name: string): string =>
    (catalogue?.parameters[name] as { readonly meaning?: string } | undefined)?.meaning ?? name;
  const number = (value: number): string => figure(value, Math.abs(value) < 10 ? 3 : 1);
  return (
    <details className="proposal" open={decision === null}>
      <summary>
        {id.slice(0, 17)}, {proposal.createdAt.slice(0, 10)}: {changes.length} {changes.length === 1 ? 'number' : 'numbers'}
        {decision ? `, ${decision.answer} by ${decision.by} on ${decision.decidedAt.slice(0, 10)}` : ', open'}
      </summary>
      <p>
        From {readings} {readings === 1 ? 'reading' : 'readings'} of zones at {runs.length}{' '}
        {runs.length === 1 ? 'event' : 'events'}; {figure(effectiveSize, 1)} of {members} members count
        {trust < 1 && `; the readings were given ${figure(trust, 2)} of their weight, so that enough count`}.
        {decision && decision.reason !== '' && ` Reason: ${decision.reason}`}
      </p>
      {changes.length > 0 ? (
        <div className="scroll">
          <table>
            <thead>
              <tr>
                <th scope="col">{decision ? 'Taken' : 'Take'}</th>
                <th scope="col">Number</th>
                <th scope="col">Stood at (8 of 10)</th>
                <th scope="col">Proposed (8 of 10)</th>
              </tr>
            </thead>
            <tbody>
              {changes.map(({ name, unit, before, after }) => (
                <tr key={name}>
                  <td>
                    {decision ? (
                      decision.names.includes(name) ? (
                        'yes'
                      ) : (
                        'no'
                      )
                    ) : (
                      <input
                        type="checkbox"
                        aria-label={`Take ${name}`}
                        checked={!left.has(name)}
                        onChange={() => toggle(name)}
                      />
                    )}
                  </td>
                  <th scope="row">
                    {meaningOf(name)} <code>{name}</code>
                  </th>
                  <td>
                    {number(before.value)} ({number(before.low)} to {number(before.high)}) {unit}
                  </td>
                  <td>
                    {number(after.value)} ({number(after.low)} to {number(after.high)}) {unit}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      ) : (
        <p>Nothing moved by more than chance: no number is proposed.</p>
      )}
      {decision === null && (
        <div className="row">
          <label>
            Decided by <input type="text" maxLength={120} value={by} onChange={(event) => setBy(event.target.value)} />
          </label>
          <label>
            Reason{' '}
            <input
              type="text"
              className="words"
              maxLength={400}
              value={reason}
              onChange={(event) => setReason(event.target.value)}
            />
          </label>
          <button
            type="button"
            className="main"
            disabled={by.trim() === '' || chosen.length === 0}
            onClick={() => void decide(id, chosen, by, reason)}
          >
            Take {chosen.length} over
          </button>
          <button type="button" disabled={by.trim() === ''} onClick={() => void decide(id, [], by, reason)}>
            Refuse
          </button>
        </div>
      )}
    </details>
  );
};
