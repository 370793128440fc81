import type { PlanRun } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { UnitSystem } from '#shared/units/quantity.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import type { KeptPlan, RecoveryPapers, SeasonEvent } from '#reports/recovery-papers.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import { estimateOf } from '#services/money/estimate.ts';
import { moneyOf } from '#services/money/records.ts';
import { evidenceOf } from '#services/report/evidence.ts';
import type { Contents } from '#store/store.ts';

/** A kept plan with the question its forecast answered. */
interface Opened {
  readonly kept: KeptPlan;
  readonly question: ForecastQuestion & { readonly booking: Booking };
}

const opened = async (contents: Contents, planId: string, field: string): Promise<Answer<Opened>> => {
  const plan = await contents.plans.find(planId);
  if (!plan) return notFound('plan', planId);
  const forecast = await contents.runs.find(plan.forecastId);
  const input = await contents.runs.inputOf(plan.forecastId);
  if (!forecast || input === null) return notFound('forecast', plan.forecastId);
  const question = JSON.parse(input) as ForecastQuestion;
  const { venue, booking } = question;
  if (booking === null) return invalid([{ field, reason: 'belongs to a forecast without an event' }]);
  const terms = await contents.money.terms(booking.id);
  const prices = await contents.money.priceBook(venue.id);
  const estimate = estimateOf({ venue, booking, forecast: forecast.result, plan, terms, prices });
  return done({ kept: { booking, forecast, plan, estimate }, question: { ...question, booking } });
};

/** Most plans before this one that are looked at for what fell away since. */
const mostEarlier = 30;

/**
 * Everything the papers of a plan are written from, as one transaction sees it. What was planned later than the plan is left out; the other
 * events of its year are read for the paper that lists them.
 */
export const gather = async (
  contents: Contents,
  planId: string,
  alternatives: readonly string[],
  { units, withSeason }: { readonly units: UnitSystem; readonly withSeason: boolean },
): Promise<Answer<RecoveryPapers>> => {
  const main = await opened(contents, planId, 'planId');
  if (!main.ok) return main;
  const { kept, question } = main.value;
  const { venue } = question;
  const beside: KeptPlan[] = [];
  for (const [index, id] of alternatives.entries()) {
    const other = await opened(contents, id, `alternatives.${index}`);
    if (!other.ok) return other;
    if (other.value.question.venue.id !== venue.id)
      return invalid([{ field: `alternatives.${index}`, reason: 'is a plan of another venue' }]);
    beside.push(other.value.kept);
  }
  const earlier = await earlierPlans(contents, kept.plan);
  return done({
    ...kept,
    venue,
    coverings: question.coverings,
    vehicles: question.vehicles,
    fixtures: question.fixtures,
    others: question.others,
    money: await moneyOf(contents, venue, kept.booking),
    alternatives: beside,
    earlier,
    season: withSeason ? await seasonOf(contents, venue, kept) : [],
    evidence: await evidenceOf(contents, venue, kept, earlier.at(-1) ?? kept.plan, units),
  });
};

const earlierPlans = async (contents: Contents, plan: PlanRun): Promise<readonly PlanRun[]> => {
  const lines = (await contents.plans.linesOfVenue(plan.venueId)).filter(
    (line) => line.bookingId === plan.bookingId && line.fixtureId === plan.fixtureId && line.createdAt < plan.createdAt,
  );
  const plans: PlanRun[] = [];
  // The first of all stays: it is what the fact is held against.
  for (const line of lines.length > mostEarlier ? [...lines.slice(0, mostEarlier - 1), lines.at(-1)!] : lines) {
    const found = await contents.plans.find(line.id);
    if (found) plans.push(found);
  }
  return plans;
};

/** Newest plan of every event whose home date lies in the same year, none newer than this one; in the order the events begin. */
const seasonOf = async (contents: Contents, venue: Venue, kept: KeptPlan): Promise<readonly SeasonEvent[]> => {
  const year = kept.forecast.result.homeDate.start.slice(0, 4);
  const all: KeptPlan[] = [kept];
  for (const { id, bookingId } of await contents.plans.newestOfYear(venue.id, year, kept.plan.createdAt)) {
    if (bookingId === kept.booking.id) continue;
    const other = await opened(contents, id, 'planId');
    if (other.ok) all.push(other.value.kept);
  }
  const events: SeasonEvent[] = [];
  for (const one of all) events.push({ kept: one, money: await moneyOf(contents, venue, one.booking) });
  return events.toSorted((a, b) => (beginOf(a.kept.booking) < beginOf(b.kept.booking) ? -1 : 1));
};

const beginOf = (booking: Booking): string => booking.layers.map((layer) => layer.on).toSorted()[0] ?? '';
