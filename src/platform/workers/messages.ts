/** To a worker: one task at a time. */
export interface TaskMessage {
  readonly id: number;
  readonly task: string;
  readonly input: unknown;
}

/** From a worker. */
export type WorkerMessage =
  | { readonly kind: 'progress'; readonly id: number; readonly share: number; readonly note: string }
  | { readonly kind: 'done'; readonly id: number; readonly output: unknown }
  | { readonly kind: 'failed'; readonly id: number; readonly error: TaskErrorFacts };

/** What is left of an error after it went between threads. */
export interface TaskErrorFacts {
  readonly name: string;
  readonly message: string;
  readonly stack: string;
  /** The input field a `RangeError` speaks of, where it says one. */
  readonly field: string | null;
}
