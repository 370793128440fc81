import type { Booking, EventZone } from '#shared/vocabulary/booking.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { assignZones, type Cells } from '#engine/ground/cells.ts';

/** A part of the turf that a forecast speaks of: a zone of the event, a standing zone of the venue, or the rest. */
export interface ForecastZone {
  readonly letter: string;
  readonly name: string;
  readonly origin: 'event' | 'venue' | 'rest';
  readonly use: EventZone['use'] | null;
  readonly outlines: readonly Polygon[];
}

export interface ZonedCells {
  readonly zones: readonly ForecastZone[];
  /** Index into `zones` for every cell. */
  readonly zoneOf: Int16Array;
}

/**
 * Shares the turf out, every cell to one zone: the event's zones in their order, then the venue's standing zones, then the rest.
 * Zones that get no turf (a stage wholly on the track) are left out, so that zones always add to the field.
 */
export const zoneCells = (cells: Cells, venue: Venue, booking: Booking | null): ZonedCells => {
  const taken = new Set(booking?.zones.map((zone) => zone.letter));
  const all: ForecastZone[] = [
    ...(booking?.zones ?? []).map((zone): ForecastZone => ({
      letter: zone.letter,
      name: zone.name,
      origin: 'event',
      use: zone.use,
      outlines: [zone.outline],
    })),
    ...venue.zones.map((zone): ForecastZone => ({
      letter: free(zone.letter, taken),
      name: zone.name,
      origin: 'venue',
      use: null,
      outlines: [zone.outline],
    })),
    { letter: free('R', taken), name: 'Rest of the turf', origin: 'rest', use: null, outlines: [venue.field.outline] },
  ];
  const first = assignZones(
    cells,
    all.map((zone) => zone.outlines[0]!),
  );
  const rest = all.length - 1;
  for (let cell = 0; cell < first.length; cell++) if (first[cell]! < 0) first[cell] = rest;
  const used = all.map((_, index) => first.includes(index));
  const renumbered = Int16Array.from(all, (_, index) => used.slice(0, index).filter(Boolean).length);
  return { zones: all.filter((_, index) => used[index]), zoneOf: first.map((index) => renumbered[index]!) };
};

/** A letter no zone has yet: the wanted one, or the same with a digit behind it. */
const free = (letter: string, taken: Set<string>): string => {
  let candidate = letter;
  for (let n = 1; taken.has(candidate); n++) candidate = `${letter[0]!}${n}`;
  taken.add(candidate);
  return candidate;
};
