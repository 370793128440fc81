/**
 * A scheduling question in general form: which option of each choice is taken, and when each task of it starts. The recovery
 * planner writes its problem this way, and so can any project with tasks, modes, lags and limited resources. Pure data.
 *
 * Times (`at`, `end`, lags) are numbers in any one unit; what a start uses is counted in numbered buckets per resource
 * (shifts for crews, days for trucks), so that a calendar never becomes a row of the model: a start that the calendar does not
 * allow is left out.
 */

/** One allowed way and time to do a task. */
export interface Start {
  /** When it begins and when it is over. */
  readonly at: number;
  readonly end: number;
  /** Which way of doing the task this is. */
  readonly mode: number;
  readonly cost: number;
  /** Amounts of renewable resources: resource, bucket, amount. */
  readonly uses: readonly Use[];
  /** Amounts taken from budgets: budget, amount. */
  readonly draws?: readonly (readonly [budget: number, amount: number])[];
}
export type Use = readonly [resource: number, bucket: number, amount: number];

/** Done exactly once when its option is taken, not at all otherwise; always done where `option` is null. */
export interface Task {
  readonly name: string;
  readonly option: number | null;
  readonly starts: readonly Start[];
}

/** Exactly one option of every choice is taken. */
export interface Option {
  readonly name: string;
  readonly choice: number;
  readonly cost: number;
}

/**
 * `start(to) − end(from)` lies between `minimum` and `maximum` (`null`: no limit). Both tasks must belong to the same option, or
 * both be always done. `after: 'start'` counts from the start of `from` instead.
 */
export interface Lag {
  readonly from: number;
  readonly to: number;
  readonly after: 'start' | 'end';
  readonly minimum: number | null;
  readonly maximum: number | null;
}

/** Something there is only so much of in every bucket, with more of it at a price. */
export interface Resource {
  readonly name: string;
  /** Amount there is in each bucket; amounts beyond the array count as none. */
  readonly capacity: readonly number[];
  /** More can be had: whole or part units of `size` each, at most `limit[bucket]`, at `cost` a unit. */
  readonly more?: { readonly size: number; readonly limit: readonly number[]; readonly cost: number; readonly whole: boolean };
}

/** Something there is only so much of over the whole time. */
export interface Budget {
  readonly name: string;
  readonly limit: number;
}

export interface Timetable {
  /** Number of choices. */
  readonly choices: number;
  readonly options: readonly Option[];
  readonly tasks: readonly Task[];
  readonly lags: readonly Lag[];
  readonly resources: readonly Resource[];
  readonly budgets: readonly Budget[];
}

/** An answer: the option taken per choice, and per task the number of the start taken (null where it is not done). */
export interface Schedule {
  readonly options: readonly number[];
  readonly starts: readonly (number | null)[];
}
