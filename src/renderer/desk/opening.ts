import { daysBetween } from '#shared/calendar/local-time.ts';
import type { Event } from '#shared/contract/job.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { ask, listen } from '../transport/ask.ts';
import { nextHome, spanOf } from './booking-shapes.ts';
import { change, deskNow, isChanged, keep, keptIn, nothingKept, valueOf } from './desk.ts';
import { draftedBooking, keepDrafts, restoreVenueDraft } from './drafts.ts';
import { drawShadow, findKept, preview } from './previewing.ts';

/** Opens the venue that was open last, or the first there is. Ends nothing when there is none: the sheet says what to do. */
export const begin = async (): Promise<void> => {
  const venues = valueOf(await ask('venue/list', {})) ?? [];
  change({ venues, opened: true });
  const first = venues.find((line) => line.id === keptIn('venue')) ?? venues[0];
  if (first) {
    await openVenue(first.id);
    await restoreDrafts();
  }
  keepDrafts();
  void ask('catalogue/read', {}).then((answer) => answer.ok && change({ catalogue: answer.value }));
};

export const openVenue = async (id: string): Promise<void> => {
  const [venue, coverings, vehicles, fixtures, bookings] = await Promise.all([
    ask('venue/read', { id }),
    ask('covering/list', {}),
    ask('vehicle/list', {}),
    ask('fixture/list', { venueId: id }),
    ask('booking/list', { venueId: id }),
  ]);
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
    preview: null,
    season: [],
    trials: [],
  });
  const { bookings: lines } = deskNow();
  const first =
    lines.find((line) => line.id === keptIn('booking')) ??
    lines.find((line) => line.stage === 'confirmed' && line.kind === 'concert') ??
    lines[0];
  if (first) await openBooking(first.id);
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
  const booking = valueOf(await ask('booking/read', { id }));
  if (!booking) return;
  keep('booking', id);
  lay(booking, booking);
  await Promise.all([preview(), findKept(), drawShadow()]);
  void readSeason();
};

/** Puts a booking on the sheet that is not stored yet. */
export const openNew = async (booking: Booking): Promise<void> => {
  lay(booking, null);
  await Promise.all([preview(), drawShadow()]);
};

/** Brings back what was on the sheet and not stored when the page ended. Undo shows the booking as it is stored. */
const restoreDrafts = async (): Promise<void> => {
  const { venue } = deskNow();
  const draft = venue && draftedBooking(venue.id);
  if (draft) {
    if (deskNow().bookings.some((line) => line.id === draft.id)) {
      if (deskNow().stored?.id !== draft.id) await openBooking(draft.id);
      const { stored } = deskNow();
      if (stored) change({ booking: draft, before: [stored], preview: null, run: null, plan: null });
    } else lay(draft, null);
    change({ said: 'What you had not stored is back on the sheet.' });
    await preview();
  }
  restoreVenueDraft();
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
export const removeBooking = async (): Promise<void> => {
  const { stored, venue } = deskNow();
  if (!venue) return;
  if (stored && valueOf(await ask('booking/remove', { id: stored.id, revision: stored.revision })) === null) return;
  await openVenue(venue.id);
  change({ said: 'The booking is removed. Its kept forecasts stay.' });
};

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
