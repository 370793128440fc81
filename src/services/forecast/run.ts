import { engineVersion } from '#engine/version.ts';
import { done, notFound } from '#services/answers.ts';
import { canonicalJson, fingerprint, parameterVersion } from '#services/forecast/fingerprint.ts';
import { gatherQuestion } from '#services/forecast/question.ts';
import type { Service } from '#services/needs.ts';

/** m; finer cells change no zone by more than a reading can tell, and make a kept run four times as large. */
const cellSize = 2;

/** Everything that can be refused is refused before the work begins; the run is kept only when it is whole. */
export const runForecast: Service<'forecast/run'> = async (needs, { venueId, fixtureId, bookingId, members, seed }) => {
  const gathered = await needs.store.read(async (contents) => {
    const booking = bookingId === null ? null : await contents.bookings.find(bookingId);
    if (bookingId !== null && !booking) return notFound('booking', bookingId);
    return gatherQuestion(contents, { venueId, fixtureId, booking, members, seed, cellSize });
  });
  if (!gathered.ok) return gathered;
  const question = gathered.value;

  return done(async (work) => {
    const result = await needs.compute('foresee', question, work);
    const input = canonicalJson(question);
    const run = {
      id: `run-${needs.newId()}`,
      bookingId,
      venueId,
      fixtureId,
      createdAt: new Date(needs.now()).toISOString(),
      engineVersion,
      parameterVersion,
      seed,
      inputHash: fingerprint(input),
      result,
    };
    return needs.store.write(async (contents) => {
      if (!(await contents.venues.find(venueId))) return notFound('venue', venueId);
      await contents.runs.keep({ run, members, cellSize, input });
      return done(run);
    });
  });
};
