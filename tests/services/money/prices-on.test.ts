import { describe, expect, it } from 'vitest';
import type { PriceBook, PriceLine } from '#shared/vocabulary/money.ts';
import { priceOn } from '#services/money/prices-on.ts';
import { smallVenue } from '#tests/contract/small-venue.ts';

const labour = { kind: 'labour', of: null, cut: null } as const;
const line = (changes: Partial<PriceLine>): PriceLine => ({
  kind: 'labour',
  of: null,
  cut: null,
  price: 1,
  from: '2027-01-01',
  until: null,
  origin: '',
  ...changes,
});
const book = (...lines: readonly PriceLine[]): PriceBook => ({ venueId: smallVenue.id, revision: 1, lines });

describe('the price on a day', () => {
  it('holds from its first to its last day, both included', () => {
    const prices = book(
      line({ price: 4100, from: '2027-01-01', until: '2027-06-30' }),
      line({ price: 4300, from: '2027-07-01', until: '2027-12-31' }),
    );
    const on = (date: string) => priceOn(labour, date, prices, smallVenue)?.price;
    expect(on('2027-01-01')).toBe(4100);
    expect(on('2027-06-30')).toBe(4100);
    expect(on('2027-07-01')).toBe(4300);
    expect(on('2027-12-31')).toBe(4300);
  });
  it('is the venue’s own where the book is silent that day', () => {
    const before = priceOn(labour, '2026-12-31', book(line({ price: 4100 })), smallVenue);
    expect(before).toEqual({ price: smallVenue.workforce.hourPrice, origin: 'venue' });
    expect(priceOn({ kind: 'sod', of: 'near-farm', cut: 'thick' }, '2027-07-01', null, smallVenue)?.price).toBe(1600);
    expect(priceOn({ kind: 'freight', of: 'near-farm', cut: null }, '2027-07-01', null, smallVenue)?.price).toBe(60000);
  });
  it('is the narrowest that fits', () => {
    const sod = { kind: 'sod', of: 'near-farm', cut: 'thick' } as const;
    const prices = book(
      line({ kind: 'sod', price: 1 }),
      line({ kind: 'sod', price: 2, cut: 'thick' }),
      line({ kind: 'sod', price: 3, of: 'near-farm' }),
      line({ kind: 'sod', price: 4, of: 'other-farm', cut: 'thick' }),
    );
    expect(priceOn(sod, '2027-07-01', prices, smallVenue)?.price).toBe(3);
    expect(priceOn({ ...sod, of: 'third-farm' }, '2027-07-01', prices, smallVenue)?.price).toBe(2);
  });
  it('is not made up', () => {
    expect(priceOn({ kind: 'overrun', of: null, cut: null }, '2027-07-01', book(), smallVenue)).toBeNull();
    expect(priceOn({ kind: 'carpet', of: null, cut: null }, '2027-07-01', null, smallVenue)).toBeNull();
  });
});
