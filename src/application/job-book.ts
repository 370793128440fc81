import { randomUUID } from 'node:crypto';
import type { Answer, Failure } from '#shared/contract/failure.ts';
import type { Job } from '#shared/contract/job.ts';
import type { Jobs, LongWork } from '#services/needs.ts';

/** Ended jobs that can still be read. */
const remembered = 100;

interface Entry {
  job: Job;
  readonly stop: AbortController;
  readonly ended: Promise<void>;
}

export interface JobBook extends Jobs {
  /** Starts long work and answers with its job at once. `checkValue` may turn a value that must not go out into a failure. */
  start(operation: string, work: LongWork<unknown>): Job;
  /** Stops all that runs and waits for it. */
  stopAll(): Promise<void>;
}

const cancelled: Failure = { kind: 'cancelled', message: 'This work was stopped before it was done. Nothing was kept.' };

/**
 * The long work of this program. `tell` hears of every change of a job; `guard` makes an answer of whatever the work does, also of a
 * throw.
 */
export const openJobBook = (
  tell: (job: Job) => void,
  guard: (operation: string, work: () => Promise<Answer<unknown>>) => Promise<Answer<unknown>>,
): JobBook => {
  const entries = new Map<string, Entry>();

  const change = (id: string, change: Partial<Job>): void => {
    const entry = entries.get(id)!;
    entry.job = { ...entry.job, ...change };
    tell(entry.job);
  };

  const end = (id: string, answer: Answer<unknown>, stopped: boolean): void => {
    const { progress } = entries.get(id)!.job;
    if (answer.ok) return change(id, { state: 'done', progress: { share: 1, note: progress.note }, value: answer.value });
    if (stopped || answer.failure.kind === 'cancelled') return change(id, { state: 'cancelled', failure: cancelled });
    change(id, { state: 'failed', failure: answer.failure });
  };

  const forgetOldest = (): void => {
    const ended = [...entries].filter(([, entry]) => entry.job.state !== 'running');
    for (const [id] of ended.slice(0, Math.max(0, ended.length - remembered))) entries.delete(id);
  };

  return {
    start: (operation, work) => {
      const id = `job-${randomUUID()}`;
      const stop = new AbortController();
      const job: Job = { id, operation, state: 'running', progress: { share: 0, note: '' } };
      const ended = Promise.resolve()
        .then(() =>
          guard(operation, () =>
            work({
              signal: stop.signal,
              report: (progress) => {
                if (entries.get(id)?.job.state === 'running' && !stop.signal.aborted) change(id, { progress });
              },
            }),
          ),
        )
        .then((answer) => end(id, answer, stop.signal.aborted));
      entries.set(id, { job, stop, ended });
      forgetOldest();
      tell(job);
      return job;
    },
    find: (id) => entries.get(id)?.job ?? null,
    cancel: async (id) => {
      const entry = entries.get(id);
      if (!entry) return null;
      if (entry.job.state === 'running') {
        entry.stop.abort();
        await entry.ended;
      }
      return entry.job;
    },
    stopAll: async () => {
      const all = [...entries.values()];
      for (const entry of all) entry.stop.abort();
      await Promise.all(all.map((entry) => entry.ended));
    },
  };
};
