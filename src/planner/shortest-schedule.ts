import type { AbortSignalLike, Optimiser, SolveStatus } from '#planner/optimiser.ts';
import { timetableModel } from '#planner/timetable-model.ts';
import type { Resource, Schedule, Start, Timetable } from '#planner/timetable.ts';

/** A task of a project: one or more ways to do it, each with a length and amounts of the resources. */
export interface ProjectTask {
  readonly name: string;
  readonly modes: readonly {
    readonly length: number;
    /** Amount of each renewable resource in every period it lasts. */
    readonly uses: readonly number[];
    /** Amount of each budget, once. */
    readonly draws: readonly number[];
  }[];
}

/** Start of `to` at least `minimum` periods after the start of `from`, or after its end. */
export interface ProjectLag {
  readonly from: number;
  readonly to: number;
  readonly after: 'start' | 'end';
  readonly minimum: number;
}

/** A project whose shortest duration is asked for. Whole periods. */
export interface Project {
  readonly tasks: readonly ProjectTask[];
  readonly lags: readonly ProjectLag[];
  readonly capacity: readonly number[];
  readonly budgets: readonly number[];
}

export interface ProjectPlan {
  readonly length: number;
  /** Per task: start and mode. */
  readonly tasks: readonly { readonly start: number; readonly mode: number }[];
}

export type ShortestAnswer =
  | { readonly kind: 'shortest'; readonly plan: ProjectPlan }
  | { readonly kind: 'none' }
  /** Out of time: nothing shorter than `bound` exists; `plan` is the best found, if any. */
  | { readonly kind: 'stopped'; readonly bound: number; readonly plan: ProjectPlan | null };

/**
 * The shortest plan of a project, by asking "is there one in T periods?" from the lower bound up. A negative minimum lag is a
 * maximum lag the other way round. Errors: none of its own; `stopped` when `timeLimit` (s) or `signal` ends it.
 */
export const shortestPlan = async (
  project: Project,
  optimiser: Optimiser,
  options: { readonly timeLimit?: number; readonly signal?: AbortSignalLike; readonly longest?: number } = {},
): Promise<ShortestAnswer> => {
  const distances = longestPaths(project);
  if (distances === null) return { kind: 'none' };
  const longest = options.longest ?? longestPossible(project);
  let left = options.timeLimit ?? Infinity;
  if (project.lags.some(({ minimum }) => minimum < 0)) {
    // Maximum lags may rule out every plan, however long: ask once with all the time there could be a use for.
    const any = await planWithin(project, distances, longest, optimiser, left, options.signal);
    left -= any.seconds;
    if (any.status === 'infeasible') return { kind: 'none' };
    if (any.plan === null) return { kind: 'stopped', bound: lowerBound(project, distances), plan: null };
  }
  for (let length = lowerBound(project, distances); length <= longest; length += 1) {
    const { status, plan, seconds } = await planWithin(project, distances, length, optimiser, left, options.signal);
    left -= seconds;
    if (plan) return { kind: 'shortest', plan };
    if (status !== 'infeasible') return { kind: 'stopped', bound: length, plan: null };
  }
  return { kind: 'none' };
};

/** Is there a plan in `length` periods? */
const planWithin = async (
  project: Project,
  distances: readonly Float64Array[],
  length: number,
  optimiser: Optimiser,
  timeLimit: number,
  signal: AbortSignalLike | undefined,
): Promise<{ readonly status: SolveStatus; readonly plan: ProjectPlan | null; readonly seconds: number }> => {
  const timetable = timetableWithin(project, distances, length);
  if (timetable === null) return { status: 'infeasible', plan: null, seconds: 0 };
  const { model, read } = timetableModel(timetable, { precedence: 'disaggregated' });
  const { status, values, seconds } = await optimiser.solve(model.build(), {
    gap: 0,
    ...(Number.isFinite(timeLimit) ? { timeLimit } : {}),
    ...(signal ? { signal } : {}),
  });
  return { status, plan: values && planOf(timetable, read(values), length), seconds };
};

const shortestLength = (task: ProjectTask): number => Math.min(...task.modes.map(({ length }) => length));

/** Every task one after the other, each waiting for its longest lag: no plan needs to be longer. */
const longestPossible = (project: Project): number =>
  project.tasks.reduce((sum, task, index) => {
    const length = Math.max(...task.modes.map((mode) => mode.length));
    const waits = project.lags
      .filter(({ from }) => from === index)
      .map(({ after, minimum }) => minimum + (after === 'end' ? length : 0));
    return sum + Math.max(length, ...waits);
  }, 0);

/**
 * Longest path from start to start between all tasks, −Infinity where none; null where a circle of lags has positive length,
 * so that no plan exists.
 */
const longestPaths = (project: Project): Float64Array[] | null => {
  const size = project.tasks.length;
  const path = Array.from({ length: size }, (_, from) => new Float64Array(size).fill(-Infinity).fill(0, from, from + 1));
  for (const { from, to, after, minimum } of project.lags) {
    const distance = minimum + (after === 'end' ? shortestLength(project.tasks[from]!) : 0);
    path[from]![to] = Math.max(path[from]![to]!, distance);
  }
  for (let via = 0; via < size; via += 1) {
    for (let from = 0; from < size; from += 1) {
      const first = path[from]![via]!;
      if (first === -Infinity) continue;
      for (let to = 0; to < size; to += 1) path[from]![to] = Math.max(path[from]![to]!, first + path[via]![to]!);
    }
  }
  return path.some((row, task) => row[task]! > 0) ? null : path;
};

const head = (paths: readonly Float64Array[], task: number): number => Math.max(0, ...paths.map((row) => row[task]!));
const tail = (project: Project, paths: readonly Float64Array[], task: number): number =>
  Math.max(...project.tasks.map((other, index) => paths[task]![index]! + shortestLength(other)));

/** The longer of the critical path and the work of each resource spread over its capacity. */
const lowerBound = (project: Project, paths: readonly Float64Array[]): number => {
  const critical = Math.max(0, ...project.tasks.map((_, task) => head(paths, task) + tail(project, paths, task)));
  const work = project.capacity.map((capacity, resource) => {
    const least = project.tasks.reduce(
      (sum, { modes }) => sum + Math.min(...modes.map(({ length, uses }) => length * uses[resource]!)),
      0,
    );
    return capacity > 0 ? Math.ceil(least / capacity) : 0;
  });
  return Math.max(critical, ...work);
};

/** The question "is there a plan in `length` periods?", or null where a task has no time left to start. */
const timetableWithin = (project: Project, paths: readonly Float64Array[], length: number): Timetable | null => {
  const resources: Resource[] = project.capacity.map((capacity, index) => ({
    name: `resource ${index + 1}`,
    capacity: Array.from({ length }, () => capacity),
  }));
  const tasks = project.tasks.map((task, index) => {
    const first = head(paths, index);
    const last = length - tail(project, paths, index);
    const starts: Start[] = [];
    task.modes.forEach((mode, number) => {
      if (mode.uses.some((amount, resource) => amount > project.capacity[resource]!)) return;
      for (let at = first; at <= Math.min(last, length - mode.length); at += 1) {
        const uses = mode.uses.flatMap((amount, resource) =>
          amount === 0 ? [] : Array.from({ length: mode.length }, (_, period) => [resource, at + period, amount] as const),
        );
        const draws = mode.draws.flatMap((amount, budget) => (amount === 0 ? [] : [[budget, amount] as const]));
        starts.push({ at, end: at + mode.length, mode: number, cost: 0, uses, draws });
      }
    });
    return { name: task.name, option: null, starts };
  });
  if (tasks.some(({ starts }) => starts.length === 0)) return null;
  const lags = project.lags.map((lag) => ({ ...lag, maximum: null }));
  const budgets = project.budgets.map((limit, index) => ({ name: `budget ${index + 1}`, limit }));
  return { choices: 0, options: [], tasks, lags, resources, budgets };
};

const planOf = (timetable: Timetable, schedule: Schedule, length: number): ProjectPlan => ({
  length,
  tasks: schedule.starts.map((taken, task) => {
    const { at, mode } = timetable.tasks[task]!.starts[taken!]!;
    return { start: at, mode };
  }),
});
