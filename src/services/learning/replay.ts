import { dateOf, toEpoch } from '#shared/calendar/local-time.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { done } from '#services/answers.ts';
import { parametersOf } from '#services/forecast/question.ts';
import { assimilationOf } from '#services/learning/assimilation-of.ts';
import { enoughMembers, pastRun, type PastRun } from '#services/learning/past-run.ts';
import { seenInInspections } from '#services/learning/seen-in-inspections.ts';
import { standingInspections } from '#services/learning/standing.ts';
import type { Service } from '#services/needs.ts';

/** Forecasts a past event with what was known at a moment; what was seen later stands beside. Nothing is kept. */
export const replayEvent: Service<'learning/replay'> = async (needs, { forecastId, knownAt, members }) => {
  const gathered = await needs.store.read((contents): Promise<Answer<PastRun>> => pastRun(contents, forecastId));
  if (!gathered.ok) return gathered;
  const { root, lines } = gathered.value;
  const question = asKnownAt(gathered.value.question, knownAt);
  const asked = { ...question, members: enoughMembers(members, question.members) };
  const moment = toEpoch(knownAt, question.venue.place.timeZone);
  const then = standingInspections(lines, moment).filter((one) => one.at <= knownAt);
  const later = standingInspections(lines, null).filter((one) => one.at > knownAt);
  const found = seenInInspections(then, root.result, question.parameters);
  const beside = seenInInspections(later, root.result, question.parameters).seen;
  return done(async (work) => {
    const weighed = await needs.compute('assimilate', { question: asked, seen: found.seen, beside }, work);
    const createdAt = new Date(needs.now()).toISOString();
    return done({
      assimilation: assimilationOf({ root, weighed, found, beside, knownAt, createdAt }),
      forecast: weighed.forecast,
    });
  });
};

/** Days logged and numbers learnt after the moment are taken away again; a number's earlier value is not kept, so the catalogue's stands. */
export const asKnownAt = (question: ForecastQuestion, knownAt: LocalTime): ForecastQuestion => {
  const date = dateOf(knownAt);
  const settings = Object.fromEntries(Object.entries(question.venue.settings).filter(([, { since }]) => since <= date));
  const venue = { ...question.venue, settings };
  return { ...question, venue, parameters: parametersOf(venue), actual: question.actual.filter((day) => day.date < date) };
};
