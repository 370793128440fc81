import { useEffect } from 'react';
import { cautions } from '#shared/wording/words.ts';
import { useDesk } from '../../desk/desk.ts';
import { change, inspectParts, readEvidence, useEvidence, type InspectPart } from '../../desk/evidence.ts';
import { Trouble } from '../../margin/trouble.tsx';
import { Working } from '../../margin/working.tsx';
import { KeptInspections } from './kept-inspections.tsx';
import { LearntNumbers } from './learnt-numbers.tsx';
import { Photographs } from './photographs.tsx';
import { SeenAgainstForecast } from './seen-against-forecast.tsx';
import { WriteDown } from './write-down.tsx';
import './inspect.css';

const partWords: Readonly<Record<InspectPart, string>> = {
  write: 'Write down',
  photographs: 'Photographs',
  kept: 'Kept',
  seen: 'Seen against forecast',
  numbers: 'The venue’s numbers',
};
const pages = {
  write: WriteDown,
  photographs: Photographs,
  kept: KeptInspections,
  seen: SeenAgainstForecast,
  numbers: LearntNumbers,
};

/** On foot: what is read and seen, kept for good; what the forecast makes of it; what the venue learns. */
export const Inspect = () => {
  const { venue, booking, stored } = useDesk();
  const { part, draft, lines, photographs } = useEvidence();
  useEffect(() => void readEvidence(), [venue?.id, stored?.id]);
  const counts: Partial<Record<InspectPart, number>> = { photographs: photographs.length, kept: lines.length };
  const Page = pages[part];
  return (
    <section className="inspect" aria-labelledby="inspect">
      <h2 id="inspect">Inspect{booking ? `: ${booking.name}` : ' the field'}</h2>
      <div className="parts" role="group" aria-label="Part of the inspection">
        {inspectParts.map((one) => (
          <button key={one} type="button" aria-pressed={part === one} onClick={() => change({ part: one })}>
            {partWords[one]}
            {counts[one] ? ` (${counts[one]})` : ''}
          </button>
        ))}
      </div>
      <div className="at-hand">
        <Trouble />
        <Working />
      </div>
      {booking && !stored && (
        <p className="empty">This booking is not stored yet: what is written here belongs to the field as it is.</p>
      )}
      {draft && <Page />}
      <p className="caution">
        {cautions.surface} {cautions.people}
      </p>
    </section>
  );
};
