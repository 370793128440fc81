import { addHours } from '#shared/calendar/local-time.ts';
import type { Booking, IntakeQuestion } from '#shared/vocabulary/booking.ts';
import { ask } from '../transport/ask.ts';
import { floored, floorZones, stretched } from './booking-shapes.ts';
import { deskNow } from './desk.ts';

/** One question of the intake, what is taken for granted while it is blank, and the booking in the kindest and the hardest answer. */
export interface Intake {
  readonly question: IntakeQuestion;
  readonly words: string;
  readonly taken: string;
  /** null: the forecast does not depend on it; it matters to the work or the account. */
  readonly extremes: ((booking: Booking, timeZone: string) => readonly [kind: Booking, hard: Booking]) | null;
}

/** The first covering of every zone going on, and the last coming off, some hours later; never with people on bare turf. */
const hours = (booking: Booking, timeZone: string, on: number, off: number): Booking => {
  const ends = (zone: string) => {
    const layers = booking.layers.filter((layer) => layer.zone === zone);
    const crowds = booking.crowds.filter((crowd) => crowd.zone === zone);
    return {
      first: layers.map((layer) => layer.on).toSorted()[0],
      last: layers
        .map((layer) => layer.off)
        .toSorted()
        .at(-1),
      doors: crowds.map((crowd) => crowd.from).toSorted()[0],
      empty: crowds
        .map((crowd) => crowd.until)
        .toSorted()
        .at(-1),
    };
  };
  return {
    ...booking,
    layers: booking.layers.map((layer) => {
      const { first, last, doors, empty } = ends(layer.zone);
      const later = layer.on === first ? addHours(layer.on, on, timeZone) : layer.on;
      const begin = doors !== undefined && layer.on <= doors && later > doors ? doors : later;
      const sooner = layer.off === last ? addHours(layer.off, off, timeZone) : layer.off;
      const end = empty !== undefined && layer.off >= empty && sooner < empty ? empty : sooner;
      return end > begin ? { ...layer, on: begin, off: end } : layer;
    }),
  };
};
const times = (booking: Booking, part: 'traffic' | 'crowds', factor: number): Booking =>
  part === 'traffic'
    ? { ...booking, traffic: booking.traffic.map((pass) => ({ ...pass, passes: Math.max(1, Math.round(pass.passes * factor)) })) }
    : { ...booking, crowds: booking.crowds.map((crowd) => ({ ...crowd, density: Math.min(6, crowd.density * factor) })) };
const cleanliness = (booking: Booking, share: number): Booking => ({
  ...booking,
  layers: booking.layers.map((layer) => ({ ...layer, cleanliness: share })),
});
const legs = (booking: Booking, factor: number): Booking => ({
  ...booking,
  layers: booking.layers.map((layer) =>
    layer.legs === null ? layer : { ...layer, legs: { ...layer.legs, load: Math.min(500, layer.legs.load * factor) } },
  ),
});

/** The questions of the trade before a date is answered for. How far an answer may lie from what is taken is our assumption. */
export const intake: readonly Intake[] = [
  {
    question: 'first-truck',
    words: 'When does the first truck come, and when does each layer go on?',
    taken: 'the hours of the schedule; half a day either way is reckoned',
    extremes: (booking, zone) => [hours(booking, zone, 12, 0), hours(booking, zone, -12, 0)],
  },
  {
    question: 'load-out',
    words: 'By when is everything out, and what does an hour more cost?',
    taken: 'the hours of the schedule; 6 h sooner to 24 h later is reckoned',
    extremes: (booking, zone) => [hours(booking, zone, 0, -6), hours(booking, zone, 0, 24)],
  },
  {
    question: 'spare-day',
    words: 'Is there a spare day for weather?',
    taken: 'none; a day longer on the turf is reckoned as the hard case',
    extremes: (booking) => [booking, stretched(booking, 1)],
  },
  {
    question: 'nights',
    words: 'How many nights, rehearsals; a tour or one-off? For a tour: the last three venues.',
    taken: 'the nights of the schedule; one more is reckoned as the hard case',
    extremes: (booking) => [booking, stretched(times(booking, 'crowds', 1.3), 1)],
  },
  {
    question: 'structure',
    words: 'Roof, legs, spreaders, ballast, towers: loads, plates, and who signs?',
    taken: 'the leg loads of the schedule; half and double are reckoned',
    extremes: (booking) => [legs(booking, 0.5), legs(booking, 2)],
  },
  { question: 'cranes', words: 'Cranes: size, pads, when?', taken: 'none beyond the machines listed', extremes: null },
  {
    question: 'trucks',
    words: 'Trucks and axle loads, gate, turning place, forklifts and tyres?',
    taken: 'the passes listed; half and double are reckoned',
    extremes: (booking) => [times(booking, 'traffic', 0.5), times(booking, 'traffic', 2)],
  },
  { question: 'night-moves', words: 'What moves at night?', taken: 'nothing noisy within the curfew', extremes: null },
  {
    question: 'floor',
    words: 'Whose floor, which class, which area, how laid, how many trucks, pallets where?',
    taken: 'the floors of the schedule; from open tile to a clear sheet is reckoned',
    extremes: (booking) => [floored(booking, 'translucent-tile'), floored(booking, 'opaque-tile')],
  },
  {
    question: 'cleanliness',
    words: 'How clean does the floor arrive? Dirty tiles bring weed seed, pests and shade.',
    taken: '85 % of the light left; 60 to 95 % is reckoned',
    extremes: (booking) => [cleanliness(booking, 0.95), cleanliness(booking, 0.6)],
  },
  { question: 'services', words: 'Generators, fuel, cables, water, toilets, grease?', taken: 'none on the turf', extremes: null },
  {
    question: 'water-and-ice',
    words: 'Rink or dirt: deck section, coolant and its alarm, melt water, snow, source of the dirt?',
    taken: 'nothing runs onto the turf',
    extremes: null,
  },
  {
    question: 'fire-and-confetti',
    words: 'Fire, confetti, water, foam, animals, vehicles on stage?',
    taken: 'none',
    extremes: null,
  },
  {
    question: 'crowd',
    words: 'How many stand where; drink, glass, gates?',
    taken: 'the people listed; seven tenths and half as many again are reckoned',
    extremes: (booking) => [times(booking, 'crowds', 0.7), times(booking, 'crowds', 1.5)],
  },
  {
    question: 'money',
    words: 'Cap, deposit, insurance, handback standard, claim period?',
    taken: 'nothing agreed: the venue bears it all',
    extremes: null,
  },
  { question: 'contact', words: 'Who can stop work at any hour?', taken: 'nobody is named', extremes: null },
  {
    question: 'afterwards',
    words: 'What comes after: home date, practice, broadcast load-in, which surface standard?',
    taken: 'the home dates entered and the rules of the venue',
    extremes: null,
  },
];

/** m² not ready in the kindest and the hardest answer to a question. */
export interface Spread {
  readonly low: number;
  readonly high: number;
}

/** What each blank costs in spread: the usual season with the kindest and the hardest answer. Asks one at a time. */
export const weighBlanks = async (
  booking: Booking,
  tell: (question: IntakeQuestion, spread: Spread | null) => void,
): Promise<void> => {
  const { venue, homeId } = deskNow();
  if (!venue || !homeId) return;
  const floorless = floorZones(booking).size === 0;
  for (const { question, extremes } of intake) {
    if (extremes === null || booking.intake?.[question] || (question === 'floor' && floorless)) continue;
    const areas: number[] = [];
    for (const tried of extremes(booking, venue.place.timeZone)) {
      const answer = await ask('forecast/preview', { venueId: venue.id, fixtureId: homeId, booking: tried, cellSize: 4 });
      if (answer.ok) areas.push(answer.value.replaceArea.p50);
    }
    if (deskNow().booking !== booking) return;
    tell(question, areas.length === 2 ? { low: Math.min(...areas), high: Math.max(...areas) } : null);
  }
};
