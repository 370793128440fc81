import { contract, operationNames, type OperationName } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/contract/failure.ts';
import { Job, type Event } from '#shared/contract/job.ts';
import { plainReason } from '#shared/vocabulary/plain-reason.ts';
import { failureOfError } from '#application/failures.ts';
import { openJobBook } from '#application/job-book.ts';
import { problemsOf } from '#application/request-problems.ts';
import { sizeProblem } from '#application/request-size.ts';
import { done, invalid } from '#services/answers.ts';
import { operations } from '#services/operations.ts';
import type { LongWork, Needs, Service } from '#services/needs.ts';

export interface Gate {
  answer(name: string, request: unknown): Promise<Answer<unknown>>;
  listen(listener: (event: Event) => void): () => void;
  /** Stops all long work, waits for what is being answered, and answers `cancelled` from then on. */
  close(): Promise<void>;
}

const isName = (name: unknown): name is OperationName =>
  typeof name === 'string' && (operationNames as readonly string[]).includes(name);

/** The one way in. Whatever happens behind it, what comes out is an answer whose value has the shape the contract gives. */
export const openGate = (needs: Omit<Needs, 'jobs'>, log: (line: string) => void): Gate => {
  const listeners = new Set<(event: Event) => void>();
  const answering = new Set<Promise<unknown>>();
  let closed = false;

  const tell = (event: Event): void => {
    for (const listener of listeners) {
      try {
        listener(event);
      } catch (error) {
        log(`a listener failed: ${detailsOf(error)}`);
      }
    }
  };

  /** An answer of whatever `work` does. */
  const guard = async (name: string, work: () => Promise<Answer<unknown>>): Promise<Answer<unknown>> => {
    try {
      return await work();
    } catch (error) {
      const failure = failureOfError(error);
      if (failure.kind !== 'cancelled') log(`${name}: ${detailsOf(error)}`);
      return { ok: false, failure };
    }
  };

  const jobs = openJobBook(
    (job) => tell({ kind: 'job', job }),
    (operation, work) => guard(operation, async () => finish(operation as OperationName, await work(), false)),
  );

  /** Checks a value before it goes out and tells the others what was changed. */
  const finish = (name: OperationName, answer: Answer<unknown>, isJob: boolean, request?: unknown): Answer<unknown> => {
    if (!answer.ok) return answer;
    const value: unknown = (isJob ? Job : contract[name].reply).parse(answer.value);
    if (contract[name].writes && !isJob && name !== 'job/cancel')
      tell({ kind: 'changed', what: name.split('/')[0]!, id: idOf(value) || idOf(request) });
    return done(value);
  };

  const serve = async (name: OperationName, request: unknown): Promise<Answer<unknown>> => {
    const tooMuch = sizeProblem(request);
    if (tooMuch) return invalid([tooMuch]);
    const checked = contract[name].request.safeParse(request, { error: plainReason });
    if (!checked.success) return invalid(problemsOf(checked.error.issues, request));
    const service = operations[name] as unknown as Service<'venue/read'>;
    const answer = (await service({ ...needs, jobs }, checked.data as never)) as Answer<unknown>;
    if (!answer.ok || !contract[name].long) return finish(name, answer, false, checked.data);
    return finish(name, done(jobs.start(name, answer.value as LongWork<unknown>)), true);
  };

  return {
    answer: async (name, request) => {
      if (closed) return { ok: false, failure: { kind: 'cancelled', message: 'Fieldback is closing. Nothing was stored.' } };
      if (!isName(name)) return invalid([{ field: 'name', reason: `there is no operation "${String(name).slice(0, 80)}"` }]);
      const answered = guard(name, () => serve(name, request));
      answering.add(answered);
      void answered.finally(() => answering.delete(answered));
      return answered;
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: async () => {
      closed = true;
      await jobs.stopAll();
      await Promise.all(answering);
      listeners.clear();
    },
  };
};

const idOf = (value: unknown): string => {
  const id = (value as { id?: unknown } | null)?.id;
  return typeof id === 'string' ? id : '';
};

const detailsOf = (error: unknown): string => (error instanceof Error ? (error.stack ?? error.message) : String(error));
