import { addDays, dateOf } from '#shared/calendar/local-time.ts';
import {
  chargedPart,
  type Account,
  type AccountLine,
  type EntryKind,
  type LineFate,
  type MoneyEntry,
  type MoneyTerms,
} from '#shared/vocabulary/money.ts';
import type { LocalDate, LocalTime } from '#shared/vocabulary/primitives.ts';

/** Last days of a claim, counted from the day the field was given back. */
export const deadlinesOf = (
  terms: MoneyTerms | null,
  lastOff: LocalTime | null,
): { readonly handedBack: LocalTime | null; readonly claimBy: LocalDate | null; readonly lateBy: LocalDate | null } => {
  const handedBack = terms?.handedBack ?? lastOff;
  if (terms === null || handedBack === null) return { handedBack, claimBy: null, lateBy: null };
  const day = dateOf(handedBack);
  return { handedBack, claimBy: addDays(day, terms.claimDays), lateBy: addDays(day, terms.lateDays) };
};

/**
 * The account of a booking from its lines and terms. Everything is whole minor units: each line is split into a charged part and the
 * rest, which add up to it; the claim and what the venue bears add up to the total.
 *
 * claim = min(cap, max(0, chargeable + supplement − excess)).
 */
export const accountOf = (
  currency: string,
  terms: MoneyTerms | null,
  entries: readonly MoneyEntry[],
  lastOff: LocalTime | null,
): Account => {
  const deadlines = deadlinesOf(terms, lastOff);
  const own = entries.filter((entry) => entry.currency === currency);
  const corrected = new Set(entries.flatMap((entry) => (entry.corrects === null ? [] : [entry.corrects])));
  const lines = own.map((entry): AccountLine => {
    const fate = fateOf(entry, corrected, terms, deadlines);
    const charged = fate === 'corrected' || fate === 'own' ? 0 : chargedPart(entry.sum, entry.chargedShare);
    return { entry, fate, charged, own: fate === 'corrected' ? 0 : entry.sum - charged };
  });
  const chargedAs = (fate: LineFate): number => sum(lines.filter((line) => line.fate === fate).map((line) => line.charged));
  const total = sum(lines.map((line) => line.charged + line.own));
  const [chargeable, supplement] = [chargedAs('claimed'), chargedAs('late')];
  const excess = Math.min(terms?.excess ?? 0, chargeable + supplement);
  const beyondExcess = chargeable + supplement - excess;
  const claim = Math.min(terms?.cap ?? beyondExcess, beyondExcess);
  const deposit = terms?.deposit ?? 0;
  const depositKept = Math.min(deposit, claim);
  return {
    currency,
    lines,
    total,
    byKind: byKind(lines),
    byClause: byClause(lines),
    chargeable,
    supplement,
    unproven: chargedAs('unproven'),
    tooLate: chargedAs('too-late'),
    excess,
    aboveCap: beyondExcess - claim,
    claim,
    depositKept,
    depositReturned: deposit - depositKept,
    balanceDue: claim - depositKept,
    venueBears: total - claim,
    ...deadlines,
    otherCurrency: entries.length - own.length,
  };
};

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

const fateOf = (
  entry: MoneyEntry,
  corrected: ReadonlySet<number>,
  terms: MoneyTerms | null,
  { claimBy, lateBy }: { readonly claimBy: LocalDate | null; readonly lateBy: LocalDate | null },
): LineFate => {
  if (corrected.has(entry.number)) return 'corrected';
  if (entry.chargedShare === 0 || terms === null) return 'own';
  if (entry.evidence === '') return 'unproven';
  if (claimBy === null || entry.date <= claimBy) return 'claimed';
  return lateBy !== null && entry.date <= lateBy ? 'late' : 'too-late';
};

const byKind = (lines: readonly AccountLine[]): Account['byKind'] => {
  const kinds = new Map<EntryKind, { total: number; charged: number; own: number }>();
  for (const { entry, fate, charged, own } of lines) {
    if (fate === 'corrected') continue;
    const before = kinds.get(entry.kind) ?? { total: 0, charged: 0, own: 0 };
    kinds.set(entry.kind, { total: before.total + charged + own, charged: before.charged + charged, own: before.own + own });
  }
  return [...kinds].map(([kind, sums]) => ({ kind, ...sums }));
};

const byClause = (lines: readonly AccountLine[]): Account['byClause'] => {
  const clauses = new Map<string, number>();
  for (const { entry, charged, fate } of lines)
    if (fate === 'claimed' || fate === 'late') clauses.set(entry.clause!, (clauses.get(entry.clause!) ?? 0) + charged);
  return [...clauses].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([clause, charged]) => ({ clause, charged }));
};
