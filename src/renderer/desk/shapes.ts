import { moveRing, type Move } from '#shared/geometry/moving.ts';
import type { DrawnShape, GroundPart } from '#shared/geometry/geojson.ts';
import type { Booking, EventZone, ZoneUse } from '#shared/vocabulary/booking.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import { freeLetter } from './booking-shapes.ts';
import type { Ground } from './ground.ts';

/** Everything on the plan that has an outline to draw. */
export interface Plot {
  readonly booking: Booking | null;
  readonly ground: Ground;
}

/** Names one shape: a footprint by its letter, a standing zone or a stand by its id, the field by itself. */
export interface ShapeKey {
  readonly part: GroundPart;
  readonly id: string;
}
export interface Shape extends DrawnShape {
  readonly key: ShapeKey;
}

export const isSame = (one: ShapeKey | null, other: ShapeKey | null): boolean =>
  one?.part === other?.part && one?.id === other?.id;

/** Whose shapes are drawn: the event's footprints, or the ground of the venue. */
export type DrawnOn = 'event' | 'venue';

export const shapesOf = ({ booking, ground }: Plot, on: DrawnOn): readonly Shape[] =>
  on === 'event'
    ? (booking?.zones ?? []).map((zone) => ({ ...zone, part: 'footprint', key: { part: 'footprint', id: zone.letter } }))
    : [
        ...ground.zones.map(({ id, ...zone }): Shape => ({
          ...zone,
          use: null,
          part: 'standing-zone',
          key: { part: 'standing-zone', id },
        })),
        ...ground.stands.map(({ id, name, outline }): Shape => ({
          name,
          outline,
          letter: null,
          use: null,
          part: 'stand',
          key: { part: 'stand', id },
        })),
        {
          name: 'Edge of the turf',
          outline: ground.outline,
          letter: null,
          use: null,
          part: 'field',
          key: { part: 'field', id: 'field' },
        },
      ];

export const shapeOf = (plot: Plot, key: ShapeKey): Shape | undefined =>
  shapesOf(plot, key.part === 'footprint' ? 'event' : 'venue').find((shape) => isSame(shape.key, key));

type Zone = Ground['zones'][number];
type Stand = Ground['stands'][number];

/** The plot with one shape changed; each kind by its own way. */
const changed = (
  plot: Plot,
  { part, id }: ShapeKey,
  how: {
    footprint: (zone: EventZone) => EventZone;
    zone: (zone: Zone) => Zone;
    stand: (stand: Stand) => Stand;
    field: (ground: Ground) => Ground;
  },
): Plot => {
  const { booking, ground } = plot;
  const one = <Item>(items: readonly Item[], is: (item: Item) => boolean, next: (item: Item) => Item): readonly Item[] =>
    items.map((item) => (is(item) ? next(item) : item));
  switch (part) {
    case 'footprint':
      return booking
        ? { ground, booking: { ...booking, zones: one(booking.zones, (zone) => zone.letter === id, how.footprint) } }
        : plot;
    case 'standing-zone':
      return { booking, ground: { ...ground, zones: one(ground.zones, (zone) => zone.id === id, how.zone) } };
    case 'stand':
      return { booking, ground: { ...ground, stands: one(ground.stands, (stand) => stand.id === id, how.stand) } };
    case 'field':
      return { booking, ground: how.field(ground) };
  }
};

export const withOutline = (plot: Plot, key: ShapeKey, outline: Polygon): Plot => {
  const to = <Item extends { readonly outline: Polygon }>(item: Item): Item => ({ ...item, outline });
  return changed(plot, key, { footprint: to, zone: to, stand: to, field: to });
};

export const withName = (plot: Plot, key: ShapeKey, name: string): Plot => {
  const to = <Item extends { readonly name: string }>(item: Item): Item => ({ ...item, name });
  return changed(plot, key, { footprint: to, zone: to, stand: to, field: (ground) => ground });
};

export const withUse = (plot: Plot, key: ShapeKey, use: ZoneUse): Plot =>
  changed(plot, key, {
    footprint: (zone) => ({ ...zone, use }),
    zone: (zone) => zone,
    stand: (stand) => stand,
    field: (ground) => ground,
  });

/** m above the field at the outline of a stand. */
export const withHeight = (plot: Plot, key: ShapeKey, height: number): Plot =>
  changed(plot, key, {
    footprint: (zone) => zone,
    zone: (zone) => zone,
    stand: (stand) => ({ ...stand, height }),
    field: (ground) => ground,
  });

const standMoved = (stand: Stand, move: Move): Stand => ({
  ...stand,
  outline: moveRing(stand.outline, move),
  tiers: stand.tiers.map((tier) => ({ ...tier, outline: moveRing(tier.outline, move) })),
  roof: stand.roof && { ...stand.roof, outline: moveRing(stand.roof.outline, move) },
});

/** Moved or turned with everything that belongs to it: a stand takes its tiers and its roof along. */
export const withMove = (plot: Plot, key: ShapeKey, move: Move): Plot => {
  const to = <Item extends { readonly outline: Polygon }>(item: Item): Item => ({
    ...item,
    outline: moveRing(item.outline, move),
  });
  return changed(plot, key, { footprint: to, zone: to, stand: (stand) => standMoved(stand, move), field: to });
};

/** Without a shape, and without what was booked on it. The edge of the turf cannot go. */
export const without = (plot: Plot, { part, id }: ShapeKey): Plot => {
  const { booking, ground } = plot;
  const others = <Item extends { readonly zone: string }>(items: readonly Item[]): readonly Item[] =>
    items.filter((item) => item.zone !== id);
  switch (part) {
    case 'footprint':
      return !booking
        ? plot
        : {
            ground,
            booking: {
              ...booking,
              zones: booking.zones.filter((zone) => zone.letter !== id),
              layers: others(booking.layers),
              crowds: others(booking.crowds),
              traffic: others(booking.traffic),
              incidents: others(booking.incidents),
            },
          };
    case 'standing-zone':
      return { booking, ground: { ...ground, zones: ground.zones.filter((zone) => zone.id !== id) } };
    case 'stand':
      return { booking, ground: { ...ground, stands: ground.stands.filter((stand) => stand.id !== id) } };
    case 'field':
      return plot;
  }
};

/** A plot with a shape more, and how that one is named. */
export interface Added {
  readonly plot: Plot;
  readonly key: ShapeKey;
}

const freeId = (stem: string, taken: readonly string[]): string => {
  let number = 1;
  while (taken.includes(`${stem}-${number}`)) number++;
  return `${stem}-${number}`;
};

const lettersOf = ({ booking, ground }: Plot): readonly string[] =>
  [...(booking?.zones ?? []), ...ground.zones].map((zone) => zone.letter);

/** m above the field of a stand that is only drawn yet. */
const usualHeight = 8;

/** A new shape. A letter that is taken or missing gives way to a free one; null where there is no booking to add a footprint to. */
export const withNew = (plot: Plot, { part, letter, name, use, outline }: DrawnShape): Added | null => {
  const { booking, ground } = plot;
  const taken = lettersOf(plot);
  const own = letter !== null && /^[A-Z][A-Z0-9]?$/.test(letter) && !taken.includes(letter) ? letter : freeLetter(taken);
  switch (part) {
    case 'footprint':
      return booking
        ? {
            plot: {
              ground,
              booking: { ...booking, zones: [...booking.zones, { letter: own, name, use: use ?? 'other', outline }] },
            },
            key: { part, id: own },
          }
        : null;
    case 'standing-zone': {
      const id = freeId(
        'zone',
        ground.zones.map((zone) => zone.id),
      );
      return {
        plot: { booking, ground: { ...ground, zones: [...ground.zones, { id, letter: own, name, outline }] } },
        key: { part, id },
      };
    }
    case 'stand': {
      const id = freeId(
        'stand',
        ground.stands.map((stand) => stand.id),
      );
      const stand: Stand = { id, name, outline, height: usualHeight, tiers: [], roof: null };
      return { plot: { booking, ground: { ...ground, stands: [...ground.stands, stand] } }, key: { part, id } };
    }
    case 'field':
      return { plot: { booking, ground: { ...ground, outline } }, key: { part, id: 'field' } };
  }
};

/** A second one of the same, moved off the first, with the floors, people and machines that are booked on it. */
export const withCopy = (plot: Plot, key: ShapeKey, move: Move): Added | null => {
  const shape = shapeOf(plot, key);
  if (!shape || key.part === 'field') return null;
  const added = withNew(plot, {
    ...shape,
    letter: null,
    name: `${shape.name} copy`.slice(0, 120),
    outline: moveRing(shape.outline, move),
  });
  if (!added) return null;
  const { booking, ground } = added.plot;
  if (key.part === 'footprint' && booking) {
    const doubled = <Item extends { readonly zone: string }>(items: readonly Item[]): readonly Item[] => [
      ...items,
      ...items.filter((item) => item.zone === key.id).map((item) => ({ ...item, zone: added.key.id })),
    ];
    const { layers, crowds, traffic } = booking;
    const more = { layers: doubled(layers), crowds: doubled(crowds), traffic: doubled(traffic) };
    return { key: added.key, plot: { ground, booking: { ...booking, ...more } } };
  }
  if (key.part === 'stand') {
    const source = ground.stands.find((stand) => stand.id === key.id)!;
    const stands = ground.stands.map((stand) =>
      stand.id === added.key.id ? { ...standMoved(source, move), id: stand.id, name: stand.name } : stand,
    );
    return { key: added.key, plot: { booking, ground: { ...ground, stands } } };
  }
  return added;
};

/** A zone one place earlier or later in its list: ground that two share belongs to the one listed first. */
export const withPlace = (plot: Plot, { part, id }: ShapeKey, step: 1 | -1): Plot => {
  const { booking, ground } = plot;
  const swapped = <Item>(items: readonly Item[], at: number): readonly Item[] =>
    at < 0 || at + step < 0 || at + step >= items.length
      ? items
      : items.map((item, index) => (index === at ? items[at + step]! : index === at + step ? items[at]! : item));
  if (part === 'footprint' && booking)
    return {
      ground,
      booking: {
        ...booking,
        zones: swapped(
          booking.zones,
          booking.zones.findIndex((zone) => zone.letter === id),
        ),
      },
    };
  if (part === 'standing-zone')
    return {
      booking,
      ground: {
        ...ground,
        zones: swapped(
          ground.zones,
          ground.zones.findIndex((zone) => zone.id === id),
        ),
      },
    };
  return plot;
};
