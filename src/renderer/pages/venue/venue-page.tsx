import { useDesk, change } from '../../desk/desk.ts';
import { openVenue } from '../../desk/opening.ts';
import { storeVenueDraft, takeInVenue, writeOutVenue } from '../../desk/venue-keeping.ts';
import { Climate } from './climate.tsx';
import { Crew } from './crew.tsx';
import { Farms } from './farms.tsx';
import { FileRoom } from './file-room.tsx';
import { Floors } from './floors.tsx';
import { Ground } from './ground.tsx';
import { NewVenue } from './new-venue.tsx';
import { Numbers } from './numbers.tsx';
import { Prices } from './prices.tsx';
import { Limits } from './limits.tsx';
import { Rules } from './rules.tsx';
import { Stands } from './stands.tsx';
import './venue.css';

/** What the venue asks of the surface, who works there, what it is built of, and which numbers it has made its own. */
export const VenuePage = () => {
  const { venue, venueDraft, venues } = useDesk();
  if (!venue) return <TakeIn />;
  const shown = venueDraft ?? venue;
  const changed = venueDraft !== null && JSON.stringify(venueDraft) !== JSON.stringify(venue);
  const parts = { venue: shown, stored: venue, set: (next: typeof venue) => change({ venueDraft: next }) };
  return (
    <section aria-labelledby="venue">
      <h2 id="venue">Venue</h2>
      <div className="row">
        {venues.length > 1 && (
          <label>
            Venue{' '}
            <select value={venue.id} onChange={(event) => void openVenue(event.target.value)}>
              {venues.map((line) => (
                <option key={line.id} value={line.id}>
                  {line.name}
                </option>
              ))}
            </select>
          </label>
        )}
        <button type="button" onClick={() => void writeOutVenue()}>
          Write the venue to a file
        </button>
      </div>
      <p>{shown.about}</p>
      <details>
        <summary>Begin a new venue, or take one in from a file</summary>
        <NewVenue />
        <TakeIn />
      </details>
      <Rules {...parts} />
      <Crew {...parts} />
      <Limits {...parts} />
      <Ground {...parts} />
      <Stands {...parts} />
      <Farms {...parts} />
      <Prices {...parts} />
      <Climate {...parts} />
      <Floors />
      <Numbers venue={venue} />
      <FileRoom />
      <div className="row sticky">
        <button type="button" disabled={!changed} onClick={() => change({ venueDraft: null })}>
          Back to what is stored
        </button>
        <button type="button" className="main" disabled={!changed} onClick={() => void storeVenueDraft()}>
          Store the venue
        </button>
        {changed && <span>Kept forecasts stay; the sheet is foreseen anew.</span>}
      </div>
    </section>
  );
};

/** A venue out of a file that Fieldback wrote. */
export const TakeIn = () => (
  <label className="take-in">
    A venue file that Fieldback wrote{' '}
    <input
      type="file"
      accept=".fieldback-venue,application/json,.json"
      onChange={(event) => {
        const file = event.target.files?.[0];
        if (file) void file.text().then(takeInVenue);
      }}
    />
  </label>
);
