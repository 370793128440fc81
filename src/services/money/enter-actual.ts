import type { Problem } from '#shared/contract/failure.ts';
import { priceUnits, sumOf, type MoneyEntry, type NewEntry, type PriceBook } from '#shared/vocabulary/money.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import { priceOn } from '#services/money/prices-on.ts';
import { moneyOf } from '#services/money/records.ts';
import type { Service } from '#services/needs.ts';
import { zoneLetters } from '#services/zone-letters.ts';

/** Largest sum of one line, in minor units: far above any field, far below what whole numbers can hold. */
const mostSum = 1e12;

/** Adds a line of cost to a booking. Lines are never changed: a correction is a new line that names the old one. */
export const enterActual: Service<'money/enter-actual'> = ({ store, now }, { entry }) =>
  store.write(async (contents) => {
    const booking = await contents.bookings.find(entry.bookingId);
    if (!booking) return notFound('booking', entry.bookingId);
    const venue = await contents.venues.find(booking.venueId);
    if (!venue) return notFound('venue', booking.venueId);
    const before = await contents.money.entries(booking.id);
    const terms = await contents.money.terms(booking.id);
    const problems: Problem[] = [];
    const refuse = (field: string, reason: string): void => void problems.push({ field: `entry.${field}`, reason });
    const price = entry.price ?? bookPrice(entry, await contents.money.priceBook(venue.id), venue);
    if (price === null) refuse('price', 'must be given: neither the price book nor the venue has one for that day');
    const sum = sumOf(entry.quantity, price ?? 0);
    if (sum > mostSum) refuse('quantity', `makes a sum above ${mostSum} of the smallest unit`);
    if (entry.clause !== null && !terms?.clauses.some((clause) => clause.number === entry.clause))
      refuse('clause', 'is not among the terms of this booking');
    if (entry.zone !== null && !zoneLetters(venue, booking).has(entry.zone))
      refuse('zone', 'is no zone of the booking or the venue');
    if (entry.corrects !== null) {
      if (!before.some((line) => line.number === entry.corrects)) refuse('corrects', 'names no line of this booking');
      else if (before.some((line) => line.corrects === entry.corrects))
        refuse('corrects', 'names a line that is put right already: correct the later one');
    }
    if (problems.length > 0) return invalid(problems);
    const line: MoneyEntry = {
      ...entry,
      price: price!,
      sum,
      number: before.length + 1,
      enteredAt: new Date(now()).toISOString(),
      currency: venue.rules.currency,
    };
    await contents.money.enter(venue.id, line);
    return done(await moneyOf(contents, venue, booking));
  });

/** The price of the day where the line is counted in the unit prices are for. */
const bookPrice = (entry: NewEntry, book: PriceBook | null, venue: Venue): number | null =>
  entry.kind === 'other' || entry.unit !== priceUnits[entry.kind]
    ? null
    : (priceOn({ kind: entry.kind, of: null, cut: null }, entry.date, book, venue)?.price ?? null);
