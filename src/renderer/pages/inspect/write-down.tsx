import { inspectionKinds } from '#shared/vocabulary/inspection.ts';
import { inspectionWords } from '#shared/wording/inspections.ts';
import { Part, TimeField } from '../../components/fields.tsx';
import { dateOf } from '#shared/calendar/local-time.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { drawnForecast, useDesk } from '../../desk/desk.ts';
import { beginAnew, change, keepInspection, useEvidence, write } from '../../desk/evidence.ts';
import { DefectEntry, SpillEntry } from './defect-entry.tsx';
import { Pressed } from './pressed.tsx';
import { SpotEntry } from './spot-entry.tsx';
import { WitnessEntry } from './witness-entry.tsx';
import { ZoneChoice, useZones } from './zone-choice.tsx';

const kinds = inspectionKinds.map((kind) => [kind, inspectionWords[kind]] as const);

/** One inspection, written down on foot with one hand. */
export const WriteDown = () => {
  const desk = useDesk();
  const days = drawnForecast(desk)?.days ?? [];
  const { draft, photographs } = useEvidence();
  const { zones, chosen } = useZones();
  if (!draft) return null;
  const letter = chosen ?? zones[0]?.letter ?? null;
  const here = photographs.filter((one) => draft.photographs.includes(one.id));
  const missing = [
    ...(draft.inspector.trim() === '' ? ['who inspects'] : []),
    ...(draft.witnesses.some((one) => one.party.trim() === '' || (one.answer === 'named' && one.name.trim() === ''))
      ? ['the name of a witness, or that it was declined']
      : []),
  ];
  return (
    <>
      {draft.corrects !== null && (
        <p className="correcting" role="note">
          This puts {draft.corrects.slice(0, 19)} right. The old one stays and names this one.{' '}
          <button type="button" onClick={beginAnew}>
            Write another instead
          </button>
        </p>
      )}
      <Pressed label="Kind of inspection" value={draft.kind} choices={kinds} change={(kind) => write({ ...draft, kind })} />
      <div className="row">
        <label>
          Begun <TimeField label="Begun" value={draft.at} change={(at) => write({ ...draft, at })} />
        </label>
        <label>
          Inspected by{' '}
          <input
            type="text"
            maxLength={120}
            value={draft.inspector}
            onChange={(event) => write({ ...draft, inspector: event.target.value })}
          />
        </label>
        <label>
          Weather and ground{' '}
          <input
            type="text"
            className="words"
            maxLength={400}
            value={draft.weather}
            onChange={(event) => write({ ...draft, weather: event.target.value })}
          />
        </label>
      </div>
      {draft.bookingId !== null && days.length > 0 && !days.includes(dateOf(draft.at)) && (
        <p className="caution">
          The forecast speaks of {dayWords(days[0]!)} to {dayWords(days.at(-1)!)}: this is kept all the same, but cannot be held
          against it.
        </p>
      )}
      <Part title="Zone">
        <ZoneChoice value={letter} />
      </Part>
      {letter !== null && (
        <>
          <Part title={`Readings in ${letter}`}>
            <SpotEntry draft={draft} zone={letter} />
          </Part>
          <Part title="Defects and spills">
            <DefectEntry draft={draft} zone={letter} />
            <SpillEntry draft={draft} zone={letter} />
          </Part>
        </>
      )}
      <Part title="Photographs">
        <p>
          {here.length === 0
            ? 'None yet.'
            : here.map((one) => [one.zone, one.point, one.fileName].filter(Boolean).join(' ')).join(', ')}{' '}
          <button type="button" onClick={() => change({ part: 'photographs' })}>
            Take or choose one
          </button>
        </p>
      </Part>
      <Part title="Witnesses">
        <WitnessEntry draft={draft} />
      </Part>
      <label>
        Note
        <textarea
          rows={2}
          maxLength={4000}
          value={draft.note}
          onChange={(event) => write({ ...draft, note: event.target.value })}
        />
      </label>
      {missing.length > 0 && <p className="caution">Still to say: {missing.join('; ')}.</p>}
      <button type="button" className="main wide" disabled={missing.length > 0} onClick={() => void keepInspection()}>
        Keep this inspection
      </button>
    </>
  );
};
