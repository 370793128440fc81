import type { Work } from '#store/revisions.ts';
import type { Classes } from '#store/store.ts';

/** Covering classes or machine classes: small lists, read whole. */
export const classesIn = <Value extends { readonly id: string; readonly name: string }>(
  work: Work,
  table: 'coverings' | 'vehicles',
  valueOf: (document: string) => Value,
): Classes<Value> => ({
  list: async () =>
    (await work.selectFrom(table).select('document').orderBy('name').orderBy('id').execute()).map((row) => valueOf(row.document)),

  save: async (value) => {
    const row = { id: value.id, name: value.name, document: JSON.stringify(value) };
    await work
      .insertInto(table)
      .values(row)
      .onConflict((taken) => taken.column('id').doUpdateSet(row))
      .execute();
  },
});
