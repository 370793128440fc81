import type { Problem } from '#shared/contract/failure.ts';
import { hoursBetween } from '#shared/calendar/local-time.ts';
import type { Booking, Crowd, Layer } from '#shared/vocabulary/booking.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { duplicates } from '#services/checks/findings.ts';
import { groundProblems } from '#services/checks/outline.ts';

/** h: a covering or a crowd longer than 120 days is a slip in a date. */
const longest = 120 * 24;
/** h from the first thing of a booking to the last. */
const longestBooking = 400 * 24;
/** people per m²: more do not fit, however many lines name them. */
const densest = 6;

export interface BookingContext {
  readonly venue: Venue;
  /** Ids of the covering and machine classes there are. */
  readonly coverings: ReadonlySet<string>;
  readonly vehicles: ReadonlySet<string>;
}

/** What is wrong with a booking beyond its shape. `field` is where it stands in the request. */
export const checkBooking = (
  booking: Booking,
  { venue, coverings, vehicles }: BookingContext,
  field: string,
): readonly Problem[] => [
  ...booking.zones.flatMap((zone, index) => groundProblems(zone.outline, venue.field, `${field}.zones.${index}.outline`)),
  ...duplicates(
    booking.zones,
    (zone) => zone.letter,
    (index) => `${field}.zones.${index}.letter`,
    'letter',
  ),
  ...unknownZones(booking, field),
  ...unknownClasses(booking.layers, (layer) => layer.covering, coverings, `${field}.layers`, 'covering'),
  ...unknownClasses(booking.traffic, (pass) => pass.vehicle, vehicles, `${field}.traffic`, 'vehicle'),
  ...booking.layers.flatMap((layer, index) => layerProblems(layer, venue, `${field}.layers.${index}`)),
  ...layersAtOnce(booking.layers, `${field}.layers`),
  ...booking.crowds.flatMap((crowd, index) => tooLong(crowd.from, crowd.until, venue, `${field}.crowds.${index}.until`)),
  ...crowdsTooDense(booking.crowds, `${field}.crowds`),
  ...spanProblems(booking, venue, field),
];

const unknownZones = (booking: Booking, field: string): readonly Problem[] => {
  const letters = new Set(booking.zones.map((zone) => zone.letter));
  const named = { layers: booking.layers, crowds: booking.crowds, traffic: booking.traffic };
  return Object.entries(named).flatMap(([list, items]) =>
    items.flatMap(({ zone }, index) =>
      letters.has(zone) ? [] : [{ field: `${field}.${list}.${index}.zone`, reason: `the booking has no zone "${zone}"` }],
    ),
  );
};

const unknownClasses = <Item>(
  items: readonly Item[],
  idOf: (item: Item) => string,
  known: ReadonlySet<string>,
  field: string,
  what: 'covering' | 'vehicle',
): readonly Problem[] =>
  items.flatMap((item, index) =>
    known.has(idOf(item))
      ? []
      : [{ field: `${field}.${index}.${what}`, reason: `there is no ${what} "${idOf(item)}" in this workspace` }],
  );

const tooLong = (from: string, until: string, venue: Venue, field: string): readonly Problem[] => {
  const hours = hoursBetween(from, until, venue.place.timeZone);
  return hours > longest
    ? [{ field, reason: `is ${(hours / 24).toFixed(0)} days after its beginning; at most 120 days are taken` }]
    : [];
};

const layerProblems = (layer: Layer, venue: Venue, field: string): readonly Problem[] => [
  ...tooLong(layer.on, layer.off, venue, `${field}.off`),
  ...layer.care.flatMap((care, index) => [
    ...(care.from < layer.on ? [{ field: `${field}.care.${index}.from`, reason: 'is before the covering goes on' }] : []),
    ...(care.until > layer.off ? [{ field: `${field}.care.${index}.until`, reason: 'is after the covering comes off' }] : []),
  ]),
];

/** Two coverings cannot lie on one zone in the same hour; the one that ends when the other begins does not count. */
const layersAtOnce = (layers: readonly Layer[], field: string): readonly Problem[] =>
  layers.flatMap((layer, index) => {
    const earlier = layers
      .slice(0, index)
      .findIndex((other) => other.zone === layer.zone && other.on < layer.off && layer.on < other.off);
    if (earlier < 0) return [];
    return [{ field: `${field}.${index}.on`, reason: `lies on zone "${layer.zone}" in the same hours as layer ${earlier}` }];
  });

const crowdsTooDense = (crowds: readonly Crowd[], field: string): readonly Problem[] =>
  crowds.flatMap((crowd, index) => {
    const together = crowds.filter((other) => other.zone === crowd.zone && other.from <= crowd.from && crowd.from < other.until);
    const density = together.reduce((sum, other) => sum + other.density, 0);
    if (density <= densest + 1e-9) return [];
    return [
      {
        field: `${field}.${index}.density`,
        reason: `${density.toFixed(1)} people/m² stand on zone "${crowd.zone}" at ${crowd.from}; at most ${densest} are taken`,
      },
    ];
  });

/** The first and the last moment anything of a booking happens; null when nothing does. */
export const spanOf = (booking: Booking): { readonly first: string; readonly last: string } | null => {
  const moments = [
    ...booking.layers.flatMap((layer) => [layer.on, layer.off]),
    ...booking.crowds.flatMap((crowd) => [crowd.from, crowd.until]),
    ...booking.traffic.map((pass) => pass.at),
  ].toSorted();
  return moments.length === 0 ? null : { first: moments[0]!, last: moments.at(-1)! };
};

const spanProblems = (booking: Booking, venue: Venue, field: string): readonly Problem[] => {
  const span = spanOf(booking);
  if (!span) return [];
  const hours = hoursBetween(span.first, span.last, venue.place.timeZone);
  if (hours <= longestBooking) return [];
  return [
    {
      field,
      reason: `goes from ${span.first} to ${span.last}, ${(hours / 24).toFixed(0)} days; one booking takes at most 400 days`,
    },
  ];
};
