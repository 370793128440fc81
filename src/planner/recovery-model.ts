import type { StepStart, ZoneOption } from '#planner/zone-options.ts';
import type { Setting } from '#planner/setting.ts';
import { dayOfShift, shiftAt } from '#planner/job-steps.ts';
import type { PlanPrices } from '#planner/plan-prices.ts';
import { dailyHours, stepWeight } from '#planner/plan-prices.ts';
import type { Cut } from '#planner/sod-loads.ts';
import { mostTrucks, sodUnits } from '#planner/sod-loads.ts';
import type { TimetableModel } from '#planner/timetable-model.ts';
import { timetableModel } from '#planner/timetable-model.ts';
import type { Budget, Lag, Option, Resource, Schedule, Start, Task, Timetable, Use } from '#planner/timetable.ts';
import { fieldJobsOf } from '#planner/field-jobs.ts';
import type { TimedJob } from '#planner/job-steps.ts';
import { lengthOf } from '#planner/working-hours.ts';
import { mostRigs, rigsOn, skilledPeople } from '#planner/limits.ts';
import type { MachineKind, SkillKind } from '#shared/vocabulary/resources.ts';
import { skillKinds } from '#shared/vocabulary/resources.ts';

/** The recovery as a model, with the way back to zones and jobs. */
export interface RecoveryModel extends TimetableModel {
  readonly timetable: Timetable;
  readonly options: readonly ZoneOption[];
  /** Tasks of each option by step. */
  readonly tasks: readonly (readonly number[])[];
  /** Complete column values of a schedule. */
  complete(schedule: Schedule): Float64Array;
}

const tolerance = 1e-6;

/** Numbers the resources of a recovery: crews and machines by shift, roads by zone and shift, trucks and harvest by farm and day. */
interface Ledger {
  readonly resources: Resource[];
  readonly crew: number;
  readonly noisyCrew: number;
  readonly hands: number;
  readonly machine: ReadonlyMap<MachineKind, number>;
  /** People-hours of those who hold a skill, where the venue counts them. */
  readonly skill: ReadonlyMap<SkillKind, number>;
  readonly road: ReadonlyMap<string, number>;
  /** By farm and cut: a truck carries one cut. */
  readonly truck: readonly Readonly<Record<Cut, number>>[];
  readonly harvest: readonly number[];
  readonly dayOf: readonly number[];
}

/** Steps that the shift has hours enough for, and yet not in any order: not all of them may begin in that shift. */
export interface Clash {
  readonly shift: number;
  readonly pieces: readonly { readonly zone: string; readonly window: string; readonly step: number }[];
}

/** Uses of one road at once by machines that pass; stripping takes them all. */
const roadLanes = 1000;

const ledgerOf = (setting: Setting, prices: PlanPrices): Ledger => {
  const { problem, hours } = setting;
  const { workforce, settings } = problem;
  const anyWork = { daylight: false, noisy: false, stoppedBy: [], crew: 0 };
  const open = problem.shifts.map((_, shift) => lengthOf(hours.free(shift, anyWork, null)) * settings.workShare);
  const quiet = problem.shifts.map(
    (_, shift) => lengthOf(hours.free(shift, { ...anyWork, noisy: true }, null)) * settings.workShare,
  );
  const taken = fieldWork(setting);
  const base = problem.shifts.map(({ night }) => (night ? workforce.nightCrew : workforce.dayCrew));
  const resources: Resource[] = [];
  const add = (resource: Resource): number => resources.push(resource) - 1;
  const overtime = open.map((free) => free * workforce.overtimeCrew);
  const crew = add({
    name: 'crew',
    capacity: base.map((people, shift) => Math.max(0, people * open[shift]! - taken[shift]!) + tolerance),
    more: { size: 1, limit: overtime, cost: prices.overtime, whole: false },
  });
  const noisyCrew = add({
    name: 'crew outside the curfew',
    capacity: base.map((people, shift) => (people + workforce.overtimeCrew) * quiet[shift]! + tolerance),
  });
  const hands = add({
    name: 'people beyond the crew',
    capacity: base.map(() => 0),
    more: { size: 1, limit: overtime, cost: 0, whole: false },
  });
  const machine = new Map<MachineKind, number>();
  for (const job of problem.jobs) {
    if (job.machine === null || machine.has(job.machine)) continue;
    const count = workforce.machines[job.machine] ?? 0;
    // A machine that only does noisy work has no more hours than the curfew leaves.
    const isNoisy = problem.jobs.every((other) => other.machine !== job.machine || other.noisy);
    const there = isNoisy ? quiet : open;
    machine.set(job.machine, add({ name: job.machine, capacity: there.map((free) => count * free + tolerance) }));
  }
  const skill = new Map<SkillKind, number>();
  for (const kind of skillKinds) {
    const people = skilledPeople(problem, kind);
    if (people === Infinity) continue;
    const capacity = open.map((free, shift) => Math.max(0, people * free - skilledFieldWork(setting, kind, shift)) + tolerance);
    skill.set(kind, add({ name: `people for ${kind}`, capacity }));
  }
  const road = new Map<string, number>();
  const crossed = new Set(problem.zones.flatMap((zone) => zone.route));
  for (const letter of crossed) {
    road.set(letter, add({ name: `way over ${letter}`, capacity: problem.shifts.map(() => roadLanes) }));
  }
  const days = [...new Set(problem.shifts.map((_, shift) => dayOfShift(problem, shift)))];
  const truck = problem.farms.map((farm) => {
    const limit = days.map(() => mostTrucks(problem, farm));
    const ofCut = (cut: Cut): number =>
      add({
        name: `${cut} sod on trucks of ${farm.name}`,
        capacity: days.map(() => tolerance),
        more: { size: 1, limit, cost: prices.truck(farm), whole: true },
      });
    return { thin: ofCut('thin'), thick: ofCut('thick') };
  });
  const harvest = problem.farms.map((farm) =>
    add({ name: `harvest of ${farm.name}`, capacity: days.map(() => farm.harvestPerDay + tolerance) }),
  );
  return {
    resources,
    crew,
    noisyCrew,
    hands,
    machine,
    skill,
    road,
    truck,
    harvest,
    dayOf: problem.shifts.map((_, shift) => days.indexOf(dayOfShift(problem, shift))),
  };
};

/** People-hours that painting and testing the field take in each shift. */
const fieldWork = (setting: Setting): readonly number[] => {
  const taken = setting.problem.shifts.map(() => 0);
  for (const window of setting.problem.windows) {
    for (const { job, work } of fieldJobsOf(setting, window))
      for (const { shift, hours } of work) taken[shift]! += hours * job.crew;
  }
  return taken;
};

/** People-hours of a skill that painting and testing the field take in a shift. */
const skilledFieldWork = (setting: Setting, kind: SkillKind, shift: number): number =>
  setting.problem.windows
    .flatMap((window) => fieldJobsOf(setting, window))
    .filter(({ job }) => job.skill?.kind === kind)
    .reduce(
      (sum, { job, work }) => sum + work.reduce((all, one) => all + (one.shift === shift ? one.hours * job.skill!.people : 0), 0),
      0,
    );

const jobUses = (setting: Setting, ledger: Ledger, { job, work }: TimedJob, uses: Map<string, Use>): void => {
  const { workforce } = setting.problem;
  const take = (resource: number, bucket: number, amount: number): void => {
    const key = `${resource}|${bucket}`;
    uses.set(key, [resource, bucket, (uses.get(key)?.[2] ?? 0) + amount]);
  };
  for (const { shift, hours } of work) {
    const base = setting.problem.shifts[shift]!.night ? workforce.nightCrew : workforce.dayCrew;
    if (job.crew > 0) take(ledger.crew, shift, job.crew * hours);
    if (job.crew > 0 && job.noisy && workforce.curfew) take(ledger.noisyCrew, shift, job.crew * hours);
    if (job.crew > base) take(ledger.hands, shift, (job.crew - base) * hours);
    const skilled = job.skill ? ledger.skill.get(job.skill.kind) : undefined;
    if (skilled !== undefined) take(skilled, shift, job.skill!.people * hours);
    if (job.machine !== null) take(ledger.machine.get(job.machine)!, shift, hours);
  }
};

/** What a start of a step uses: people, machine, ways, trucks, harvest, and the daily job after the last step. */
const usesOf = (setting: Setting, ledger: Ledger, option: ZoneOption, step: number, start: StepStart): readonly Use[] => {
  const { problem } = setting;
  const { timed } = start;
  const uses = new Map<string, Use>();
  const take = (resource: number, bucket: number, amount: number): void => {
    const key = `${resource}|${bucket}`;
    uses.set(key, [resource, bucket, (uses.get(key)?.[2] ?? 0) + amount]);
  };
  for (const job of timed.jobs) jobUses(setting, ledger, job, uses);
  const own = option.steps[step]!;
  for (let shift = timed.shift; shift <= timed.lastShift; shift += 1) {
    const mine = ledger.road.get(option.zone.letter);
    if (own.opensGround && mine !== undefined) take(mine, shift, roadLanes);
    if (own.heavy && !own.opensGround) for (const letter of option.zone.route) take(ledger.road.get(letter)!, shift, 1);
  }
  if (start.farm !== null) {
    const units = sodUnits(problem.farms[start.farm]!, option.programme.sod!, problem.settings.sodDensity)!;
    const total = timed.jobs[0]!.work.reduce((sum, { hours }) => sum + hours, 0);
    const ordered = option.zone.area * (1 + problem.rules.sodWaste);
    for (const { shift, hours } of timed.jobs[0]!.work) {
      const area = (ordered * hours) / total;
      take(ledger.truck[start.farm]![option.programme.sod!], ledger.dayOf[shift]!, area / units.truckArea);
      take(ledger.harvest[start.farm]!, ledger.dayOf[shift]!, area);
    }
  }
  if (step === option.steps.length - 1) {
    for (const { shift, peopleHours } of dailyWork(setting, option, timed.end)) take(ledger.crew, shift, peopleHours);
  }
  return [...uses.values()];
};

type DailyWork = readonly { readonly shift: number; readonly peopleHours: number }[];
/** Daily work by zone, window and day: asked for every start, and slow to look up in the calendar. */
const dailyKnown = new WeakMap<Setting, Map<string, DailyWork>>();

/** People-hours of the daily job by shift, from the day after the last step to the day before the home date. */
export const dailyWork = (
  setting: Setting,
  option: Pick<ZoneOption, 'zone' | 'window' | 'programme'>,
  finish: number,
): DailyWork => {
  const { programme, zone, window } = option;
  if (programme.daily === null) return [];
  const last = window.homeDate.slice(0, 10);
  const done = dayOfShift(
    setting.problem,
    Math.max(0, Math.min(shiftAt(finish - 1e-9, setting.hours), setting.problem.shifts.length - 1)),
  );
  const known = dailyKnown.get(setting) ?? new Map<string, DailyWork>();
  dailyKnown.set(setting, known);
  const key = `${programme.daily}|${zone.letter}|${window.id}|${done}`;
  const before = known.get(key);
  if (before) return before;
  const peopleHours = dailyHours(programme, zone.area, setting.jobs) * setting.jobs.get(programme.daily)!.crew;
  const work = setting.problem.shifts.flatMap((shift, index) => {
    const day = shift.start.slice(0, 10);
    if (shift.night || day <= done || day >= last) return [];
    return lengthOf(setting.hours.free(index, { daylight: false, noisy: false, stoppedBy: [], crew: 0 }, null)) > 0
      ? [{ shift: index, peopleHours }]
      : [];
  });
  known.set(key, work);
  return work;
};

/** Writes a recovery down. `choices` holds, per zone and window, the options it may take. */
export const recoveryModel = (
  setting: Setting,
  choices: readonly (readonly ZoneOption[])[],
  prices: PlanPrices,
  how: {
    readonly wholeStarts: 'all' | 'sod';
    readonly stockLeft?: readonly number[];
    /** Sets of steps that do not go together within one shift, found when their hours were laid out. */
    readonly clashes?: readonly Clash[];
  },
): RecoveryModel => {
  const { problem } = setting;
  const ledger = ledgerOf(setting, prices);
  const options: ZoneOption[] = [];
  const modelOptions: Option[] = [];
  const tasks: Task[] = [];
  const lags: Lag[] = [];
  const optionTasks: number[][] = [];
  const moved = movePrices(setting);
  choices.forEach((some, choice) =>
    some.forEach((option) => {
      const index = options.push(option) - 1;
      modelOptions.push({ name: `${option.zone.letter} ${option.programme.kind}`, choice, cost: option.weight ?? 0 });
      const mine: number[] = [];
      option.steps.forEach((step, number) => {
        const weight = stepWeight(prices, step, option.zone.area);
        const starts = option.starts[number]!.map((start): Start => {
          let cost = weight + moved(option, number, start);
          if (start.farm !== null) {
            cost += prices.sod(problem.farms[start.farm]!, option.programme) * option.zone.area * (1 + problem.rules.sodWaste);
          }
          return {
            at: start.timed.at,
            end: start.timed.end,
            mode: start.farm ?? 0,
            cost,
            uses: usesOf(setting, ledger, option, number, start),
            draws: start.farm === null ? [] : [[start.farm, option.zone.area * (1 + problem.rules.sodWaste)]],
          };
        });
        const task = tasks.push({ name: `${option.zone.letter} step ${number + 1}`, option: index, starts }) - 1;
        if (number > 0) {
          lags.push({ from: mine.at(-1)!, to: task, after: 'end', minimum: step.lagAtLeast, maximum: step.lagAtMost });
        }
        mine.push(task);
      });
      optionTasks.push(mine);
    }),
  );
  const budgets: Budget[] = problem.farms.map((farm, index) => ({
    name: `stock of ${farm.name}`,
    limit: (how.stockLeft?.[index] ?? farm.stock) + tolerance,
  }));
  const timetable: Timetable = {
    choices: choices.length,
    options: modelOptions,
    tasks,
    lags,
    resources: ledger.resources,
    budgets,
  };
  const isLay = new Set(
    options.flatMap((option, index) =>
      option.steps.flatMap((step, number) => (step.laysSod ? [optionTasks[index]![number]!] : [])),
    ),
  );
  const written = timetableModel(timetable, {
    precedence: 'aggregated',
    wholeStarts: (task) => how.wholeStarts === 'all' || isLay.has(task),
  });
  const farmColumns = oneFarmPerWindow(setting, written, options, optionTasks);
  const totals = truckTotals(written, ledger);
  shareTrucks(setting, written, ledger);
  handsWithinOvertime(written, ledger);
  carryOver(setting, written, options, optionTasks);
  keepAccess(setting, written, options, optionTasks);
  keepRigs(setting, written, options);
  keepApart(written, options, optionTasks, how.clashes ?? []);
  const complete = (schedule: Schedule): Float64Array => {
    const values = new Float64Array(written.model.columnCount);
    values.set(written.write(schedule));
    for (const [key, column] of farmColumns) {
      const [windowId, farm] = key.split('|') as [string, string];
      const used = schedule.options.some((index) => {
        const option = options[index]!;
        return (
          option.window.id === windowId &&
          optionTasks[index]!.some(
            (task, step) => option.steps[step]!.laysSod && option.starts[step]![schedule.starts[task]!]!.farm === Number(farm),
          )
        );
      });
      values[column] = used ? 1 : 0;
    }
    overtimeForHands(written, ledger, values);
    for (const { column, days } of totals) values[column] = days.reduce((sum, day) => sum + values[day]!, 0);
    return values;
  };
  return {
    ...written,
    timetable,
    options,
    tasks: optionTasks,
    complete,
  };
};

/** A small price on starts that differ from the plan before, so that a new plan moves little. */
const movePrices = (setting: Setting): ((option: ZoneOption, step: number, start: StepStart) => number) => {
  const { problem, clock } = setting;
  if (problem.before.length === 0) return () => 0;
  const before = new Map(
    problem.before.map((job) => [`${job.zone}|${job.window}|${job.job}`, shiftAt(clock.hourOf(job.start), setting.hours)]),
  );
  return (option, step, { timed }) => {
    const stays = ({ job, from }: TimedJob): boolean =>
      before.get(`${option.zone.letter}|${option.window.id}|${job.kind}`) === shiftAt(from, setting.hours);
    const moved = timed.jobs.filter((job) => !stays(job)).length;
    return (problem.settings.movePrice * moved) / option.steps[step]!.jobs.length;
  };
};

/** All the sod of a window comes from one farm: y[lay, farm] ≤ u[window, farm], Σ u ≤ 1. */
const oneFarmPerWindow = (
  setting: Setting,
  written: TimetableModel,
  options: readonly ZoneOption[],
  tasks: readonly (readonly number[])[],
): ReadonlyMap<string, number> => {
  const columns = new Map<string, number>();
  if (setting.problem.farms.length < 2) return columns;
  for (const window of setting.problem.windows) {
    const own: number[] = [];
    setting.problem.farms.forEach((_, farm) => {
      const groups: (readonly [number, number])[][] = [];
      options.forEach((option, index) => {
        if (option.window.id !== window.id) return;
        option.steps.forEach((step, number) => {
          if (!step.laysSod) return;
          const group = option.starts[number]!.flatMap((start, position) =>
            start.farm === farm ? [[written.start[tasks[index]![number]!]![position]!, 1] as const] : [],
          );
          if (group.length > 0) groups.push(group);
        });
      });
      if (groups.length === 0) return;
      const column = written.model.column(0, 0, 1, true);
      columns.set(`${window.id}|${farm}`, column);
      own.push(column);
      for (const group of groups) written.model.row(-Infinity, 0, [...group, [column, -1]]);
    });
    if (own.length > 1)
      written.model.row(
        -Infinity,
        1,
        own.map((column) => [column, 1] as const),
      );
  }
  return columns;
};

/**
 * All trucks of a farm as one whole number: T = Σ n[day]. It adds no rule, but the optimiser can round and branch on it at once instead
 * of day by day, which is what proves a plan near the price of one truck.
 */
const truckTotals = (
  written: TimetableModel,
  ledger: Ledger,
): readonly { readonly column: number; readonly days: readonly number[] }[] =>
  ledger.truck.flatMap(Object.values<number>).flatMap((resource) => {
    const days = [...written.more[resource]!.values()];
    if (days.length < 2) return [];
    const column = written.model.column(0, 0, 1e5, true);
    written.model.row(0, 0, [[column, -1], ...days.map((day) => [day, 1] as const)]);
    return [{ column, days }];
  });

/** Trucks of all cuts are within what a farm sends in a day, and those of all farms within what the gate takes. */
const shareTrucks = ({ problem }: Setting, written: TimetableModel, ledger: Ledger): void => {
  const together = (resources: readonly number[], limit: number): void => {
    const days = new Map<number, number[]>();
    for (const resource of resources)
      for (const [day, column] of written.more[resource]!) days.set(day, [...(days.get(day) ?? []), column]);
    for (const columns of days.values())
      if (columns.length > 1)
        written.model.row(
          -Infinity,
          limit,
          columns.map((column) => [column, 1] as const),
        );
  };
  problem.farms.forEach((farm, index) => together(Object.values(ledger.truck[index]!), farm.trucksPerDay));
  const { gateTrucks } = problem.rules;
  if (gateTrucks !== undefined) together(ledger.truck.flatMap(Object.values<number>), gateTrucks);
};

/** People a job needs beyond the crew of its shift are overtime: hands[shift] ≤ overtime[shift]. */
const handsWithinOvertime = (written: TimetableModel, ledger: Ledger): void => {
  for (const [shift, hands] of written.more[ledger.hands]!) {
    const overtime = written.more[ledger.crew]!.get(shift);
    if (overtime !== undefined)
      written.model.row(-Infinity, 0, [
        [hands, 1],
        [overtime, -1],
      ]);
  }
};

const overtimeForHands = (written: TimetableModel, ledger: Ledger, values: Float64Array): void => {
  for (const [shift, hands] of written.more[ledger.hands]!) {
    const overtime = written.more[ledger.crew]!.get(shift);
    if (overtime !== undefined) values[overtime] = Math.max(values[overtime]!, values[hands]!);
  }
};

/**
 * A programme after another in the window before ends only on the days that the forecast allows after it:
 * x[before] + x − Σ_{last start with an allowed end} y ≤ 1.
 */
const carryOver = (
  setting: Setting,
  written: TimetableModel,
  options: readonly ZoneOption[],
  tasks: readonly (readonly number[])[],
): void => {
  const windows = setting.problem.windows;
  const needed = setting.problem.rules.chanceNeeded - 1e-9;
  options.forEach((option, index) => {
    const place = windows.findIndex(({ id }) => id === option.window.id);
    const earlier = windows
      .slice(0, place)
      .findLast((window) => window.zones.some(({ letter }) => letter === option.zone.letter));
    if (!earlier) return;
    options.forEach((before, beforeIndex) => {
      if (before.window.id !== earlier.id || before.zone.letter !== option.zone.letter) return;
      const pair = [
        [written.option[beforeIndex]!, 1],
        [written.option[index]!, 1],
      ] as const;
      if (option.steps.length === 0) {
        const outlook = option.outlook(null, before.programme.kind);
        if (!outlook || outlook.chance < needed) written.model.row(-Infinity, 1, pair);
        return;
      }
      const last = option.starts.at(-1)!;
      const task = tasks[index]!.at(-1)!;
      const allowed = last.flatMap((start, position) => {
        const outlook = option.outlook(start.timed.end, before.programme.kind);
        return outlook && outlook.chance >= needed ? [written.start[task]![position]!] : [];
      });
      if (allowed.length < last.length) {
        written.model.row(-Infinity, 1, [...pair, ...allowed.map((column) => [column, -1] as const)]);
      }
    });
  });
};

/** Where turf is opened in an option: first opening step and the step that closes it again. */
const openingSteps = (option: ZoneOption): { readonly first: number; readonly last: number } | null => {
  const first = option.steps.findIndex(({ opensGround }) => opensGround);
  return first < 0 ? null : { first, last: option.steps.findLastIndex(({ opensGround }) => opensGround) };
};

/**
 * Heavy machines cross only lost or boarded ground: a step with a heavy machine needs every zone on its way to be boarded, or to be
 * replaced itself, and to be over before the new turf of that zone is laid. Half-field sequences: all of one half laid before
 * the other is opened.
 */
const keepAccess = (
  setting: Setting,
  written: TimetableModel,
  options: readonly ZoneOption[],
  tasks: readonly (readonly number[])[],
): void => {
  const { problem, hours } = setting;
  const horizon = hours.shifts.at(-1)![1];
  const at = (task: number, sign: number): (readonly [number, number])[] =>
    written.start[task]!.map((column, index) => [column, sign * startAt(options, tasks, task, index)] as const);
  const end = (task: number, sign: number): (readonly [number, number])[] =>
    written.start[task]!.map((column, index) => [column, sign * endAt(options, tasks, task, index)] as const);
  options.forEach((option, index) => {
    const heavy = option.steps.findLastIndex((step) => step.heavy);
    if (heavy < 0) return;
    for (const letter of option.zone.route) {
      const crossed = problem.zones.find((zone) => zone.letter === letter)!;
      if (crossed.boarded) continue;
      const inWindow = options.flatMap((other, otherIndex) =>
        other.zone.letter === letter && other.window.id === option.window.id && openingSteps(other) ? [otherIndex] : [],
      );
      written.model.row(-Infinity, 0, [
        [written.option[index]!, 1],
        ...inWindow.map((other) => [written.option[other]!, -1] as const),
      ]);
      for (const other of inWindow) {
        const lay = tasks[other]![openingSteps(options[other]!)!.last]!;
        written.model.row(-horizon, Infinity, [
          ...at(lay, 1),
          ...end(tasks[index]![heavy]!, -1),
          [written.option[other]!, -horizon],
        ]);
      }
    }
  });
  for (const { before, after } of problem.sequences) {
    options.forEach((first, firstIndex) => {
      const closing = openingSteps(first);
      if (!closing || !before.includes(first.zone.letter)) return;
      options.forEach((second, secondIndex) => {
        const opening = openingSteps(second);
        if (!opening || second.window.id !== first.window.id || !after.includes(second.zone.letter)) return;
        written.model.row(-horizon, Infinity, [
          ...at(tasks[secondIndex]![opening.first]!, 1),
          ...end(tasks[firstIndex]![closing.last]!, -1),
          [written.option[secondIndex]!, -horizon],
        ]);
      });
    });
  }
};

/** Rigs stand until the work of a window must be over, so that all of it stand at once in the end: Σ rigs·x ≤ rigs there are. */
const keepRigs = ({ problem }: Setting, written: TimetableModel, options: readonly ZoneOption[]): void => {
  for (const { id } of problem.windows) {
    const lit = options.flatMap(({ window, programme, zone }, index) => {
      const rigs = window.id === id ? rigsOn(problem, programme, zone.area) : 0;
      return rigs > 0 ? [[written.option[index]!, rigs] as const] : [];
    });
    if (lit.length > 0) written.model.row(-Infinity, mostRigs(problem), lit);
  }
};

/** Σ_{pieces of a clash} y[start in its shift] ≤ pieces − 1; left out where a piece is not in the model. */
const keepApart = (
  written: TimetableModel,
  options: readonly ZoneOption[],
  tasks: readonly (readonly number[])[],
  clashes: readonly Clash[],
): void => {
  for (const { shift, pieces } of clashes) {
    const entries = pieces.map(({ zone, window, step }) =>
      options.flatMap((option, index) => {
        if (option.zone.letter !== zone || option.window.id !== window || step >= option.steps.length) return [];
        const starts = option.starts[step]!;
        return starts.flatMap(({ timed }, place) =>
          timed.shift === shift ? [[written.start[tasks[index]![step]!]![place]!, 1] as const] : [],
        );
      }),
    );
    if (entries.every((some) => some.length > 0)) written.model.row(-Infinity, pieces.length - 1, entries.flat());
  }
};

const placeOf = (tasks: readonly (readonly number[])[], task: number): readonly [option: number, step: number] => {
  const option = tasks.findIndex((mine) => mine.includes(task));
  return [option, tasks[option]!.indexOf(task)];
};
const startAt = (options: readonly ZoneOption[], tasks: readonly (readonly number[])[], task: number, index: number): number => {
  const [option, step] = placeOf(tasks, task);
  return options[option]!.starts[step]![index]!.timed.at;
};
const endAt = (options: readonly ZoneOption[], tasks: readonly (readonly number[])[], task: number, index: number): number => {
  const [option, step] = placeOf(tasks, task);
  return options[option]!.starts[step]![index]!.timed.end;
};
