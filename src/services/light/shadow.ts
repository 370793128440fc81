import { toEpoch } from '#shared/calendar/local-time.ts';
import { layCells } from '#engine/ground/cells.ts';
import { shadowAt, shadowPieces } from '#engine/stands/shadow.ts';
import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const shadowOfHour: Service<'light/shadow'> = async ({ store }, { venueId, at }) => {
  const venue = await store.read((contents) => contents.venues.find(venueId));
  if (!venue) return notFound('venue', venueId);
  const cells = layCells(venue.field.outline, 2);
  const shadow = shadowAt(cells, venue.field, venue.stands, venue.place, toEpoch(at, venue.place.timeZone));
  return done({
    altitude: shadow.altitude,
    azimuth: shadow.azimuth,
    size: cells.size,
    x: [...cells.x],
    y: [...cells.y],
    lit: Array.from(shadow.pass, (share) => Math.min(1, Math.max(0, share))),
    pieces: [...shadowPieces(venue.stands, venue.field.bearing, shadow.altitude, shadow.azimuth)],
  });
};
