import { randomUUID } from 'node:crypto';
import { availableParallelism } from 'node:os';
import type { OperationName, RequestOf, ValueOf } from '#shared/contract/contract.ts';
import type { Answer, Failure } from '#shared/contract/failure.ts';
import type { Event } from '#shared/contract/job.ts';
import { openGate } from '#application/gate.ts';
import { fillNew, type FirstContent } from '#application/first-content.ts';
import { failureOfTrouble } from '#application/failures.ts';
import { csvDays } from '#platform/weather-files/csv-days.ts';
import { epwDays } from '#platform/weather-files/epw-days.ts';
import { typeface } from '#platform/fonts/typeface.ts';
import { optimiserInWorker } from '#platform/optimiser/optimiser-in-worker.ts';
import { openPool } from '#platform/workers/pool.ts';
import { systemClock, type Clock } from '#platform/clock/clock.ts';
import type { Optimiser } from '#planner/optimiser.ts';
import type { Compute, TaskName } from '#services/needs.ts';
import { restoreCopy } from '#store/copies.ts';
import { newestVersion } from '#store/file-facts.ts';
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
const copies = { everyMs: 24 * hourMs, keep: 14 };
const toStandardError = (line: string): void => void process.stderr.write(`${line}\n`);

/** Opens a workspace with everything that belongs to it. A file that cannot be opened makes an application with `trouble`. */
export const openApplication = async (wishes: ApplicationWishes): Promise<Application> => {
  const { file, clock = systemClock, waitMs = 5000, log = toStandardError } = wishes;
  const opening = await openStore({
    file,
    now: clock.now,
    waitMs,
    fill: (contents) => fillNew(contents, wishes.firstContent),
    copies,
    log,
  });
  if (!opening.ok) return troubled(file, opening.trouble);

  const { store } = opening;
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
      version: packageFile.version,
    },
    log,
  );
  const copying = setInterval(() => void store.copyIfDue(), hourMs);
  copying.unref();

  return {
    file,
    trouble: null,
    answer: gate.answer,
    ask: asker(gate.answer),
    listen: gate.listen,
    copyNow: () => store.copyNow('asked'),
    close: () => closeAll(gate.close, computing.close, store, copying),
  };
};

/** Puts the newest good copy, or the named one, in the place of a workspace that could not be opened. The old file is kept beside it. */
export const restoreWorkspace = async (file: string, copy: string, clock: Clock = systemClock): Promise<void> =>
  restoreCopy(file, copy, clock.now(), newestVersion);

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

/** An application whose file could not be opened: it can still say why. */
const troubled = (file: string, trouble: Trouble): Application => {
  const failure: Failure = failureOfTrouble(trouble);
  const answer = (): Promise<Answer<unknown>> => Promise.resolve({ ok: false, failure });
  return {
    file,
    trouble,
    answer,
    ask: asker(answer),
    listen: () => () => undefined,
    copyNow: () => Promise.reject(new Error(trouble.message)),
    close: () => Promise.resolve(),
  };
};

const computingFor = (wishes: ApplicationWishes): { readonly compute: Compute; readonly close: () => Promise<void> } => {
  if (wishes.compute) return { compute: wishes.compute, close: () => Promise.resolve() };
  const pool = openPool({
    entry: wishes.workerEntry ?? new URL('./engine-worker.ts', import.meta.url),
    size: Math.max(2, Math.min(4, availableParallelism())),
  });
  const compute = ((task: TaskName, input: unknown, asked) => pool.run(task, input, asked)) as Compute;
  return { compute, close: pool.close };
};
