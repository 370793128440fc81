import type { Problem } from '#shared/contract/failure.ts';
import { hoursBetween } from '#shared/calendar/local-time.ts';
import type { Booking, Crowd, Incident, Layer } from '#shared/vocabulary/booking.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
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
  ...crowdsWithoutFloor(booking, `${field}.crowds`),
  ...booking.incidents.flatMap((incident, index) => incidentProblems(incident, booking, venue, `${field}.incidents.${index}`)),
  ...spanProblems(booking, venue, field),
];

const unknownZones = (booking: Booking, field: string): readonly Problem[] => {
  const letters = new Set(booking.zones.map((zone) => zone.letter));
  const named = { layers: booking.layers, crowds: booking.crowds, traffic: booking.traffic, incidents: booking.incidents };
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

/**
 * People stand on a floor. Where a zone is meant to stay bare (roped, stewarded), the covering `none` lies there and says so; a crowd in
 * hours without either is a slip in a date or in a zone's letter.
 */
const crowdsWithoutFloor = ({ crowds, layers }: Booking, field: string): readonly Problem[] =>
  crowds.flatMap((crowd, index) => {
    const bare = firstBare(crowd, layers);
    if (bare === null) return [];
    return [
      {
        field: `${field}.${index}.from`,
        reason:
          `people are on zone "${crowd.zone}" at ${bare}, when nothing lies there; ` +
          'lay a covering for those hours, or the covering "none" where the turf is meant to be bare',
      },
    ];
  });

/** The first moment of a crowd at which no layer lies on its zone; null where one always does. */
const firstBare = (crowd: Crowd, layers: readonly Layer[]): string | null => {
  const lying = layers
    .filter((layer) => layer.zone === crowd.zone && layer.off > crowd.from && layer.on < crowd.until)
    .toSorted((one, other) => (one.on < other.on ? -1 : 1));
  let until = crowd.from;
  for (const layer of lying) {
    if (layer.on > until) return until;
    if (layer.off > until) until = layer.off;
  }
  return until < crowd.until ? until : null;
};

/** An incident lies on its zone, and ice is gone within a winter. */
const incidentProblems = (incident: Incident, { zones }: Booking, venue: Venue, field: string): readonly Problem[] => {
  const zone = zones.find((one) => one.letter === incident.zone);
  const ground = zone ? polygonArea(zone.outline) : Infinity;
  return [
    ...(incident.area > ground * (1 + 1e-6)
      ? [
          {
            field: `${field}.area`,
            reason: `is ${incident.area} m², more than the ${ground.toFixed(1)} m² of zone "${incident.zone}"`,
          },
        ]
      : []),
    ...(incident.until === null ? [] : tooLong(incident.at, incident.until, venue, `${field}.until`)),
  ];
};

/** The first and the last moment anything of a booking happens; null when nothing does. */
export const spanOf = (booking: Booking): { readonly first: string; readonly last: string } | null => {
  const moments = [
    ...booking.layers.flatMap((layer) => [layer.on, layer.off]),
    ...booking.crowds.flatMap((crowd) => [crowd.from, crowd.until]),
    ...booking.traffic.map((pass) => pass.at),
    ...booking.incidents.flatMap((incident) => (incident.until === null ? [incident.at] : [incident.at, incident.until])),
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
