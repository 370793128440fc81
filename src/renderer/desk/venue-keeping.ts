import type { VenueDocument } from '#shared/contract/contract.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import { ask } from '../transport/ask.ts';
import { oneAtATime } from '../transport/turns.ts';
import { change, deskNow, nothingKept, valueOf, type Edited } from './desk.ts';
import { groundOf, withGround } from './ground.ts';
import { findKept, preview } from './previewing.ts';
import { begin, openVenue } from './opening.ts';

/** Stores the venue. What was foreseen with its old rules leaves the sheet; the kept runs stay in the file. */
export const saveVenue = async (venue: Venue): Promise<boolean> => {
  const saved = valueOf(await ask('venue/save', { venue }));
  if (!saved) return false;
  change({ ...nothingKept, venue: saved, trials: [], failure: null, said: `Venue stored as revision ${saved.revision}.` });
  void preview();
  return true;
};

/** Stores what was entered on the venue's page. What is entered while that is under way stays. */
export const storeVenueDraft = oneAtATime(async (): Promise<void> => {
  const { venueDraft } = deskNow();
  if (!venueDraft || !(await saveVenue(venueDraft))) return;
  const { venueDraft: now, venue } = deskNow();
  change({ venueDraft: now === venueDraft || !now || !venue ? null : { ...now, revision: venue.revision } });
});

/** Stores a new venue and opens it; its page is where it is put right. */
export const beginVenue = oneAtATime(
  async (venue: Venue): Promise<void> => {
    const saved = valueOf(await ask('venue/save', { venue }));
    if (!saved) return;
    const venues = await ask('venue/list', {});
    if (venues.ok) change({ venues: venues.value });
    await openVenue(saved.id);
    change({ verb: 'venue', said: `${saved.name} is begun. Put right here what is not so, then enter a home date under book.` });
  },
  ({ id }) => id,
);

/** Stores a class of floor; all venues of the workspace share the classes. */
export const saveCovering = async (covering: Covering): Promise<void> => {
  if (!valueOf(await ask('covering/save', { covering }))) return;
  const coverings = await ask('covering/list', {});
  change({
    ...nothingKept,
    trials: [],
    said: `${covering.name} is stored.`,
    ...(coverings.ok && { coverings: coverings.value }),
  });
  void preview();
};

/** Stores the ground as it is drawn; the forecast then counts with it. Undo brings the old ground back onto the sheet. */
export const saveGround = oneAtATime(async (): Promise<boolean> => {
  const { venue, ground } = deskNow();
  if (!venue || !ground || !(await saveVenue(withGround(venue, ground)))) return false;
  const old = groundOf(venue);
  const named = (edited: Edited): Edited => ({ ...edited, ground: edited.ground ?? old });
  change({ ground: null, before: deskNow().before.map(named), after: deskNow().after.map(named) });
  return true;
});

const readFixtures = async (venueId: string): Promise<void> => {
  const fixtures = await ask('fixture/list', { venueId });
  if (fixtures.ok) change({ fixtures: fixtures.value });
};

/** Stores a home date, a practice or a blackout; revision 0 makes a new one. */
export const saveFixture = oneAtATime(
  async (fixture: Fixture): Promise<boolean> => {
    const saved = valueOf(await ask('fixture/save', { fixture }));
    if (!saved) return false;
    await readFixtures(saved.venueId);
    change({ ...nothingKept, failure: null, said: `${saved.name} is stored.`, homeId: deskNow().homeId ?? saved.id });
    void preview();
    return true;
  },
  ({ id }) => id,
);

export const removeFixture = oneAtATime(
  async (fixture: Fixture): Promise<void> => {
    if (valueOf(await ask('fixture/remove', { id: fixture.id, revision: fixture.revision })) === null) return;
    await readFixtures(fixture.venueId);
    const { homeId, fixtures } = deskNow();
    if (homeId === fixture.id) {
      change({ ...nothingKept, homeId: fixtures.find((one) => one.kind === 'home-date')?.id ?? null });
      void preview();
      void findKept();
    }
    change({ said: `${fixture.name} is removed.` });
  },
  ({ id }) => id,
);

/** Takes in a venue that was written out elsewhere. */
export const takeInVenue = oneAtATime(async (text: string): Promise<void> => {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return change({
      failure: {
        kind: 'invalid-request',
        message: 'The file is not a venue.',
        problems: [{ field: 'file', reason: 'is not JSON; choose a file that Fieldback wrote' }],
      },
    });
  }
  const venue = valueOf(await ask('venue/import', { document: document as VenueDocument }));
  if (!venue) return;
  await begin();
  await openVenue(venue.id);
});

/** Hands the venue with all that belongs to it to the person as one file. */
export const writeOutVenue = async (): Promise<void> => {
  const { venue } = deskNow();
  if (!venue) return;
  const document = valueOf(await ask('venue/export', { id: venue.id }));
  if (!document) return;
  const link = window.document.createElement('a');
  link.href = URL.createObjectURL(new Blob([JSON.stringify(document, null, 1)], { type: 'application/json' }));
  link.download = `${venue.id}.fieldback-venue`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
};
