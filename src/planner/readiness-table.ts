import { daysBetween } from '#shared/calendar/local-time.ts';
import type { ProgrammeKind, Readiness, RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { LocalDate } from '#shared/vocabulary/primitives.ts';

/** What a zone will be on the home date. */
export interface Outlook {
  readonly chance: number;
  readonly shortfall: number;
}

export interface ReadinessTable {
  /** Outlook when a programme ends on a day after another in the window before; null where the forecast says nothing. */
  at(zone: string, window: string, programme: ProgrammeKind, after: ProgrammeKind | null, day: LocalDate): Outlook | null;
  /** Whether the forecast says anything of a programme in a window. */
  knows(zone: string, window: string, programme: ProgrammeKind): boolean;
  /** Days the forecast covers for a programme, first and last; null where it says nothing. */
  days(zone: string, window: string, programme: ProgrammeKind, after: ProgrammeKind | null): Readiness | null;
}

/** The forecast by zone, window and programme. A row that names the programme before goes ahead of the one that does not. */
export const readinessTable = (problem: Pick<RecoveryProblem, 'readiness'>): ReadinessTable => {
  const key = (zone: string, window: string, programme: string, after: string | null): string =>
    `${zone}|${window}|${programme}|${after ?? ''}`;
  const rows = new Map(problem.readiness.map((row) => [key(row.zone, row.window, row.programme, row.after), row]));
  const known = new Set(problem.readiness.map((row) => key(row.zone, row.window, row.programme, null)));
  const days = (zone: string, window: string, programme: ProgrammeKind, after: ProgrammeKind | null): Readiness | null =>
    rows.get(key(zone, window, programme, after)) ?? rows.get(key(zone, window, programme, null)) ?? null;
  return {
    days,
    knows: (zone, window, programme) => known.has(key(zone, window, programme, null)),
    at(zone, window, programme, after, day) {
      const row = days(zone, window, programme, after);
      if (!row) return null;
      const index = Math.max(0, daysBetween(row.firstDay, day));
      return index < row.chance.length ? { chance: row.chance[index]!, shortfall: row.shortfall[index]! } : null;
    },
  };
};
