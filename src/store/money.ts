import { MoneyEntry, MoneyTerms, PriceBook } from '#shared/vocabulary/money.ts';
import { refusal, standingRevision, type Work } from '#store/revisions.ts';
import type { Contents } from '#store/store.ts';

export const moneyIn = (work: Work): Contents['money'] => ({
  priceBook: async (venueId) => {
    const row = await work.selectFrom('price_books').select('document').where('id', '=', venueId).executeTakeFirst();
    return row ? PriceBook.parse(JSON.parse(row.document)) : null;
  },

  savePriceBook: async (book) => {
    const refused = refusal(book.revision, await standingRevision(work, 'price_books', book.venueId));
    if (refused) return refused;
    const next: PriceBook = { ...book, revision: book.revision + 1 };
    const row = { id: next.venueId, revision: next.revision, document: JSON.stringify(next) };
    await work
      .insertInto('price_books')
      .values(row)
      .onConflict((taken) => taken.column('id').doUpdateSet(row))
      .execute();
    return { outcome: 'stored', value: next };
  },

  terms: async (bookingId) => {
    const row = await work.selectFrom('money_terms').select('document').where('id', '=', bookingId).executeTakeFirst();
    return row ? MoneyTerms.parse(JSON.parse(row.document)) : null;
  },

  saveTerms: async (venueId, terms) => {
    const refused = refusal(terms.revision, await standingRevision(work, 'money_terms', terms.bookingId));
    if (refused) return refused;
    const next: MoneyTerms = { ...terms, revision: terms.revision + 1 };
    const row = { id: next.bookingId, venue_id: venueId, revision: next.revision, document: JSON.stringify(next) };
    await work
      .insertInto('money_terms')
      .values(row)
      .onConflict((taken) => taken.column('id').doUpdateSet(row))
      .execute();
    return { outcome: 'stored', value: next };
  },

  entries: async (bookingId) => {
    const rows = work.selectFrom('money_entries').select('document').where('booking_id', '=', bookingId);
    return (await rows.orderBy('number').execute()).map((row) => MoneyEntry.parse(JSON.parse(row.document)));
  },

  enter: async (venueId, entry) => {
    await work
      .insertInto('money_entries')
      .values({
        booking_id: entry.bookingId,
        number: entry.number,
        venue_id: venueId,
        sum_minor: entry.sum,
        document: JSON.stringify(entry),
      })
      .execute();
  },
});
