import { addDays, addHours } from '#shared/calendar/local-time.ts';
import type { OptionKind } from '#shared/vocabulary/answers.ts';
import type { Booking, Care, Layer } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';

/** A booking with one thing done otherwise, and the zones in which it could not be, with the reason. */
export interface BookingOption {
  readonly kind: OptionKind;
  readonly covering: string | null;
  readonly name: string;
  readonly booking: Booking;
  readonly left: ReadonlyMap<string, string>;
}

/** h after laying begins, and before striking ends, in which machines belong to that work and move with it. */
const workHours = 24;

interface Change {
  readonly layers: readonly Layer[];
  readonly traffic: Booking['traffic'];
}

/** Changes each zone for itself; a zone that answers with words stays as it is. */
const zoneByZone = (
  booking: Booking,
  kind: OptionKind,
  name: string,
  covering: string | null,
  change: (layers: readonly Layer[], letter: string) => Change | string,
): BookingOption => {
  const left = new Map<string, string>();
  const layers: Layer[] = [];
  let traffic = booking.traffic;
  for (const { letter } of booking.zones) {
    const mine = booking.layers.filter((layer) => layer.zone === letter).toSorted((a, b) => (a.on < b.on ? -1 : 1));
    const changed = mine.length === 0 ? 'nothing lies there' : change(mine, letter);
    if (typeof changed === 'string') {
      left.set(letter, changed);
      layers.push(...mine);
      continue;
    }
    layers.push(...changed.layers);
    traffic = [...traffic.filter((pass) => pass.zone !== letter), ...changed.traffic];
  }
  return { kind, covering, name, booking: { ...booking, layers, traffic }, left };
};

const careWithin = (layer: Layer): Layer => ({
  ...layer,
  care: layer.care
    .map((care) => ({
      ...care,
      from: care.from < layer.on ? layer.on : care.from,
      until: care.until > layer.off ? layer.off : care.until,
    }))
    .filter((care) => care.until > care.from),
});

/** The floor lies from and until other hours: layers are cut to them, the first or the last is drawn out to them. */
const lyingBetween = (layers: readonly Layer[], on: string, off: string): readonly Layer[] => {
  const first = layers[0]!.on;
  const last = layers.reduce((latest, layer) => (layer.off > latest ? layer.off : latest), layers[0]!.off);
  return layers
    .map((layer) => ({
      ...layer,
      on: layer.on === first || layer.on < on ? on : layer.on,
      off: layer.off === last || layer.off > off ? off : layer.off,
    }))
    .filter((layer) => layer.off > layer.on)
    .map(careWithin);
};

const lastOffOf = (layers: readonly Layer[]): string =>
  layers.reduce((latest, layer) => (layer.off > latest ? layer.off : latest), layers[0]!.off);

/** Laid some hours earlier (below 0) or later; machines of the laying go with it. */
const laidAt = (booking: Booking, hours: number, kind: OptionKind, name: string, timeZone: string): BookingOption =>
  zoneByZone(booking, kind, name, null, (layers, letter) => {
    const on = addHours(layers[0]!.on, hours, timeZone);
    const until = addHours(layers[0]!.on, workHours, timeZone);
    if (on >= lastOffOf(layers)) return 'it lies no longer than a day';
    if (booking.crowds.some((crowd) => crowd.zone === letter && crowd.from < on && hours > 0)) return 'people are on it by then';
    return {
      layers: lyingBetween(layers, on, lastOffOf(layers)),
      traffic: booking.traffic
        .filter((pass) => pass.zone === letter)
        .map((pass) =>
          pass.at >= layers[0]!.on && pass.at < until ? { ...pass, at: addHours(pass.at, hours, timeZone) } : pass,
        ),
    };
  });

/** Struck some hours earlier or later; machines of the strike go with it. */
const struckAt = (
  booking: Booking,
  hours: number,
  kind: OptionKind,
  name: string,
  home: string,
  timeZone: string,
): BookingOption =>
  zoneByZone(booking, kind, name, null, (layers, letter) => {
    const before = lastOffOf(layers);
    const off = addHours(before, hours, timeZone);
    const from = addHours(before, -workHours, timeZone);
    if (off <= layers[0]!.on) return 'it lies no longer than that';
    if (off > home) return 'the home date begins before';
    if (booking.crowds.some((crowd) => crowd.zone === letter && crowd.until > off && hours < 0))
      return 'people are on it until then';
    return {
      layers: lyingBetween(layers, layers[0]!.on, off),
      traffic: booking.traffic
        .filter((pass) => pass.zone === letter)
        .map((pass) => (pass.at >= from && pass.at <= before ? { ...pass, at: addHours(pass.at, hours, timeZone) } : pass)),
    };
  });

/** Hours of the night in which panels are lifted, and the most acts of care a layer takes. */
const night = { from: '22:00', until: '06:00' } as const;
const mostCare = 60;

/** Every open floor lifted for the night, except where people are on it. */
const liftedAtNight = (booking: Booking): BookingOption =>
  zoneByZone(booking, 'lift-at-night', `Lifted from ${night.from} to ${night.until}`, null, (layers, letter) => {
    const crowds = booking.crowds.filter((crowd) => crowd.zone === letter);
    let nights = 0;
    const lifted = layers.map((layer) => {
      if (layer.loading !== 'open') return layer;
      const lifts: Care[] = [];
      for (let day = addDays(layer.on.slice(0, 10), -1); day <= layer.off.slice(0, 10); day = addDays(day, 1)) {
        const [start, end] = [`${day}T${night.from}`, `${addDays(day, 1)}T${night.until}`];
        const [from, until] = [start < layer.on ? layer.on : start, end > layer.off ? layer.off : end];
        if (until <= from || layer.care.length + lifts.length >= mostCare) continue;
        if (crowds.some((crowd) => crowd.from < until && from < crowd.until)) continue;
        lifts.push({ kind: 'lift', from, until, share: 1 });
      }
      nights += lifts.length;
      return { ...layer, care: [...layer.care, ...lifts] };
    });
    if (nights === 0) return 'something stands on it, or no night is free';
    return { layers: lifted, traffic: booking.traffic.filter((pass) => pass.zone === letter) };
  });

/** Another class of floor wherever one lies that another could stand for. */
const flooredWith = (booking: Booking, covering: Covering, vehicles: readonly Vehicle[]): BookingOption =>
  zoneByZone(booking, 'floor', covering.name, covering.id, (layers, letter) => {
    const traffic = booking.traffic.filter((pass) => pass.zone === letter);
    if (layers.some((layer) => layer.loading === 'ice' || layer.loading === 'fill')) return 'ice or fill needs its own floor';
    if (layers.every((layer) => layer.covering === covering.id)) return 'it is this floor already';
    const wheel = Math.max(0, ...traffic.map((pass) => heaviestWheel(vehicles.find((one) => one.id === pass.vehicle))));
    if (wheel > covering.wheelRating + 1e-9)
      return covering.wheelRating === 0
        ? 'it takes feet only, and machines cross the zone'
        : `its class takes ${covering.wheelRating} kN a wheel, and ${wheel.toFixed(1)} kN cross the zone`;
    const leg = Math.max(0, ...layers.map((layer) => layer.legs?.load ?? 0));
    if (covering.wheelRating > 0 && leg > covering.wheelRating)
      return `its class takes ${covering.wheelRating} kN, and legs of ${leg.toFixed(1)} kN stand on the zone`;
    if (covering.wheelRating === 0 && layers.some((layer) => layer.legs !== null || heavy.has(layer.loading)))
      return 'it takes feet only, and something stands on the zone';
    return { layers: layers.map((layer) => ({ ...layer, covering: covering.id })), traffic };
  });

const heavy: ReadonlySet<Layer['loading']> = new Set(['stage', 'deck', 'plant']);

const heaviestWheel = (vehicle: Vehicle | undefined): number =>
  vehicle === undefined ? 0 : Math.max(...vehicle.axles.map((axle) => axle.load / axle.wheels));

/**
 * Every option of a booking: a day more and less under it (laid earlier, later), struck half a day earlier and later, lifted at night, and
 * each other class of floor. An option that would change no zone is left out.
 * @param home start of the home date
 */
export const optionsOf = (
  booking: Booking,
  coverings: readonly Covering[],
  vehicles: readonly Vehicle[],
  home: string,
  timeZone: string,
): readonly BookingOption[] =>
  [
    laidAt(booking, -24, 'day-more', 'Laid 24 h earlier', timeZone),
    laidAt(booking, 24, 'day-less', 'Laid 24 h later', timeZone),
    struckAt(booking, -12, 'strike-earlier', 'Struck 12 h earlier', home, timeZone),
    struckAt(booking, 12, 'strike-later', 'Struck 12 h later', home, timeZone),
    liftedAtNight(booking),
    ...coverings.filter((covering) => covering.id !== 'none').map((covering) => flooredWith(booking, covering, vehicles)),
  ].filter((option) => option.left.size < booking.zones.length);
