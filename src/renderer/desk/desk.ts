import { useSyncExternalStore } from 'react';
import { shiftDays } from '#shared/calendar/local-time.ts';
import type { PaperKind, PlanRun, ReplyOf } from '#shared/contract/contract.ts';
import type { Failure } from '#shared/contract/failure.ts';
import type { Job } from '#shared/contract/job.ts';
import type { UnitSystem } from '#shared/units/quantity.ts';
import type { Booking, Layer } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Forecast, ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import { ask, work } from '../transport/ask.ts';
import type { Verb } from './verbs.ts';

/** One way of covering the floor, tried out. */
export interface Trial {
  readonly covering: Covering;
  readonly forecast: Forecast | null;
}

/** Everything the page knows. Never changed in place. */
export interface Desk {
  readonly verb: Verb;
  readonly venue: Venue | null;
  readonly coverings: readonly Covering[];
  readonly fixtures: readonly Fixture[];
  readonly bookings: ReplyOf<'booking/list'>;
  /** The booking on the sheet as it is edited, and as it is stored. */
  readonly booking: Booking | null;
  readonly stored: Booking | null;
  readonly homeId: string | null;
  /** The usual season of the booking as edited. */
  readonly preview: Forecast | null;
  readonly previewing: boolean;
  readonly run: ForecastRun | null;
  readonly plan: PlanRun | null;
  readonly job: Job | null;
  readonly trials: readonly Trial[];
  readonly zone: string | null;
  readonly state: 'after' | 'home';
  readonly cursor: LocalTime | null;
  readonly shadow: ReplyOf<'light/shadow'> | null;
  readonly units: UnitSystem;
  readonly theme: 'paper' | 'dark';
  readonly failure: Failure | null;
  readonly said: string;
  readonly before: readonly Booking[];
  readonly after: readonly Booking[];
}

const keptIn = (name: string): string | null => {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
};
const keep = (name: string, value: string): void => {
  try {
    localStorage.setItem(name, value);
  } catch {
    // A page without storage forgets its look; nothing else depends on it.
  }
};

let desk: Desk = {
  verb: 'foresee',
  venue: null,
  coverings: [],
  fixtures: [],
  bookings: [],
  booking: null,
  stored: null,
  homeId: null,
  preview: null,
  previewing: false,
  run: null,
  plan: null,
  job: null,
  trials: [],
  zone: null,
  state: 'home',
  cursor: null,
  shadow: null,
  units: keptIn('units') === 'si' ? 'si' : 'us',
  theme: keptIn('theme') === 'dark' ? 'dark' : 'paper',
  failure: null,
  said: '',
  before: [],
  after: [],
};
const readers = new Set<() => void>();

const set = (change: Partial<Desk>): void => {
  desk = { ...desk, ...change };
  for (const read of readers) read();
};

/** The desk as a component sees it. */
export const useDesk = (): Desk =>
  useSyncExternalStore(
    (read) => {
      readers.add(read);
      return () => readers.delete(read);
    },
    () => desk,
  );

/** Value of a good answer, or null with the failure shown. */
const valueOf = <Value>(answer: { ok: true; value: Value } | { ok: false; failure: Failure }): Value | null => {
  if (answer.ok) return answer.value;
  set({ failure: answer.failure });
  return null;
};

/** The first home date after the booking is over. */
const nextHome = (booking: Booking | null, fixtures: readonly Fixture[]): string | null => {
  const over =
    booking?.layers
      .map((layer) => layer.off)
      .toSorted()
      .at(-1) ?? '';
  const homes = fixtures.filter((fixture) => fixture.kind === 'home-date').toSorted((a, b) => (a.start < b.start ? -1 : 1));
  return (homes.find((home) => home.start > over) ?? homes.at(-1))?.id ?? null;
};

/** Opens the first venue there is, with its classes, calendar and bookings. */
export const begin = async (): Promise<void> => {
  const venues = valueOf(await ask('venue/list', {}));
  if (!venues || venues.length === 0) return;
  await openVenue(venues[0]!.id);
};

export const openVenue = async (id: string): Promise<void> => {
  const [venue, coverings, fixtures, bookings] = await Promise.all([
    ask('venue/read', { id }),
    ask('covering/list', {}),
    ask('fixture/list', { venueId: id }),
    ask('booking/list', { venueId: id }),
  ]);
  set({
    venue: valueOf(venue),
    coverings: valueOf(coverings) ?? [],
    fixtures: valueOf(fixtures) ?? [],
    bookings: valueOf(bookings) ?? [],
  });
  const first =
    desk.bookings.find((line) => line.id === keptIn('booking')) ??
    desk.bookings.find((line) => line.stage === 'confirmed' && line.kind === 'concert') ??
    desk.bookings[0];
  if (first) await openBooking(first.id);
};

export const openBooking = async (id: string): Promise<void> => {
  const booking = valueOf(await ask('booking/read', { id }));
  if (!booking) return;
  keep('booking', id);
  set({
    booking,
    stored: booking,
    homeId: nextHome(booking, desk.fixtures),
    run: null,
    plan: null,
    trials: [],
    before: [],
    after: [],
    zone: booking.zones[0]?.letter ?? null,
    cursor: booking.crowds[0]?.from ?? booking.layers[0]?.on ?? null,
    failure: null,
  });
  await Promise.all([preview(), findKept(), drawShadow()]);
};

/** The newest kept run of this booking and home date, and the newest plan from it. */
const findKept = async (): Promise<void> => {
  const { venue, booking, homeId } = desk;
  if (!venue || !booking) return;
  const runs = await ask('forecast/list', { venueId: venue.id });
  const line = runs.ok ? runs.value.find((one) => one.bookingId === booking.id && one.fixtureId === homeId) : undefined;
  if (!line) return;
  const run = valueOf(await ask('forecast/read', { id: line.id }));
  const plans = await ask('plan/list', { venueId: venue.id });
  const planLine = plans.ok ? plans.value.find((one) => one.forecastId === line.id) : undefined;
  const plan = planLine ? valueOf(await ask('plan/read', { id: planLine.id })) : null;
  if (desk.booking?.id === booking.id) set({ run, plan });
};

let asked = 0;
let waiting: ReturnType<typeof setTimeout> | undefined;

/** Foresees the usual season of the booking as it stands on the sheet. Only the newest question counts. */
export const preview = async (): Promise<void> => {
  const { venue, booking, homeId } = desk;
  if (!venue || !homeId) return;
  const question = ++asked;
  set({ previewing: true });
  const answer = await ask('forecast/preview', { venueId: venue.id, fixtureId: homeId, booking, cellSize: 2 });
  if (question !== asked) return;
  if (answer.ok) set({ preview: answer.value, previewing: false, failure: null });
  else set({ previewing: false, failure: answer.failure });
};

const previewSoon = (): void => {
  clearTimeout(waiting);
  waiting = setTimeout(() => void preview(), 60);
};

/** Changes the booking on the sheet; the usual season follows. `remember` false while something is dragged. */
export const edit = (booking: Booking, remember = true): void => {
  const { booking: old, before } = desk;
  if (!old) return;
  set({
    booking,
    before: remember ? [...before.slice(-49), old] : before,
    after: [],
    run: null,
    plan: null,
    trials: [],
    said: '',
  });
  previewSoon();
};

export const undo = (): void => {
  const { before, after, booking } = desk;
  const last = before.at(-1);
  if (!last || !booking) return;
  set({ booking: last, before: before.slice(0, -1), after: [booking, ...after] });
  previewSoon();
};

export const redo = (): void => {
  const { before, after, booking } = desk;
  const [next, ...others] = after;
  if (!next || !booking) return;
  set({ booking: next, before: [...before, booking], after: others });
  previewSoon();
};

/** Whether the sheet differs from what is stored. */
export const isChanged = ({ booking, stored }: Desk): boolean => JSON.stringify(booking) !== JSON.stringify(stored);

export const save = async (): Promise<boolean> => {
  const { booking, stored } = desk;
  if (!booking) return false;
  const saved = valueOf(await ask('booking/save', { booking: { ...booking, revision: stored?.revision ?? 0 } }));
  if (!saved) return false;
  const bookings = valueOf(await ask('booking/list', { venueId: saved.venueId })) ?? desk.bookings;
  set({ booking: saved, stored: saved, bookings, failure: null, said: `Stored as revision ${saved.revision}.` });
  return true;
};

/** The booking moved by whole days. */
export const moved = (booking: Booking, days: number): Booking => ({
  ...booking,
  layers: booking.layers.map((layer) => ({
    ...layer,
    on: shiftDays(layer.on, days),
    off: shiftDays(layer.off, days),
    care: layer.care.map((care) => ({ ...care, from: shiftDays(care.from, days), until: shiftDays(care.until, days) })),
  })),
  crowds: booking.crowds.map((crowd) => ({ ...crowd, from: shiftDays(crowd.from, days), until: shiftDays(crowd.until, days) })),
  traffic: booking.traffic.map((pass) => ({ ...pass, at: shiftDays(pass.at, days) })),
  incidents: booking.incidents.map((incident) => ({
    ...incident,
    at: shiftDays(incident.at, days),
    until: incident.until === null ? null : shiftDays(incident.until, days),
  })),
});

/** The booking with every last covering of a zone lying some days longer (or shorter). */
export const stretched = (booking: Booking, days: number): Booking => ({
  ...booking,
  layers: booking.layers.map((layer) => {
    const last = booking.layers.filter((other) => other.zone === layer.zone).every((other) => other.off <= layer.off);
    const off = shiftDays(layer.off, days);
    return last && off > layer.on ? { ...layer, off } : layer;
  }),
});

export const changeLayer = (index: number, change: Partial<Layer>, remember = true): void => {
  const { booking } = desk;
  if (booking)
    edit({ ...booking, layers: booking.layers.map((layer, at) => (at === index ? { ...layer, ...change } : layer)) }, remember);
};

export const show = (change: Partial<Pick<Desk, 'verb' | 'zone' | 'state' | 'failure' | 'said'>>): void => set(change);

export const chooseHome = (homeId: string): void => {
  set({ homeId, run: null, plan: null, trials: [] });
  void preview();
  void findKept();
};

export const chooseUnits = (units: UnitSystem): void => {
  keep('units', units);
  set({ units });
};

export const chooseTheme = (theme: Desk['theme']): void => {
  keep('theme', theme);
  set({ theme });
};

/** Puts the cursor of the strip on an hour; the plan's shadow follows. */
export const pointAt = (cursor: LocalTime): void => {
  set({ cursor });
  clearTimeout(shadowWaiting);
  shadowWaiting = setTimeout(() => void drawShadow(), 40);
};
let shadowWaiting: ReturnType<typeof setTimeout> | undefined;

const drawShadow = async (): Promise<void> => {
  const { venue, cursor } = desk;
  if (!venue || !cursor) return;
  const answer = await ask('light/shadow', { venueId: venue.id, at: cursor });
  if (answer.ok && desk.cursor === cursor) set({ shadow: answer.value });
};

/** Draws members and keeps the run. The booking is stored first: a kept run speaks of what is in the file. */
export const foresee = async (members: number): Promise<void> => {
  if (isChanged(desk) && !(await save())) return;
  const { venue, booking, homeId } = desk;
  if (!venue || !booking || !homeId) return;
  set({ failure: null });
  const answer = await work(
    'forecast/run',
    { venueId: venue.id, fixtureId: homeId, bookingId: booking.id, members, seed: 1 },
    (job) => set({ job }),
  );
  set({ job: null });
  const run = valueOf(answer);
  if (run) set({ run, plan: null, said: `${run.result.members} members drawn and kept as ${run.id.slice(0, 12)}.` });
};

export const makePlan = async (): Promise<void> => {
  if (!desk.run) await foresee(200);
  const { run, plan } = desk;
  if (!run) return;
  set({ failure: null });
  const answer = await work(
    'plan/make',
    { forecastId: run.id, now: null, locks: [], done: [], instead: plan?.id ?? null },
    (job) => set({ job }),
  );
  set({ job: null });
  const made = valueOf(answer);
  if (made) set({ plan: made, said: `Planned and kept as ${made.id.slice(0, 13)}.` });
};

export const stopWork = (): void => {
  if (desk.job) void ask('job/cancel', { id: desk.job.id });
};

/** Writes a paper and hands it to the person as a file. */
export const writePaper = async (kind: PaperKind): Promise<void> => {
  const { plan, units } = desk;
  if (!plan) return;
  const file = valueOf(await ask('report/write', { planId: plan.id, kind, paper: units === 'us' ? 'letter' : 'a4', units }));
  if (!file) return;
  const bytes = Uint8Array.from(atob(file.base64), (letter) => letter.charCodeAt(0));
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes], { type: file.mediaType }));
  link.download = file.fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  set({ said: `${file.fileName} is written.` });
};

/** Zones whose floor is the person's choice: those with people on them. */
export const floorZones = (booking: Booking): ReadonlySet<string> =>
  new Set(
    booking.zones.filter((zone) => ['seating', 'standing', 'pit', 'catering'].includes(zone.use)).map((zone) => zone.letter),
  );

/** The booking with one covering on every floor zone. */
export const floored = (booking: Booking, covering: string): Booking => {
  const floor = floorZones(booking);
  return { ...booking, layers: booking.layers.map((layer) => (floor.has(layer.zone) ? { ...layer, covering } : layer)) };
};

/** Foresees the booking with each of some floors, the same season for all. */
export const compareFloors = async (): Promise<void> => {
  const { venue, booking, homeId, coverings } = desk;
  if (!venue || !booking || !homeId) return;
  const offered = coverings.filter((covering) => ['beam', 'plate'].includes(covering.spread));
  set({ trials: offered.map((covering) => ({ covering, forecast: null })) });
  for (const covering of offered) {
    const answer = await ask('forecast/preview', {
      venueId: venue.id,
      fixtureId: homeId,
      booking: floored(booking, covering.id),
      cellSize: 4,
    });
    if (desk.booking !== booking) return;
    set({
      trials: desk.trials.map((trial) =>
        trial.covering.id === covering.id && answer.ok ? { ...trial, forecast: answer.value } : trial,
      ),
    });
  }
};

export const saveVenue = async (venue: Venue): Promise<void> => {
  const saved = valueOf(await ask('venue/save', { venue }));
  if (!saved) return;
  set({ venue: saved, run: null, plan: null, failure: null, said: `Venue stored as revision ${saved.revision}.` });
  void preview();
};
