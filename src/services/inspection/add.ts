import type { Problem } from '#shared/contract/failure.ts';
import type { Inspection, NewInspection } from '#shared/vocabulary/inspection.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';
import { zoneLetters } from '#services/zone-letters.ts';
import type { Contents } from '#store/store.ts';

/** Adds an inspection. None is ever changed: a correction is a new one that names the one it puts right. */
export const addInspection: Service<'inspection/add'> = ({ store, newId, now }, { inspection }) =>
  store.write(async (contents) => {
    const venue = await contents.venues.find(inspection.venueId);
    if (!venue) return notFound('venue', inspection.venueId);
    const booking = inspection.bookingId === null ? null : await contents.bookings.find(inspection.bookingId);
    if (inspection.bookingId !== null && booking?.venueId !== venue.id) return notFound('booking', inspection.bookingId);
    const problems = [
      ...zoneProblems(inspection, venue, booking),
      ...(await clauseProblems(inspection, contents)),
      ...(await photographProblems(inspection, contents)),
      ...(await correctionProblems(inspection, contents)),
    ];
    if (problems.length > 0) return invalid(problems);
    const kept: Inspection = { id: `inspection-${newId()}`, ...inspection, enteredAt: new Date(now()).toISOString() };
    await contents.inspections.add(kept);
    return done({ inspection: kept, correctedBy: null });
  });

const zoneProblems = (inspection: NewInspection, venue: Venue, booking: Booking | null): readonly Problem[] => {
  const letters = zoneLetters(venue, booking);
  return (['readings', 'defects', 'spills'] as const).flatMap((list) =>
    inspection[list].flatMap(({ zone }, index) =>
      letters.has(zone)
        ? []
        : [
            {
              field: `inspection.${list}.${index}.zone`,
              reason: `there is no zone "${zone}"; there are ${[...letters].join(', ')}`,
            },
          ],
    ),
  );
};

/** Clauses are those that were agreed for the event. */
const clauseProblems = async ({ bookingId, defects }: NewInspection, contents: Contents): Promise<readonly Problem[]> => {
  if (defects.every((defect) => defect.clause === null)) return [];
  const terms = bookingId === null ? null : await contents.money.terms(bookingId);
  const numbers = new Set(terms?.clauses.map((clause) => clause.number));
  return defects.flatMap(({ clause }, index) =>
    clause === null || numbers.has(clause)
      ? []
      : [{ field: `inspection.defects.${index}.clause`, reason: 'is not among the terms of this event' }],
  );
};

const photographProblems = async ({ venueId, photographs }: NewInspection, contents: Contents): Promise<readonly Problem[]> => {
  const problems: Problem[] = [];
  for (const [index, id] of photographs.entries()) {
    const photograph = await contents.photographs.find(id);
    if (photograph?.venueId !== venueId)
      problems.push({ field: `inspection.photographs.${index}`, reason: `there is no photograph "${id}" of this venue` });
  }
  return problems;
};

/** One correction each: a second one puts the first right, so that there is always one that stands. */
const correctionProblems = async (inspection: NewInspection, contents: Contents): Promise<readonly Problem[]> => {
  if (inspection.corrects === null) return [];
  const refuse = (reason: string): readonly Problem[] => [{ field: 'inspection.corrects', reason }];
  const old = await contents.inspections.find(inspection.corrects);
  if (old?.inspection.venueId !== inspection.venueId) return refuse('names no inspection of this venue');
  if (old.inspection.bookingId !== inspection.bookingId) return refuse('names an inspection of another event');
  if (old.correctedBy !== null) return refuse(`was put right already, by "${old.correctedBy}": correct that one`);
  return [];
};
