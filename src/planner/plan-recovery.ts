import { checkPlan } from '#planner/check-plan.ts';
import { hoursWithinShifts } from '#planner/hours-within-shifts.ts';
import { laterStages } from '#planner/later-stages.ts';
import type { Optimiser } from '#planner/optimiser.ts';
import { leastWork, noPrices, planPrices } from '#planner/plan-prices.ts';
import type { PlanPrices } from '#planner/plan-prices.ts';
import { planned, startFrom } from '#planner/planned.ts';
import type { Planned } from '#planner/planned.ts';
import { runner } from '#planner/planning-run.ts';
import type { PlanningOptions, Runner } from '#planner/planning-run.ts';
import { programmeChoice } from '#planner/programme-choice.ts';
import type { Clash } from '#planner/recovery-model.ts';
import { recoveryModel } from '#planner/recovery-model.ts';
import { refuseNonsense } from '#planner/refuse-nonsense.ts';
import { sequenceWindows } from '#planner/sequence.ts';
import { windowGroups } from '#planner/window-groups.ts';
import type { ZoneProgramme } from '#planner/sequence.ts';
import { bandSize, withinBand } from '#planner/start-band.ts';
import { writtenPlan } from '#planner/written-plan.ts';
import type { ClosedOption, OptionLimits, ZoneOption } from '#planner/zone-options.ts';
import type { Setting } from '#planner/setting.ts';
import { unlockedProgrammes, zoneOption } from '#planner/zone-options.ts';
import { settingOf } from '#planner/setting.ts';
import type { ProgrammeKind, RecoveryPlan, RecoveryProblem, RecoveryWindow } from '#shared/vocabulary/plan.ts';

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

/** Starts beyond which a model of every programme and hour is not written: its bound would not come in time. */
const mostStarts = 24000;

/**
 * The cheapest recovery that keeps every limit, then the best surface at that cost, then the most time in hand before each deadline.
 *
 * 1. A zone-window without a programme is named at once. 2. Programmes and farms are chosen with the hours left open, which gives a
 * bound for the whole, and their jobs are sequenced: often that is proven already. 3. Else a master over all windows chooses the
 * programmes (sod laying and trucks whole, other starts in parts) and raises the bound; its choice is sequenced too. 4. Where the gap is
 * still open, programmes are freed again, warm started; where the calendar is too long for that, within a band of early starts.
 * 5. Two more stages keep the cost. 6. An independent checker goes over the result; a plan that it refuses is an error, never an
 * answer.
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
  const search: Search = { setting, choices, prices, run, wanted };

  let found = await withHoursOpen(search, options.anyPlan ?? false);
  if (found.kind === 'search' && !goodEnough(found, wanted)) found = await withMaster(search, found);
  if (found.kind === 'search' && !goodEnough(found, wanted)) found = await polished(search, found);
  if (run.cancelled()) return { kind: 'stopped', reason: 'cancelled' };
  if (found.kind === 'none') return { kind: 'none', closed: [] };
  if (found.best === null) return { kind: 'stopped', reason: 'time' };
  const best = options.anyPlan ? found.best : await workable(search, found.best, targetOf(search, found.bound));
  if (run.cancelled()) return { kind: 'stopped', reason: 'cancelled' };
  return { kind: 'plan', plan: finished(setting, prices, best, found.bound, wanted, run) };
};

/** What every step of the search works on. */
interface Search {
  readonly setting: Setting;
  readonly choices: readonly ZoneChoice[];
  readonly prices: PlanPrices;
  readonly run: Runner;
  readonly wanted: number;
}

/** How far the search has come: the best plan and what no plan can beat, or the proof that there is none. */
type Found = { readonly kind: 'search'; readonly best: Planned | null; readonly bound: number } | { readonly kind: 'none' };

const goodEnough = ({ best, bound }: Found & { kind: 'search' }, wanted: number): boolean =>
  best !== null && gapOf(best.value, bound) <= wanted;

const better = (one: Planned | null, other: Planned | null): Planned | null =>
  one === null || (other !== null && other.value < one.value) ? other : one;

/** With one group of windows the bound tells when a sequence is good enough. */
const targetOf = ({ setting, wanted }: Search, bound: number): number | undefined =>
  windowGroups(setting).length === 1 && Number.isFinite(bound) ? bound * (1 + 0.8 * wanted) : undefined;

const openOf = (choices: readonly ZoneChoice[]): readonly (readonly ZoneOption[])[] => choices.map(({ open }) => open);

const programmesOf = (choices: readonly ZoneChoice[], options: readonly number[]): readonly ZoneProgramme[] =>
  choices.map(({ zone, window, open }, index) => ({ zone, window, programme: open[options[index]!]!.programme.kind }));

/** Programmes first, then their hours. Without prices the programmes with the least work are the likeliest to fit. */
const withHoursOpen = async (search: Search, anyPlan: boolean): Promise<Found> => {
  const { setting, choices, prices, run } = search;
  const choice = programmeChoice(setting, openOf(choices), anyPlan ? leastWork : prices);
  const solution = await run('programmes', choice, { gap: 5e-4, share: 0.1 });
  if (solution.status === 'infeasible') return { kind: 'none' };
  const bound = anyPlan ? 0 : solution.bound;
  if (!solution.values) return { kind: 'search', best: null, bound };
  const { options, farms } = choice.read(solution.values);
  const how = { farms, share: anyPlan ? 0.1 : 0.25, target: targetOf(search, bound), quick: anyPlan };
  return { kind: 'search', best: await sequenceWindows(setting, programmesOf(choices, options), prices, run, how), bound };
};

const isLong = (choices: readonly ZoneChoice[]): boolean =>
  choices.reduce((sum, { open }) => sum + open.reduce((all, { starts }) => all + starts.flat().length, 0), 0) > mostStarts;

const withMaster = async (search: Search, { best, bound }: Found & { kind: 'search' }): Promise<Found> => {
  const { setting, choices, prices, run, wanted } = search;
  if (isLong(choices)) return { kind: 'search', best, bound };
  const model = recoveryModel(setting, openOf(choices), prices, { wholeStarts: 'sod' });
  const start = best ? startFrom(model, best) : null;
  const master = await run('programmes', model, {
    gap: Math.min(0.003, wanted),
    share: 0.5,
    ...(start ? { start } : {}),
  });
  if (master.status === 'infeasible') return { kind: 'none' };
  const higher = Math.max(bound, master.bound);
  if (!master.values || run.cancelled()) return { kind: 'search', best, bound: higher };
  if (best !== null && gapOf(best.value, higher) <= wanted) return { kind: 'search', best, bound: higher };
  const chosen = model.read(master.values).options.map((index): ZoneProgramme => {
    const { zone, window, programme } = model.options[index]!;
    return { zone: zone.letter, window, programme: programme.kind };
  });
  const again = await sequenceWindows(setting, chosen, prices, run, { target: targetOf(search, higher) });
  return { kind: 'search', best: better(best, again), bound: higher };
};

/** Programmes and hours together, from the best plan so far; a long calendar within a band, which proves nothing. */
const polished = async (search: Search, { best, bound }: Found & { kind: 'search' }): Promise<Found> => {
  const { setting, choices, prices, run, wanted } = search;
  const long = isLong(choices);
  const kept = new Map(best?.zones.map((one) => [`${one.option.zone.letter}|${one.option.window.id}`, one]));
  const open = openOf(choices).map((some) => {
    if (!long) return some;
    const mine = kept.get(`${some[0]!.zone.letter}|${some[0]!.window.id}`);
    const size = bandSize(setting, best ? best.zones.map(({ option }) => option) : openOf(choices).map((one) => one.at(-1)!));
    return some.flatMap(
      (option) =>
        withinBand(setting, option, size, mine?.option.programme.kind === option.programme.kind ? { keep: mine.starts } : {}) ??
        [],
    );
  });
  const model = recoveryModel(setting, open, prices, { wholeStarts: 'all' });
  const start = best ? startFrom(model, best) : null;
  const target = targetOf(search, bound);
  const solution = await run('polish', model, {
    gap: wanted,
    share: 0.7,
    ...(target === undefined ? {} : { target }),
    ...(start ? { start } : {}),
  });
  if (solution.status === 'infeasible' && best === null && !long) return { kind: 'none' };
  return {
    kind: 'search',
    best: solution.values ? better(best, planned(model, model.read(solution.values))) : best,
    bound: long ? bound : Math.max(bound, solution.bound),
  };
};

/** Rounds in which clashes within a shift are solved before what is left is named as a caution. */
const mostRounds = 8;

/**
 * The later stages, until the hours within the shifts can be laid out: steps that share a machine may fill the hours of a shift and yet
 * not fit into it in any order. Such a set is kept apart and the windows are sequenced again with the same programmes.
 */
const workable = async (
  { setting, choices, prices, run }: Search,
  first: Planned,
  target: number | undefined,
): Promise<Planned> => {
  const clashes: Clash[] = [];
  let staged = await laterStages(setting, prices, first, run, clashes);
  let fewest = hoursWithinShifts(setting, staged.zones).clashes;
  let latest = fewest;
  for (let round = 0; round < mostRounds && latest.length > 0 && !run.cancelled(); round += 1) {
    clashes.push(...latest);
    const programmes = choices.map(({ zone, window }): ZoneProgramme => {
      const mine = first.zones.find(({ option }) => option.zone.letter === zone && option.window.id === window.id)!;
      return { zone, window, programme: mine.option.programme.kind };
    });
    const again = await sequenceWindows(setting, programmes, prices, run, { target, clashes });
    if (again === null) break;
    const next = await laterStages(setting, prices, again, run, clashes);
    latest = hoursWithinShifts(setting, next.zones).clashes;
    if (latest.length < fewest.length) [staged, fewest] = [next, latest];
  }
  return staged;
};

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
