import { useState } from 'react';
import { fixtureKinds, type Fixture } from '#shared/vocabulary/venue.ts';
import { fixtureWords } from '#shared/wording/words.ts';
import { addDays, dateOf } from '#shared/calendar/local-time.ts';
import { Choice, EntryTable, Part, RemoveButton, TextField, TimeField } from '../../components/fields.tsx';
import { homeDates } from '../../desk/booking-shapes.ts';
import { useDesk } from '../../desk/desk.ts';
import { nowAtVenue } from '../../desk/moments.ts';
import { removeFixture, saveFixture } from '../../desk/venue-keeping.ts';

/** Home dates, practice and blackouts. Each is stored on its own, so that a slip touches one line. */
export const HomeDates = () => {
  const { fixtures, venue } = useDesk();
  const [drafts, setDrafts] = useState<Readonly<Record<string, Fixture>>>({});
  if (!venue) return null;
  const listed = [...fixtures, ...Object.values(drafts).filter((draft) => !fixtures.some(({ id }) => id === draft.id))].toSorted(
    (a, b) => (a.start < b.start ? -1 : 1),
  );
  const forget = (id: string): void =>
    setDrafts((all) => Object.fromEntries(Object.entries(all).filter(([other]) => other !== id)));
  const store = async (fixture: Fixture): Promise<void> => {
    if (!(await saveFixture(fixture))) return;
    // What was changed since it was sent stays, against the revision that stands now.
    setDrafts(({ [fixture.id]: now, ...others }) =>
      now === undefined || now === fixture ? others : { ...others, [fixture.id]: { ...now, revision: fixture.revision + 1 } },
    );
  };
  const add = (): void => {
    const last = homeDates(fixtures).at(-1);
    const day = last ? addDays(dateOf(last.start), 7) : addDays(dateOf(nowAtVenue()), 28);
    const names = new Set(listed.map((fixture) => fixture.id));
    let number = listed.length + 1;
    while (names.has(`fixture-${number}`)) number++;
    const id = `fixture-${number}`;
    setDrafts({
      ...drafts,
      [id]: {
        id,
        revision: 0,
        venueId: venue.id,
        kind: 'home-date',
        name: `Home date ${homeDates(listed).length + 1}`,
        start: `${day}T15:00`,
        end: `${day}T18:00`,
      },
    });
  };
  return (
    <Part title="Home dates, practice, blackouts">
      {listed.length === 0 && (
        <p className="empty">Without a home date nothing can be foreseen: the forecast says what the turf is on that day.</p>
      )}
      <EntryTable
        caption="A changed line is stored with its own button"
        heads={['Kind', 'Name', 'From and until']}
        end="Store or remove"
      >
        {listed.map((stored) => {
          const fixture = drafts[stored.id] ?? stored;
          const set = (changed: Partial<Fixture>): void => setDrafts({ ...drafts, [fixture.id]: { ...fixture, ...changed } });
          return (
            <tr key={fixture.id}>
              <td>
                <Choice
                  label={`Kind of ${fixture.name}`}
                  value={fixture.kind}
                  words={fixtureKinds.map((kind) => [kind, fixtureWords[kind]] as const)}
                  change={(kind) => set({ kind })}
                />
              </td>
              <td>
                <TextField label={`Name of ${fixture.name}`} value={fixture.name} change={(name) => set({ name })} />
              </td>
              <td>
                <div className="pair">
                  <TimeField label={`${fixture.name} from`} value={fixture.start} change={(start) => set({ start })} />
                  <TimeField label={`${fixture.name} until`} value={fixture.end} change={(end) => set({ end })} />
                </div>
              </td>
              <td className="row">
                {drafts[fixture.id] ? (
                  <>
                    <button type="button" className="main" onClick={() => void store(fixture)}>
                      Store
                    </button>
                    <button type="button" onClick={() => forget(fixture.id)}>
                      Back
                    </button>
                  </>
                ) : (
                  <RemoveButton label={`Remove ${fixture.name}`} remove={() => void removeFixture(fixture)} />
                )}
              </td>
            </tr>
          );
        })}
      </EntryTable>
      <button type="button" onClick={add}>
        Add a home date
      </button>
    </Part>
  );
};
