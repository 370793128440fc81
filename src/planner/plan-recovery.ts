import type { AbortSignalLike, Optimiser, Progress, Solution } from '#planner/optimiser.ts';
import { noPrices, planPrices } from '#planner/plan-prices.ts';
import type { PlanPrices } from '#planner/plan-prices.ts';
import type { Clash, RecoveryModel } from '#planner/recovery-model.ts';
import { recoveryModel } from '#planner/recovery-model.ts';
import { refuseNonsense } from '#planner/refuse-nonsense.ts';
import type { Schedule } from '#planner/timetable.ts';
import type { ChosenZone } from '#planner/written-plan.ts';
import { writtenPlan } from '#planner/written-plan.ts';
import type { ClosedOption, OptionLimits, Setting, ZoneOption } from '#planner/zone-options.ts';
import { settingOf, unlockedProgrammes, zoneOption } from '#planner/zone-options.ts';
import { hoursWithinShifts } from '#planner/hours-within-shifts.ts';
import { checkPlan } from '#planner/check-plan.ts';
import type { ProgrammeKind, RecoveryPlan, RecoveryProblem, RecoveryWindow } from '#shared/vocabulary/plan.ts';

export type PlanStage = 'programmes' | 'sequence' | 'polish' | 'surface' | 'slack';

export interface PlanningOptions {
  /** Relative gap to be proven; 0.005 when absent. */
  readonly gap?: number;
  /** s for the whole; 60 when absent. */
  readonly timeLimit?: number;
  readonly onProgress?: (stage: PlanStage, progress: Progress) => void;
  readonly signal?: AbortSignalLike;
  /** Only ask whether there is any plan at all: no polish, no later stages. */
  readonly anyPlan?: boolean;
}

export type PlanOutcome =
  | { readonly kind: 'plan'; readonly plan: RecoveryPlan }
  /** Proved to have no plan; `closed` names zone-windows without a programme, if that is why. */
  | { readonly kind: 'none'; readonly closed: readonly ClosedOption[] }
  | { readonly kind: 'stopped'; readonly reason: 'cancelled' | 'time' };

/** The programmes a zone may take in a window, and why the others are closed. */
export interface ZoneChoice {
  readonly zone: string;
  readonly window: RecoveryWindow;
  readonly open: readonly ZoneOption[];
  readonly closed: readonly ClosedOption[];
}

/** Every zone and window with its programmes. Programmes of earlier windows limit what is asked of the forecast. */
export const zoneChoices = (setting: Setting, limits: Pick<OptionLimits, 'readyOrNot'> = {}): readonly ZoneChoice[] => {
  const { problem } = setting;
  const lastOpen = new Map<string, readonly ProgrammeKind[]>();
  return problem.windows.flatMap((window) =>
    window.zones.map(({ letter }): ZoneChoice => {
      const zone = problem.zones.find((one) => one.letter === letter)!;
      const before = lastOpen.get(letter);
      const found = unlockedProgrammes(problem, letter, window.id).map((programme) =>
        zoneOption(setting, zone, window, programme, { ...limits, ...(before ? { possibleBefore: before } : {}) }),
      );
      const open = found.filter((option): option is ZoneOption => 'steps' in option);
      if (open.length > 0)
        lastOpen.set(
          letter,
          open.map(({ programme }) => programme.kind),
        );
      return { zone: letter, window, open, closed: found.filter((option): option is ClosedOption => !('steps' in option)) };
    }),
  );
};

/**
 * The cheapest recovery that keeps every limit, then the best surface at that cost, then the most time in hand before each deadline.
 *
 * 1. A zone-window without a programme is named at once. 2. A master over all windows chooses the programmes (sod laying and
 * trucks whole, other starts in parts), which also gives a bound for the whole. 3. Window by window the jobs are sequenced
 * exactly. 4. Where the gap is still open, programmes are freed again, warm started. 5. Two more stages per window keep the cost.
 * 6. An independent checker goes over the result; a plan that it refuses is an error, never an answer.
 *
 * Errors: `PlanRefusal` for nonsense input.
 */
export const schedulePlan = async (
  problem: RecoveryProblem,
  optimiser: Optimiser,
  options: PlanningOptions = {},
): Promise<PlanOutcome> => {
  refuseNonsense(problem);
  const setting = settingOf(problem);
  const prices = options.anyPlan ? noPrices : planPrices(problem);
  const choices = zoneChoices(setting);
  const without = choices.filter(({ open }) => open.length === 0);
  if (without.length > 0) return { kind: 'none', closed: without.flatMap(({ closed }) => closed) };
  const run = runner(optimiser, options);
  const wanted = options.anyPlan ? 1 : (options.gap ?? 0.005);

  const masterModel = recoveryModel(
    setting,
    choices.map(({ open }) => open),
    prices,
    { wholeStarts: 'sod' },
  );
  const master = await run('programmes', masterModel, { gap: Math.min(0.003, wanted), share: 0.5 });
  if (master.status === 'infeasible') return { kind: 'none', closed: [] };
  if (master.status === 'cancelled') return { kind: 'stopped', reason: 'cancelled' };
  let bound = master.bound;
  // With one window the bound of the master tells when its sequence is good enough.
  const target = problem.windows.length === 1 && Number.isFinite(bound) ? bound * (1 + 0.8 * wanted) : undefined;

  let best: Planned | null = null;
  if (master.values) {
    const programmes = masterModel.read(master.values).options.map((index) => masterModel.options[index]!.programme.kind);
    best = await sequenceWindows(setting, choices, prices, programmes, run, target);
  }
  if (run.cancelled()) return { kind: 'stopped', reason: 'cancelled' };
  if (best === null || gapOf(best.value, bound) > wanted) {
    const whole = recoveryModel(
      setting,
      choices.map(({ open }) => open),
      prices,
      { wholeStarts: 'all' },
    );
    const start = best ? startFrom(whole, best) : null;
    const polished = await run('polish', whole, {
      gap: wanted,
      share: 0.9,
      ...(start ? { start } : {}),
    });
    if (polished.status === 'infeasible' && best === null) return { kind: 'none', closed: [] };
    bound = Math.max(bound, polished.bound);
    if (polished.values) {
      const found = planned(whole, whole.read(polished.values));
      if (best === null || found.value < best.value) best = found;
    }
  }
  if (best === null) return { kind: 'stopped', reason: run.cancelled() ? 'cancelled' : 'time' };
  if (!options.anyPlan) best = await workable(setting, choices, prices, best, run, target);
  if (run.cancelled()) return { kind: 'stopped', reason: 'cancelled' };
  return { kind: 'plan', plan: finished(setting, prices, best, bound, wanted, run) };
};

/** Rounds in which clashes within a shift are solved before what is left is named as a caution. */
const mostRounds = 8;

/**
 * The later stages, until the hours within the shifts can be laid out: steps that share a machine may fill the hours of a shift and yet
 * not fit into it in any order. Such a set is kept apart and the windows are sequenced again with the same programmes.
 */
const workable = async (
  setting: Setting,
  choices: readonly ZoneChoice[],
  prices: PlanPrices,
  first: Planned,
  run: Runner,
  target: number | undefined,
): Promise<Planned> => {
  const clashes: Clash[] = [];
  let staged = await laterStages(setting, prices, first, run, clashes);
  let fewest = hoursWithinShifts(setting, staged.zones).clashes;
  let latest = fewest;
  for (let round = 0; round < mostRounds && latest.length > 0 && !run.cancelled(); round += 1) {
    clashes.push(...latest);
    const programmes = choices.map(
      ({ zone, window }) =>
        first.zones.find(({ option }) => option.zone.letter === zone && option.window.id === window.id)!.option.programme.kind,
    );
    const again = await sequenceWindows(setting, choices, prices, programmes, run, target, clashes);
    if (again === null) break;
    const next = await laterStages(setting, prices, again, run, clashes);
    latest = hoursWithinShifts(setting, next.zones).clashes;
    if (latest.length < fewest.length) [staged, fewest] = [next, latest];
  }
  return staged;
};

/** Zones with their option and the start of each step. */
interface Planned {
  readonly zones: readonly ChosenZone[];
  /** Value of the aim. */
  readonly value: number;
}

const gapOf = (value: number, bound: number): number =>
  value - bound <= 0.5
    ? Math.max(0, value - bound) / Math.max(Math.abs(value), 1e4)
    : (value - bound) / Math.max(Math.abs(value), 1e-9);

const finished = (
  setting: Setting,
  prices: PlanPrices,
  best: Planned,
  bound: number,
  wanted: number,
  run: Runner,
): RecoveryPlan => {
  const gap = gapOf(best.value, bound);
  const standing = {
    aim: prices.aim,
    value: best.value,
    bound: Math.min(bound, best.value),
    gap,
    proven: gap <= wanted + 1e-9,
    stoppedByTime: run.stoppedByTime(),
  };
  // Within the shifts the jobs are strung out so that a machine is in one place; where that breaks a rule, they stay as they were.
  for (const zones of [hoursWithinShifts(setting, best.zones).zones, best.zones]) {
    const plan = writtenPlan(setting, zones, standing);
    const broken = checkPlan(setting.problem, plan);
    if (broken.length === 0) return plan;
    if (zones === best.zones) throw new Error(`the plan breaks its own rules: ${broken.slice(0, 3).join('; ')}`);
  }
  throw new Error('unreachable');
};

interface Ask {
  readonly gap: number;
  readonly absoluteGap?: number;
  /** Value that is good enough because the bound is known from elsewhere. */
  readonly target?: number;
  /** Share of the time left that it may take. */
  readonly share: number;
  readonly start?: Float64Array;
}
interface Runner {
  (stage: PlanStage, model: RecoveryModel, ask: Ask): Promise<Solution>;
  cancelled(): boolean;
  stoppedByTime(): boolean;
}

/** Hands models to the optimiser within the time and the signal of one planning. */
const runner = (optimiser: Optimiser, options: PlanningOptions): Runner => {
  let left = options.timeLimit ?? 60;
  let stopped = false;
  const run = async (
    stage: PlanStage,
    { model }: RecoveryModel,
    { gap, absoluteGap, target, share, start }: Ask,
  ): Promise<Solution> => {
    const solution = await optimiser.solve(model.build(), {
      gap,
      absoluteGap: absoluteGap ?? 0.5,
      timeLimit: Math.max(0.5, left * share),
      ...(target === undefined ? {} : { target }),
      ...(start ? { start } : {}),
      ...(options.signal ? { signal: options.signal } : {}),
      ...(options.onProgress ? { onProgress: (progress: Progress) => options.onProgress!(stage, progress) } : {}),
    });
    left -= solution.seconds;
    if (solution.status === 'stopped') stopped = true;
    return solution;
  };
  return Object.assign(run, { cancelled: () => options.signal?.aborted ?? false, stoppedByTime: () => stopped });
};

/** Reads zones, options and starts out of a schedule. */
const planned = (model: RecoveryModel, schedule: Schedule): Planned => {
  const zones = schedule.options.map((index): ChosenZone => {
    const option = model.options[index]!;
    return { option, starts: option.steps.map((_, step) => option.starts[step]![schedule.starts[model.tasks[index]![step]!]!]!) };
  });
  return { zones, value: valueOf(model, schedule) };
};

/** Value of the aim of a complete schedule. */
const valueOf = (model: RecoveryModel, schedule: Schedule): number => {
  const values = model.complete(schedule);
  const { cost } = model.model.build().columns;
  return cost.reduce((sum, price, column) => sum + price * values[column]!, 0);
};

/** Column values of a plan in another model of the same problem, or null where one of its starts is not in there. */
const startFrom = (model: RecoveryModel, plan: Planned): Float64Array | null => {
  const starts: (number | null)[] = model.timetable.tasks.map(() => null);
  const options: number[] = [];
  for (const zone of plan.zones) {
    const index = model.options.findIndex(
      (option) =>
        option.zone.letter === zone.option.zone.letter &&
        option.window.id === zone.option.window.id &&
        option.programme.kind === zone.option.programme.kind,
    );
    if (index < 0) return null;
    options.push(index);
    for (const [step, chosen] of zone.starts.entries()) {
      const place = model.options[index]!.starts[step]!.findIndex(
        ({ timed, farm }) => timed.shift === chosen.timed.shift && farm === chosen.farm,
      );
      if (place < 0) return null;
      starts[model.tasks[index]![step]!] = place;
    }
  }
  return model.complete({ options, starts });
};

/** Exact sequence of each window with the programmes given; null where one cannot be sequenced. */
const sequenceWindows = async (
  setting: Setting,
  choices: readonly ZoneChoice[],
  prices: PlanPrices,
  programmes: readonly ProgrammeKind[],
  run: Runner,
  target: number | undefined,
  clashes: readonly Clash[] = [],
): Promise<Planned | null> => {
  const { problem } = setting;
  const zones: ChosenZone[] = [];
  let value = 0;
  const stockLeft = problem.farms.map(({ stock }) => stock);
  const before = new Map<string, ProgrammeKind>();
  for (const window of problem.windows) {
    const fixed: (readonly ZoneOption[])[] = [];
    for (const [index, choice] of choices.entries()) {
      if (choice.window.id !== window.id) continue;
      const zone = problem.zones.find(({ letter }) => letter === choice.zone)!;
      const programme = problem.programmes.find(({ kind }) => kind === programmes[index])!;
      const after = before.get(choice.zone);
      const option = zoneOption(setting, zone, window, programme, after === undefined ? {} : { after });
      if (!('steps' in option)) return null;
      fixed.push([option]);
      before.set(choice.zone, programme.kind);
    }
    if (fixed.length === 0) continue;
    const model = recoveryModel(setting, fixed, prices, { wholeStarts: 'all', stockLeft, clashes });
    const solution = await run('sequence', model, { gap: 0.002, share: 0.4, ...(target === undefined ? {} : { target }) });
    if (!solution.values) return null;
    const found = planned(model, model.read(solution.values));
    zones.push(...found.zones);
    value += found.value;
    for (const { option, starts } of found.zones) {
      for (const { farm } of starts) if (farm !== null) stockLeft[farm]! -= option.zone.area * (1 + problem.rules.sodWaste);
    }
  }
  return { zones, value };
};

/**
 * Stage 2: the smallest expected shortfall, weighed by area and how much a zone is seen, at no higher cost. Stage 3: the most time in
 * hand, the smallest first, rain-weighted, at no higher cost and shortfall. Programmes stay.
 */
const laterStages = async (
  setting: Setting,
  prices: PlanPrices,
  first: Planned,
  run: Runner,
  clashes: readonly Clash[],
): Promise<Planned> => {
  const { problem } = setting;
  const zones: ChosenZone[] = [];
  let value = 0;
  const stockLeft = problem.farms.map(({ stock }) => stock);
  for (const window of problem.windows) {
    const mine = first.zones.filter(({ option }) => option.window.id === window.id);
    if (mine.length === 0) continue;
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
    zones.push(...current.zones);
    value += costOf(costModel, current);
    for (const { option, starts } of current.zones) {
      for (const { farm } of starts) if (farm !== null) stockLeft[farm]! -= option.zone.area * (1 + problem.rules.sodWaste);
    }
  }
  return { zones, value };
};

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
