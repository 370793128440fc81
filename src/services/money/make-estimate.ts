import { done, invalid, notFound } from '#services/answers.ts';
import { estimateOf } from '#services/money/estimate.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import type { Service } from '#services/needs.ts';

/** What a kept plan costs in a kind, a usual and a hard season, and who bears it. */
export const makeEstimate: Service<'money/estimate'> = ({ store }, { planId }) =>
  store.read(async (contents) => {
    const plan = await contents.plans.find(planId);
    if (!plan) return notFound('plan', planId);
    const run = await contents.runs.find(plan.forecastId);
    const input = await contents.runs.inputOf(plan.forecastId);
    if (!run || input === null) return notFound('forecast', plan.forecastId);
    const { venue, booking } = JSON.parse(input) as ForecastQuestion;
    if (booking === null) return invalid([{ field: 'planId', reason: 'belongs to a forecast without an event' }]);
    const terms = await contents.money.terms(booking.id);
    const prices = await contents.money.priceBook(venue.id);
    return done(estimateOf({ venue, booking, forecast: run.result, plan, terms, prices }));
  });
