import { useState } from 'react';
import type { Hardness, NewInspection, SpotReading } from '#shared/vocabulary/inspection.ts';
import { useDesk } from '../../desk/desk.ts';
import { useEvidence, write } from '../../desk/evidence.ts';
import { readingKinds, shownFor, spotWords, typedFor, unitFor } from './reading-kinds.ts';
import { SteppedField } from './stepped-field.tsx';

const nothingRead = (zone: string): SpotReading => ({
  zone,
  point: null,
  cover: null,
  colour: null,
  greenIndex: null,
  moisture: null,
  hardness: null,
  traction: null,
  penetration: null,
  infiltration: null,
  rut: null,
  canopyTemperature: null,
  soilTemperature: null,
});

/** Hammer, height and drop are the same all day: those of the last spot stand. The first is the usual one of a turf impact tester. */
const hammerOf = ({ readings }: NewInspection): Omit<Hardness, 'peak'> =>
  readings.findLast((spot) => spot.hardness !== null)?.hardness ?? { hammerMass: 2.25, dropHeight: 0.455, dropNumber: 1 };

const isEmpty = ({ zone: _, point: __, ...read }: SpotReading): boolean => Object.values(read).every((value) => value === null);

/** Fixed points of the zone that were gone to before, so that one press goes back to each. */
const usePoints = (letter: string): readonly string[] => {
  const { lines, draft } = useEvidence();
  const all = [...lines.map((line) => line.inspection), ...(draft ? [draft] : [])].flatMap(({ readings }) => readings);
  return [...new Set(all.flatMap((spot) => (spot.zone === letter && spot.point !== null ? [spot.point] : [])))].toSorted();
};

/** One spot: what is read there, and on to the next. */
export const SpotEntry = ({ draft, zone }: { draft: NewInspection; zone: string }) => {
  const { units } = useDesk();
  const [spot, setSpot] = useState<SpotReading>(nothingRead(zone));
  const points = usePoints(zone);
  const here = spot.zone === zone ? spot : { ...spot, zone, point: null };
  const set = (changed: Partial<SpotReading>): void => setSpot({ ...here, ...changed });
  const add = (): void => {
    write({ ...draft, readings: [...draft.readings, here] });
    setSpot(nothingRead(zone));
  };
  const hammer = here.hardness ?? hammerOf(draft);
  const setHammer = (changed: Partial<Hardness>): void => {
    const peak = here.hardness?.peak;
    if (peak !== undefined || changed.peak !== undefined) set({ hardness: { ...hammer, peak: peak ?? 0, ...changed } });
  };
  return (
    <div className="spot" role="group" aria-label={`Readings in ${zone}`}>
      <div className="point">
        <label>
          Fixed point{' '}
          <input
            type="text"
            maxLength={120}
            placeholder={`any place in ${zone}`}
            value={here.point ?? ''}
            onChange={(event) => set({ point: event.target.value === '' ? null : event.target.value })}
          />
        </label>
        {points.map((point) => (
          <button key={point} type="button" aria-pressed={here.point === point} onClick={() => set({ point })}>
            {point}
          </button>
        ))}
      </div>
      <div className="readings">
        {readingKinds.map((kind) => (
          <SteppedField
            key={kind.key}
            label={kind.words}
            unit={unitFor(kind, units)}
            value={here[kind.key] === null ? null : shownFor(kind, here[kind.key]!, units)}
            step={kind.step[units]}
            digits={kind.digits[units]}
            begin={Number(shownFor(kind, kind.begin, units).toFixed(kind.digits[units]))}
            change={(typed) => set({ [kind.key]: typed === null ? null : typedFor(kind, typed, units) })}
          />
        ))}
        <SteppedField
          label="Hardness"
          unit="g"
          value={here.hardness?.peak ?? null}
          step={5}
          digits={0}
          begin={80}
          change={(peak) => (peak === null ? set({ hardness: null }) : setHammer({ peak }))}
        />
        {here.hardness && (
          <>
            <SteppedField
              label="Hammer"
              unit="kg"
              value={hammer.hammerMass}
              step={0.25}
              digits={2}
              begin={2.25}
              change={(value) => value !== null && setHammer({ hammerMass: value })}
            />
            <SteppedField
              label="Drop height"
              unit="m"
              value={hammer.dropHeight}
              step={0.05}
              digits={3}
              begin={0.455}
              change={(value) => value !== null && setHammer({ dropHeight: value })}
            />
            <SteppedField
              label="Drop number"
              unit=""
              value={hammer.dropNumber}
              step={1}
              digits={0}
              begin={1}
              change={(value) => value !== null && setHammer({ dropNumber: Math.round(value) })}
            />
          </>
        )}
      </div>
      <button type="button" className="main wide" disabled={isEmpty(here)} onClick={add}>
        Add this spot of {zone}
      </button>
      {draft.readings.length > 0 && (
        <ul className="written" aria-label="Spots written down">
          {draft.readings.map((one, index) => (
            <li key={index}>
              <span>
                <strong>
                  {one.zone}
                  {one.point ? ` ${one.point}` : ''}
                </strong>{' '}
                {spotWords(one, units)}
              </span>
              <button
                type="button"
                aria-label={`Take out spot ${index + 1}`}
                onClick={() => write({ ...draft, readings: draft.readings.filter((_, at) => at !== index) })}
              >
                take out
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
};
