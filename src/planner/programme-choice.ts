import type { LinearModel } from '#planner/linear-model.ts';
import { linearModel } from '#planner/linear-model.ts';
import type { PlanPrices } from '#planner/plan-prices.ts';
import { stepWeight } from '#planner/plan-prices.ts';
import type { Cut } from '#planner/sod-loads.ts';
import { mostRigs, rigsOn } from '#planner/limits.ts';
import { mostTrucks, sodUnits } from '#planner/sod-loads.ts';
import { dayOfShift } from '#planner/job-steps.ts';
import { lengthOf } from '#planner/working-hours.ts';
import { windowGroups } from '#planner/window-groups.ts';
import type { ZoneOption } from '#planner/zone-options.ts';
import type { Setting } from '#planner/setting.ts';
import type { MachineKind } from '#shared/vocabulary/resources.ts';

/** The programme of every choice and the farm of every window that takes sod. */
export interface ChosenProgrammes {
  /** Per choice the place of the option taken in it. */
  readonly options: readonly number[];
  /** Number of the farm by window. */
  readonly farms: ReadonlyMap<string, number>;
}

/** The question which programmes to take with the hours left open. */
export interface ProgrammeChoice {
  readonly model: LinearModel;
  read(values: Float64Array): ChosenProgrammes;
}

type Entry = readonly [column: number, value: number];

/** An option with its columns: itself, and one per farm its sod can come from. */
interface Placed {
  readonly option: ZoneOption;
  readonly column: number;
  readonly choice: number;
  readonly place: number;
  readonly farms: ReadonlyMap<number, number>;
}

/**
 * Programmes and farms without hours: what crews, machines, farms and trucks can do in all the shifts and days that anything may use
 * bounds what is asked of them together. Every plan keeps these rules and costs at least this much, so its least cost is a bound for the
 * whole, and where it has no answer there is no plan. It stays small however long the calendar is.
 */
export const programmeChoice = (
  setting: Setting,
  choices: readonly (readonly ZoneOption[])[],
  prices: PlanPrices,
): ProgrammeChoice => {
  const model = linearModel();
  const sources = new Map<string, number>();
  const placed = choices.flatMap((some, choice) =>
    some.map((option, place) => placeOption(setting, model, prices, sources, option, choice, place)),
  );
  choices.forEach((_, choice) => {
    const mine = placed.filter((one) => one.choice === choice);
    model.row(
      1,
      1,
      mine.map(({ column }) => [column, 1] as const),
    );
  });
  oneFarm(setting, model, sources);
  limitFarms(setting, model, prices, placed);
  limitCrew(setting, model, prices, placed);
  limitMachines(setting, model, placed);
  limitRigs(setting, model, placed);
  keepOrder(setting, model, placed);
  return {
    model,
    read(values) {
      const options: number[] = choices.map(() => 0);
      for (const { choice, place, column } of placed) if (values[column]! > 0.5) options[choice] = place;
      const farms = new Map<string, number>();
      for (const { option, farms: mine } of placed)
        for (const [farm, column] of mine) if (values[column]! > 0.5) farms.set(option.window.id, farm);
      return { options, farms };
    },
  };
};

const placeOption = (
  setting: Setting,
  model: LinearModel,
  prices: PlanPrices,
  sources: Map<string, number>,
  option: ZoneOption,
  choice: number,
  place: number,
): Placed => {
  const work = option.steps.reduce((sum, step) => sum + stepWeight(prices, step, option.zone.area), 0);
  const column = model.column(work + (option.weight ?? 0), 0, 1, true);
  const farms = new Map<number, number>();
  const lay = option.steps.findIndex((step) => step.laysSod);
  if (lay >= 0) {
    for (const farm of new Set(option.starts[lay]!.map((start) => start.farm!))) {
      const price = prices.sod(setting.problem.farms[farm]!, option.programme) * orderedFor(setting, option);
      const source = model.column(price, 0, 1, true);
      farms.set(farm, source);
      const key = `${option.window.id}|${farm}`;
      if (!sources.has(key)) sources.set(key, model.column(0, 0, 1, true));
      model.row(-Infinity, 0, [
        [source, 1],
        [sources.get(key)!, -1],
      ]);
    }
    model.row(0, 0, [...[...farms.values()].map((source) => [source, 1] as const), [column, -1]]);
  }
  return { option, column, choice, place, farms };
};

const orderedFor = ({ problem }: Setting, { zone }: ZoneOption): number => zone.area * (1 + problem.rules.sodWaste);

/** All the sod of a window comes from one farm. */
const oneFarm = ({ problem }: Setting, model: LinearModel, sources: ReadonlyMap<string, number>): void => {
  for (const { id } of problem.windows) {
    const mine = problem.farms.flatMap((_, farm): Entry[] => {
      const column = sources.get(`${id}|${farm}`);
      return column === undefined ? [] : [[column, 1]];
    });
    if (mine.length > 1) model.row(-Infinity, 1, mine);
  }
};

const cuts: readonly Cut[] = ['thin', 'thick'];

/** Stock, harvest and trucks of a farm over all the days on which its sod may be laid; trucks are whole. */
const limitFarms = (setting: Setting, model: LinearModel, prices: PlanPrices, placed: readonly Placed[]): void => {
  const { problem } = setting;
  const groups = windowGroups(setting);
  problem.farms.forEach((farm, index) => {
    const users = placed.flatMap(({ option, farms }) => {
      const column = farms.get(index);
      return column === undefined ? [] : [{ option, column, ordered: orderedFor(setting, option) }];
    });
    if (users.length === 0) return;
    const days = new Set(
      users.flatMap(({ option }) =>
        option.starts[option.steps.findIndex((step) => step.laysSod)]!.flatMap(({ farm: from, timed }) =>
          from === index ? timed.jobs[0]!.work.map(({ shift }) => dayOfShift(problem, shift)) : [],
        ),
      ),
    ).size;
    const most = Math.min(farm.stock, farm.harvestPerDay * days);
    model.row(
      -Infinity,
      most + 1e-6,
      users.map(({ column, ordered }) => [column, ordered] as const),
    );
    const limit = mostTrucks(problem, farm) * days;
    // A truck carries one cut, to one group of windows.
    const trucks = groups.flatMap((group) =>
      cuts.flatMap((cut) => {
        const mine = users.filter(({ option }) => option.programme.sod === cut && group.includes(option.window));
        if (mine.length === 0) return [];
        const { truckArea } = sodUnits(farm, cut, problem.settings.sodDensity)!;
        const column = model.column(prices.truck(farm), 0, limit, true);
        model.row(-Infinity, 1e-6, [
          ...mine.map(({ column: source, ordered }) => [source, ordered / truckArea] as const),
          [column, -1],
        ]);
        return [column];
      }),
    );
    if (trucks.length > 1)
      model.row(
        -Infinity,
        limit,
        trucks.map((column) => [column, 1] as const),
      );
  });
};

const baseOf = ({ problem }: Setting, shift: number): number =>
  problem.shifts[shift]!.night ? problem.workforce.nightCrew : problem.workforce.dayCrew;

/** Shifts from the first in which a step of these options may begin to the last in which one may end. */
const shiftsOf = (setting: Setting, options: readonly ZoneOption[]): readonly number[] => {
  let first = Infinity;
  let last = -Infinity;
  for (const { starts } of options) {
    for (const { timed } of starts.flat()) {
      first = Math.min(first, timed.shift);
      last = Math.max(last, timed.lastShift);
    }
  }
  return setting.problem.shifts.map((_, shift) => shift).filter((shift) => shift >= first && shift <= last);
};

const openWork = { daylight: false, noisy: false, stoppedBy: [], crew: 0 } as const;

/** People-hours against the crew of all shifts; what is beyond, and people a job needs beyond the crew of any shift, is overtime. */
const limitCrew = (setting: Setting, model: LinearModel, prices: PlanPrices, placed: readonly Placed[]): void => {
  const { problem } = setting;
  const shifts = shiftsOf(
    setting,
    placed.map(({ option }) => option),
  );
  const open = shifts.map((shift) => lengthOf(setting.hours.free(shift, openWork, null)) * problem.settings.workShare);
  const there = shifts.reduce((sum, shift, place) => sum + baseOf(setting, shift) * open[place]!, 0);
  const more = open.reduce((sum, hours) => sum + hours, 0) * problem.workforce.overtimeCrew;
  const overtime = model.column(prices.overtime, 0, more + 1e-6, false);
  model.row(-Infinity, there + 1e-6, [
    ...placed.map(({ option, column }) => [column, peopleHours(option)] as const),
    [overtime, -1],
  ]);
  const beyond = placed.flatMap(({ option, column }): Entry[] => {
    const hands = handsOf(setting, option);
    return hands > 0 ? [[column, hands]] : [];
  });
  if (beyond.length > 0) model.row(-Infinity, 0, [...beyond, [overtime, -1]]);
};

const peopleHours = ({ steps }: ZoneOption): number =>
  steps.reduce((sum, step) => sum + step.jobs.reduce((all, { job, hours }) => all + job.crew * hours, 0), 0);

/** People-hours beyond the crew of the shift that an option takes wherever its steps start. */
const handsOf = (setting: Setting, { starts }: ZoneOption): number =>
  starts.reduce(
    (sum, some) =>
      sum +
      Math.min(
        ...some.map(({ timed }) =>
          timed.jobs.reduce(
            (all, { job, work }) =>
              work.reduce((one, { shift, hours }) => one + Math.max(0, job.crew - baseOf(setting, shift)) * hours, all),
            0,
          ),
        ),
      ),
    0,
  );

/** Hours of each machine against all the shifts there are for it. */
const limitMachines = (setting: Setting, model: LinearModel, placed: readonly Placed[]): void => {
  const { problem } = setting;
  const used = new Map<MachineKind, { readonly placed: Placed; readonly hours: number }[]>();
  for (const one of placed) {
    for (const { job, hours } of one.option.steps.flatMap((step) => step.jobs)) {
      if (job.machine !== null) used.set(job.machine, [...(used.get(job.machine) ?? []), { placed: one, hours }]);
    }
  }
  for (const [machine, users] of used) {
    const noisy = problem.jobs.every((job) => job.machine !== machine || job.noisy);
    const shifts = shiftsOf(
      setting,
      users.map((user) => user.placed.option),
    );
    const open = shifts.reduce((sum, shift) => sum + lengthOf(setting.hours.free(shift, { ...openWork, noisy }, null)), 0);
    const count = problem.workforce.machines[machine] ?? 0;
    const hours = new Map<number, number>();
    for (const user of users) hours.set(user.placed.column, (hours.get(user.placed.column) ?? 0) + user.hours);
    model.row(-Infinity, count * open * problem.settings.workShare + 1e-6, [...hours]);
  }
};

/** All light rigs of a window stand at once in the end. */
const limitRigs = ({ problem }: Setting, model: LinearModel, placed: readonly Placed[]): void => {
  for (const { id } of problem.windows) {
    const lit = placed.flatMap(({ option, column }): Entry[] => {
      const rigs = option.window.id === id ? rigsOn(problem, option.programme, option.zone.area) : 0;
      return rigs > 0 ? [[column, rigs]] : [];
    });
    if (lit.length > 0) model.row(-Infinity, mostRigs(problem), lit);
  }
};

/** Programmes that do not follow each other, and ground that machines may only cross where it is lost. */
const keepOrder = ({ problem }: Setting, model: LinearModel, placed: readonly Placed[]): void => {
  const needed = problem.rules.chanceNeeded - 1e-9;
  for (const { option, column } of placed) {
    const place = problem.windows.findIndex(({ id }) => id === option.window.id);
    const earlier = problem.windows
      .slice(0, place)
      .findLast((window) => window.zones.some(({ letter }) => letter === option.zone.letter));
    const before = placed.filter((one) => one.option.zone.letter === option.zone.letter && one.option.window.id === earlier?.id);
    for (const one of before) {
      const ready = (finish: number | null): boolean =>
        (option.outlook(finish, one.option.programme.kind)?.chance ?? -1) >= needed;
      const some = option.steps.length === 0 ? ready(null) : option.starts.at(-1)!.some(({ timed }) => ready(timed.end));
      if (!some)
        model.row(-Infinity, 1, [
          [column, 1],
          [one.column, 1],
        ]);
    }
    if (!option.steps.some((step) => step.heavy)) continue;
    for (const letter of option.zone.route) {
      if (problem.zones.find((zone) => zone.letter === letter)!.boarded) continue;
      const opened = placed.filter(
        (one) =>
          one.option.zone.letter === letter &&
          one.option.window.id === option.window.id &&
          one.option.steps.some(({ opensGround }) => opensGround),
      );
      model.row(-Infinity, 0, [[column, 1], ...opened.map((one) => [one.column, -1] as const)]);
    }
  }
};
