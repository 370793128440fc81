import { useState } from 'react';
import type { Photograph } from '#shared/vocabulary/photograph.ts';
import { Part, TimeField } from '../../components/fields.tsx';
import { addPhotograph, change, useEvidence } from '../../desk/evidence.ts';
import { momentWords } from '../../desk/moments.ts';
import { CountedCover } from './counted-cover.tsx';
import { Pressed } from './pressed.tsx';
import { SmallPicture } from './small-picture.tsx';
import { SteppedField } from './stepped-field.tsx';
import { useZones, ZoneChoice } from './zone-choice.tsx';

/** Pages of pictures: a workspace may hold hundreds. */
const perPage = 24;

/** Photographs from fixed points, kept as they were taken, and the green that is counted in them. */
export const Photographs = () => {
  const { draft, photographs } = useEvidence();
  const { chosen: zone } = useZones();
  const [chosen, setChosen] = useState<string | null>(null);
  const [page, setPage] = useState(0);
  const last = Math.max(0, Math.ceil(photographs.length / perPage) - 1);
  const at = Math.min(page, last);
  const newest = photographs.toReversed();
  const one = photographs.find((photograph) => photograph.id === chosen) ?? null;
  const choose = (photograph: Photograph): void => {
    setChosen(photograph.id);
    change({ counted: null });
  };
  if (!draft) return null;
  return (
    <>
      <Part title="Add a photograph">
        <NewPhotographEntry zone={zone} taken={choose} />
      </Part>
      {one && (
        <Part title={`Green counted in ${one.fileName}`}>
          <p>{cameraWords(one)}</p>
          <CountedCover key={one.id} photograph={one} />
        </Part>
      )}
      <Part title={`Kept (${photographs.length})`}>
        {photographs.length === 0 && <p className="empty">None yet. Claims fail for want of a picture from before.</p>}
        <div className="pictures">
          {newest.slice(at * perPage, (at + 1) * perPage).map((photograph) => (
            <button
              key={photograph.id}
              type="button"
              className="picture"
              aria-pressed={photograph.id === chosen}
              onClick={() => choose(photograph)}
            >
              <SmallPicture id={photograph.id} />
            </button>
          ))}
        </div>
        {last > 0 && (
          <div className="row">
            <button type="button" disabled={at === 0} onClick={() => setPage(at - 1)}>
              Newer
            </button>
            <span>
              {at + 1} of {last + 1}
            </span>
            <button type="button" disabled={at === last} onClick={() => setPage(at + 1)}>
              Older
            </button>
          </div>
        )}
      </Part>
    </>
  );
};

/** What is kept as time and bearing, and beside it what the camera says. */
const cameraWords = ({ takenAt, bearing, camera }: Photograph): string => {
  const kept = `Kept as taken ${momentWords(takenAt)}${bearing === null ? '' : `, looking ${Math.round(bearing)}°`}. `;
  if (camera === null) return `${kept}The file holds no note of its camera.`;
  const time =
    camera.takenAt === null ? 'no time' : `${camera.takenAt.replace('T', ' ')}${camera.offset ? ` (${camera.offset})` : ''}`;
  const north = camera.north === null ? '' : ` from ${camera.north} north`;
  return `${kept}The camera noted ${time}${camera.bearing === null ? ', no bearing' : `, ${Math.round(camera.bearing)}°${north}`}.`;
};

const ways = [
  ['down', 'straight down'],
  ['N', 'north'],
  ['E', 'east'],
  ['S', 'south'],
  ['W', 'west'],
] as const;
const degrees = { down: null, N: 0, E: 90, S: 180, W: 270 } as const;

const NewPhotographEntry = ({ zone, taken }: { zone: string | null; taken: (photograph: Photograph) => void }) => {
  const { draft } = useEvidence();
  const [point, setPoint] = useState('');
  const [bearing, setBearing] = useState<number | null>(null);
  const [words, setWords] = useState('');
  const [busy, setBusy] = useState(false);
  const [takenAt, setTakenAt] = useState(draft?.at ?? '');
  const [fromCamera, setFromCamera] = useState(true);
  if (!draft) return null;
  const add = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setBusy(true);
    const kept = await addPhotograph(file, {
      venueId: draft.venueId,
      bookingId: draft.bookingId,
      zone,
      point: point.trim() === '' ? null : point.trim(),
      takenAt,
      bearing,
      words,
      fromCamera,
    });
    setBusy(false);
    if (kept) taken(kept);
  };
  return (
    <>
      <ZoneChoice value={zone} />
      <p>{zone === null && 'Of no zone as yet. '}JPEG or PNG, at most 6 MB; its bytes stay as they are.</p>
      <div className="row">
        <label>
          Fixed point <input type="text" maxLength={120} value={point} onChange={(event) => setPoint(event.target.value)} />
        </label>
        <label>
          Taken <TimeField label="Taken" value={takenAt} change={setTakenAt} />
        </label>
        <label>
          Shows{' '}
          <input type="text" className="words" maxLength={400} value={words} onChange={(event) => setWords(event.target.value)} />
        </label>
      </div>
      <Pressed
        label="Where the camera looks"
        value={ways.find(([way]) => degrees[way] === bearing)?.[0] ?? null}
        choices={ways}
        change={(way) => setBearing(degrees[way])}
      />
      <SteppedField
        label="Bearing"
        unit="° from north"
        value={bearing}
        step={5}
        digits={0}
        begin={0}
        change={(value) => setBearing(value === null ? null : ((value % 360) + 360) % 360)}
      />
      <label className="by-camera">
        <input type="checkbox" checked={fromCamera} onChange={(event) => setFromCamera(event.target.checked)} /> Time and bearing
        as the camera noted them, where it did
      </label>
      <label className="file main wide">
        {busy ? 'Being kept …' : 'Take or choose a photograph'}
        <input
          type="file"
          accept="image/jpeg,image/png"
          disabled={busy}
          onChange={(event) => void add(event.target.files?.[0]).then(() => (event.target.value = ''))}
        />
      </label>
    </>
  );
};
