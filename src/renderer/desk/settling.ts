import { useSyncExternalStore } from 'react';
import { dateOf } from '#shared/calendar/local-time.ts';
import type { Answer } from '#shared/contract/failure.ts';
import {
  priceUnits,
  type BookingMoney,
  type EntryKind,
  type Estimate,
  type MoneyEntry,
  type MoneyTerms,
  type NewEntry,
  type PriceBook,
} from '#shared/vocabulary/money.ts';
import { ask } from '../transport/ask.ts';
import { newestOnly, oneAtATime } from '../transport/turns.ts';
import { change as changeDesk, deskNow, valueOf } from './desk.ts';
import { nowAtVenue } from './moments.ts';

/** The money of the event on the sheet as it is kept, and what is being written of it. Never changed in place. */
export interface Settling {
  /** The event it was read for; null before anything was read. */
  readonly bookingId: string | null;
  readonly money: BookingMoney | null;
  /** Of the plan on the sheet, otherwise of the newest kept one; null where no plan is kept. */
  readonly estimate: Estimate | null;
  /** As they are being written; null while they stand as kept. */
  readonly terms: MoneyTerms | null;
  readonly prices: PriceBook | null;
  readonly entry: NewEntry | null;
}

const nothing: Settling = { bookingId: null, money: null, estimate: null, terms: null, prices: null, entry: null };
let settling = nothing;
const readers = new Set<() => void>();

export const change = (changed: Partial<Settling>): void => {
  settling = { ...settling, ...changed };
  for (const read of readers) read();
};

export const useSettling = (): Settling =>
  useSyncExternalStore(
    (read) => {
      readers.add(read);
      return () => readers.delete(read);
    },
    () => settling,
  );

const readEstimate = async (venueId: string, bookingId: string): Promise<Estimate | null> => {
  let id = deskNow().plan?.id;
  if (id === undefined) {
    const plans = await ask('plan/list', { venueId });
    id = plans.ok ? plans.value.find((plan) => plan.bookingId === bookingId)?.id : undefined;
  }
  return id === undefined ? null : valueOf(await ask('money/estimate', { planId: id }));
};

const beginReading = newestOnly();

/** Reads what is kept of the money of the event on the sheet; what was being written of another event is let go. */
export const readMoney = async (): Promise<void> => {
  const { venue, stored } = deskNow();
  const isNewest = beginReading();
  if (!venue || !stored) return change(nothing);
  if (settling.bookingId !== stored.id) change({ ...nothing, bookingId: stored.id });
  const money = valueOf(await ask('money/read', { bookingId: stored.id }));
  const estimate = await readEstimate(venue.id, stored.id);
  if (isNewest() && deskNow().stored?.id === stored.id) change({ money, estimate });
};

/**
 * Shows what a change made of it and reads everything that follows from it again, which nobody has to wait for.
 * @param left what is still being written: what was changed since the press stays
 */
const kept = <Value>(answer: Answer<Value>, said: string, left: (value: Value, now: Settling) => Partial<Settling>): void => {
  const value = valueOf(answer);
  if (value === null) return;
  change(left(value, settling));
  changeDesk({ failure: null, said });
  void readMoney();
};

/** The terms as they are kept, or as they begin. */
export const termsOf = ({ money, terms }: Settling, bookingId: string): MoneyTerms =>
  terms ??
  money?.terms ?? {
    bookingId,
    revision: 0,
    payer: '',
    deposit: 0,
    cap: null,
    excess: 0,
    claimDays: 30,
    lateDays: 45,
    handedBack: null,
    clauses: [],
  };

export const keepTerms = oneAtATime(async (): Promise<void> => {
  const { terms } = settling;
  if (!terms) return;
  kept(await ask('money/terms', { terms }), 'The terms are kept.', ({ revision }, now) => ({
    terms: now.terms === terms ? null : now.terms && { ...now.terms, revision },
  }));
});

export const priceBookOf = ({ money, prices }: Settling, venueId: string): PriceBook =>
  prices ?? money?.prices ?? { venueId, revision: 0, lines: [] };

export const keepPrices = oneAtATime(async (): Promise<void> => {
  const { prices } = settling;
  if (!prices) return;
  kept(await ask('money/set-prices', { book: prices }), 'The price book is kept.', ({ revision }, now) => ({
    prices: now.prices === prices ? null : now.prices && { ...now.prices, revision },
  }));
});

export const unitFor = (kind: EntryKind): string => (kind === 'other' ? 'lot' : priceUnits[kind]);

/** A line of cost as it begins: an hour of work today. */
export const emptyEntry = (bookingId: string): NewEntry => ({
  bookingId,
  date: dateOf(nowAtVenue()),
  kind: 'labour',
  zone: null,
  words: '',
  quantity: 1,
  unit: unitFor('labour'),
  price: null,
  chargedShare: 0,
  clause: null,
  evidence: '',
  corrects: null,
});

/** Begins a line that puts a kept one right. */
export const correct = ({ number, enteredAt: _, currency: __, sum: ___, ...entry }: MoneyEntry): void =>
  change({ entry: { ...entry, corrects: number } });

export const enterCost = oneAtATime(
  async (): Promise<void> => {
    const { entry } = settling;
    if (!entry) return;
    kept(await ask('money/enter-actual', { entry }), 'The line of cost is kept.', (_, now) =>
      now.entry === entry ? { entry: null } : {},
    );
  },
  () => settling.entry,
);
