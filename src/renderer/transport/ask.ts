import { answerPath, bridgeName, listenPath, type Bridge } from '#shared/contract/bridge.ts';
import type { OperationName, ReplyOf, RequestOf, ValueOf } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { Event, Job } from '#shared/contract/job.ts';

/** The page's way to the application: the window's bridge where there is one, the loopback host otherwise. */
const bridge: Bridge = (window as unknown as Record<string, Bridge | undefined>)[bridgeName] ?? {
  answer: async (name, request) => {
    try {
      const response = await fetch(`${answerPath}${name}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(request),
      });
      return (await response.json()) as Answer<unknown>;
    } catch {
      return {
        ok: false,
        failure: {
          kind: 'unexpected',
          message:
            'Fieldback does not answer. Look whether it still runs, and whether this was stored, before you enter it again.',
        },
      };
    }
  },
  listen: (listener) => {
    const source = new EventSource(listenPath);
    source.onmessage = (message: MessageEvent<string>) => listener(JSON.parse(message.data) as Event);
    return () => source.close();
  },
};

/** Asks one operation. Never throws. */
export const ask = async <Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<Answer<ValueOf<Name>>> =>
  (await bridge.answer(name, request)) as Answer<ValueOf<Name>>;

export const listen = (listener: (event: Event) => void): (() => void) => bridge.listen(listener);

/** How often a job is looked at, should an event have been lost. */
const lookEvery = 400;

/**
 * Asks long work and waits for its result, telling how far it is. Never throws.
 * @param begun told the job's id, so that it can be stopped
 */
export const work = async <Name extends OperationName>(
  name: Name,
  request: RequestOf<Name>,
  progress: (job: Job) => void,
): Promise<Answer<ReplyOf<Name>>> => {
  const first = (await bridge.answer(name, request)) as Answer<Job>;
  if (!first.ok) return first;
  let job = first.value;
  progress(job);
  while (job.state === 'running') {
    await new Promise((resolve) => setTimeout(resolve, lookEvery));
    const seen = (await bridge.answer('job/read', { id: job.id })) as Answer<Job>;
    if (!seen.ok) return seen;
    job = seen.value;
    progress(job);
  }
  if (job.state === 'done') return { ok: true, value: job.value as ReplyOf<Name> };
  return { ok: false, failure: job.failure ?? { kind: 'cancelled', message: 'Stopped. Nothing was kept.' } };
};
