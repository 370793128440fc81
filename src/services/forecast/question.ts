import { addDays, dayOfYear, daysBetween } from '#shared/calendar/local-time.ts';
import type { Answer, Problem } from '#shared/contract/failure.ts';
import { defaultValues, type ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Id } from '#shared/vocabulary/primitives.ts';
import type { Fixture, Venue } from '#shared/vocabulary/venue.ts';
import type { WeatherOfDay } from '#shared/vocabulary/weather.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import type { DailySite } from '#engine/weather/daily-radiation.ts';
import { completedDay } from '#engine/weather/missing-weather.ts';
import type { DatedWeatherDay } from '#engine/weather/weather-day.ts';
import { done, invalid, notFound, outOfRange } from '#services/answers.ts';
import { checkBooking, spanOf } from '#services/checks/booking.ts';
import { clashProblems, isSure } from '#services/checks/clashes.ts';
import { settingsOutOfRange } from '#services/checks/venue.ts';
import type { Contents } from '#store/store.ts';

export interface Asked extends Pick<ForecastQuestion, 'booking' | 'members' | 'seed' | 'cellSize'> {
  readonly venueId: Id;
  readonly fixtureId: Id;
  /** Leaves out the years on record, thousands of days: the usual season is made of normals and asks for none. Never for what is kept. */
  readonly withoutYears?: true;
}

/** d between the end of a booking and the home date: beyond it a forecast says nothing about the booking. */
const longestWait = 400;

/**
 * Gathers everything a forecast depends on. Only the classes the booking names go in, by id: what nobody uses cannot change a run.
 * A stored booking is checked again, since its venue may have changed.
 */
export const gatherQuestion = async (contents: Contents, asked: Asked): Promise<Answer<ForecastQuestion>> => {
  const { booking, venueId, fixtureId } = asked;
  const venue = await contents.venues.find(venueId);
  if (!venue) return notFound('venue', venueId);
  const homeDate = await contents.fixtures.find(fixtureId);
  if (!homeDate) return notFound('fixture', fixtureId);

  const coverings = (await contents.coverings.list()).toSorted(byId);
  const vehicles = (await contents.vehicles.list()).toSorted(byId);
  const settings = settingsOutOfRange(venue, 'venue');
  if (settings.length > 0) return outOfRange(settings);
  const problems = [
    ...homeDateProblems(homeDate, venue),
    ...(booking && booking.venueId !== venueId
      ? [{ field: 'booking.venueId', reason: `is not the venue asked about, "${venueId}"` }]
      : []),
    ...(booking ? checkBooking(booking, { venue, coverings: idsOf(coverings), vehicles: idsOf(vehicles) }, 'booking') : []),
  ];
  if (problems.length > 0) return invalid(problems);
  const reach = booking ? reachProblems(booking, homeDate) : [];
  if (reach.length > 0) return outOfRange(reach);

  const others = await othersNear(contents, booking, homeDate);
  const clashes = booking ? clashProblems(booking, others, 'booking') : [];
  if (clashes.length > 0) return invalid(clashes);
  const events = [...(booking ? [booking] : []), ...others];
  const laid = new Set(events.flatMap((event) => event.layers.map((layer) => layer.covering)));
  const driven = new Set(events.flatMap((event) => event.traffic.map((pass) => pass.vehicle)));
  const site = { latitude: venue.place.latitude, elevation: venue.place.elevation };
  const parameters = parametersOf(venue);
  const whole = (days: readonly WeatherOfDay[]) => days.map((day) => wholeDay(day, site, parameters));
  return done({
    venue,
    homeDate,
    booking,
    others,
    fixtures: await contents.fixtures.ofVenue(venueId),
    coverings: coverings.filter((covering) => laid.has(covering.id)),
    vehicles: vehicles.filter((vehicle) => driven.has(vehicle.id)),
    parameters,
    members: asked.members,
    seed: asked.seed,
    cellSize: asked.cellSize,
    observed: asked.withoutYears ? [] : whole(await contents.weather.days(venueId, 'observed')),
    actual: whole(await contents.weather.days(venueId, 'actual')),
    expected: await contents.weather.days(venueId, 'expected'),
  });
};

/** d before a booking in which an earlier event still shows. */
const memoryDays = 60;

/** Other events that are sure enough to count and fall between some weeks before the booking and the home date. */
const othersNear = async (contents: Contents, booking: Booking | null, homeDate: Fixture): Promise<readonly Booking[]> => {
  const span = booking && spanOf(booking);
  if (!span) return [];
  const from = `${addDays(span.first.slice(0, 10), -memoryDays)}T00:00`;
  const near = await contents.bookings.near(booking.venueId, from, homeDate.start);
  return near.filter((other) => {
    const there = spanOf(other);
    return other.id !== booking.id && isSure(other) && there !== null && there.first >= from && there.last < homeDate.start;
  });
};

/** A day with what was not measured filled in by the standard's rules. */
const wholeDay = (day: WeatherOfDay, site: DailySite, values: ParameterValues): DatedWeatherDay => ({
  date: day.date,
  ...completedDay(day, site, dayOfYear(day.date), values).day,
});

const byId = (one: { readonly id: Id }, other: { readonly id: Id }): number => (one.id < other.id ? -1 : 1);
const idsOf = (items: readonly { readonly id: Id }[]): ReadonlySet<Id> => new Set(items.map((item) => item.id));

/** The catalogue's values with the venue's own laid over them. A setting whose name has left the catalogue has no effect. */
export const parametersOf = (venue: Venue): ParameterValues => ({
  ...defaultValues,
  ...Object.fromEntries(
    Object.entries(venue.settings)
      .filter(([name]) => Object.hasOwn(defaultValues, name))
      .map(([name, { value }]) => [name, value]),
  ),
});

const homeDateProblems = (homeDate: Fixture, venue: Venue): readonly Problem[] => [
  ...(homeDate.venueId === venue.id ? [] : [{ field: 'fixtureId', reason: `is not a fixture of the venue "${venue.id}"` }]),
  ...(homeDate.kind === 'home-date' ? [] : [{ field: 'fixtureId', reason: `is a ${homeDate.kind}, not a home date` }]),
];

/** The home date must come after the event and near enough to have to do with it. */
const reachProblems = (booking: Booking, homeDate: Fixture): readonly Problem[] => {
  const span = spanOf(booking);
  if (!span) return [];
  if (homeDate.start < span.last) {
    return [{ field: 'fixtureId', reason: `the home date begins ${homeDate.start}, before the booking is over (${span.last})` }];
  }
  const days = daysBetween(span.last.slice(0, 10), homeDate.start.slice(0, 10));
  if (days <= longestWait) return [];
  return [
    { field: 'fixtureId', reason: `the home date is ${days} days after the booking; a forecast reaches ${longestWait} days` },
  ];
};
