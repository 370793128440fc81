import { appendFileSync } from 'node:fs';

/** Whether the full form runs: `npm run test:faults -- --full`. */
export const full = process.env['FIELDBACK_FAULTS'] === 'full';

/** How often something is tried: a few times with every test, many times in the full form. */
export const tries = (short: number, long: number): number => (full ? long : short);

export interface Row {
  readonly kind: string;
  readonly tries: number;
  readonly survived: number;
  readonly lost: number;
  /** Figures beside the count, such as the slowest answer. */
  readonly note?: string;
}

/** One line of the table that the full form prints. */
export const enter = (row: Row): void => {
  const table = process.env['FIELDBACK_FAULTS_TABLE'];
  if (table !== undefined) appendFileSync(table, `${JSON.stringify(row)}\n`);
};
