import { addDays } from '#shared/calendar/local-time.ts';
import type { Booking, Crowd, EventKind, Layer, Traffic, ZoneUse } from '#shared/vocabulary/booking.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import type { LocalDate } from '#shared/vocabulary/primitives.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { boundsOf } from '../drawings/frame.ts';

/**
 * What each kind of event usually puts on a field, as a start to be corrected against the production schedule. Sizes, hours and counts
 * are common practice of the trade, nobody's tour.
 */
interface Part {
  readonly name: string;
  readonly use: ZoneUse;
  /** Left, bottom, right, top in shares of the half field: −1 to 1 is the turf; beyond is the apron. */
  readonly place: readonly [number, number, number, number];
  /** Covering, day and hour on, day and hour off (days from the show), what stands on it. */
  readonly layers: readonly (readonly [string, number, string, number, string, Layer['loading']])[];
  readonly crowds?: readonly (readonly [number, string, number, string, number, Crowd['activity']])[];
  readonly traffic?: readonly (readonly [string, number, string, number, boolean])[];
}

const concert: readonly Part[] = [
  {
    name: 'Stage and roof base',
    use: 'stage',
    place: [-0.75, 0.72, 0.75, 1.08],
    layers: [['aluminium-panel', -5, '10:00', 2, '20:00', 'stage']],
  },
  {
    name: 'West wing',
    use: 'wings',
    place: [-1, 0.64, -0.75, 1.08],
    layers: [['solid-panel', -5, '08:00', 2, '22:00', 'plant']],
    traffic: [['forklift-large', -4, '12:00', 60, true]],
  },
  {
    name: 'East wing',
    use: 'wings',
    place: [0.75, 0.64, 1, 1.08],
    layers: [['solid-panel', -5, '08:00', 2, '22:00', 'plant']],
    traffic: [['forklift-large', -4, '10:00', 90, true]],
  },
  {
    name: 'Photo pit',
    use: 'pit',
    place: [-0.6, 0.64, 0.6, 0.72],
    layers: [['solid-panel', -2, '19:00', 1, '12:00', 'open']],
    crowds: [[0, '15:00', 0, '23:00', 0.3, 'working']],
  },
  {
    name: 'Mix position',
    use: 'mix-position',
    place: [-0.16, -0.08, 0.16, 0.1],
    layers: [['solid-panel', -3, '20:00', 1, '14:00', 'deck']],
  },
  {
    name: 'Haul route',
    use: 'haul-route',
    place: [0.84, -1, 0.97, 0.64],
    layers: [['aluminium-panel', -5, '06:00', 2, '23:00', 'open']],
    traffic: [
      ['articulated-lorry', -4, '08:00', 56, false],
      ['articulated-lorry', 1, '03:00', 56, false],
    ],
  },
  {
    name: 'Front standing',
    use: 'standing',
    place: [-0.8, 0.25, 0.8, 0.64],
    layers: [['translucent-tile', -2, '19:00', 1, '10:00', 'open']],
    crowds: [
      [0, '16:00', 0, '20:00', 2, 'standing'],
      [0, '20:00', 0, '23:00', 2, 'dancing'],
    ],
  },
  {
    name: 'Seated floor',
    use: 'seating',
    place: [-0.8, -0.78, 0.8, 0.25],
    layers: [
      ['translucent-tile', -1, '05:00', -1, '11:00', 'open'],
      ['translucent-tile', -1, '11:00', 1, '00:30', 'chairs'],
      ['translucent-tile', 1, '00:30', 1, '12:00', 'open'],
    ],
    crowds: [[0, '17:00', 0, '23:00', 0.7, 'seated']],
  },
];

const parts: Readonly<Record<EventKind, readonly Part[]>> = {
  concert,
  'concert-in-the-round': [
    {
      name: 'Stage in the middle',
      use: 'stage',
      place: [-0.35, -0.2, 0.35, 0.2],
      layers: [['aluminium-panel', -5, '10:00', 2, '20:00', 'stage']],
    },
    {
      name: 'Haul route',
      use: 'haul-route',
      place: [-0.08, -1, 0.08, -0.2],
      layers: [['aluminium-panel', -5, '06:00', 2, '23:00', 'open']],
      traffic: [
        ['articulated-lorry', -4, '08:00', 56, false],
        ['articulated-lorry', 1, '03:00', 56, false],
      ],
    },
    {
      name: 'Standing floor',
      use: 'standing',
      place: [-0.95, -0.9, 0.95, 0.9],
      layers: [['solid-panel', -2, '19:00', 1, '16:00', 'open']],
      crowds: [[0, '16:00', 0, '23:00', 2, 'dancing']],
    },
  ],
  festival: [
    {
      name: 'Tents and kitchens',
      use: 'catering',
      place: [-0.9, 0.2, 0.8, 0.7],
      layers: [['solid-panel', -2, '08:00', 2, '18:00', 'plant']],
      crowds: [
        [0, '11:00', 0, '22:00', 0.5, 'walking'],
        [1, '11:00', 1, '20:00', 0.5, 'walking'],
      ],
    },
    {
      name: 'Tables',
      use: 'seating',
      place: [-0.8, -0.55, 0.8, 0.2],
      layers: [['opaque-tile', -1, '08:00', 2, '12:00', 'chairs']],
      crowds: [
        [0, '11:00', 0, '22:00', 0.8, 'seated'],
        [1, '11:00', 1, '20:00', 0.8, 'seated'],
      ],
    },
    {
      name: 'Supply lane',
      use: 'haul-route',
      place: [0.83, -1, 0.97, 0.2],
      layers: [['solid-panel', -2, '06:00', 2, '20:00', 'open']],
      traffic: [['forklift-small', -2, '09:00', 80, false]],
    },
  ],
  rink: [
    {
      name: 'Ice sheet and deck',
      use: 'rink',
      place: [-0.48, -0.62, 0.48, 0.62],
      layers: [['plywood-geotextile', -7, '07:00', 23, '18:00', 'ice']],
    },
    {
      name: 'Boards and walks',
      use: 'rink-walk',
      place: [-0.65, -0.74, 0.65, 0.74],
      layers: [['plywood-geotextile', -7, '07:00', 23, '18:00', 'deck']],
      traffic: [['forklift-small', -7, '08:00', 60, true]],
    },
    {
      name: 'Chiller lines',
      use: 'chiller-line',
      place: [0.66, -0.74, 0.74, 1],
      layers: [['solid-panel', -8, '07:00', 24, '18:00', 'plant']],
    },
  ],
  'dirt-show': [
    {
      name: 'Dirt track',
      use: 'dirt-track',
      place: [-0.95, -0.9, 0.95, 0.75],
      layers: [['fill-on-sheet', -4, '08:00', 2, '06:00', 'fill']],
    },
    {
      name: 'Truck way in',
      use: 'haul-route',
      place: [-0.12, 0.75, 0.12, 1],
      layers: [['aluminium-panel', -5, '06:00', 2, '18:00', 'open']],
      traffic: [
        ['articulated-lorry', -4, '08:00', 200, false],
        ['articulated-lorry', 1, '06:00', 200, false],
      ],
    },
  ],
  ceremony: [
    {
      name: 'Platform',
      use: 'stage',
      place: [-0.3, 0.6, 0.3, 0.85],
      layers: [['solid-panel', -1, '10:00', 0, '22:00', 'stage']],
    },
    {
      name: 'Chairs',
      use: 'seating',
      place: [-0.7, -0.5, 0.7, 0.55],
      layers: [['translucent-tile', -1, '16:00', 0, '20:00', 'chairs']],
      crowds: [[0, '09:00', 0, '13:00', 1, 'seated']],
    },
  ],
  other: [
    { name: 'Floor', use: 'other', place: [-0.4, -0.3, 0.4, 0.3], layers: [['solid-panel', -1, '08:00', 1, '12:00', 'open']] },
  ],
};

const rounded = (value: number): number => Math.round(value * 2) / 2;

/** A booking of a kind on its usual zones and hours, not stored. @param id a key that no booking has yet */
export const presetBooking = (kind: EventKind, venue: Venue, show: LocalDate, name: string, id: string): Booking => {
  const field = boundsOf([venue.field.outline]);
  const [middleX, middleY] = [field.x + field.width / 2, field.y + field.height / 2];
  const limit = (value: number, half: number): number =>
    Math.max(-half - venue.field.apron, Math.min(half + venue.field.apron, rounded(value * half)));
  const outlineOf = ([left, bottom, right, top]: Part['place']): Polygon => {
    const [x1, x2] = [middleX + limit(left, field.width / 2), middleX + limit(right, field.width / 2)];
    const [y1, y2] = [middleY + limit(bottom, field.height / 2), middleY + limit(top, field.height / 2)];
    return [
      [x1, y1],
      [x2, y1],
      [x2, y2],
      [x1, y2],
    ];
  };
  const at = (day: number, clock: string): string => `${addDays(show, day)}T${clock}`;
  const taken = new Set(venue.zones.map((zone) => zone.letter));
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].filter((letter) => !taken.has(letter));
  const lettered = parts[kind].map((part, index) => ({ part, letter: letters[index] ?? `Z${index}` }));
  return {
    id,
    revision: 0,
    venueId: venue.id,
    name,
    kind,
    stage: 'enquiry',
    note: 'Begun from the usual zones and hours of its kind; put right what the production schedule says otherwise.',
    zones: lettered.map(({ part, letter }) => ({ letter, name: part.name, use: part.use, outline: outlineOf(part.place) })),
    layers: lettered.flatMap(({ part, letter }) =>
      part.layers.map(([covering, onDay, on, offDay, off, loading]) => ({
        zone: letter,
        covering,
        on: at(onDay, on),
        off: at(offDay, off),
        loading,
        cleanliness: 0.85,
        legs: loading === 'stage' ? { load: 22, plate: 1.2, spacing: 2.44 } : null,
        iceTemperature: loading === 'ice' ? -5 : null,
        care: [],
      })),
    ),
    crowds: lettered.flatMap(({ part, letter }) =>
      (part.crowds ?? []).map(([fromDay, from, untilDay, until, density, activity]): Crowd => ({
        zone: letter,
        from: at(fromDay, from),
        until: at(untilDay, until),
        density,
        activity,
      })),
    ),
    traffic: lettered.flatMap(({ part, letter }) =>
      (part.traffic ?? []).map(([vehicle, day, clock, passes, turning]): Traffic => ({
        zone: letter,
        vehicle,
        at: at(day, clock),
        passes,
        turning,
      })),
    ),
    incidents: [],
  };
};
