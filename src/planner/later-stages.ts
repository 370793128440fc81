import { planned, startFrom } from '#planner/planned.ts';
import type { Planned } from '#planner/planned.ts';
import type { PlanPrices } from '#planner/plan-prices.ts';
import type { Runner } from '#planner/planning-run.ts';
import type { Clash, RecoveryModel } from '#planner/recovery-model.ts';
import { recoveryModel } from '#planner/recovery-model.ts';
import { bandSize, withinBand } from '#planner/start-band.ts';
import { windowGroups } from '#planner/window-groups.ts';
import type { ChosenZone, ZoneOption } from '#planner/zone-options.ts';
import type { Setting } from '#planner/setting.ts';

/**
 * Stage 2: the smallest expected shortfall, weighed by area and how much a zone is seen, at no higher cost. Stage 3: the most time in
 * hand, the smallest first, rain-weighted, at no higher cost and shortfall. Programmes stay.
 */
export const laterStages = async (
  setting: Setting,
  prices: PlanPrices,
  plan: Planned,
  run: Runner,
  clashes: readonly Clash[],
): Promise<Planned> => {
  const { problem } = setting;
  const zones: ChosenZone[] = [];
  let value = 0;
  const stockLeft = problem.farms.map(({ stock }) => stock);
  for (const group of windowGroups(setting)) {
    const first = plan.zones.filter(({ option }) => group.some(({ id }) => id === option.window.id));
    if (first.length === 0) continue;
    const size = bandSize(
      setting,
      first.map(({ option }) => option),
    );
    const mine = first.map(({ option, starts }) => ({
      option: withinBand(setting, option, size, { keep: starts })!,
      starts,
    }));
    const fixed = mine.map(({ option }) => [option]);
    const afterOf = new Map(zones.map(({ option }) => [option.zone.letter, option.programme.kind]));
    const shortfall = (option: ZoneOption, finish: number): number =>
      (option.outlook(finish, afterOf.get(option.zone.letter) ?? null)?.shortfall ?? 0) * option.zone.area * option.zone.weight;
    let current: Planned = { zones: mine, value: 0 };
    const costModel = recoveryModel(setting, fixed, prices, { wholeStarts: 'all', stockLeft, clashes });
    const cap = costOf(costModel, current);
    for (const stage of ['surface', 'slack'] as const) {
      if (run.cancelled()) break;
      const model = recoveryModel(setting, fixed, prices, { wholeStarts: 'all', stockLeft, clashes });
      capCost(model, cap + 0.5);
      if (stage === 'surface') aimAtSurface(model, shortfall);
      else {
        const reached = current.zones.reduce((sum, { option, starts }) => sum + surfaceOf(option, starts, shortfall), 0);
        capSurface(model, shortfall, reached + 1e-6 * Math.max(1, reached));
        aimAtSlack(model, setting);
      }
      const start = startFrom(model, current);
      if (start && stage === 'slack') fillSlack(model, start);
      const solution = await run(stage, model, { gap: 0.01, absoluteGap: 0.5, share: 0.25, ...(start ? { start } : {}) });
      if (solution.values) current = planned(model, model.read(solution.values));
    }
    zones.push(...current.zones.map(({ option, starts }) => ({ option: wholeOf(plan, option), starts })));
    value += costOf(costModel, current);
    for (const { option, starts } of current.zones) {
      for (const { farm } of starts) if (farm !== null) stockLeft[farm]! -= option.zone.area * (1 + problem.rules.sodWaste);
    }
  }
  return { zones, value };
};

/** The option without its band. */
const wholeOf = (plan: Planned, banded: ZoneOption): ZoneOption =>
  plan.zones.find(({ option }) => option.zone.letter === banded.zone.letter && option.window.id === banded.window.id)!.option;

const surfaceOf = (
  option: ZoneOption,
  starts: ChosenZone['starts'],
  shortfall: (option: ZoneOption, finish: number) => number,
): number => (starts.length === 0 ? 0 : shortfall(option, starts.at(-1)!.timed.end));

const costOf = (model: RecoveryModel, plan: Planned): number => {
  const values = startFrom(model, plan);
  if (!values) throw new Error('a plan does not fit the model it came from');
  const { cost } = model.model.build().columns;
  return cost.reduce((sum, price, column) => sum + price * values[column]!, 0);
};

/** The cost of a model becomes a row, and its objective is emptied. */
const capCost = (model: RecoveryModel, cap: number): void => {
  const { cost } = model.model.build().columns;
  const entries: (readonly [number, number])[] = [];
  cost.forEach((price, column) => {
    if (price !== 0) entries.push([column, price]);
    model.model.price(column, 0);
  });
  model.model.row(-Infinity, cap, entries);
};

const lastStarts = (
  model: RecoveryModel,
): readonly { readonly option: ZoneOption; readonly column: number; readonly end: number }[] =>
  model.options.flatMap((option, index) => {
    if (option.steps.length === 0) return [];
    const task = model.tasks[index]!.at(-1)!;
    return option.starts.at(-1)!.map(({ timed }, place) => ({ option, column: model.start[task]![place]!, end: timed.end }));
  });

const aimAtSurface = (model: RecoveryModel, shortfall: (option: ZoneOption, finish: number) => number): void => {
  for (const { option, column, end } of lastStarts(model)) model.model.price(column, shortfall(option, end));
};

const capSurface = (model: RecoveryModel, shortfall: (option: ZoneOption, finish: number) => number, cap: number): void => {
  model.model.row(
    -Infinity,
    cap,
    lastStarts(model).map(({ option, column, end }) => [column, shortfall(option, end)] as const),
  );
};

/** Column of the smallest slack: the last one of a model that `aimAtSlack` has gone over. */
const aimAtSlack = (model: RecoveryModel, setting: Setting): void => {
  const last = lastStarts(model);
  const working = new Set(last.map(({ option }) => option));
  const smallest = model.model.column(-10 * working.size, -1e6, 1e6, false);
  for (const option of working) {
    const mine = last.filter((one) => one.option === option);
    model.model.row(-Infinity, option.deadline, [...mine.map(({ column, end }) => [column, end] as const), [smallest, 1]]);
  }
  for (const { option, column, end } of last) {
    model.model.price(column, -(option.deadline - end) / rainWeight(setting, end, option.deadline));
  }
};

/** An hour in hand counts for less where rain is likely: 1 + mean chance of rain between the end and the deadline. */
const rainWeight = (setting: Setting, end: number, deadline: number): number => {
  const between = setting.problem.shifts.filter((_, shift) => {
    const [from] = setting.hours.shifts[shift]!;
    return from >= end && from < deadline;
  });
  return between.length === 0 ? 1 : 1 + between.reduce((sum, { rainChance }) => sum + rainChance, 0) / between.length;
};

const fillSlack = (model: RecoveryModel, values: Float64Array): void => {
  const last = lastStarts(model);
  const slacks = [...new Set(last.map(({ option }) => option))].map(
    (option) =>
      option.deadline -
      last.filter((one) => one.option === option).reduce((sum, { column, end }) => sum + values[column]! * end, 0),
  );
  values[values.length - 1] = Math.min(...slacks, 1e6);
};
