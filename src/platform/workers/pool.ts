import { Worker } from 'node:worker_threads';
import type { TaskErrorFacts, TaskMessage, WorkerMessage } from '#platform/workers/messages.ts';

/** The task itself threw. */
export class TaskFailed extends Error {
  readonly facts: TaskErrorFacts;

  constructor(task: string, facts: TaskErrorFacts) {
    super(`${task}: ${facts.message}`);
    this.name = 'TaskFailed';
    this.facts = facts;
  }
}

/** The worker ended before the task did: out of memory, killed, or it never came up. */
export class WorkerLost extends Error {
  constructor(task: string, reason: string) {
    super(`${task}: the worker was lost (${reason})`);
    this.name = 'WorkerLost';
  }
}

/** Nobody wants the task any more. */
export class TaskCancelled extends Error {
  constructor(task: string) {
    super(`${task}: cancelled`);
    this.name = 'TaskCancelled';
  }
}

export interface TaskWishes {
  readonly report?: (progress: { readonly share: number; readonly note: string }) => void;
  readonly signal?: AbortSignal;
  /** Goes first, and may use the worker that is kept free for such. */
  readonly urgent?: boolean;
}

export interface Pool {
  /** Rejects with `TaskFailed`, `WorkerLost` or `TaskCancelled`. */
  run(task: string, input: unknown, wishes?: TaskWishes): Promise<unknown>;
  /** Ends all workers; what still runs is cancelled. */
  close(): Promise<void>;
}

export interface PoolWishes {
  /** The module each worker runs; it calls `serveTasks`. */
  readonly entry: URL;
  /** Workers at most, 2 or more: one is kept for urgent tasks. */
  readonly size: number;
  /** MB of heap for one worker. */
  readonly memory?: number;
}

interface Pending {
  readonly message: TaskMessage;
  readonly wishes: TaskWishes;
  readonly resolve: (output: unknown) => void;
  readonly reject: (error: Error) => void;
}

interface Seat {
  readonly worker: Worker;
  doing: Pending | null;
}

/** Worker threads that stay warm between tasks and come up when they are first needed. */
export const openPool = ({ entry, size, memory = 1024 }: PoolWishes): Pool => {
  const seats = new Set<Seat>();
  const waiting: Pending[] = [];
  let lastId = 0;
  let closed = false;

  const busySeats = (): Seat[] => [...seats].filter((seat) => seat.doing);

  /** Ends what a seat is doing and clears the way for the next. */
  const settle = (seat: Seat, end: (pending: Pending) => void): void => {
    const pending = seat.doing;
    seat.doing = null;
    if (pending) end(pending);
    dispatch();
  };

  const lose = (seat: Seat, reason: string): void => {
    if (!seats.delete(seat)) return;
    settle(seat, (pending) => pending.reject(new WorkerLost(pending.message.task, reason)));
  };

  const bringUp = (): Seat => {
    const seat: Seat = { worker: new Worker(entry, { resourceLimits: { maxOldGenerationSizeMb: memory } }), doing: null };
    seats.add(seat);
    seat.worker.unref();
    seat.worker.on('message', (message: WorkerMessage) => {
      const pending = seat.doing;
      if (!pending || pending.message.id !== message.id) return;
      if (message.kind === 'progress') return pending.wishes.report?.({ share: message.share, note: message.note });
      seat.worker.unref();
      if (message.kind === 'done') settle(seat, () => pending.resolve(message.output));
      else settle(seat, () => pending.reject(new TaskFailed(pending.message.task, message.error)));
    });
    seat.worker.on('error', (error: unknown) => lose(seat, error instanceof Error ? error.message : String(error)));
    seat.worker.on('exit', (code) => lose(seat, `it ended with code ${code}`));
    return seat;
  };

  const give = (pending: Pending): void => {
    const seat = [...seats].find((candidate) => !candidate.doing) ?? bringUp();
    seat.doing = pending;
    seat.worker.ref();
    try {
      seat.worker.postMessage(pending.message);
    } catch (error) {
      settle(seat, () => pending.reject(error instanceof Error ? error : new Error(String(error))));
    }
  };

  /** Starts whatever may start: urgent tasks on any free seat, others on all but one. */
  const dispatch = (): void => {
    for (;;) {
      if (closed) return;
      const busy = busySeats().length;
      const next = waiting.findIndex((pending) => (pending.wishes.urgent ? busy < size : busy < size - 1));
      if (next < 0) return;
      give(waiting.splice(next, 1)[0]!);
    }
  };

  const cancel = (pending: Pending): void => {
    const cancelled = new TaskCancelled(pending.message.task);
    const place = waiting.indexOf(pending);
    if (place >= 0) {
      waiting.splice(place, 1);
      return pending.reject(cancelled);
    }
    const seat = [...seats].find((candidate) => candidate.doing === pending);
    if (!seat) return;
    // A calculation looks at nothing while it runs: the thread has to go.
    seats.delete(seat);
    seat.doing = null;
    void seat.worker.terminate().then(() => {
      pending.reject(cancelled);
      dispatch();
    });
  };

  const enqueue = (pending: Pending): void => {
    if (pending.wishes.urgent) {
      const place = waiting.findIndex((other) => !other.wishes.urgent);
      waiting.splice(place < 0 ? waiting.length : place, 0, pending);
    } else {
      waiting.push(pending);
    }
    dispatch();
  };

  return {
    run: (task, input, wishes = {}) =>
      new Promise((resolve, reject) => {
        if (closed || wishes.signal?.aborted) return reject(new TaskCancelled(task));
        const pending: Pending = { message: { id: ++lastId, task, input }, wishes, resolve, reject };
        wishes.signal?.addEventListener('abort', () => cancel(pending), { once: true });
        enqueue(pending);
      }),
    close: async () => {
      closed = true;
      const running = [...seats];
      for (const pending of waiting.splice(0)) pending.reject(new TaskCancelled(pending.message.task));
      seats.clear();
      await Promise.all(running.map((seat) => seat.worker.terminate()));
      for (const seat of running) seat.doing?.reject(new TaskCancelled(seat.doing.message.task));
    },
  };
};
