import { parentPort } from 'node:worker_threads';
import type { TaskErrorFacts, TaskMessage, WorkerMessage } from '#platform/workers/messages.ts';

/** A calculation a worker can do. `report` tells how far it is, 0–1, with a few words. */
export type Task = (input: never, report: (share: number, note?: string) => void) => unknown;

const factsOf = (error: unknown): TaskErrorFacts => {
  const field = (error as { field?: unknown } | null)?.field;
  return {
    name: error instanceof Error ? error.name : 'Error',
    message: error instanceof Error ? error.message : String(error),
    stack: error instanceof Error ? (error.stack ?? '') : '',
    field: typeof field === 'string' ? field : null,
  };
};

/** Makes this thread a worker that does the named tasks, one after the other. */
export const serveTasks = (tasks: Readonly<Record<string, Task>>): void => {
  const port = parentPort;
  if (!port) throw new Error('tasks are served in a worker thread');
  const tell = (message: WorkerMessage): void => port.postMessage(message);
  const serve = async ({ id, task, input }: TaskMessage): Promise<void> => {
    try {
      const run = Object.hasOwn(tasks, task) ? tasks[task] : undefined;
      if (!run) throw new Error(`there is no task "${task}"`);
      const output = await run(input as never, (share, note = '') => tell({ kind: 'progress', id, share, note }));
      tell({ kind: 'done', id, output });
    } catch (error) {
      tell({ kind: 'failed', id, error: factsOf(error) });
    }
  };
  port.on('message', (message: TaskMessage) => void serve(message));
};
