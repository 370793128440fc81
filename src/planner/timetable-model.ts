import type { LinearModel } from '#planner/linear-model.ts';
import { linearModel } from '#planner/linear-model.ts';
import type { Lag, Schedule, Timetable } from '#planner/timetable.ts';

/** A timetable written as a mixed-integer model, with the way back. */
export interface TimetableModel {
  readonly model: LinearModel;
  /** Column of each option. */
  readonly option: readonly number[];
  /** Columns of each task's starts. */
  readonly start: readonly (readonly number[])[];
  /** Columns of `more` by resource and bucket; absent where the bucket is not used. */
  readonly more: readonly ReadonlyMap<number, number>[];
  /** Reads a schedule from column values. */
  read(values: Float64Array): Schedule;
  /** Complete column values of a schedule, to begin a solve with. */
  write(schedule: Schedule): Float64Array;
}

export interface ModelOptions {
  /**
   * How lags become rows. `aggregated`: one row per lag and side, Σ at·y(to) − Σ (end + lag)·y(from) ≥ 0; small.
   * `disaggregated`: one row per lag and moment, Σ_{to before t} y ≤ Σ_{from over by t − lag} y; a stronger bound, many more
   * entries.
   */
  readonly precedence: 'aggregated' | 'disaggregated';
  /** Tasks whose starts must be whole; all when absent. The bound of the remaining relaxation still holds for the whole. */
  readonly wholeStarts?: (task: number) => boolean;
}

/** Writes the model: one 0–1 column per option and per task and allowed start. */
export const timetableModel = (timetable: Timetable, options: ModelOptions): TimetableModel => {
  const model = linearModel();
  const option = timetable.options.map(({ cost }) => model.column(cost, 0, 1, true));
  const start = timetable.tasks.map(({ starts }, task) => {
    const whole = options.wholeStarts?.(task) ?? true;
    return starts.map(({ cost }) => model.column(cost, 0, 1, whole));
  });
  chooseOne(timetable, model, option);
  startOnce(timetable, model, option, start);
  for (const lag of timetable.lags) {
    if (options.precedence === 'aggregated') aggregatedLag(timetable, model, start, lag);
    else disaggregatedLag(timetable, model, start, lag);
  }
  const more = limitResources(timetable, model, start);
  limitBudgets(timetable, model, start);
  return {
    model,
    option,
    start,
    more,
    read: (values) => readSchedule(timetable, option, start, values),
    write: (schedule) => writeSchedule(timetable, model.columnCount, option, start, more, schedule),
  };
};

/** Σ x[option] = 1 for every choice. */
const chooseOne = (timetable: Timetable, model: LinearModel, option: readonly number[]): void => {
  for (let choice = 0; choice < timetable.choices; choice += 1) {
    const mine = option.filter((_, index) => timetable.options[index]!.choice === choice);
    model.row(
      1,
      1,
      mine.map((column) => [column, 1] as const),
    );
  }
};

/** Σ y[task, start] = x[its option], or 1. */
const startOnce = (
  timetable: Timetable,
  model: LinearModel,
  option: readonly number[],
  start: readonly (readonly number[])[],
): void =>
  timetable.tasks.forEach((task, index) => {
    const entries: (readonly [number, number])[] = start[index]!.map((column) => [column, 1] as const);
    if (task.option === null) model.row(1, 1, entries);
    else model.row(0, 0, [...entries, [option[task.option]!, -1]]);
  });

const fromTime = (timetable: Timetable, lag: Lag, index: number): number => {
  const chosen = timetable.tasks[lag.from]!.starts[index]!;
  return lag.after === 'end' ? chosen.end : chosen.at;
};

const aggregatedLag = (timetable: Timetable, model: LinearModel, start: readonly (readonly number[])[], lag: Lag): void => {
  const entries = (shift: number): (readonly [number, number])[] => [
    ...start[lag.to]!.map((column, index) => [column, timetable.tasks[lag.to]!.starts[index]!.at] as const),
    ...start[lag.from]!.map((column, index) => [column, -(fromTime(timetable, lag, index) + shift)] as const),
  ];
  if (lag.minimum !== null) model.row(0, Infinity, entries(lag.minimum));
  if (lag.maximum !== null) model.row(-Infinity, 0, entries(lag.maximum));
};

const disaggregatedLag = (timetable: Timetable, model: LinearModel, start: readonly (readonly number[])[], lag: Lag): void => {
  const to = timetable.tasks[lag.to]!.starts.map(({ at }, index) => ({ at, column: start[lag.to]![index]! }));
  const from = timetable.tasks[lag.from]!.starts.map((_, index) => ({
    at: fromTime(timetable, lag, index),
    column: start[lag.from]![index]!,
  }));
  const moments = [...new Set(to.map(({ at }) => at))].sort((one, other) => one - other);
  for (const moment of moments) {
    if (lag.minimum !== null) {
      const early = to.filter(({ at }) => at <= moment);
      const ready = from.filter(({ at }) => at + lag.minimum! <= moment);
      if (ready.length < from.length) {
        model.row(-Infinity, 0, [
          ...early.map((one) => [one.column, 1] as const),
          ...ready.map((one) => [one.column, -1] as const),
        ]);
      }
    }
    if (lag.maximum !== null) {
      const late = to.filter(({ at }) => at >= moment);
      const open = from.filter(({ at }) => at + lag.maximum! >= moment);
      if (open.length < from.length) {
        model.row(-Infinity, 0, [
          ...late.map((one) => [one.column, 1] as const),
          ...open.map((one) => [one.column, -1] as const),
        ]);
      }
    }
  }
};

/** Σ use·y ≤ capacity + size·more, for every resource and bucket that something uses. */
const limitResources = (
  timetable: Timetable,
  model: LinearModel,
  start: readonly (readonly number[])[],
): readonly ReadonlyMap<number, number>[] => {
  const rows: Map<number, (readonly [number, number])[]>[] = timetable.resources.map(() => new Map());
  timetable.tasks.forEach((task, index) =>
    task.starts.forEach(({ uses }, number) => {
      for (const [resource, bucket, amount] of uses) {
        const row = rows[resource]!.get(bucket);
        if (row) row.push([start[index]![number]!, amount]);
        else rows[resource]!.set(bucket, [[start[index]![number]!, amount]]);
      }
    }),
  );
  return timetable.resources.map((resource, index) => {
    const columns = new Map<number, number>();
    for (const [bucket, entries] of [...rows[index]!].sort(([one], [other]) => one - other)) {
      const capacity = resource.capacity[bucket] ?? 0;
      const more = resource.more;
      const limit = more?.limit[bucket] ?? 0;
      if (!more || limit <= 0) {
        model.row(-Infinity, capacity, entries);
        continue;
      }
      const column = model.column(more.cost, 0, limit, more.whole);
      columns.set(bucket, column);
      model.row(-Infinity, capacity, [...entries, [column, -more.size]]);
    }
    return columns;
  });
};

const limitBudgets = (timetable: Timetable, model: LinearModel, start: readonly (readonly number[])[]): void => {
  const rows: (readonly [number, number])[][] = timetable.budgets.map(() => []);
  timetable.tasks.forEach((task, index) =>
    task.starts.forEach(({ draws }, number) => {
      for (const [budget, amount] of draws ?? []) rows[budget]!.push([start[index]![number]!, amount]);
    }),
  );
  timetable.budgets.forEach(({ limit }, index) => {
    if (rows[index]!.length > 0) model.row(-Infinity, limit, rows[index]!);
  });
};

const readSchedule = (
  timetable: Timetable,
  option: readonly number[],
  start: readonly (readonly number[])[],
  values: Float64Array,
): Schedule => {
  const options: number[] = Array.from({ length: timetable.choices }, () => -1);
  timetable.options.forEach(({ choice }, index) => {
    if (values[option[index]!]! > 0.5) options[choice] = index;
  });
  return {
    options,
    starts: start.map((columns) => {
      const taken = columns.findIndex((column) => values[column]! > 0.5);
      return taken < 0 ? null : taken;
    }),
  };
};

const writeSchedule = (
  timetable: Timetable,
  columnCount: number,
  option: readonly number[],
  start: readonly (readonly number[])[],
  more: readonly ReadonlyMap<number, number>[],
  schedule: Schedule,
): Float64Array => {
  const values = new Float64Array(columnCount);
  for (const index of schedule.options) values[option[index]!] = 1;
  const used: Map<number, number>[] = timetable.resources.map(() => new Map());
  schedule.starts.forEach((taken, task) => {
    if (taken === null) return;
    values[start[task]![taken]!] = 1;
    for (const [resource, bucket, amount] of timetable.tasks[task]!.starts[taken]!.uses) {
      used[resource]!.set(bucket, (used[resource]!.get(bucket) ?? 0) + amount);
    }
  });
  more.forEach((columns, resource) => {
    const { capacity, more: extra } = timetable.resources[resource]!;
    for (const [bucket, column] of columns) {
      const lacking = Math.max(0, (used[resource]!.get(bucket) ?? 0) - (capacity[bucket] ?? 0)) / extra!.size;
      values[column] = extra!.whole ? Math.ceil(lacking - 1e-9) : lacking;
    }
  });
  return values;
};
