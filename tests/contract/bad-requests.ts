import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';

export interface BadRequest {
  readonly title: string;
  readonly name: string;
  /** `booking` and the rest as they stand in the workspace, with their revisions. */
  readonly request: unknown;
  /** The field that the failure must name. */
  readonly field: string;
  /** Words of its reason. */
  readonly reason: RegExp;
  readonly kind?: 'out-of-range';
}

const booking = { ...concert, revision: 1 };
const venue = { ...smallVenue, revision: 1 };
const [stage, floor] = booking.layers as [(typeof booking.layers)[0], (typeof booking.layers)[0]];
const square = (x: number, y: number, side: number) => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];
const withZone = (outline: unknown) => ({ booking: { ...booking, zones: [{ ...booking.zones[0], outline }, booking.zones[1]] } });
const withLayers = (...layers: unknown[]) => ({ booking: { ...booking, layers } });
const settings = (name: string, value: number) => ({
  venue: { ...venue, settings: { [name]: { value, reason: 'tried', since: '2027-01-01' } } },
});

const nested = (levels: number): unknown => (levels === 0 ? 1 : { more: nested(levels - 1) });

/** What a person or a program can get wrong, each once. Sent to a workspace that holds the small venue and its concert. */
export const badRequests: readonly BadRequest[] = [
  {
    title: 'a booking that ends before it starts',
    name: 'booking/save',
    request: withLayers(stage, { ...floor, off: '2027-07-15T10:00' }),
    field: 'booking.layers.1.off',
    reason: /after it goes on/,
  },
  {
    title: 'people on a zone without a floor',
    name: 'booking/save',
    request: { booking: { ...booking, crowds: [{ ...booking.crowds[0], until: '2027-07-18T12:00' }] } },
    field: 'booking.crowds.0.from',
    reason: /zone "B" at 2027-07-18T10:00, when nothing lies there/,
  },
  {
    title: 'an incident larger than its zone',
    name: 'booking/save',
    request: { booking: { ...booking, incidents: [{ ...booking.incidents[0], area: 541 }] } },
    field: 'booking.incidents.0.area',
    reason: /541 m².*540\.0 m² of zone "B"/,
  },
  {
    title: 'a machine heavier than its axles',
    name: 'vehicle/save',
    request: { vehicle: { ...cart, weight: 30 } },
    field: 'vehicle.weight',
    reason: /axle loads must add to the weight/,
  },
  {
    title: 'ice that never goes',
    name: 'booking/save',
    request: { booking: { ...booking, incidents: [{ ...booking.incidents[0], kind: 'ice', treatedAfter: null }] } },
    field: 'booking.incidents.0.until',
    reason: /when the ice had gone/,
  },
  {
    title: 'two sure events on one spot in the same hours',
    name: 'booking/save',
    request: { booking: { ...booking, id: 'second-concert', revision: 0 } },
    field: 'booking.layers.0.on',
    reason: /same turf and in the same hours as zone "A" of the booking "Concert"/,
  },
  {
    title: 'a footprint outside the field',
    name: 'booking/save',
    request: withZone(square(10, 10, 20)),
    field: 'booking.zones.0.outline.2',
    reason: /corner 2 at \(30, 30\).* 18\.0 m from the turf.*apron is 5\.0 m/,
  },
  {
    title: 'a footprint that touches no turf',
    name: 'booking/save',
    request: withZone([
      [-10, 15],
      [10, 15],
      [10, 19],
      [-10, 19],
    ]),
    field: 'booking.zones.0.outline',
    reason: /touches none/,
  },
  {
    title: 'a footprint that crosses itself',
    name: 'booking/save',
    request: withZone([
      [-5, 0],
      [5, 5],
      [5, 0],
      [-5, 5],
    ]),
    field: 'booking.zones.0.outline',
    reason: /crosses or touches itself/,
  },
  {
    title: 'a footprint without ground',
    name: 'booking/save',
    request: withZone([
      [-5, 0],
      [5, 0],
      [0, 0.000001],
    ]),
    field: 'booking.zones.0.outline',
    reason: /no ground/,
  },
  {
    title: 'a negative thickness',
    name: 'covering/save',
    request: { covering: { ...boardFloor, thickness: -0.01 } },
    field: 'covering.thickness',
    reason: /at least 0 m/,
  },
  {
    title: 'an unknown covering',
    name: 'booking/save',
    request: withLayers({ ...stage, covering: 'flying-carpet' }),
    field: 'booking.layers.0.covering',
    reason: /no covering "flying-carpet"/,
  },
  {
    title: 'an unknown machine',
    name: 'booking/save',
    request: { booking: { ...booking, traffic: [{ ...booking.traffic[0], vehicle: 'elephant' }] } },
    field: 'booking.traffic.0.vehicle',
    reason: /no vehicle "elephant"/,
  },
  {
    title: 'a covering on a zone that is not there',
    name: 'booking/save',
    request: withLayers({ ...stage, zone: 'Z' }),
    field: 'booking.layers.0.zone',
    reason: /no zone "Z"/,
  },
  {
    title: 'people on a zone that is not there',
    name: 'booking/save',
    request: { booking: { ...booking, crowds: [{ ...booking.crowds[0], zone: 'Q' }] } },
    field: 'booking.crowds.0.zone',
    reason: /no zone "Q"/,
  },
  {
    title: 'two zones with one letter',
    name: 'booking/save',
    request: { booking: { ...booking, zones: [booking.zones[0], { ...booking.zones[1], letter: 'A' }] } },
    field: 'booking.zones.1.letter',
    reason: /same letter "A"/,
  },
  {
    title: 'two coverings on one zone in one hour',
    name: 'booking/save',
    request: withLayers(stage, floor, { ...floor, on: '2027-07-18T09:59', off: '2027-07-18T12:00' }),
    field: 'booking.layers.2.on',
    reason: /same hours as layer 1/,
  },
  {
    title: 'a covering that lies for 121 days',
    name: 'booking/save',
    request: withLayers({ ...stage, on: '2027-03-01T08:00', off: '2027-06-30T09:00' }),
    field: 'booking.layers.0.off',
    reason: /at most 120 days/,
  },
  {
    title: 'care before the covering lies',
    name: 'booking/save',
    request: withLayers({ ...floor, care: [{ kind: 'lift', from: '2027-07-16T07:00', until: '2027-07-16T09:00', share: 1 }] }),
    field: 'booking.layers.0.care.0.from',
    reason: /before the covering goes on/,
  },
  {
    title: 'more people than fit',
    name: 'booking/save',
    request: { booking: { ...booking, crowds: [booking.crowds[0], { ...booking.crowds[0], density: 5.5 }] } },
    field: 'booking.crowds.0.density',
    reason: /6\.5 people\/m²/,
  },
  {
    title: 'a booking of no venue here',
    name: 'booking/save',
    request: { booking: { ...booking, venueId: 'elsewhere' } },
    field: 'booking.venueId',
    reason: /no venue "elsewhere"/,
  },
  {
    title: 'a fixture that ends before it starts',
    name: 'fixture/save',
    request: { fixture: { ...homeDate, revision: 1, end: '2027-08-14T18:00' } },
    field: 'fixture.end',
    reason: /after the start/,
  },
  {
    title: 'a day that is not in the calendar',
    name: 'fixture/save',
    request: { fixture: { ...homeDate, revision: 1, start: '2027-02-29T19:00' } },
    field: 'fixture.start',
    reason: /not a day of the calendar/,
  },
  {
    title: 'a time zone nobody keeps',
    name: 'venue/save',
    request: { venue: { ...venue, place: { ...venue.place, timeZone: 'Mars/Olympus' } } },
    field: 'venue.place.timeZone',
    reason: /IANA time zone/,
  },
  {
    title: 'a gate that lets no truck in',
    name: 'venue/save',
    request: { venue: { ...venue, rules: { ...venue.rules, gateTrucksPerHour: 0 } } },
    field: 'venue.rules.gateTrucksPerHour',
    reason: /no truck would come in/,
  },
  {
    title: 'a skill nobody knows',
    name: 'venue/save',
    request: { venue: { ...venue, workforce: { ...venue.workforce, skills: { flying: 1 } } } },
    field: 'venue.workforce.skills.flying',
    reason: /./,
  },
  {
    title: 'halves of another kind',
    name: 'venue/save',
    request: { venue: { ...venue, rules: { ...venue.rules, halves: 'quarters' } } },
    field: 'venue.rules.halves',
    reason: /./,
  },
  {
    title: 'a setting that is not in the catalogue',
    name: 'venue/save',
    request: settings('no.such.number', 1),
    field: 'venue.settings.no.such.number',
    reason: /not a name of the catalogue/,
  },
  {
    title: 'a setting outside its range',
    name: 'venue/save',
    request: settings('reserve.darkDays.cool', 1e9),
    field: 'venue.settings.reserve.darkDays.cool.value',
    reason: /outside the range/,
    kind: 'out-of-range',
  },
  {
    title: 'a venue whose own zone lies off the field',
    name: 'venue/save',
    request: { venue: { ...venue, zones: [{ ...venue.zones[0], outline: square(40, 40, 5) }] } },
    field: 'venue.zones.0.outline.2',
    reason: /outside the field/,
  },
  {
    title: 'NaN',
    name: 'covering/save',
    request: { covering: { ...boardFloor, thickness: Number.NaN } },
    field: 'covering.thickness',
    reason: /must be a number/,
  },
  {
    title: 'an endless number',
    name: 'covering/save',
    request: { covering: { ...boardFloor, thickness: Number.POSITIVE_INFINITY } },
    field: 'covering.thickness',
    reason: /must be a number|at most 3 m/,
  },
  {
    title: 'a field nobody asked for',
    name: 'booking/save',
    request: { booking: { ...booking, colour: 'red' } },
    field: 'booking.colour',
    reason: /not known here/,
  },
  {
    title: 'the key of a prototype',
    name: 'venue/save',
    request: JSON.parse(
      JSON.stringify({ venue }).replace(
        '"settings":{}',
        '"settings":{"constructor":{"value":1,"reason":"","since":"2027-01-01"}}',
      ),
    ),
    field: 'venue.settings.constructor',
    reason: /not a name of the catalogue/,
  },
  { title: 'nothing at all', name: 'booking/save', request: {}, field: 'booking', reason: /missing/ },
  { title: 'no object', name: 'booking/save', request: 'booking', field: 'request', reason: /must be an object/ },
  {
    title: 'a very deep request',
    name: 'booking/save',
    request: { booking: nested(200) },
    field: 'booking',
    reason: /nested too deep/,
  },
  {
    title: 'an operation that is not there',
    name: 'venue/paint',
    request: {},
    field: 'name',
    reason: /no operation "venue\/paint"/,
  },
];
