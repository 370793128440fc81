import { daysBetween, hoursBetween } from '#shared/calendar/local-time.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';
import type { Venue, Zone } from '#shared/vocabulary/venue.ts';

/** A time in which a booking lies on a standing zone of the venue. */
export interface StackedCover {
  readonly zone: string;
  readonly booking: string;
  readonly name: string;
  readonly on: string;
  readonly off: string;
  /** Share of the standing zone that lies under it, 0–1. */
  readonly share: number;
}

/** Two bookings that cover the same ground within a few weeks. */
export interface Collision {
  readonly zone: string;
  readonly first: string;
  readonly second: string;
  /** d between the one being off and the other going on. */
  readonly apart: number;
}

/** d within which a second covering of the same ground is called a collision; our assumption. */
export const closeDays = 28;
/** Share of a standing zone that must lie under both. */
const closeShare = 0.1;

const inside = ([x, y]: Point, ring: Polygon): boolean =>
  ring.reduce((within, [x1, y1], at) => {
    const [x2, y2] = ring[(at + 1) % ring.length]!;
    return y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1 ? !within : within;
  }, false);

/** Points spread evenly over an outline, about a hundred to its box. */
const spread = (outline: Polygon): readonly Point[] => {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [left, bottom, right, top] = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const points: Point[] = [];
  for (let column = 0; column < 10; column++)
    for (let row = 0; row < 10; row++)
      points.push([left + ((column + 0.5) / 10) * (right - left), bottom + ((row + 0.5) / 10) * (top - bottom)]);
  return points.filter((point) => inside(point, outline));
};

/** The standing zones of the venue, or the whole field where it has none. */
export const groundOf = (venue: Venue): readonly Pick<Zone, 'letter' | 'name' | 'outline'>[] =>
  venue.zones.length > 0 ? venue.zones : [{ letter: '–', name: 'Whole field', outline: venue.field.outline }];

/** Which standing zones the bookings of a season cover, from when to when and how much of them. */
export const stackedCovers = (venue: Venue, bookings: readonly Booking[]): readonly StackedCover[] =>
  groundOf(venue).flatMap((ground) => {
    const points = spread(ground.outline);
    return bookings.flatMap((booking) =>
      booking.zones.flatMap((zone) => {
        const layers = booking.layers.filter((layer) => layer.zone === zone.letter);
        const share = points.filter((point) => inside(point, zone.outline)).length / Math.max(1, points.length);
        if (layers.length === 0 || share < 0.02) return [];
        const on = layers.map((layer) => layer.on).toSorted()[0]!;
        const off = layers
          .map((layer) => layer.off)
          .toSorted()
          .at(-1)!;
        return [{ zone: ground.letter, booking: booking.id, name: booking.name, on, off, share }];
      }),
    );
  });

/** Days under cover of each standing zone, weighted by the share that is covered. */
export const coveredDays = (covers: readonly StackedCover[], zone: string, timeZone: string): number =>
  covers
    .filter((cover) => cover.zone === zone)
    .reduce((sum, cover) => sum + (cover.share * hoursBetween(cover.on, cover.off, timeZone)) / 24, 0);

/** Pairs of bookings that come down on the same ground before it can have come back. */
export const collisionsOf = (covers: readonly StackedCover[]): readonly Collision[] => {
  const found = new Map<string, Collision>();
  for (const one of covers)
    for (const other of covers) {
      if (one.zone !== other.zone || one.booking === other.booking || one.on > other.on) continue;
      if (Math.min(one.share, other.share) < closeShare) continue;
      const apart = daysBetween(one.off.slice(0, 10), other.on.slice(0, 10));
      const key = `${one.zone} ${one.booking} ${other.booking}`;
      const known = found.get(key);
      if (apart < closeDays && (!known || apart < known.apart))
        found.set(key, { zone: one.zone, first: one.name, second: other.name, apart });
    }
  return [...found.values()];
};
