import { createContext, createElement, useContext, useLayoutEffect, useState, useSyncExternalStore, type ReactNode } from 'react';
import type { PlanRun, ReplyOf } from '#shared/contract/contract.ts';
import type { Answer, Failure } from '#shared/contract/failure.ts';
import type { Job } from '#shared/contract/job.ts';
import type { UnitSystem } from '#shared/units/quantity.ts';
import type { ForecastAnswers } from '#shared/vocabulary/answers.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Way, WayOutcome } from '#shared/vocabulary/comparison.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Forecast, ForecastRun } from '#shared/vocabulary/forecast.ts';
import type { Estimate } from '#shared/vocabulary/money.ts';
import type { DoneJob, Lock } from '#shared/vocabulary/plan.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { SodDecision } from '#shared/vocabulary/sod.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import type { FigureKind } from '#shared/wording/explanations.ts';
import type { Clock } from '#shared/wording/moments.ts';
import { verbs, type Verb } from '../sheet/verbs.ts';
import { groundOf, type Ground } from './ground.ts';

/** One way of doing the event that was laid beside others. */
export interface Trial {
  readonly way: Way;
  /** The floor on the zones with people; null: as booked. */
  readonly floor: Covering | null;
  /** What the promoter gives up against the booking, in words. */
  readonly givesUp: readonly string[];
  readonly outcome: WayOutcome;
}

/** A figure that the person opened. */
export interface OpenedFigure {
  readonly kind: FigureKind;
  /** As it stands on the sheet. */
  readonly shown: string;
  readonly zone: string | null;
}

/** Which evening the plan is coloured by: the last layer off, the home date, or the day of the cursor (means of the zones). */
export type ShownState = 'after' | 'home' | 'cursor';

/** What a person edits on the sheet; undo goes back through these. */
export interface Edited {
  readonly booking: Booking | null;
  readonly ground: Ground | null;
}

/** Everything the page knows. Never changed in place. */
export interface Desk {
  readonly verb: Verb;
  /** Whether the workspace has been read once. */
  readonly opened: boolean;
  readonly venues: ReplyOf<'venue/list'>;
  readonly venue: Venue | null;
  /** The venue as it is edited on its page; null while it stands as stored. */
  readonly venueDraft: Venue | null;
  readonly coverings: readonly Covering[];
  readonly vehicles: readonly Vehicle[];
  readonly fixtures: readonly Fixture[];
  readonly bookings: ReplyOf<'booking/list'>;
  /** The bookings near the one on the sheet, whole, for what they lay on each zone together. */
  readonly season: readonly Booking[];
  readonly catalogue: ReplyOf<'catalogue/read'> | null;
  /** Which file this is, and how much of it lies free. */
  readonly about: ReplyOf<'workspace/about'> | null;
  /** The booking on the sheet as it is edited, as it is stored, and as it is being dragged. */
  readonly booking: Booking | null;
  readonly stored: Booking | null;
  readonly draft: Booking | null;
  /** What somebody else stored meanwhile, where a save met it. */
  readonly theirs: Booking | null;
  /** The venue's ground as it is drawn and not stored yet, and as it is being dragged; null: as stored. */
  readonly ground: Ground | null;
  readonly heldGround: Ground | null;
  readonly before: readonly Edited[];
  readonly after: readonly Edited[];
  readonly homeId: string | null;
  /** The usual season of the booking as it stands on the sheet. */
  readonly preview: Forecast | null;
  readonly previewing: boolean;
  /** Why the booking as it stands on the sheet cannot be reckoned. */
  readonly refused: Failure | null;
  readonly run: ForecastRun | null;
  /** What was asked of the kept run: other days, hours and floors, and what reading would narrow it. */
  readonly answers: ForecastAnswers | null;
  readonly plan: PlanRun | null;
  readonly estimate: Estimate | null;
  readonly sod: SodDecision | null;
  /** What the person holds the planner to, and jobs that are over. */
  readonly locks: readonly Lock[];
  readonly done: readonly DoneJob[];
  /** Which rules jobs held at known hours would break in the kept plan. */
  readonly broken: ReplyOf<'plan/recheck'>;
  readonly job: Job | null;
  readonly trials: readonly Trial[];
  readonly zone: string | null;
  readonly state: ShownState;
  readonly cursor: LocalTime | null;
  readonly shadow: ReplyOf<'light/shadow'> | null;
  readonly figure: OpenedFigure | null;
  readonly units: UnitSystem;
  readonly clock: Clock;
  readonly theme: 'paper' | 'dark';
  /** The plan takes most of the sheet. */
  readonly wide: boolean;
  readonly failure: Failure | null;
  readonly said: string;
}

export const keptIn = (name: string): string | null => {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
};
export const keep = (name: string, value: string): void => {
  try {
    localStorage.setItem(name, value);
  } catch {
    // A page without storage forgets its look; nothing else depends on it.
  }
};

let desk: Desk = {
  verb: verbs.find((verb) => verb === keptIn('verb')) ?? 'foresee',
  opened: false,
  venues: [],
  venue: null,
  venueDraft: null,
  coverings: [],
  vehicles: [],
  fixtures: [],
  bookings: [],
  season: [],
  catalogue: null,
  about: null,
  booking: null,
  stored: null,
  draft: null,
  theirs: null,
  ground: null,
  heldGround: null,
  before: [],
  after: [],
  homeId: null,
  preview: null,
  previewing: false,
  refused: null,
  run: null,
  answers: null,
  plan: null,
  estimate: null,
  sod: null,
  locks: [],
  done: [],
  broken: [],
  job: null,
  trials: [],
  zone: null,
  state: 'home',
  cursor: null,
  shadow: null,
  figure: null,
  units: keptIn('units') === 'si' ? 'si' : 'us',
  clock: keptIn('clock') === '12' ? '12' : '24',
  theme: keptIn('theme') === 'dark' ? 'dark' : 'paper',
  wide: false,
  failure: null,
  said: '',
};
/** A part of the sheet that may lag behind a hand that drags, with the desk as it was last drawn there. */
interface Lagging {
  seen: Desk;
}
/** All of them; whose turn is the longest ago comes first. */
const lagging = new Set<Lagging>();
let turn: ReturnType<typeof setTimeout> | undefined;
/** ms they lag at most. */
const lag = 400;

const readers = new Set<() => void>();
const hear = (read: () => void): (() => void) => {
  readers.add(read);
  return () => readers.delete(read);
};
const tell = (): void => {
  for (const read of readers) read();
};

const catchUp = (): void => {
  clearTimeout(turn);
  turn = undefined;
  for (const part of lagging) part.seen = desk;
};

/** One part after the other: all at once would hold up the plan for longer than the hand forgives. */
const takeTurns = (): void => {
  turn ??= setTimeout(() => {
    turn = undefined;
    const next = [...lagging].find((part) => part.seen !== desk);
    if (!next) return;
    next.seen = desk;
    lagging.delete(next);
    lagging.add(next);
    takeTurns();
    tell();
  }, lag / lagging.size);
};

/** The desk as it is now, for whoever acts on it. */
export const deskNow = (): Desk => desk;

export const change = (changed: Partial<Desk>): void => {
  desk = { ...desk, ...changed };
  if (desk.draft === null && desk.heldGround === null) catchUp();
  else takeTurns();
  tell();
};

/** Tells of every change, for as long as the page lives. */
export const onChange = (read: () => void): void => void readers.add(read);

const Behind = createContext<Lagging | null>(null);

/**
 * A part of the sheet that may lag while something is dragged: the plan follows the hand at once, tables, charts and calendar are drawn
 * anew in turn, each a few times a second. At all other times they are as quick as the plan, so that nobody types into a field that is
 * behind.
 */
export const AfterTheHand = ({ children }: { children: ReactNode }) => {
  const [part] = useState<Lagging>(() => ({ seen: desk }));
  useLayoutEffect(() => {
    part.seen = desk;
    lagging.add(part);
    return () => void lagging.delete(part);
  }, [part]);
  return createElement(Behind, { value: part }, children);
};

/** The desk as a component sees it. */
export const useDesk = (): Desk => {
  const part = useContext(Behind);
  return useSyncExternalStore(hear, () => part?.seen ?? desk);
};

/** Value of a good answer, or null with the failure shown. */
export const valueOf = <Value>(answer: Answer<Value>): Value | null => {
  if (answer.ok) return answer.value;
  change({ failure: answer.failure });
  return null;
};

/** The booking that is drawn: the one being dragged, or the one on the sheet. */
export const drawnBooking = ({ draft, booking }: Desk): Booking | null => draft ?? booking;

/** The venue's ground that is drawn: the one being dragged, the one not stored yet, or the stored one. */
export const drawnGround = ({ venue, ground, heldGround }: Desk): Ground | null =>
  heldGround ?? ground ?? (venue && groundOf(venue));

/** The forecast that is drawn: the kept run of exactly this booking, or its usual season. */
export const drawnForecast = ({ run, preview, draft }: Desk): Forecast | null =>
  run !== null && draft === null ? run.result : preview;

/** Whether the sheet differs from what is stored. */
export const isChanged = ({ booking, stored }: Desk): boolean =>
  booking !== stored && JSON.stringify(booking) !== JSON.stringify(stored);

/** Nothing that was made for another booking, home date or schedule stays on the sheet. */
export const nothingKept = {
  run: null,
  answers: null,
  plan: null,
  estimate: null,
  sod: null,
  locks: [],
  done: [],
  figure: null,
} as const;

export const show = (changed: Partial<Pick<Desk, 'verb' | 'zone' | 'state' | 'failure' | 'said' | 'figure' | 'wide'>>): void => {
  if (changed.verb) keep('verb', changed.verb);
  change(changed);
};

export const chooseUnits = (units: UnitSystem): void => {
  keep('units', units);
  change({ units, figure: null });
};

export const chooseClock = (clock: Clock): void => {
  keep('clock', clock);
  change({ clock, figure: null });
};

export const chooseTheme = (theme: Desk['theme']): void => {
  keep('theme', theme);
  change({ theme });
};
