import { describe, expect, test } from 'vitest';
import { rectangleOf, shift } from '#shared/geometry/moving.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { Booking } from '#shared/vocabulary/booking.ts';
import { Venue } from '#shared/vocabulary/venue.ts';
import { presetBooking } from '../../src/renderer/desk/event-presets.ts';
import { groundOf, withGround } from '../../src/renderer/desk/ground.ts';
import {
  shapesOf,
  withCopy,
  withMove,
  withNew,
  withOutline,
  without,
  withPlace,
  type Plot,
} from '../../src/renderer/desk/shapes.ts';
import { groundSums } from '../../src/renderer/plan/ground-sums.ts';
import document from '../../resources/sample/sample-venue.json' with { type: 'json' };

const venue = Venue.parse(document.venue);
const booking = presetBooking('concert', venue, '2027-07-17', 'Concert', 'concert');
const plot: Plot = { booking, ground: groundOf(venue) };
const stage = { part: 'footprint', id: 'A' } as const;
const roofed = { part: 'stand', id: venue.stands.find((stand) => stand.roof)!.id } as const;

describe('shapes of the plan', () => {
  test('a copied footprint has a letter of its own and all that is booked on the first', () => {
    const { plot: more, key } = withCopy(plot, stage, shift(3, -3))!;
    const of = (zone: string) => more.booking!.layers.filter((layer) => layer.zone === zone);
    expect(key.id).not.toBe('A');
    expect(of(key.id)).toEqual(of('A').map((layer) => ({ ...layer, zone: key.id })));
    expect(Booking.safeParse(more.booking).success).toBe(true);
    expect(new Set(more.booking!.zones.map((zone) => zone.letter)).size).toBe(booking.zones.length + 1);
  });

  test('a removed footprint takes its floors, people and machines along', () => {
    const left = without(plot, { part: 'footprint', id: 'H' }).booking!;
    for (const list of [left.layers, left.crowds, left.traffic]) expect(list.some((one) => one.zone === 'H')).toBe(false);
    expect(left.zones).toHaveLength(booking.zones.length - 1);
  });

  test('a stand takes its tiers and its roof along, moved or copied', () => {
    const [before, after] = [plot, withMove(plot, roofed, shift(10, -4))].map(({ ground }) =>
      ground.stands.find((stand) => stand.id === roofed.id)!,
    );
    const [x, y] = before!.roof!.outline[0]!;
    expect(after!.roof!.outline[0]).toEqual([x + 10, y - 4]);
    expect(after!.tiers[0]!.outline[0]).toEqual(before!.tiers[0]!.outline[0]!.map((value, axis) => value + [10, -4][axis]!));
    const { plot: more, key } = withCopy(plot, roofed, shift(1, 1))!;
    expect(more.ground.stands.find((stand) => stand.id === key.id)!.tiers).toHaveLength(before!.tiers.length);
    expect(Venue.safeParse(withGround(venue, more.ground)).success).toBe(true);
  });

  test('the edge of the turf can be reshaped and neither copied nor removed', () => {
    const field = { part: 'field', id: 'field' } as const;
    expect(withOutline(plot, field, rectangleOf([-30, -50], [30, 50])).ground.outline).toHaveLength(4);
    expect(without(plot, field)).toBe(plot);
    expect(withCopy(plot, field, shift(1, 1))).toBeNull();
  });

  test('a footprint needs a booking; a letter that is taken gives way', () => {
    const drawn = { part: 'footprint', letter: 'A', name: 'Tower', use: 'tower', outline: rectangleOf([0, 0], [3, 3]) } as const;
    expect(withNew({ ...plot, booking: null }, drawn)).toBeNull();
    const added = withNew(plot, drawn)!;
    expect(added.key.id).not.toBe('A');
    expect(shapesOf(added.plot, 'event').at(-1)!.use).toBe('tower');
  });

  test('the first and the last stay where they are when they cannot go further', () => {
    expect(withPlace(plot, stage, -1).booking!.zones).toEqual(booking.zones);
    expect(
      withPlace(plot, stage, 1)
        .booking!.zones.slice(0, 2)
        .map((zone) => zone.letter),
    ).toEqual(['B', 'A']);
  });

  test('an unstored ground is the stored one with what was drawn, and nothing else', () => {
    expect(withGround(venue, groundOf(venue))).toEqual(venue);
  });
});

describe('sums of ground', () => {
  const turf = rectangleOf([-10, -10], [10, 10]);
  const zone = (letter: string, from: readonly [number, number], to: readonly [number, number]) => ({
    letter,
    name: letter,
    outline: rectangleOf(from, to),
  });

  test('shared ground belongs to the one listed first; what lies beside the turf is counted apart', () => {
    const [a, b] = groundSums([zone('A', [-5, 5], [5, 15]), zone('B', [-5, 0], [5, 10])], turf);
    expect(a).toMatchObject({ drawn: 100, turf: 50, beside: 50 });
    expect(b).toMatchObject({ drawn: 100, turf: 50, beside: 0 });
  });

  test('a shape around another has its ground without a hole, and one wholly under others has none', () => {
    const [, around, under] = groundSums(
      [zone('A', [-2, -2], [2, 2]), zone('B', [-6, -6], [6, 6]), zone('C', [-1, -1], [5, 5])],
      turf,
    );
    expect(around!.turf).toBeCloseTo(144 - 16, 9);
    expect(under!.turf).toBe(0);
  });

  test('all turf of the sample concert adds up to no more than the field', () => {
    const sums = groundSums(booking.zones, venue.field.outline);
    const turfOfAll = sums.reduce((sum, one) => sum + one.turf, 0);
    expect(turfOfAll).toBeGreaterThan(0);
    expect(turfOfAll).toBeLessThanOrEqual(polygonArea(venue.field.outline) + 1e-6);
  });
});
