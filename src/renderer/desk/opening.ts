import { daysBetween } from '#shared/calendar/local-time.ts';
import type { Event } from '#shared/contract/job.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { ask, listen } from '../transport/ask.ts';
import { newestOnly, oneAtATime } from '../transport/turns.ts';
import { nextHome, spanOf } from './booking-shapes.ts';
import { change, deskNow, isChanged, keep, keptIn, nothingKept, valueOf } from './desk.ts';
import { offerRoom, readAbout } from './file-room.ts';
import { draftsAt, dropDraft, keepNow, sayRecovered, type Draft } from './drafts.ts';
import { drawShadow, findKept, preview } from './previewing.ts';
import { keepVenueDraft, restoreVenueDraft } from './venue-draft.ts';

const beginOpening = newestOnly();

/** Opens the venue that was open last, or the first there is. Ends nothing when there is none: the sheet says what to do. */
export const begin = async (): Promise<void> => {
  const venues = valueOf(await ask('venue/list', {})) ?? [];
  change({ venues, opened: true });
  const first = venues.find((line) => line.id === keptIn('venue')) ?? venues[0];
  if (first) {
    await openVenue(first.id);
    restoreVenueDraft();
  }
  keepVenueDraft();
  void ask('catalogue/read', {}).then((answer) => answer.ok && change({ catalogue: answer.value }));
  void readAbout().then(offerRoom);
};

export const openVenue = async (id: string): Promise<void> => {
  const isNewest = beginOpening();
  await keepNow();
  const [venue, coverings, vehicles, fixtures, bookings, drafts] = await Promise.all([
    ask('venue/read', { id }),
    ask('covering/list', {}),
    ask('vehicle/list', {}),
    ask('fixture/list', { venueId: id }),
    ask('booking/list', { venueId: id }),
    draftsAt(id),
  ]);
  if (!isNewest()) return;
  keep('venue', id);
  change({
    ...nothingKept,
    venue: valueOf(venue),
    venueDraft: null,
    coverings: valueOf(coverings) ?? [],
    vehicles: valueOf(vehicles) ?? [],
    fixtures: valueOf(fixtures) ?? [],
    bookings: valueOf(bookings) ?? [],
    booking: null,
    stored: null,
    ground: null,
    heldGround: null,
    preview: null,
    season: [],
    trials: [],
  });
  const { bookings: lines } = deskNow();
  // What was changed last and not stored comes first: somebody was in the middle of it.
  const [unstored] = drafts;
  if (unstored && !lines.some((line) => line.id === unstored.booking.id)) {
    await openNew(unstored.booking);
    return sayRecovered(unstored, null);
  }
  const first =
    lines.find((line) => line.id === unstored?.booking.id) ??
    lines.find((line) => line.id === keptIn('booking')) ??
    lines.find((line) => line.stage === 'confirmed' && line.kind === 'concert') ??
    lines[0];
  if (first) await layBooking(first.id, drafts, isNewest);
  else {
    change({ homeId: nextHome(null, deskNow().fixtures)?.id ?? null });
    await preview();
  }
};

/** d each way of the season that is stacked: the eighteen months the strip can show. */
const seasonReach = 300;

/** Reads the bookings near the one on the sheet whole, so that the strip can stack them by zone. */
const readSeason = async (): Promise<void> => {
  const { venue, bookings, booking, fixtures } = deskNow();
  const around = (booking && spanOf(booking)?.first) ?? fixtures[0]?.start;
  if (!venue || !around) return change({ season: [] });
  const near = bookings.filter(
    (line) =>
      line.firstOn !== null &&
      line.stage !== 'cancelled' &&
      Math.abs(daysBetween(around.slice(0, 10), line.firstOn.slice(0, 10))) < seasonReach,
  );
  const read = await Promise.all(near.map((line) => ask('booking/read', { id: line.id })));
  if (deskNow().venue?.id === venue.id) change({ season: read.flatMap((answer) => (answer.ok ? [answer.value] : [])) });
};

export const openBooking = async (id: string): Promise<void> => {
  const isNewest = beginOpening();
  await keepNow();
  const { venue } = deskNow();
  await layBooking(id, venue ? await draftsAt(venue.id) : [], isNewest);
};

/** Lays a stored booking of the open venue on the sheet, or what was changed on it and not stored. */
const layBooking = async (id: string, drafts: readonly Draft[], isNewest: () => boolean): Promise<void> => {
  const booking = valueOf(await ask('booking/read', { id }));
  if (!booking || !isNewest()) return;
  keep('booking', id);
  const draft = drafts.find((one) => one.booking.id === id);
  lay(draft?.booking ?? booking, booking);
  if (draft) sayRecovered(draft, booking);
  // What is kept is read in a moment and shown; the usual season is reckoned after it, for whoever changes something then.
  await Promise.all([findKept(), drawShadow()]);
  await preview();
  void readSeason();
};

/** Puts a booking on the sheet that is not stored yet. */
export const openNew = async (booking: Booking): Promise<void> => {
  beginOpening();
  await keepNow();
  lay(booking, null);
  await Promise.all([preview(), drawShadow()]);
};

const lay = (booking: Booking, stored: Booking | null): void =>
  change({
    ...nothingKept,
    booking,
    stored,
    draft: null,
    theirs: null,
    homeId: nextHome(booking, deskNow().fixtures)?.id ?? null,
    preview: null,
    refused: null,
    trials: [],
    before: [],
    after: [],
    zone: booking.zones[0]?.letter ?? null,
    cursor: booking.crowds[0]?.from ?? spanOf(booking)?.first ?? null,
    failure: null,
    said: '',
  });

/** Removes the booking from the file and opens another. */
export const removeBooking = oneAtATime(async (): Promise<void> => {
  const { booking, stored, venue } = deskNow();
  if (!venue) return;
  if (stored && valueOf(await ask('booking/remove', { id: stored.id, revision: stored.revision })) === null) return;
  if (booking) await dropDraft(booking.id);
  await openVenue(venue.id);
  change({ said: 'The booking is removed. Its kept forecasts stay.' });
});

/** Reads again what another window, the command line or this one stored. Edits that are not stored are never thrown away. */
const hear = async (event: Event): Promise<void> => {
  const { venue, stored } = deskNow();
  if (event.kind !== 'changed' || !venue) return;
  if (event.what === 'fixture') {
    const fixtures = await ask('fixture/list', { venueId: venue.id });
    if (fixtures.ok) change({ fixtures: fixtures.value });
  }
  if (event.what === 'booking') {
    const bookings = await ask('booking/list', { venueId: venue.id });
    if (!bookings.ok) return;
    change({ bookings: bookings.value });
    void readSeason();
    const line = bookings.value.find((one) => one.id === stored?.id);
    if (line && stored && line.revision > stored.revision && !isChanged(deskNow()) && deskNow().draft === null) {
      await openBooking(line.id);
      change({ said: `Somebody stored revision ${line.revision}; it is on the sheet.` });
    }
  }
  if (event.what === 'venue' && event.id === venue.id) {
    const again = await ask('venue/read', { id: venue.id });
    if (again.ok && again.value.revision > (deskNow().venue?.revision ?? 0)) {
      change({ venue: again.value });
      void preview();
    }
  }
};

let listening = false;
export const listenToOthers = (): void => {
  if (listening) return;
  listening = true;
  listen((event) => void hear(event));
};
