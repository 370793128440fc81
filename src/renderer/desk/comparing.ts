import { addDays, dateOf, daysBetween } from '#shared/calendar/local-time.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import { show as inUnits } from '#shared/units/quantity.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { work } from '../transport/ask.ts';
import { oneAtATime } from '../transport/turns.ts';
import { floored, floorZones, moved, nextHome, spanOf } from './booking-shapes.ts';
import { change, deskNow, valueOf, type Trial } from './desk.ts';

/** m: what is thicker is dirt or a deck, not a floor to choose. */
const thickestFloor = 0.12;
/** Seasons drawn for each way: enough to tell ways apart, few enough to wait for. */
export const membersOfWay = 50;
/** Ways one comparison may hold. */
export const mostWays = 24;

/** Floors that people may stand on: panels, tiles and the mesh. Sheets, decks and dirt are not a choice of floor. */
export const floorsOf = (coverings: readonly Covering[]): readonly Covering[] =>
  coverings.filter(
    (covering) =>
      covering.thickness <= thickestFloor && (['beam', 'plate'].includes(covering.spread) || covering.id === 'walk-mesh'),
  );

/** Where the stage stands: as booked, turned to the other end of the field, or set back by some metres. */
export type StagePlace =
  { readonly kind: 'as-booked' } | { readonly kind: 'turned' } | { readonly kind: 'back'; readonly by: number };

/** What is to be laid side by side: every floor on every date in every place. */
export interface Choices {
  /** Ids of floors; null: as booked. */
  readonly floors: readonly (string | null)[];
  /** First days. */
  readonly dates: readonly string[];
  readonly places: readonly StagePlace[];
}

const stageUses: readonly string[] = ['stage', 'wings', 'pit', 'thrust'];

/** The event in another place. Set back: stage, wings, pit and thrust go away from the middle of the field together. */
export const placed = (booking: Booking, place: StagePlace): Booking => {
  if (place.kind === 'as-booked') return booking;
  if (place.kind === 'turned')
    return {
      ...booking,
      zones: booking.zones.map((zone) => ({ ...zone, outline: zone.outline.map(([x, y]) => [-x, -y] as const) })),
    };
  const stage = booking.zones.find((zone) => zone.use === 'stage');
  const away = stage ? Math.sign(stage.outline.reduce((sum, [, y]) => sum + y, 0)) || 1 : 1;
  return {
    ...booking,
    zones: booking.zones.map((zone) =>
      stageUses.includes(zone.use) ? { ...zone, outline: zone.outline.map(([x, y]) => [x, y + away * place.by] as const) } : zone,
    ),
  };
};

/** Every way of the choices, with what the promoter gives up for it. */
export const waysOf = (booking: Booking, choices: Choices): readonly Omit<Trial, 'outcome'>[] => {
  const { coverings, fixtures, units } = deskNow();
  const span = spanOf(booking);
  const booked = [...floorZones(booking)].flatMap((letter) =>
    booking.layers.filter((layer) => layer.zone === letter).map((layer) => coverings.find(({ id }) => id === layer.covering)),
  );
  const strongest = Math.max(0, ...booked.map((covering) => covering?.wheelRating ?? 0));
  return choices.places.flatMap((place) =>
    choices.dates.flatMap((date) =>
      choices.floors.map((id) => {
        const floor = id === null ? null : (coverings.find((covering) => covering.id === id) ?? null);
        const days = span ? daysBetween(dateOf(span.first), date) : 0;
        const there = moved(placed(floor ? floored(booking, floor.id) : booking, place), days);
        const set =
          place.kind === 'turned'
            ? 'turned to the other end'
            : place.kind === 'back'
              ? `stage back ${inUnits(place.by, 'length', units)}`
              : null;
        const when = days === 0 ? null : `from ${dayWords(date)}`;
        return {
          way: {
            name: [floor?.name ?? 'Floors as booked', when, set].filter((part) => part !== null).join(', '),
            fixtureId: nextHome(there, fixtures)?.id ?? '',
            booking: there,
          },
          floor,
          givesUp: [
            ...(days === 0
              ? []
              : [`the date: ${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'} ${days > 0 ? 'later' : 'earlier'}`]),
            ...(set === null ? [] : [`the place: ${set}`]),
            ...(floor && floor.wheelRating < strongest ? ['heavier wheels on the floor'] : []),
          ],
        };
      }),
    ),
  );
};

/** Foresees every way with the same seasons and plans the recovery after each. */
export const compareWays = oneAtATime(async (choices: Choices): Promise<void> => {
  const { venue, booking, fixtures } = deskNow();
  if (!venue || !booking || nextHome(booking, fixtures) === null) return;
  const ways = waysOf(booking, choices).slice(0, mostWays);
  change({ failure: null, said: '', trials: [] });
  const answer = await work(
    'plan/compare',
    { venueId: venue.id, ways: ways.map(({ way }) => way), members: membersOfWay, seed: 1, recovery: true },
    (job) => change({ job }),
  );
  change({ job: null });
  const outcomes = valueOf(answer);
  if (!outcomes || deskNow().booking !== booking) return;
  change({ trials: ways.map((way, at) => ({ ...way, outcome: outcomes[at]! })) });
});

/** The dates a booking is asked for: its own first, then the others of the same enquiry. */
export const datesAsked = (booking: Booking): readonly string[] => {
  const span = spanOf(booking);
  return span ? [dateOf(span.first), ...(booking.otherDates ?? []).filter((date) => date !== dateOf(span.first))] : [];
};

/** A free day some days after the last one asked for. */
export const nextDate = (booking: Booking): string | null => {
  const last = datesAsked(booking).toSorted().at(-1);
  return last ? addDays(last, 1) : null;
};
