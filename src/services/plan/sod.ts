import { frozenQuestion } from '#services/forecast/frozen-question.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { RecoveryProblem } from '#shared/vocabulary/plan.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';
import type { SodReserve } from '#shared/vocabulary/sod.ts';
import { rangeOf } from '#engine/forecast/percentiles.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { compareFarms } from '#planner/compare-farms.ts';
import { bestReserve, equalMembers, type NeedMember } from '#planner/sod-reserve.ts';
import { done, notFound } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';
import { figuresOf } from '#services/plan/figures.ts';
import { outlookQuestion } from '#services/plan/outlook-question.ts';

/** What a kept plan was made from. */
interface Gathered {
  readonly question: ForecastQuestion;
  readonly problem: RecoveryProblem;
}

/** Works from what the plan was made from, not from the venue as it is now: it explains that plan. */
export const decideSod: Service<'plan/sod'> = async (needs, { id }) => {
  const gathered = await needs.store.read(async (contents): Promise<Answer<Gathered>> => {
    const run = await contents.plans.find(id);
    const input = await contents.plans.inputOf(id);
    const asked = run === null ? null : await contents.runs.inputOf(run.forecastId);
    if (input === null || asked === null) return notFound('plan', id);
    return done({ question: frozenQuestion(asked), problem: JSON.parse(input) as RecoveryProblem });
  });
  if (!gathered.ok) return gathered;
  const { question, problem } = gathered.value;

  return done(async ({ signal, report }) => {
    const kept = needOverWindows(problem);
    const bare =
      kept ??
      (
        await needs.compute('outlook', outlookQuestion(question, problem.construction, problem.farms), {
          signal,
          report: ({ share }) => report({ share: 0.4 * share, note: 'reckoning what may be needed' }),
        })
      ).need;
    const need = bare.map((area) => area * (1 + problem.rules.sodWaste));
    report({ share: 0.5, note: 'planning with each farm alone' });
    const farms = await compareFarms(problem, needs.optimiser, { signal });
    if (signal.aborted)
      return { ok: false, failure: { kind: 'cancelled', message: 'The comparison was stopped. Nothing was changed.' } };
    return done({
      planId: id,
      need: rangeOf(need),
      farms: farms.map(({ farm, outcome }) => ({ farm, ...figuresOf(outcome) })),
      reserves: problem.farms.flatMap((farm) => cuts(farm).map((cut) => reserveOf(farm, cut, equalMembers(need)))),
    });
  });
};

/**
 * What all windows of a plan may need, m² by member; null in a plan kept before it was written down, which had the next home date only.
 * Members of different forecasts meet by their number; where one has fewer, its members are gone through again.
 */
const needOverWindows = ({ windows }: RecoveryProblem): readonly number[] | null => {
  const needs = windows.map(({ need }) => need ?? []);
  if (needs.some((need) => need.length === 0)) return null;
  const members = Math.max(...needs.map((need) => need.length));
  return Array.from({ length: members }, (_, member) => needs.reduce((sum, need) => sum + need[member % need.length]!, 0));
};

const cuts = (farm: Farm): readonly SodReserve['cut'][] => [
  ...(farm.thinCut === null ? [] : (['thin'] as const)),
  ...(farm.thickCut === null ? [] : (['thick'] as const)),
];

/** Where no reserve is offered it is priced like a rush order, which makes holding any pointless. */
const reserveOf = (farm: Farm, cut: SodReserve['cut'], members: readonly NeedMember[]): SodReserve => {
  const price = cut === 'thin' ? farm.thinPrice : farm.thickPrice;
  const { reservePrice, rushPrice, cancelShare, stock } = farm;
  const missing = [
    ...(price === null ? (['sod'] as const) : []),
    ...(reservePrice === null ? (['reserve'] as const) : []),
    ...(rushPrice === null ? (['rush order'] as const) : []),
  ];
  if (price === null || rushPrice === null) return { farm: farm.id, cut, missing, best: null, curve: [] };
  const { curve, ...best } = bestReserve(
    { price, reserveFee: reservePrice ?? rushPrice, shortPrice: rushPrice, cancelShare, most: stock },
    members,
  );
  return { farm: farm.id, cut, missing, best, curve };
};
