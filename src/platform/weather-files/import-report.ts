import type { DatedWeatherDay } from '#engine/weather/weather-day.ts';
import { dateOf } from '#engine/weather/calendar-day.ts';

/** Something that was refused. Lines count from 1; line 0 is the file as a whole. */
export interface Refusal {
  readonly line: number;
  /** Name of the column as the file has it, null where the line as a whole is meant. */
  readonly column: string | null;
  readonly reason: string;
}

/** Missing values of one quantity that were filled in one way, on days that follow one another. */
export interface Filled {
  /** Line of the first of the days, or of the next line there is. */
  readonly line: number;
  readonly day: string;
  readonly through: string;
  readonly days: number;
  readonly quantity: string;
  readonly how: string;
}

/** Something left out without harm: a repeated line, a day before 1990. */
export interface Skipped {
  readonly line: number;
  readonly reason: string;
}

/** How a column was understood. */
export interface ColumnRead {
  readonly column: string;
  readonly quantity: string;
  readonly unit: string;
}

/**
 * What an import did. One refusal is enough for `ok` to be false and `days` to be empty: a file is taken in whole or not at all.
 * `refused` holds the first refusals in the order of the lines; `refusals` counts all.
 */
export interface WeatherImport {
  readonly ok: boolean;
  /** Lines of data that were read. */
  readonly read: number;
  readonly columns: readonly ColumnRead[];
  readonly filled: readonly Filled[];
  readonly skipped: readonly Skipped[];
  readonly refused: readonly Refusal[];
  readonly refusals: number;
  /** What a reader should know before trusting the days. */
  readonly cautions: readonly string[];
  readonly days: readonly DatedWeatherDay[];
}

const shown = 200;

/** Gathers the findings while a file is read. */
export interface Findings {
  readonly columns: ColumnRead[];
  readonly skipped: Skipped[];
  readonly refused: Refusal[];
  readonly cautions: string[];
  readonly filledDays: { line: number; number: number; quantity: string; how: string }[];
  read: number;
}

export const noFindings = (): Findings => ({ columns: [], skipped: [], refused: [], cautions: [], filledDays: [], read: 0 });

export const refuse = (findings: Findings, line: number, column: string | null, reason: string): void => {
  findings.refused.push({ line, column, reason });
};

/** Joins fillings of the same kind on days that follow one another. */
const joined = (findings: Findings): Filled[] => {
  const sorted = [...findings.filledDays].sort(
    (a, b) => a.quantity.localeCompare(b.quantity) || a.how.localeCompare(b.how) || a.number - b.number,
  );
  const runs: { line: number; first: number; last: number; quantity: string; how: string }[] = [];
  for (const { line, number, quantity, how } of sorted) {
    const run = runs.at(-1);
    if (run !== undefined && run.quantity === quantity && run.how === how && number === run.last + 1) run.last = number;
    else runs.push({ line, first: number, last: number, quantity, how });
  }
  return runs
    .sort((a, b) => a.first - b.first || a.quantity.localeCompare(b.quantity))
    .map(({ line, first, last, quantity, how }) => ({
      line,
      day: dateOf(first),
      through: dateOf(last),
      days: last - first + 1,
      quantity,
      how,
    }));
};

/** The report of what was found; the days are given only when nothing was refused. */
export const reportOf = (findings: Findings, days: readonly DatedWeatherDay[]): WeatherImport => {
  const ok = findings.refused.length === 0 && days.length > 0;
  if (findings.refused.length === 0 && days.length === 0) refuse(findings, 0, null, 'the file holds no days');
  return {
    ok,
    read: findings.read,
    columns: findings.columns,
    filled: joined(findings),
    skipped: findings.skipped,
    refused: [...findings.refused].sort((a, b) => a.line - b.line).slice(0, shown),
    refusals: findings.refused.length,
    cautions: findings.cautions,
    days: ok ? days : [],
  };
};
