import { randomUUID } from 'node:crypto';
import { availableParallelism } from 'node:os';
import type { OperationName, RequestOf, ValueOf } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { Event } from '#shared/contract/job.ts';
import { fillNew, type FirstContent } from '#application/first-content.ts';
import { openGate } from '#application/gate.ts';
import type { Opened } from '#application/opened.ts';
import { troubled } from '#application/troubled.ts';
import { csvDays } from '#platform/weather-files/csv-days.ts';
import { epwDays } from '#platform/weather-files/epw-days.ts';
import { typeface } from '#platform/fonts/typeface.ts';
import { photographsBeside } from '#platform/photographs/folder.ts';
import { optimiserInWorker } from '#platform/optimiser/optimiser-in-worker.ts';
import { openPool } from '#platform/workers/pool.ts';
import { systemClock, type Clock } from '#platform/clock/clock.ts';
import type { Optimiser } from '#planner/optimiser.ts';
import type { Compute, TaskName } from '#services/needs.ts';
import { openStore, type OpenStore } from '#store/open-store.ts';
import type { Trouble } from '#store/trouble.ts';
import packageFile from '../../package.json' with { type: 'json' };

export interface ApplicationWishes {
  /** The workspace file; begun anew when there is none. */
  readonly file: string;
  readonly clock?: Clock;
  /** What a new workspace holds; nothing when left out. The shipped content is `shippedContent`. */
  readonly firstContent?: FirstContent;
  /** Module of the worker threads; a bundler gives its own. */
  readonly workerEntry?: URL;
  /** Module of the optimiser's worker; a bundler gives its own. */
  readonly optimiserEntry?: URL;
  /** Plans in another way than a worker thread. */
  readonly optimiser?: Optimiser;
  /** Runs calculations in another way than worker threads. */
  readonly compute?: Compute;
  /** ms to wait while another program writes. */
  readonly waitMs?: number;
  /** Details of what went wrong, for the log: one entry per line. */
  readonly log?: (line: string) => void;
}

export interface Application {
  readonly file: string;
  /** Why the workspace could not be opened; while this stands, every question is answered with it. */
  readonly trouble: Trouble | null;
  /** The one gate: checks name and request, answers with a value or a failure, never throws. */
  answer(name: string, request: unknown): Promise<Answer<unknown>>;
  /** The same with types. */
  ask<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<Answer<ValueOf<Name>>>;
  /** Calls the listener on every event; answers a function that stops it. */
  listen(listener: (event: Event) => void): () => void;
  /** Copies the workspace now; answers the path. Rejects where the workspace could not be opened or the copy not be made. */
  copyNow(): Promise<string>;
  /** Stops all work and closes the file. What is asked afterwards is answered with `cancelled`. */
  close(): Promise<void>;
}

const hourMs = 3_600_000;
const defaultWaitMs = 5000;
const copies = { everyMs: 24 * hourMs, keep: 14 };
const toStandardError = (line: string): void => void process.stderr.write(`${line}\n`);

/**
 * Opens a workspace with everything that belongs to it. A file that cannot be opened makes an application with `trouble`: it says why,
 * names its copies and puts one in its place when asked (`workspace/restore`), and is opened again as soon as what hindered it has gone.
 */
export const openApplication = async (wishes: ApplicationWishes): Promise<Application> => {
  const { file, clock = systemClock, log = toStandardError } = wishes;
  const listeners = new Set<(event: Event) => void>();
  const tell = (event: Event): void => {
    for (const listener of listeners) {
      try {
        listener(event);
      } catch (error) {
        log(`a listener failed: ${String(error)}`);
      }
    }
  };
  let closed = false;
  const open = async (): Promise<Opened> => {
    const opening = await openStore({
      file,
      now: clock.now,
      waitMs: wishes.waitMs ?? defaultWaitMs,
      fill: (contents) => fillNew(contents, wishes.firstContent),
      copies,
      log,
    });
    return opening.ok ? withStore(wishes, opening.store, tell) : troubled({ file, trouble: opening.trouble, clock, log, reopen });
  };
  let opened: Opened;
  const reopen = async (): Promise<Opened> => {
    if (closed || opened.trouble === null) return opened;
    opened = await open();
    if (opened.trouble === null) tell({ kind: 'changed', what: 'workspace', id: '' });
    return opened;
  };
  opened = await open();
  const answer: Application['answer'] = (name, request) => opened.answer(name, request);

  return {
    file,
    get trouble() {
      return opened.trouble;
    },
    answer,
    ask: asker(answer),
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    copyNow: () => opened.copyNow(),
    close: async () => {
      closed = true;
      await opened.close();
      listeners.clear();
    },
  };
};

/** An application on a store that is open. */
const withStore = (wishes: ApplicationWishes, store: OpenStore, tell: (event: Event) => void): Opened => {
  const { file, clock = systemClock, log = toStandardError } = wishes;
  const computing = computingFor(wishes);
  const gate = openGate(
    {
      store,
      now: clock.now,
      newId: randomUUID,
      compute: computing.compute,
      optimiser: wishes.optimiser ?? optimiserInWorker(wishes.optimiserEntry ? { entry: wishes.optimiserEntry } : {}),
      typeface,
      readWeather: (format, text, place) => (format === 'csv' ? csvDays(text, place) : epwDays(text, place)),
      photographs: photographsBeside(file),
      version: packageFile.version,
    },
    log,
  );
  gate.listen(tell);
  const copying = setInterval(() => void store.copyIfDue(), hourMs);
  copying.unref();
  return {
    trouble: null,
    answer: gate.answer,
    copyNow: async () => (await store.copyNow('asked')).path,
    close: () => closeAll(gate.close, computing.close, store, copying),
  };
};

const closeAll = async (
  closeGate: () => Promise<void>,
  closeWorkers: () => Promise<void>,
  store: OpenStore,
  copying: NodeJS.Timeout,
): Promise<void> => {
  clearInterval(copying);
  await closeGate();
  await closeWorkers();
  await store.close();
};

const asker =
  (answer: Application['answer']): Application['ask'] =>
  async (name, request) =>
    (await answer(name, request)) as Answer<ValueOf<typeof name>>;

const computingFor = (wishes: ApplicationWishes): { readonly compute: Compute; readonly close: () => Promise<void> } => {
  if (wishes.compute) return { compute: wishes.compute, close: () => Promise.resolve() };
  const pool = openPool({
    entry: wishes.workerEntry ?? new URL('./engine-worker.ts', import.meta.url),
    size: Math.max(2, Math.min(4, availableParallelism())),
  });
  const compute = ((task: TaskName, input: unknown, asked) => pool.run(task, input, asked)) as Compute;
  return { compute, close: pool.close };
};
