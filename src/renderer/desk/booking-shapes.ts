import { addDays, dateOf, shiftDays } from '#shared/calendar/local-time.ts';
import type { Booking, Layer } from '#shared/vocabulary/booking.ts';
import type { Fixture } from '#shared/vocabulary/venue.ts';

/** First and last moment of a booking; null where nothing happens in it. */
export const spanOf = (booking: Booking): { readonly first: string; readonly last: string } | null => {
  const moments = [
    ...booking.layers.flatMap((layer) => [layer.on, layer.off]),
    ...booking.crowds.flatMap((crowd) => [crowd.from, crowd.until]),
    ...booking.traffic.map((pass) => pass.at),
  ].toSorted();
  return moments.length === 0 ? null : { first: moments[0]!, last: moments.at(-1)! };
};

/** The first home date after the booking is over, or the last there is. */
export const nextHome = (booking: Booking | null, fixtures: readonly Fixture[]): Fixture | null => {
  const over = (booking && spanOf(booking)?.last) ?? '';
  const homes = homeDates(fixtures);
  return homes.find((home) => home.start > over) ?? homes.at(-1) ?? null;
};

export const homeDates = (fixtures: readonly Fixture[]): readonly Fixture[] =>
  fixtures.filter((fixture) => fixture.kind === 'home-date').toSorted((a, b) => (a.start < b.start ? -1 : 1));

/** The booking moved by whole days; every hour on the wall clock stays. */
export const moved = (booking: Booking, days: number): Booking => ({
  ...booking,
  layers: booking.layers.map((layer) => ({
    ...layer,
    on: shiftDays(layer.on, days),
    off: shiftDays(layer.off, days),
    care: layer.care.map((care) => ({ ...care, from: shiftDays(care.from, days), until: shiftDays(care.until, days) })),
  })),
  crowds: booking.crowds.map((crowd) => ({ ...crowd, from: shiftDays(crowd.from, days), until: shiftDays(crowd.until, days) })),
  traffic: booking.traffic.map((pass) => ({ ...pass, at: shiftDays(pass.at, days) })),
  incidents: booking.incidents.map((incident) => ({
    ...incident,
    at: shiftDays(incident.at, days),
    until: incident.until === null ? null : shiftDays(incident.until, days),
  })),
});

/** The last layer of each zone. */
const lastLayers = (booking: Booking): ReadonlySet<Layer> =>
  new Set(
    booking.layers.filter((layer) =>
      booking.layers.every((other) => other === layer || other.zone !== layer.zone || other.off <= layer.off),
    ),
  );

/** The booking with the last covering of every zone lying some days longer, or shorter; none shorter than it began. */
export const stretched = (booking: Booking, days: number): Booking => {
  const last = lastLayers(booking);
  return {
    ...booking,
    layers: booking.layers.map((layer) => {
      const off = shiftDays(layer.off, days);
      return last.has(layer) && off > layer.on ? { ...layer, off } : layer;
    }),
  };
};

/** The same for one zone. */
export const zoneStretched = (booking: Booking, zone: string, days: number): Booking => {
  const last = lastLayers(booking);
  return {
    ...booking,
    layers: booking.layers.map((layer) => {
      const off = shiftDays(layer.off, days);
      return layer.zone === zone && last.has(layer) && off > layer.on ? { ...layer, off } : layer;
    }),
  };
};

export const withLayer = (booking: Booking, index: number, changed: Partial<Layer>): Booking => ({
  ...booking,
  layers: booking.layers.map((layer, at) => (at === index ? { ...layer, ...changed } : layer)),
});

/** Zones whose floor is the person's choice: those with people on them. */
export const floorZones = (booking: Booking): ReadonlySet<string> =>
  new Set(
    booking.zones.filter((zone) => ['seating', 'standing', 'pit', 'catering'].includes(zone.use)).map((zone) => zone.letter),
  );

/** The booking with one covering on every floor zone. */
export const floored = (booking: Booking, covering: string): Booking => {
  const floor = floorZones(booking);
  return { ...booking, layers: booking.layers.map((layer) => (floor.has(layer.zone) ? { ...layer, covering } : layer)) };
};

/** A letter that no zone of the event or of the venue has yet. */
export const freeLetter = (taken: readonly string[]): string => {
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
  return (
    [...letters].find((letter) => !taken.includes(letter)) ??
    [...letters].map((letter) => `${letter}2`).find((letter) => !taken.includes(letter)) ??
    'Z9'
  );
};

/** How many calendar days a moment lies from a day. */
export const onDay = (day: string, after: number, clock: string): string => `${addDays(dateOf(`${day}T00:00`), after)}T${clock}`;
