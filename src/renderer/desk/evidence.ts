import { useSyncExternalStore } from 'react';
import type { ReplyOf, RequestOf } from '#shared/contract/contract.ts';
import type { Inspection, NewInspection } from '#shared/vocabulary/inspection.ts';
import type { Assimilation, Proposal } from '#shared/vocabulary/learning.ts';
import type { CoverMeasurement, FrameCorners, NewPhotograph, Photograph } from '#shared/vocabulary/photograph.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import { dateOf } from '#shared/calendar/local-time.ts';
import { ask, work } from '../transport/ask.ts';
import { newestOnly, oneAtATime } from '../transport/turns.ts';
import { spanOf } from './booking-shapes.ts';
import { change as changeDesk, deskNow, keep, keptIn, valueOf } from './desk.ts';
import { preview } from './previewing.ts';
import { nowAtVenue } from './moments.ts';

/** Parts of the work on foot and of what is learnt from it. */
export const inspectParts = ['write', 'photographs', 'kept', 'seen', 'numbers'] as const;
export type InspectPart = (typeof inspectParts)[number];

/** What was seen at the event on the sheet, and what is being written down. Never changed in place. */
export interface Evidence {
  readonly part: InspectPart;
  /** The event it was read for; `undefined` before anything was read. */
  readonly bookingId: string | null | undefined;
  readonly draft: NewInspection | null;
  readonly lines: ReplyOf<'inspection/list'>;
  readonly photographs: readonly Photograph[];
  /** Small pictures by photograph, as addresses a page can draw. */
  readonly pictures: ReadonlyMap<string, string>;
  readonly counted: CoverMeasurement | null;
  readonly weighed: Assimilation | null;
  readonly proposals: readonly Proposal[];
  readonly assimilations: readonly Assimilation[];
}

let evidence: Evidence = {
  part: 'write',
  bookingId: undefined,
  draft: null,
  lines: [],
  photographs: [],
  pictures: new Map(),
  counted: null,
  weighed: null,
  proposals: [],
  assimilations: [],
};
const readers = new Set<() => void>();

export const change = (changed: Partial<Evidence>): void => {
  evidence = { ...evidence, ...changed };
  for (const read of readers) read();
};

export const useEvidence = (): Evidence =>
  useSyncExternalStore(
    (read) => {
      readers.add(read);
      return () => readers.delete(read);
    },
    () => evidence,
  );

/** A tablet may fall asleep in the middle of a walk: what is written and not kept stays in the browser. */
const draftName = (bookingId: string | null): string => `inspection-${bookingId ?? 'field'}`;

export const write = (draft: NewInspection): void => {
  keep(draftName(draft.bookingId), JSON.stringify(draft));
  change({ draft });
};

const draftOf = (bookingId: string | null): NewInspection | null => {
  const text = keptIn(draftName(bookingId));
  try {
    return text ? (JSON.parse(text) as NewInspection) : null;
  } catch {
    return null;
  }
};

/** Now, while the forecast speaks of now; otherwise the hour the last layer goes, since what is entered later is of then. */
const likelyMoment = (): LocalTime => {
  const { preview: seen, booking } = deskNow();
  const now = nowAtVenue();
  const over = booking && spanOf(booking)?.last;
  return over && seen && !seen.days.includes(dateOf(now)) ? over : now;
};

const emptyInspection = (venueId: string, bookingId: string | null, at: LocalTime): NewInspection => ({
  venueId,
  bookingId,
  kind: 'handback',
  at,
  inspector: keptIn('inspector') ?? '',
  weather: '',
  note: '',
  readings: [],
  defects: [],
  spills: [],
  witnesses: [],
  photographs: [],
  corrects: null,
});

const beginReading = newestOnly();

/** Reads what is kept of the event on the sheet. */
export const readEvidence = async (): Promise<void> => {
  const { venue, stored } = deskNow();
  if (!venue) return;
  const isNewest = beginReading();
  const of = { venueId: venue.id, bookingId: stored?.id ?? null };
  const [lines, photographs, learning] = await Promise.all([
    ask('inspection/list', of),
    ask('photograph/list', of),
    ask('learning/list', { venueId: venue.id }),
  ]);
  if (!lines.ok || !photographs.ok || !learning.ok) {
    for (const answer of [lines, photographs, learning]) valueOf<unknown>(answer);
    return;
  }
  if (!isNewest()) return;
  const same = evidence.bookingId === of.bookingId;
  const ofEvent = learning.value.assimilations.filter((one) => one.bookingId === of.bookingId);
  change({
    bookingId: of.bookingId,
    draft: (same ? evidence.draft : null) ?? draftOf(of.bookingId) ?? emptyInspection(of.venueId, of.bookingId, likelyMoment()),
    lines: lines.value,
    photographs: photographs.value,
    assimilations: ofEvent,
    proposals: learning.value.proposals,
    weighed: (same ? evidence.weighed : null) ?? ofEvent[0] ?? null,
    counted: same ? evidence.counted : null,
  });
};

/** Keeps what is written; a new page follows. */
export const keepInspection = oneAtATime(async (): Promise<boolean> => {
  const { draft } = evidence;
  if (!draft) return false;
  changeDesk({ failure: null, said: '' });
  const kept = valueOf(await ask('inspection/add', { inspection: draft }));
  if (!kept) return false;
  keep('inspector', draft.inspector);
  keep(draftName(draft.bookingId), '');
  const next = emptyInspection(draft.venueId, draft.bookingId, likelyMoment());
  const now = evidence.draft;
  // What was written since the press is no part of what is kept: it puts it right.
  if (now && now !== draft) write({ ...now, corrects: kept.inspection.id });
  else change({ draft: { ...next, inspector: draft.inspector }, part: 'kept' });
  changeDesk({ said: 'Kept. It is never changed; a correction is another one that names it.' });
  void readEvidence();
  return true;
});

/** Begins a correction: everything as it was written, to be put right and kept beside the old one. */
export const correct = ({ id, enteredAt: _, ...entered }: Inspection): void => {
  write({ ...entered, corrects: id });
  change({ part: 'write' });
};

export const beginAnew = (): void => {
  const { venue, stored } = deskNow();
  if (venue) write(emptyInspection(venue.id, stored?.id ?? null, likelyMoment()));
};

const base64Of = async (file: Blob): Promise<string> => {
  const bytes = new Uint8Array(await file.arrayBuffer());
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
};

/** Keeps a photograph and names it in what is being written. */
export const addPhotograph = async (file: File, about: Omit<NewPhotograph, 'fileName'>): Promise<Photograph | null> => {
  changeDesk({ failure: null, said: 'The photograph is being kept …' });
  const photograph: RequestOf<'photograph/add'>['photograph'] = { ...about, fileName: file.name.slice(-120) };
  const kept = valueOf(await ask('photograph/add', { photograph, base64: await base64Of(file) }));
  changeDesk({ said: kept ? 'The photograph is kept as it was taken.' : '' });
  if (!kept) return null;
  if (evidence.draft) write({ ...evidence.draft, photographs: [...evidence.draft.photographs, kept.id] });
  await readEvidence();
  return kept;
};

/** Counts the green of a kept photograph. */
export const count = async (id: string, thresholds: 'first' | 'later', frame: FrameCorners | null): Promise<void> => {
  changeDesk({ failure: null, said: 'Counting …' });
  const counted = valueOf(await ask('photograph/measure', { of: { id }, thresholds, frame }));
  changeDesk({ said: '' });
  change({ counted });
};

/** Reads the small picture of a photograph once. */
export const readPicture = async (id: string): Promise<void> => {
  if (evidence.pictures.has(id)) return;
  const answer = await ask('photograph/read', { id, size: 'small' });
  if (!answer.ok) return;
  const address = `data:${answer.value.mediaType};base64,${answer.value.base64}`;
  change({ pictures: new Map(evidence.pictures).set(id, address) });
};

/** Weighs the kept forecast by what was seen, and puts the forecast that goes on with it on the sheet. */
export const weigh = oneAtATime(async (): Promise<void> => {
  const { run } = deskNow();
  if (!run) return;
  changeDesk({ failure: null, said: '' });
  const asked = { forecastId: run.id, inspections: null, members: null };
  const answer = await work('learning/assimilate', asked, (job) => changeDesk({ job }));
  changeDesk({ job: null });
  const weighed = valueOf(answer);
  if (!weighed || deskNow().run !== run) return;
  const next = weighed.runId === null ? null : valueOf(await ask('forecast/read', { id: weighed.runId }));
  if (!next) return;
  change({ weighed });
  changeDesk({
    run: next,
    plan: null,
    estimate: null,
    sod: null,
    said: `Weighed and kept as ${next.id.slice(0, 12)}. Plan the recovery again.`,
  });
  await readEvidence();
});

/** What the forecast would have been with what was known at a moment; nothing is kept. */
export const replay = oneAtATime(async (knownAt: LocalTime): Promise<void> => {
  const forecastId = deskNow().run?.id;
  if (forecastId === undefined) return;
  changeDesk({ failure: null, said: '' });
  const answer = await work('learning/replay', { forecastId, members: null, knownAt }, (job) => changeDesk({ job }));
  changeDesk({ job: null });
  const replayed = valueOf(answer);
  if (replayed) change({ weighed: replayed.assimilation });
});

/** Asks what the past events say of the venue's own numbers. */
export const propose = oneAtATime(async (): Promise<void> => {
  const { venue } = deskNow();
  if (!venue) return;
  changeDesk({ failure: null, said: '' });
  const answer = await work('learning/propose', { venueId: venue.id, runs: null }, (job) => changeDesk({ job }));
  changeDesk({ job: null });
  if (valueOf(answer)) await readEvidence();
});

/** Takes some numbers of a proposal over, or none of them. */
export const decide = oneAtATime(
  async (id: string, names: readonly string[], by: string, reason: string): Promise<void> => {
    const answer =
      names.length === 0
        ? await ask('learning/refuse', { id, by, reason })
        : await ask('learning/accept', { id, names: [...names], by, reason });
    if (!valueOf(answer)) return;
    const venueId = deskNow().venue?.id;
    const venue = venueId === undefined ? null : valueOf(await ask('venue/read', { id: venueId }));
    changeDesk({
      ...(venue ? { venue } : {}),
      said: names.length === 0 ? 'Refused; nothing changed.' : 'Taken over. Foresee again to see what it does.',
    });
    if (names.length > 0) void preview();
    await readEvidence();
  },
  (id) => id,
);
