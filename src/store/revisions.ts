import type { Transaction } from 'kysely';
import type { Stored } from '#store/store.ts';
import type { Tables } from '#store/tables.ts';

export type Work = Transaction<Tables>;

/** Tables whose rows carry a revision. */
export type RevisedTable = 'venues' | 'fixtures' | 'bookings' | 'price_books' | 'money_terms';

/** The revision in the file; null when there is no such row. */
export const standingRevision = async (work: Work, table: RevisedTable, id: string): Promise<number | null> => {
  const row = await work.selectFrom(table).select('revision').where('id', '=', id).executeTakeFirst();
  return row?.revision ?? null;
};

/**
 * Whether a change that names `revision` may go through. Null when it may. Revision 0 means something new: it is stale when the id is
 * taken. Nothing can come in between, because the transaction holds the write lock.
 */
export const refusal = (named: number, standing: number | null): Exclude<Stored<never>, { outcome: 'stored' }> | null => {
  if (named === (standing ?? 0)) return null;
  return standing === null ? { outcome: 'missing' } : { outcome: 'stale', standing };
};

/** Removes a row when the named revision is the standing one. */
export const removeRow = async (work: Work, table: RevisedTable, id: string, revision: number): Promise<Stored<null>> => {
  const standing = await standingRevision(work, table, id);
  if (standing === null) return { outcome: 'missing' };
  if (standing !== revision) return { outcome: 'stale', standing };
  await work.deleteFrom(table).where('id', '=', id).execute();
  return { outcome: 'stored', value: null };
};
