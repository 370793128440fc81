import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hoursBetween } from '#shared/calendar/local-time.ts';
import { Booking } from '#shared/vocabulary/booking.ts';
import {
  floored,
  floorZones,
  freeLetter,
  moved,
  spanOf,
  stretched,
  zoneStretched,
} from '../../src/renderer/desk/booking-shapes.ts';
import sample from '../../resources/sample/sample-venue.json' with { type: 'json' };

const bookings = sample.bookings.map((booking) => Booking.parse(booking));
const anyBooking = fc.constantFrom(...bookings);
const days = fc.integer({ min: -40, max: 40 });

describe('moving and stretching a booking', () => {
  test('moving there and back changes nothing; the length in wall-clock hours stays', () =>
    fc.assert(
      fc.property(anyBooking, days, (booking, by) => {
        const there = moved(booking, by);
        expect(moved(there, -by)).toEqual(booking);
        there.layers.forEach((layer, index) =>
          expect(hoursBetween(layer.on, layer.off, 'UTC')).toBe(
            hoursBetween(booking.layers[index]!.on, booking.layers[index]!.off, 'UTC'),
          ),
        );
        expect(Booking.safeParse(there).success).toBe(true);
      }),
    ));

  test('stretching moves the last layer of every zone and no other, and never makes one end before it begins', () =>
    fc.assert(
      fc.property(anyBooking, days, (booking, by) => {
        const longer = stretched(booking, by);
        expect(Booking.safeParse(longer).success).toBe(true);
        longer.layers.forEach((layer, index) => {
          const before = booking.layers[index]!;
          const last = booking.layers.every((other) => other.zone !== before.zone || other.off <= before.off);
          if (!last) expect(layer).toEqual(before);
          else if (by > 0) expect(hoursBetween(before.off, layer.off, 'UTC')).toBe(24 * by);
        });
      }),
    ));

  test('one zone can be stretched alone', () => {
    const [concert] = bookings;
    const longer = zoneStretched(concert!, 'H', 1);
    expect(longer.layers.filter((layer, index) => layer !== concert!.layers[index])).toHaveLength(1);
    expect(spanOf(longer)).toEqual(spanOf(concert!));
  });

  test('a floor goes on the zones with people alone', () => {
    const [concert] = bookings;
    expect([...floorZones(concert!)]).toEqual(['D', 'G', 'H']);
    const changed = floored(concert!, 'opaque-tile');
    for (const [index, layer] of changed.layers.entries())
      expect(layer.covering).toBe(['D', 'G', 'H'].includes(layer.zone) ? 'opaque-tile' : concert!.layers[index]!.covering);
  });

  test('a new letter is one that nobody has', () => {
    expect(freeLetter(['A', 'B', 'D'])).toBe('C');
    expect(freeLetter([...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'])).toBe('A2');
  });
});
