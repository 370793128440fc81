import { isDeepStrictEqual } from 'node:util';
import type { VenueDocument } from '#shared/contract/contract.ts';
import type { Answer, Problem } from '#shared/contract/failure.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Id } from '#shared/vocabulary/primitives.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { conflict, done, invalid, outOfRange } from '#services/answers.ts';
import { checkBooking } from '#services/checks/booking.ts';
import { duplicates } from '#services/checks/findings.ts';
import { checkVenue } from '#services/checks/venue.ts';
import type { Classes, Contents } from '#store/store.ts';

/**
 * Takes in a venue under its own id with everything in its document, or nothing of it. A class that this workspace has under the same
 * id with other values comes in under a new id, and the bookings of the document name that; bookings and fixtures whose ids are taken
 * get new ids. `field` is where the document stands in the request.
 */
export const takeIn = async (contents: Contents, document: VenueDocument, field: string): Promise<Answer<Venue>> => {
  const { venue } = document;
  if (await contents.venues.find(venue.id)) {
    return conflict(
      'venue',
      venue.id,
      `There is a venue "${venue.id}" already. Remove it first, or change the id in the document.`,
    );
  }
  const known = {
    coverings: idsOf([...document.coverings, ...(await contents.coverings.list())]),
    vehicles: idsOf([...document.vehicles, ...(await contents.vehicles.list())]),
  };
  const found = checkVenue(venue, `${field}.venue`);
  const problems = [...found.invalid, ...documentProblems(document, field), ...bookingProblems(document, known, field)];
  if (problems.length > 0) return invalid(problems);
  if (found.outOfRange.length > 0) return outOfRange(found.outOfRange);
  return storeAll(contents, document);
};

const idsOf = (items: readonly { readonly id: Id }[]): ReadonlySet<Id> => new Set(items.map((item) => item.id));

const documentProblems = (document: VenueDocument, field: string): readonly Problem[] => [
  ...(['coverings', 'vehicles', 'fixtures', 'bookings'] as const).flatMap((list) =>
    duplicates<{ readonly id: Id }>(
      document[list],
      (item) => item.id,
      (index) => `${field}.${list}.${index}.id`,
      'id',
    ),
  ),
  ...(['fixtures', 'bookings'] as const).flatMap((list) =>
    document[list].flatMap(({ venueId }, index) =>
      venueId === document.venue.id
        ? []
        : [{ field: `${field}.${list}.${index}.venueId`, reason: `is not the venue of the document, "${document.venue.id}"` }],
    ),
  ),
];

const bookingProblems = (
  { venue, bookings }: VenueDocument,
  known: { readonly coverings: ReadonlySet<Id>; readonly vehicles: ReadonlySet<Id> },
  field: string,
): readonly Problem[] =>
  bookings.flatMap((booking, index) => checkBooking(booking, { venue, ...known }, `${field}.bookings.${index}`));

const storeAll = async (contents: Contents, document: VenueDocument): Promise<Answer<Venue>> => {
  const coverings = await takeInClasses(contents.coverings, document.coverings);
  const vehicles = await takeInClasses(contents.vehicles, document.vehicles);
  const stored = await contents.venues.save({ ...document.venue, revision: 0 });
  if (stored.outcome !== 'stored') throw new Error('a venue that was not there could not be stored');
  for (const fixture of document.fixtures) {
    const id = await freeId(fixture.id, async (wanted) => (await contents.fixtures.find(wanted)) !== null);
    await contents.fixtures.save({ ...fixture, id, revision: 0 });
  }
  for (const booking of document.bookings) {
    const id = await freeId(booking.id, async (wanted) => (await contents.bookings.find(wanted)) !== null);
    await contents.bookings.save({ ...renamed(booking, coverings, vehicles), id, revision: 0 });
  }
  return done(stored.value);
};

/** Stores the classes that are not here yet; answers the id each one of the document now has. */
const takeInClasses = async <Value extends { readonly id: Id }>(
  classes: Classes<Value>,
  arriving: readonly Value[],
): Promise<ReadonlyMap<Id, Id>> => {
  const here = new Map((await classes.list()).map((value) => [value.id, value]));
  const ids = new Map<Id, Id>();
  for (const value of arriving) {
    const standing = here.get(value.id);
    const id = !standing || isDeepStrictEqual(standing, value) ? value.id : await freeId(value.id, (wanted) => here.has(wanted));
    ids.set(value.id, id);
    if (standing && id === value.id) continue;
    const kept = { ...value, id };
    await classes.save(kept);
    here.set(id, kept);
  }
  return ids;
};

const renamed = (booking: Booking, coverings: ReadonlyMap<Id, Id>, vehicles: ReadonlyMap<Id, Id>): Booking => ({
  ...booking,
  layers: booking.layers.map((layer) => ({ ...layer, covering: coverings.get(layer.covering) ?? layer.covering })),
  traffic: booking.traffic.map((pass) => ({ ...pass, vehicle: vehicles.get(pass.vehicle) ?? pass.vehicle })),
});

/** The id itself, or the first of `id-2`, `id-3` … that is not taken; long ids are cut to keep within 64 characters. */
const freeId = async (id: Id, taken: (id: Id) => boolean | Promise<boolean>): Promise<Id> => {
  let wanted = id;
  for (let number = 2; await taken(wanted); number++) {
    const ending = `-${number}`;
    wanted = id.slice(0, 64 - ending.length).replace(/-+$/, '') + ending;
  }
  return wanted;
};
