import type { Answer, Problem } from '#shared/contract/failure.ts';
import type { Proposal } from '#shared/vocabulary/learning.ts';
import type { PastEvent } from '#engine/learning/learn-from-events.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import { parametersOf } from '#services/forecast/question.ts';
import { pastRun } from '#services/learning/past-run.ts';
import { seenInInspections } from '#services/learning/seen-in-inspections.ts';
import { standingInspections } from '#services/learning/standing.ts';
import type { Checked, Service } from '#services/needs.ts';
import type { Contents } from '#store/store.ts';

interface Gathered {
  readonly runs: readonly string[];
  readonly events: readonly PastEvent[];
}

/** Learns from past events what the venue's own numbers may be, and keeps it as a proposal. Nothing changes until somebody accepts. */
export const proposeValues: Service<'learning/propose'> = async (needs, request) => {
  const gathered = await needs.store.read((contents) => gather(contents, request));
  if (!gathered.ok) return gathered;
  const { runs, events } = gathered.value;
  return done(async (work) => {
    const learnt = await needs.compute('learn', { events }, work);
    const proposal: Proposal = {
      id: `proposal-${needs.newId()}`,
      venueId: request.venueId,
      createdAt: new Date(needs.now()).toISOString(),
      runs,
      readings: events.reduce((sum, event) => sum + event.seen.length, 0),
      members: request.members,
      ...learnt,
      decision: null,
    };
    return needs.store.write(async (contents): Promise<Answer<Proposal>> => {
      if (!(await contents.venues.find(request.venueId))) return notFound('venue', request.venueId);
      await contents.learning.keepProposal(proposal);
      return done(proposal);
    });
  });
};

/** Every event once, asked again with the venue's numbers as they are now: those are what may be moved. */
const gather = async (
  contents: Contents,
  { venueId, runs, members, seed, surety }: Checked<'learning/propose'>,
): Promise<Answer<Gathered>> => {
  const venue = await contents.venues.find(venueId);
  if (!venue) return notFound('venue', venueId);
  const chosen = runs ?? (await newestOfEachEvent(contents, venueId));
  const problems: Problem[] = [];
  const events: PastEvent[] = [];
  const bookings = new Set<string>();
  for (const [index, id] of chosen.entries()) {
    const refuse = (reason: string): void => void problems.push({ field: `runs.${index}`, reason });
    if (!(await contents.learning.assimilation(id))) {
      refuse('is no run that was weighed by inspections');
      continue;
    }
    const past = await pastRun(contents, id);
    if (!past.ok) return past;
    const { root, question, lines } = past.value;
    if (root.venueId !== venueId) refuse('is a run of another venue');
    else if (bookings.has(root.bookingId!)) refuse('is a second run of one event: what was seen there would count twice');
    bookings.add(root.bookingId!);
    const { seen } = seenInInspections(standingInspections(lines, null), root.result, question.parameters);
    const asThen = { ...question.venue, settings: venue.settings };
    const own = parametersOf(asThen);
    const parameters = surety === null ? own : { ...own, 'learning.surety': surety };
    events.push({ question: { ...question, venue: asThen, parameters, members, seed }, seen });
  }
  if (chosen.length === 0) problems.push({ field: 'runs', reason: 'there is no run yet that was weighed by inspections' });
  return problems.length > 0 ? invalid(problems) : done({ runs: chosen, events });
};

const newestOfEachEvent = async (contents: Contents, venueId: string): Promise<readonly string[]> => {
  const byEvent = new Map<string, string>();
  for (const { bookingId, runId } of await contents.learning.assimilations(venueId))
    if (bookingId !== null && runId !== null && !byEvent.has(bookingId)) byEvent.set(bookingId, runId);
  return [...byEvent.values()];
};
